package specs

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of the specs.
type pages struct {
	*frame.Frame
	open behind.Open

	// As one request sees the house.
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of the specs on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	p := &pages{Frame: f, open: open}
	mux.Handle("/card", p.Route(p.visited((*pages).draftCard), frame.Showing...))
	mux.Handle("/specs", p.Route(p.visited((*pages).specs), frame.Showing...))
	mux.Handle("/specs/print", p.Route(p.visited((*pages).collection), frame.Showing...))
	mux.Handle("/specs/export", p.Route(p.visited((*pages).export), frame.Showing...))
	mux.Handle("/specs/import", p.Route(frame.Lead(p.visited((*pages).takeIn)), frame.Taking...))
	mux.Handle("/specs/{slug}", p.Route(frame.Lead(p.visited((*pages).specPage)), frame.Taking...))
	mux.Handle("/specs/{slug}/batch", p.Route(p.visited((*pages).batch), frame.Showing...))
	mux.Handle("/specs/{slug}/card", p.Route(p.visited((*pages).card), frame.Showing...))
}

// visited runs a page over the house as it stands when the request begins.
func (p *pages) visited(do func(*pages, http.ResponseWriter, *http.Request) error) frame.Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		at, visit := *p, p.open()
		at.bar, at.house = visit, visit
		return do(&at, w, r)
	}
}
