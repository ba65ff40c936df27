package tasting

import (
	"errors"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// lever is what is moved to move an axis: a pour, by its place, or iceWater.
type lever int

// iceWater is the water that the ice gives.
const iceWater lever = -1

// leversOf lists what may move an axis, the best first: a plain syrup before what brings an
// aroma with its sugar, which would tell the glasses apart; and the water of the ice where
// nothing else lengthens the drink.
func leversOf(s *flavor.Spec, a ratio.Axis) (out []lever) {
	if a == ratio.Sweet {
		for i := range s.Pours {
			if p := s.Pours[i].Profile; p.Class.Part() == flavor.PartSweetener && !slip.Smells(p) {
				out = append(out, lever(i))
				break
			}
		}
	}
	at, ok := mover(s, a)
	switch {
	case ok && !slices.Contains(out, lever(at)):
		out = append(out, lever(at))
	case a == ratio.Long && !ok:
		out = append(out, iceWater)
	}
	return out
}

// glasses makes the builds of a flight by moving one lever.
func (k *bench) glasses(r *FlightRequest, by lever, blind []int, middle *mix.Drink) (out []Glass, err error) {
	for i := range r.Builds {
		b := Glass{Step: i - r.Builds/2, Code: blind[i]}
		b.JND = float64(b.Step) * r.Step
		if by == iceWater {
			err = k.water(&b, r, middle)
		} else {
			err = k.build(&b, r, int(by), middle)
		}
		if err != nil {
			return nil, err
		}
		if b.Step != 0 && b.Drift > mostAstray*math.Abs(b.JND) {
			return nil, flavor.Invalid("axis", r.Axis.String(), "%s moves the %s of this drink much further than its %s, so that nobody would taste what the flight is of; choose another axis",
				r.Spec.Pours[by].Profile.Name, b.DriftOf.Noun(), r.Axis.Noun())
		}
		out = append(out, b)
	}
	return out, nil
}

// mostAstray is how many times as far as the axis of a flight another may move with it: what
// moves further is what is tasted. Common practice, no source.
const mostAstray = 3.0

// water makes a build with more or less of the water that the ice gives, as longer or shorter
// stirring does. It fails with a fault of a drink that meets no ice, of one that is topped in
// the glass or shaken for its foam, and where there is less of it than is to be taken away.
func (k *bench) water(b *Glass, r *FlightRequest, middle *mix.Drink) (err error) {
	times := math.Exp(b.JND * math.Log1p(threshold.Weber(ratio.Long)))
	if b.Spec, err = mix.Scale(r.Spec, r.BuildML/(times*middle.VolumeML)); err != nil {
		return err
	}
	if err := k.pour(b, r); err != nil {
		return err
	}
	b.Value = times * Value(ratio.Long, b.Drink)
	more := (times - 1) * b.Sheet.TotalML
	switch {
	case b.Sheet.WaterML <= 0 || len(b.Sheet.Tops) > 0 || r.Spec.HasKin(flavor.KinFoam):
		return flavor.Invalid("axis", r.Axis.String(), "no pour of this drink changes its %s and little else; choose another axis", r.Axis.Noun())
	case b.Sheet.WaterML+more < 0:
		return flavor.Invalid("step", r.Step, "this drink has too little water of its ice to be so much shorter; use a smaller step or fewer builds")
	}
	water := Measured(b.Sheet.WaterML + more)
	b.Sheet.TotalML += water - b.Sheet.WaterML
	b.Sheet.WaterML, b.Sheet.PourML = water, b.Sheet.TotalML/b.Sheet.Servings
	return nil
}

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
	want := Value(r.Axis, middle) * math.Exp(b.JND*math.Log1p(threshold.Weber(r.Axis)))
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
	if step < leastStep && r.Axis == ratio.Strong {
		return flavor.Invalid("axis", r.Axis.String(), "%s alone hardly changes the strength of this drink; choose length, which water changes", name)
	}
	if step < leastStep {
		return flavor.Invalid("axis", r.Axis.String(), "%s alone hardly changes the %s of this drink; choose another axis", name, r.Axis.Noun())
	}
	return flavor.Invalid("step", r.Step, "%s alone cannot change the %s of this drink so far; use a step of %.1f or less", name, r.Axis.Noun(), step)
}

// finish pours a build down to size and says what else moved.
func (k *bench) finish(b *Glass, r *FlightRequest, s *flavor.Spec, middle *mix.Drink) error {
	d, err := k.mixer.Mix(s)
	if err != nil {
		return err
	}
	b.Spec, err = mix.Scale(s, r.BuildML/d.VolumeML)
	if err != nil {
		return err
	}
	if err := k.pour(b, r); err != nil {
		return err
	}
	b.Value = Value(r.Axis, b.Drink)
	for _, a := range []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour, ratio.Bitter} {
		was, is := Value(a, middle), Value(a, b.Drink)
		if stretches := r.Axis == ratio.Long && a == ratio.Strong; a == r.Axis || stretches {
			continue
		}
		if j := math.Abs(Steps(a, was, is)); j > b.Drift {
			b.Drift, b.DriftOf = j, a
		}
	}
	return nil
}

// pour rounds the pours of a build, mixes it and writes its batch sheet.
func (k *bench) pour(b *Glass, r *FlightRequest) (err error) {
	for i := range b.Spec.Pours {
		inMillilitres(&b.Spec.Pours[i])
	}
	if b.Drink, err = k.mixer.Mix(&b.Spec); err != nil {
		return err
	}
	plan, err := k.mixer.Batch(&b.Spec, float64(r.Tasters+1))
	if err != nil {
		return err
	}
	b.Sheet = SheetOf(plan)
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
