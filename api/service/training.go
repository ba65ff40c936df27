package service

import (
	"slices"
	"sync"

	"counterpour/api/service/coaching"
	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// Round makes a round for a learner.
func (s *Snapshot) Round(r coaching.RoundRequest) (*drill.Round, error) {
	t, err := s.coach()
	if err != nil {
		return nil, err
	}
	return coaching.Round(t, r)
}

// RoundAgain makes the same round again from its request; see [coaching.Again].
func (s *Snapshot) RoundAgain(r drill.RoundRequest, looked []byte) (*drill.Round, error) {
	t, err := s.coach()
	if err != nil {
		return nil, err
	}
	return coaching.Again(t, r, looked)
}

// Grade grades the answer to a round.
func (s *Snapshot) Grade(r *drill.Round, a drill.Answer) (*drill.Grade, error) {
	t, err := s.coach()
	if err != nil {
		return nil, err
	}
	return t.Grade(r, a)
}

// FlightOf plans a tasting flight of a draft, of a drink of the house or of a proven one that
// is called so.
func (s *Snapshot) FlightOf(d Draft, r tasting.FlightRequest) (*tasting.Flight, error) {
	if d.Drink != nil && s.drinkCalled(*d.Drink) == nil {
		if known := s.ProvenCalled(*d.Drink); known != nil {
			d.Drink, d.Spec = nil, known
		}
	}
	spec, err := s.Read(d)
	if err != nil {
		return nil, err
	}
	r.Spec = &spec
	return s.Flight(r)
}

// Flight plans a tasting flight.
func (s *Snapshot) Flight(r tasting.FlightRequest) (*tasting.Flight, error) {
	return tasting.PlanFlight(s.Mixer, r)
}

// Card makes the card of a family, with examples from the specs given.
func (s *Snapshot) Card(family string, specs []template.Labelled) (*drill.Card, error) {
	t, err := s.coach()
	if err != nil {
		return nil, err
	}
	return t.Card(family, specs)
}

// StarterCard makes the card of a family, with examples from the menu of the house. An
// unknown id is [fault.ErrNotFound] at "path.id".
func (s *Snapshot) StarterCard(family string) (*drill.Card, error) {
	c, err := s.Card(family, s.labelled())
	return c, flavor.Relocated(err, func(f *flavor.DataFault) {
		if f.Location == "family" {
			f.Kind, f.Location = fault.ErrNotFound, "path.id"
		}
	})
}

// labelled is the menu with the family of each drink.
func (s *Snapshot) labelled() []template.Labelled {
	menu := make([]template.Labelled, len(s.Menu))
	for i := range s.Menu {
		menu[i] = template.Labelled{Spec: s.Menu[i].Spec, Family: s.Menu[i].Family}
	}
	return menu
}

// newSchool returns a function that makes the trainer over the proven drinks on its first
// call.
func (s *Snapshot) newSchool() func() (*drill.Trainer, error) {
	k, stock, said := s.Kitchen, s.Stock, s.Settings
	return sync.OnceValues(func() (*drill.Trainer, error) {
		return drill.NewTrainer(k.Mixer, k.Judge, k.Set, k.Finder, inUnits(said, k.Proven), stock)
	})
}

// newCoach returns a function that makes the trainer of a snapshot, which knows its menu
// too, on its first call.
func (s *Snapshot) newCoach() func() (*drill.Trainer, error) {
	school, menu := s.school, inUnits(s.Settings, s.labelled())
	return sync.OnceValues(func() (*drill.Trainer, error) {
		t, err := school()
		if err != nil {
			return nil, err
		}
		return t.WithMenu(menu), nil
	})
}

// inUnits returns drinks as the house pours them: in its units, and as much as is then written, so
// that a round asks about the amounts that stand on the house's cards. Without units of its own a
// house pours each drink as it is written.
func inUnits(said house.Settings, drinks []template.Labelled) []template.Labelled {
	if said.Units == "" {
		return drinks
	}
	out := slices.Clone(drinks)
	for i := range out {
		out[i].Spec = out[i].Spec.Clone()
		for k := range out[i].Spec.Pours {
			pour := said.Pour(out[i].Spec.Pours[k])
			if ml, err := measure.ToML(pour.Amount, pour.Unit, pour.Profile); err == nil {
				pour.ML = ml
			}
			out[i].Spec.Pours[k] = pour
		}
	}
	return out
}
