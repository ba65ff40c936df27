package behind

import (
	"context"

	"counterpour/api/service/coaching"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/template"
)

// Trainer makes and grades rounds, and plans tastings and cards. It stores nothing.
type Trainer interface {
	// Next makes a round for a learner, who may have no results yet.
	Next(l drill.Learner, w RoundWish) (*drill.Round, error)
	// Again makes the same round again from its request. The error is [coaching.ErrChanged]
	// if it no longer has the looks that [coaching.Looks] took of it.
	Again(r drill.RoundRequest, looked []byte) (*drill.Round, error)
	// Grade grades an answer.
	Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error)
	// Flight plans a tasting flight.
	Flight(r tasting.FlightRequest) (*tasting.Flight, error)
	// Triangle plans a triangle test.
	Triangle(ctx context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error)
	// Card makes the card of a family, with examples from the specs given.
	Card(family string, specs []template.Labelled) (*drill.Card, error)
}
