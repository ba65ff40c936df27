package riffs

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of riffs.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of riffs on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle("/riffs", f.Route(at((*pages).riffs), frame.Taking...))
	mux.Handle("/riffs/use-up", f.Route(at((*pages).useUp), frame.Taking...))
	mux.Handle("/riffs/walk", f.Route(at((*pages).walk), frame.Taking...))
}
