package bench

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the bench and its calculators.
type pages struct {
	*frame.Frame
	bar   behind.Bar
	house behind.House
}

// Mount puts the bench and its calculators on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	mux.Handle("/{$}", p.Route(p.bench, frame.Taking...))
	mux.Handle("/names", p.Route(p.names, frame.Showing...))
	mux.Handle("/tools", p.Route(p.tools, frame.Showing...))
}
