package bench

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the bench and its calculators.
type pages struct {
	*frame.Frame
	open behind.Open

	// As one request sees the house.
	bar   behind.Bar
	house behind.House
}

// Path is the address of the bench.
const Path = "/bench"

// Mount puts the bench and its calculators on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	p := &pages{Frame: f, open: open}
	mux.Handle(Path, p.Route(p.visited((*pages).bench), frame.Taking...))
	mux.Handle("/names", p.Route(p.visited((*pages).names), frame.Showing...))
	mux.Handle("/tools", p.Route(p.visited((*pages).tools), frame.Showing...))
}

// visited runs a page over the house as it stands when the request begins.
func (p *pages) visited(do func(*pages, http.ResponseWriter, *http.Request) error) frame.Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		at, visit := *p, p.open()
		at.bar, at.house = visit, visit
		return do(&at, w, r)
	}
}
