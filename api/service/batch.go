package service

import (
	"context"
	"strconv"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Limits of a batch.
const (
	MaxServings = 100000
	MaxFillML   = 1e6
)

// BatchRequest asks for a drink made ahead. Exactly one of Servings, BottleML and
// KegLitres is above zero.
type BatchRequest struct {
	Draft     Draft // of one serving
	Servings  float64
	BottleML  float64 // volume of the bottle to fill
	KegLitres float64 // volume of the keg to fill
	Place     string  // where the batch is kept: fridge, freezer or to order; empty for the fridge
	// JuiceApart leaves fresh juice out of the batch; it is added to each drink.
	JuiceApart bool
}

// BatchAnswer is a planned batch.
type BatchAnswer struct {
	Drink Drink // without a slug if it is none of the house
	Batch *prep.Batch
	Cost  prep.Cost
}

// Batch plans a batch: how much of each ingredient, the water that replaces the melted
// ice, the cost, and how long it keeps. If the prices cannot be added up, every cost is
// unknown.
func (s *Snapshot) Batch(_ context.Context, r BatchRequest) (*BatchAnswer, error) {
	if _, err := r.target(); err != nil {
		return nil, err
	}
	d, err := s.poured(r.Draft)
	if err != nil {
		return nil, err
	}
	b, err := r.Of(s.Mixer, d.Spec, s.made)
	if err != nil {
		return nil, err
	}
	return &BatchAnswer{Drink: d, Batch: b, Cost: s.Prices.Batch(b)}, nil
}

// Of plans the batch of a drink; made lists what the house makes itself.
func (r *BatchRequest) Of(mixer *mix.Mixer, spec flavor.Spec, made []house.Made) (*prep.Batch, error) {
	target, err := r.target()
	if err != nil {
		return nil, err
	}
	b, err := prep.Scale(mixer, spec, target, made)
	return b, fault.OfRule(err)
}

// target reads how much to make and where it is kept. Its faults name the field.
func (r *BatchRequest) target() (prep.Target, error) {
	given := 0
	var faults flavor.DataFaults
	for _, size := range []struct {
		location string
		value    float64
		most     float64
	}{{"servings", r.Servings, MaxServings}, {"bottle_ml", r.BottleML, MaxFillML}, {"keg_litres", r.KegLitres, MaxFillML / 1000}} {
		if size.value != 0 {
			given++
		}
		if !(size.value >= 0 && size.value <= size.most) {
			faults = append(faults, flavor.Invalid(size.location, size.value, "%v is out of range; give more than 0, up to %g", size.value, size.most))
		}
	}
	if given != 1 {
		faults = append(faults, flavor.Invalid("servings", "", "say how much to make: one of servings, bottle_ml and keg_litres"))
	}
	t := prep.Target{Servings: r.Servings, Place: prep.Storage(r.Place), JuiceApart: r.JuiceApart}
	switch t.Place {
	case "":
		t.Place = prep.Fridge
	case prep.Fridge, prep.Freezer, prep.ToOrder:
	default:
		faults = append(faults, flavor.Invalid("from", r.Place, "%q is not a place to keep a batch; use %s", fault.Quotable(r.Place), flavor.JoinOr([]string{string(prep.Fridge), string(prep.Freezer), string(prep.ToOrder)})))
	}
	if len(faults) > 0 {
		return t, faults
	}
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	switch {
	case r.BottleML > 0:
		t.Fill = prep.Container{Name: number(r.BottleML) + " mL bottle", ML: r.BottleML}
	case r.KegLitres > 0:
		t.Fill = prep.Container{Name: number(r.KegLitres) + " litre keg", ML: 1000 * r.KegLitres}
	}
	return t, nil
}
