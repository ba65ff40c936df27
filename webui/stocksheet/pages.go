package stocksheet

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the page of a sheet.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Path is the address at which a sheet comes in.
const Path = "/stock/import"

// Mount puts the pages on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle(Path, f.Route(at((*pages).takeIn), frame.Taking...))
	mux.Handle("/stock/stock.csv", f.Route(at((*pages).writeOut), frame.Showing...))
}
