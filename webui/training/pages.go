package training

import (
	"context"
	"net/http"
	"time"

	"counterpour/api/service/coaching"
	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of training.
type pages struct {
	*frame.Frame
	learners *coaching.Learners
	seal     sealer

	// The house as one request sees it.
	bar     behind.Bar
	house   behind.House
	trainer behind.Trainer
}

// Mount puts the pages of training on a mux. It fails only if the house cannot say
// with which key rounds are sealed.
func Mount(mux *http.ServeMux, f *frame.Frame, open behind.Open) error {
	store := open().Store()
	seal, err := newSealer(context.Background(), store, time.Now())
	if err != nil {
		return err
	}
	learners := coaching.NewLearners(store)
	at := behind.Visiting(open, func(v behind.Visit) *pages {
		return &pages{Frame: f, learners: learners, seal: seal, bar: v, house: v, trainer: v}
	})
	mux.Handle(trainingPath, f.Route(at((*pages).training), frame.Taking...))
	mux.Handle(progressPath, f.Route(at((*pages).progress), frame.Taking...))
	mux.Handle(flightPath, f.Route(at((*pages).flight), frame.Showing...))
	mux.Handle(trianglePath, f.Route(at((*pages).triangle), frame.Taking...))
	mux.Handle(starterPath, f.Route(at((*pages).starter), frame.Showing...))
	return nil
}
