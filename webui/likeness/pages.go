package likeness

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the map.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Mount puts the map on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle("/map", f.Route(at((*pages).stockMap), frame.Showing...))
}
