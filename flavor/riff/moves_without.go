package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wording"
)

// Moves that leave something out of a drink.

// without returns a drink without one of its pours.
func without(s *flavor.Spec, at int) flavor.Spec {
	out := *s
	out.Pours = slices.Delete(slices.Clone(s.Pours), at, at+1)
	return out
}

// leftOut leaves out one pour that is not the base.
func (w *work) leftOut(from *station.Parent) []station.Sketch {
	if len(from.Spec.Pours) < 3 {
		return nil
	}
	var out []station.Sketch
	for i := range from.Spec.Pours {
		if w.leads(from.Spec.Pours[i].Profile) || needed(&from.Spec, i) && !(w.Limits.Simpler() && carries(from.Spec.Pours[i].Profile.Class.Part())) {
			continue
		}
		out = append(out, w.without(from, i))
	}
	return out
}

// leads reports whether an ingredient is a modifier, the juice, the tea or the coffee
// that the drink asked about is known by, however little of it is left.
func (w *work) leads(p *flavor.Profile) bool {
	at := slices.IndexFunc(w.From.Pours, func(x flavor.Pour) bool { return x.Profile.ID == p.ID })
	if at < 0 || w.Limits.Simpler() {
		return false
	}
	part := p.Class.Part()
	return (part == flavor.PartLength || part == flavor.PartModifier) && needed(w.From, at)
}

// needed reports whether a drink falls apart without a pour: its base, a modifier that
// it is known by or the largest without a base, its milk, its juice or coffee, and the
// only thing that sweetens or sours it.
func needed(s *flavor.Spec, at int) bool {
	part := s.Pours[at].Profile.Class.Part()
	switch part {
	case flavor.PartBase:
		return true
	case flavor.PartModifier:
		return s.Pours[at].ML >= carriesML || largest(s, flavor.PartBase) < 0 && largest(s, flavor.PartModifier) == at
	case flavor.PartLength:
		return largest(s, part) == at && s.Pours[at].Profile.Class.Kin() != flavor.KinSparkling && !s.Pours[at].Profile.Class.Free()
	case flavor.PartTexture:
		return s.Pours[at].Profile.Class.Kin() == flavor.KinMilk
	case flavor.PartSweetener:
		return !slices.ContainsFunc(without(s, at).Pours, sweetens)
	case flavor.PartSour:
		return !without(s, at).HasPart(part)
	}
	return false
}

// sweetens reports whether a pour brings sugar enough to sweeten a drink by itself.
func sweetens(p flavor.Pour) bool {
	part := p.Profile.Class.Part()
	return part == flavor.PartSweetener || part == flavor.PartModifier && ratio.PerML(p.Profile)[ratio.Sweet]*p.ML >= sweetensML
}

func (w *work) without(from *station.Parent, at int) station.Sketch {
	gone := from.Spec.Pours[at]
	likely := w.LikelyWith(from, nil, gone.Profile)
	rank := likely
	s := from.Spec.Clone()
	s.Pours = slices.Delete(s.Pours, at, at+1)
	if length := largest(&s, flavor.PartLength); length >= 0 && gone.Profile.Base() {
		x := &s.Pours[length] // what is long fills the glass that the base leaves empty
		most := max(x.ML, w.MostIn(&from.Spec, x.Profile))
		if p, ok := station.Pour(x.Profile, x.Unit, min(most, x.ML+gone.ML)); ok && p.ML <= most+wording.SameML {
			p.After = x.After
			*x = p
		}
		if w.StandsMore(x.Profile, gone.Profile) {
			rank += customWeight
		}
	}
	return station.Sketch{Spec: s, Kind: KindWithout, Moves: from.Moves + 1, Lost: from.Lost + 1, Likely: likely, Rank: rank}
}

// fills reports whether what lengthens a drink is what the trade pours in place of one of its
// pours: the drink does without that, and has more of what lengthens it.
func (w *work) fills(from *station.Parent, at int) bool {
	length := largest(&from.Spec, flavor.PartLength)
	return length >= 0 && w.StandsMore(from.Spec.Pours[length].Profile, from.Spec.Pours[at].Profile)
}

// unsoured leaves out what sours and the sugar that answered it; false if that leaves
// too little of a drink.
func (w *work) unsoured(from *station.Parent, at int) (station.Sketch, bool) {
	if from.Spec.Pours[at].Profile.Class.Part() != flavor.PartSour {
		return station.Sketch{}, false
	}
	d := w.without(from, at)
	d.Spec.Pours = slices.DeleteFunc(d.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Part() == flavor.PartSweetener })
	return d, len(d.Spec.Pours) > 1
}

// portioned is the drink itself, its amounts to be solved anew.
func (w *work) portioned(from *station.Parent) station.Sketch {
	likely := from.Likely()
	return station.Sketch{Spec: from.Spec, Kind: from.Kind, Moves: from.Moves, Lost: from.Lost, Likely: likely, Rank: likely}
}
