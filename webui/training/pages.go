package training

import (
	"net/http"

	"counterpour/webui/behind"
	"counterpour/webui/frame"
)

// pages serves the pages of training.
type pages struct {
	*frame.Frame
	bar      behind.Bar
	house    behind.House
	trainer  behind.Trainer
	learners *learners
	seal     sealer
}

// Mount puts the pages of training on a mux. It fails only if the
// machine gives no random numbers.
func Mount(mux *http.ServeMux, f *frame.Frame, bar behind.Bar) error {
	p := &pages{Frame: f, bar: bar, house: bar.House()}
	seal, err := newSealer()
	if err != nil {
		return err
	}
	p.trainer, p.learners, p.seal = bar.Trainer(), newLearners(p.house.Store()), seal
	mux.Handle(trainingPath, p.Route(p.training, frame.Taking...))
	mux.Handle(progressPath, p.Route(p.progress, frame.Taking...))
	mux.Handle(flightPath, p.Route(p.flight, frame.Showing...))
	mux.Handle(trianglePath, p.Route(p.triangle, frame.Taking...))
	mux.Handle(starterPath, p.Route(p.starter, frame.Showing...))
	return nil
}
