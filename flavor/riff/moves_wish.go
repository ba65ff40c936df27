package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/station"
)

// few is how many additions go on: more where wishes lead there.
func (w *work) few() int {
	if w.Limits.Wished() {
		return 3 * draftsFew
	}
	return draftsFew
}

// wished pours what is wished for as proven drinks pour it, beside the rest.
func (w *work) wished(from *station.Parent) []station.Sketch {
	var out []station.Sketch
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if !w.Limits.Wants(it.Profile) || from.Spec.HasProfile(it.Profile) {
			continue
		}
		if p, ok := w.Usual(it); ok {
			s := from.Spec.Clone()
			s.Pours = append(s.Pours, p)
			out = append(out, w.consider(from, s, KindAdd, it, nil, nil).Sketch)
		}
	}
	return out
}

// How what a wish is met with comes in beside the rest, where it is not poured as a
// modifier is: common practice, no source.
const (
	carriedLengthML = 45.0
	carriedCoffeeML = 22.5
	carriedBaseML   = 30.0
	leastCarriedML  = 7.0 // a quarter ounce as a jigger rounds it
	carriedTried    = 24  // drafts that go on
)

// carried meets a wish with what a bartender meets it with: beside the rest, and in
// place of a modifier or of half of one.
func (w *work) carried(from *station.Parent) []station.Sketch {
	var options []option
	for i := range w.Shelf {
		it := &w.Shelf[i]
		if !w.Carries(it.Profile) || from.Spec.HasProfile(it.Profile) || w.cloys(from, it) {
			continue
		}
		if p, ok := w.beside(from, it); ok {
			s := from.Spec.Clone()
			s.Pours = append(s.Pours, p)
			options = append(options, w.consider(from, s, KindAdd, it, nil, nil))
		}
		options = append(options, w.inPlace(from, it)...)
	}
	return best(options, carriedTried)
}

// beside is a small pour of what meets a wish.
func (w *work) beside(from *station.Parent, it *station.Item) (flavor.Pour, bool) {
	p := it.Profile
	switch part := p.Class.Part(); {
	case p.Class.Roasted():
		return station.Pour(p, it.Unit, min(carriedCoffeeML, w.MostUsual(p)))
	case part == flavor.PartLength:
		return station.Pour(p, it.Unit, min(carriedLengthML, w.MostUsual(p)))
	case p.Class.Kin() == flavor.KinBitters:
		return station.Count(p, it.Unit, addedDashes)
	case part == flavor.PartSeasoning, part == flavor.PartTexture, p.Class.Solid():
		return w.Usual(it)
	case part == flavor.PartBase:
		if largest(&from.Spec, flavor.PartBase) >= 0 {
			return flavor.Pour{}, false // a base shares with the one that is there
		}
		return station.Pour(p, it.Unit, carriedBaseML)
	}
	return station.Pour(p, it.Unit, min(addedML, max(leastCarriedML, w.MostUsual(p)/addedShare)))
}

// sweetOrBitter reports whether the second of two modifiers is a wine and the first an amaro or a
// liqueur, or the second a liqueur and the first as bitter as sweet: a drink stands with either
// beside its spirit.
func sweetOrBitter(a, b *flavor.Profile) bool {
	switch b.Class.Kin() {
	case flavor.KinWine:
		return a.Class.Kin() != flavor.KinWine
	case flavor.KinLiqueur:
		return a.Class.Kin() == flavor.KinBitter && a.Sugar.Value >= sweetBitter
	}
	return false
}

// sweetBitter is the sugar, in g/L, from which a bitter sweetens a drink as a liqueur does: red
// aperitifs and amari hold 150 and more, fernets hardly half (common practice, no source).
const sweetBitter = 150.0

// inPlace pours a modifier that meets a wish in place of one that is there, and of half
// of it.
func (w *work) inPlace(from *station.Parent, it *station.Item) (out []option) {
	if it.Part != flavor.PartModifier {
		return nil
	}
	for at := range from.Spec.Pours {
		old := &from.Spec.Pours[at]
		if old.Profile.Class.Part() != flavor.PartModifier || old.Unit.Small() {
			continue
		}
		whole, ok := station.Pour(it.Profile, it.Unit, min(old.ML, w.MostUsual(it.Profile)))
		if !ok {
			continue
		}
		if it.Profile.Class.Kin() == old.Profile.Class.Kin() || sweetOrBitter(it.Profile, old.Profile) {
			s := from.Spec.Clone()
			s.Pours[at] = whole
			o := w.consider(from, s, KindModifier, it, old.Profile, old.Profile)
			o.Least = map[string]float64{it.Profile.ID: leastCarriedML}
			out = append(out, o)
		}
		half, fits := station.Pour(it.Profile, it.Unit, whole.ML/2)
		rest, snaps := station.Pour(old.Profile, old.Unit, old.ML/2)
		if !fits || !snaps || min(half.ML, rest.ML) < leastCarriedML {
			continue
		}
		s := from.Spec.Clone()
		s.Pours[at] = rest
		s.Pours = slices.Insert(s.Pours, at+1, half)
		o := w.consider(from, s, KindModifier, it, nil, old.Profile)
		o.Least = map[string]float64{it.Profile.ID: leastCarriedML, old.Profile.ID: leastCarriedML}
		out = append(out, o)
	}
	return out
}
