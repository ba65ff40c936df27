package specs

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of the specs.
type pages struct {
	*frame.Frame
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of the specs on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	mux.Handle("/card", p.Route(p.draftCard, frame.Showing...))
	mux.Handle("/specs", p.Route(p.specs, frame.Showing...))
	mux.Handle("/specs/print", p.Route(p.collection, frame.Showing...))
	mux.Handle("/specs/export", p.Route(p.export, frame.Showing...))
	mux.Handle("/specs/import", p.Route(frame.Lead(p.takeIn), frame.Taking...))
	mux.Handle("/specs/{slug}", p.Route(frame.Lead(p.specPage), frame.Taking...))
	mux.Handle("/specs/{slug}/batch", p.Route(p.batch, frame.Showing...))
	mux.Handle("/specs/{slug}/card", p.Route(p.card, frame.Showing...))
}
