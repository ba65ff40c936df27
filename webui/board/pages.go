package board

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the cover board.
type pages struct {
	*frame.Frame
	bar   behind.Bar
	house behind.House
}

// Mount puts the cover board on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	mux.Handle("/board", p.Route(p.board, frame.Taking...))
	mux.Handle("/board/events", p.Open(p.boardEvents, http.MethodGet))
}
