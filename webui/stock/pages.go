package stock

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of the stock.
type pages struct {
	*frame.Frame
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of the stock on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	mux.Handle("/stock", p.Route(p.stock, frame.Showing...))
	mux.Handle("/stock/bottle", p.Route(frame.Lead(p.bottlePage), frame.Taking...))
	mux.Handle("/stock/made", p.Route(frame.Lead(p.madePage), frame.Taking...))
	mux.Handle("/stock/undo", p.Route(frame.Lead(p.undoStock), frame.Posting...))
	mux.Handle("/stock/import", p.Route(frame.Lead(p.importStock), frame.Taking...))
	mux.Handle("/stock/stock.csv", p.Route(p.exportStock, frame.Showing...))
	mux.Handle("/map", p.Route(p.stockMap, frame.Showing...))
}
