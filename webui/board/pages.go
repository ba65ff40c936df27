package board

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the cover board and the menu as it can be poured now.
type pages struct {
	*frame.Frame
	open behind.Open

	// As one request sees the house.
	bar   behind.Bar
	house behind.House
}

// Mount puts the cover board, and what tonight can be poured, on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	p := &pages{Frame: f, open: open}
	mux.Handle("/board", p.Route(p.visited((*pages).board), frame.Taking...))
	mux.Handle(TonightPath, p.Route(p.visited((*pages).tonight), frame.Taking...))
	mux.Handle("/board/events", p.Open(p.visited((*pages).boardEvents), http.MethodGet))
}

// visited runs a page over the house as it stands when the request begins.
func (p *pages) visited(do func(*pages, http.ResponseWriter, *http.Request) error) frame.Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		at, visit := *p, p.open()
		at.bar, at.house = visit, visit
		return do(&at, w, r)
	}
}
