package tasting

import (
	"errors"
	"math"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// mover returns the pour that moves an axis: the one that brings most of it, and of those
// that carry no other axis where none brings most. A dash of bitters may change the
// bitterness of a drink whose vermouth is bitter too, lime juice not that of a sour.
func mover(s *flavor.Spec, a ratio.Axis) (int, bool) {
	if a == ratio.Long {
		return stretcher(s)
	}
	if at, _ := Carrier(s, a); at >= 0 && !carriesOther(s, at, a) {
		return at, true
	}
	best, most := -1, 0.0
	for i := range s.Pours {
		if v := ratio.PerML(s.Pours[i].Profile)[a] * s.Pours[i].ML; v > most && !carriesOther(s, i, a) {
			best, most = i, v
		}
	}
	return best, best >= 0
}

// carriesOther reports whether a pour carries another axis than a, and brings more of it
// than of a, both as mL of the trade's own measures.
func carriesOther(s *flavor.Spec, at int, a ratio.Axis) bool {
	per := ratio.PerML(s.Pours[at].Profile)
	for _, b := range ratio.Axes() {
		if carrier, _ := Carrier(s, b); b != a && carrier == at && per[b] > per[a] {
			return true
		}
	}
	return false
}

// stretcher returns the largest pour that lengthens and holds no alcohol.
func stretcher(s *flavor.Spec) (int, bool) {
	at := -1
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if p.Class.Part() == flavor.PartLength && p.ABV.Value < 1 && (at < 0 || s.Pours[i].ML > s.Pours[at].ML) {
			at = i
		}
	}
	return at, at >= 0
}

// How far a pour is moved.
const (
	leastTimes = 0.02
	mostTimes  = 8.0
)

// build moves pour at until the axis is where the build wants it, then pours the
// drink down to the size of the glass.
func (k *bench) build(b *Glass, r *FlightRequest, at int, middle *mix.Drink) error {
	want := Value(r.Axis, middle) * math.Exp(b.JND*math.Log1p(balance.Weber(r.Axis)))
	value := func(times float64) (float64, *flavor.Spec, error) {
		s := r.Spec.Clone()
		s.Pours[at].ML *= times
		s.Pours[at].Amount *= times
		d, err := k.mixer.Mix(&s)
		if err != nil {
			return 0, nil, err
		}
		return Value(r.Axis, d), &s, nil
	}
	least, _, err := value(leastTimes)
	if err != nil {
		return err
	}
	most, _, err := value(mostTimes)
	if err != nil {
		return err
	}
	if want < least || want > most {
		return outOfReach(r, r.Spec.Pours[at].Profile.Name, Value(r.Axis, middle), least, most)
	}
	var failed error
	times := mix.Bisect(leastTimes, mostTimes, func(times float64) bool {
		v, _, err := value(times)
		failed = errors.Join(failed, err)
		return v < want
	})
	_, s, err := value(times)
	if err = errors.Join(failed, err); err != nil {
		return err
	}
	return k.finish(b, r, s, middle)
}

// outOfReach is the fault of a flight whose outer builds one pour cannot make, with the step
// that it can.
func outOfReach(r *FlightRequest, name string, middle, least, most float64) error {
	reach := JND(r.Axis, middle, most)
	if least > 0 {
		reach = min(reach, JND(r.Axis, least, middle))
	}
	const tenth = 10
	step := math.Floor(tenth*reach/float64(r.Builds/2)*0.99) / tenth
	if step < leastStep {
		return flavor.Invalid("axis", r.Axis.String(), "%s alone hardly changes the %s of this drink; choose another axis", name, r.Axis.Noun())
	}
	return flavor.Invalid("step", r.Step, "%s alone cannot change the %s of this drink so far; use a step of %.1f or less", name, r.Axis.Noun(), step)
}

// finish pours a build down to size, rounds it and writes its batch sheet.
func (k *bench) finish(b *Glass, r *FlightRequest, s *flavor.Spec, middle *mix.Drink) error {
	d, err := k.mixer.Mix(s)
	if err != nil {
		return err
	}
	b.Spec, err = mix.Scale(s, r.BuildML/d.VolumeML)
	if err != nil {
		return err
	}
	for i := range b.Spec.Pours {
		inMillilitres(&b.Spec.Pours[i])
	}
	if b.Drink, err = k.mixer.Mix(&b.Spec); err != nil {
		return err
	}
	b.Value = Value(r.Axis, b.Drink)
	for _, a := range []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour, ratio.Bitter} {
		was, is := Value(a, middle), Value(a, b.Drink)
		if stretches := r.Axis == ratio.Long && a == ratio.Strong; a == r.Axis || stretches || was <= 0 || is <= 0 {
			continue
		}
		if j := JND(a, was, is); j > b.Drift {
			b.Drift, b.DriftOf = j, a
		}
	}
	plan, err := k.mixer.Batch(&b.Spec, float64(r.Tasters+1))
	if err != nil {
		return err
	}
	b.Sheet = BatchSheet{Servings: plan.Servings, Pours: plan.Bottle.Pours, WaterML: plan.WaterML, TotalML: plan.BottleML,
		PourML: plan.ServingML, Tops: plan.Tops}
	return nil
}

// inMillilitres writes a pour as it is measured out for a flight: liquids in
// hundredths of a millilitre, since it is the batch that is measured, and what
// comes by the piece as it is.
func inMillilitres(p *flavor.Pour) {
	if p.Profile.Class.Solid() {
		return
	}
	const fine = 100
	p.Unit = flavor.Millilitre
	p.ML = max(1, math.Round(fine*p.ML)) / fine
	p.Amount = p.ML
}
