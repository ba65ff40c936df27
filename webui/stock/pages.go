package stock

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/desk"
	"counterpour/webui/frame"
	"counterpour/webui/part"
)

// pages serves the pages of the stock.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// desk is where the forms of records are served.
func (p *pages) desk() desk.At { return desk.At{Frame: p.Frame, House: p.house} }

// StartPath is the address of the first day.
const StartPath = "/start"

// Mount puts the pages of the stock on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle("/stock", f.Route(at((*pages).stock), frame.Showing...))
	mux.Handle(orderPath, f.Route(frame.Lead(at((*pages).orderPage)), frame.Taking...))
	mux.Handle(StartPath, f.Route(frame.Lead(at((*pages).start)), frame.Taking...))
	mux.Handle("/stock/mark", f.Route(at((*pages).mark), frame.Posting...))
	mux.Handle(OwnWordsPath, f.Route(frame.Lead(at((*pages).nameWords)), frame.Posting...))
	mux.Handle("/stock/bottle", f.Route(at((*pages).bottlePage), frame.Taking...))
	mux.Handle(part.LabelPath, f.Route(frame.Lead(at((*pages).labelPage)), frame.Taking...))
	mux.Handle(settingsPath, f.Route(at((*pages).settingsPage), frame.Taking...))
	mux.Handle("/stock/made", f.Route(at((*pages).madePage), frame.Taking...))
	mux.Handle("/stock/undo", f.Route(frame.Lead(at((*pages).undoStock)), frame.Posting...))
}
