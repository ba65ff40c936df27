package riffs

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of riffs.
type pages struct {
	*frame.Frame
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of riffs on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	mux.Handle("/riffs", p.Route(p.riffs, frame.Taking...))
	mux.Handle("/riffs/use-up", p.Route(p.useUp, frame.Taking...))
	mux.Handle("/riffs/walk", p.Route(p.walk, frame.Taking...))
}
