package bench

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the bench and its calculators.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Path is the address of the bench.
const Path = "/bench"

// Mount puts the bench and its calculators on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle(Path, f.Route(at((*pages).bench), frame.Taking...))
	mux.Handle(sharePath, f.Route(at((*pages).share), frame.Showing...))
	mux.Handle("/names", f.Route(at((*pages).names), frame.Showing...))
	mux.Handle("/tools", f.Route(at((*pages).tools), frame.Showing...))
}
