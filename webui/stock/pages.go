package stock

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of the stock.
type pages struct {
	*frame.Frame
	open behind.Open

	// As one request sees the house.
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of the stock on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	p := &pages{Frame: f, open: open}
	mux.Handle("/stock", p.Route(p.visited((*pages).stock), frame.Showing...))
	mux.Handle("/stock/mark", p.Route(p.visited((*pages).mark), frame.Posting...))
	mux.Handle("/stock/bottle", p.Route(p.visited((*pages).bottlePage), frame.Taking...))
	mux.Handle("/stock/made", p.Route(p.visited((*pages).madePage), frame.Taking...))
	mux.Handle("/stock/undo", p.Route(frame.Lead(p.visited((*pages).undoStock)), frame.Posting...))
	mux.Handle("/stock/import", p.Route(p.visited((*pages).importStock), frame.Taking...))
	mux.Handle("/stock/stock.csv", p.Route(p.visited((*pages).exportStock), frame.Showing...))
	mux.Handle("/map", p.Route(p.visited((*pages).stockMap), frame.Showing...))
}

// visited runs a page over the house as it stands when the request begins.
func (p *pages) visited(do func(*pages, http.ResponseWriter, *http.Request) error) frame.Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		at, visit := *p, p.open()
		at.bar, at.house = visit, visit
		return do(&at, w, r)
	}
}
