package board

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the cover board and the menu as it can be poured now.
type pages struct {
	*frame.Frame
	open  behind.Open // for who listens longer than one request looks
	lines *lines

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Mount puts the cover board, and what tonight can be poured, on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	all := newLines()
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, open, all, v, v} })
	mux.Handle(boardPath, f.Route(at((*pages).board), frame.Taking...))
	mux.Handle(TonightPath, f.Route(at((*pages).tonight), frame.Taking...))
	mux.Handle(wallPath, f.Route(at((*pages).wall), frame.Showing...))
	mux.Handle(aheadPath, f.Route(at((*pages).ahead), frame.Showing...))
	mux.Handle(flightPath, f.Route(at((*pages).flight), frame.Showing...))
	mux.Handle("/board/events", f.Open(at((*pages).boardEvents), http.MethodGet))
}
