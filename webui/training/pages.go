package training

import (
	"net/http"

	"counterpour/api/service"
	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of training.
type pages struct {
	*frame.Frame
	open     behind.Open
	learners *service.Learners
	seal     sealer

	// As one request sees the house.
	bar     behind.Bar
	house   behind.House
	trainer behind.Trainer
}

// Mount puts the pages of training on a mux. It fails only if the
// machine gives no random numbers.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) error {
	p := &pages{Frame: f, open: open}
	seal, err := newSealer()
	if err != nil {
		return err
	}
	p.learners, p.seal = service.NewLearners(open().Store()), seal
	mux.Handle(trainingPath, p.Route(p.visited((*pages).training), frame.Taking...))
	mux.Handle(progressPath, p.Route(p.visited((*pages).progress), frame.Taking...))
	mux.Handle(flightPath, p.Route(p.visited((*pages).flight), frame.Showing...))
	mux.Handle(trianglePath, p.Route(p.visited((*pages).triangle), frame.Taking...))
	mux.Handle(starterPath, p.Route(p.visited((*pages).starter), frame.Showing...))
	return nil
}

// visited runs a page over the house as it stands when the request begins.
func (p *pages) visited(do func(*pages, http.ResponseWriter, *http.Request) error) frame.Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		at, visit := *p, p.open()
		at.bar, at.house, at.trainer = visit, visit, visit
		return do(&at, w, r)
	}
}
