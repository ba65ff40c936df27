package specs

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of the specs.
type pages struct {
	*frame.Frame

	// The house as one request sees it.
	bar   behind.Bar
	house behind.House
}

// Mount puts the pages of the specs on a mux.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) {
	at := behind.Visiting(open, func(v behind.Visit) *pages { return &pages{f, v, v} })
	mux.Handle("/card", f.Route(at((*pages).draftCard), frame.Showing...))
	mux.Handle("/specs", f.Route(at((*pages).specs), frame.Showing...))
	mux.Handle("/specs/print", f.Route(at((*pages).collection), frame.Showing...))
	mux.Handle(menuPath, f.Route(at((*pages).guestMenu), frame.Showing...))
	mux.Handle("/specs/export", f.Route(at((*pages).export), frame.Showing...))
	mux.Handle(costsPath, f.Route(frame.Lead(at((*pages).costs)), frame.Taking...))
	mux.Handle("/specs/import", f.Route(frame.Lead(at((*pages).takeIn)), frame.Taking...))
	mux.Handle("/specs/{slug}", f.Route(frame.Lead(at((*pages).specPage)), frame.Taking...))
	mux.Handle("/specs/{slug}/batch", f.Route(at((*pages).batch), frame.Showing...))
	mux.Handle("/specs/{slug}/card", f.Route(at((*pages).card), frame.Showing...))
}
