package makeup

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// Part is one ingredient of a spec, in however many pours it comes.
type Part struct {
	Profile *flavor.Profile
	Role    flavor.Part
	Per     ratio.Equivalents // of one mL, as [PerML] has it
	Pours   []int             // their places in the spec
	counted counting
}

// Amount returns the part's millilitres, given those of each pour.
func (x *Part) Amount(ml []float64) float64 {
	var v float64
	for _, i := range x.Pours {
		v += ml[i]
	}
	return v
}

// PerML returns what one millilitre of p counts as: what it carries, and strength for
// what has no alcohol and stands for what has. Without it no drink of those would be of
// the family that it is made like.
func PerML(p *flavor.Profile) ratio.Equivalents {
	e := ratio.PerML(p)
	if more := p.StandsForABV()/100*mix.EthanolDensity/ratio.SpiritEthanol - e[ratio.Strong]; more > 0 {
		e[ratio.Strong] += more
		e[ratio.Long] -= more
	}
	return e
}

// EquivalentsOf restates the pours of a spec, each counting as [PerML] has it; length is
// never negative.
func EquivalentsOf(s *flavor.Spec) ratio.Equivalents {
	var e ratio.Equivalents
	for i := range s.Pours {
		if s.Pours[i].Profile == nil {
			continue
		}
		per := PerML(s.Pours[i].Profile)
		e.Add(&per, s.Pours[i].ML)
	}
	e[ratio.Long] = max(0, e[ratio.Long])
	return e
}

// PartsIn gathers the pours of a spec by ingredient, in the order of first use.
func PartsIn(s *flavor.Spec) []Part {
	out := make([]Part, 0, len(s.Pours))
	pours := make([]int, len(s.Pours))
	for i := range s.Pours {
		pours[i] = i
		p := s.Pours[i].Profile
		at := slices.IndexFunc(out, func(x Part) bool { return x.Profile.ID == p.ID })
		if at < 0 {
			x := Part{Profile: p, Role: p.Class.Part(), Per: PerML(p), Pours: pours[i : i+1 : i+1]}
			x.counted = countingOf(p, &x.Per)
			out = append(out, x)
			continue
		}
		out[at].Pours = append(out[at].Pours, i)
	}
	return out
}

// AmountsOf returns the mL of each pour.
func AmountsOf(s *flavor.Spec) []float64 {
	ml := make([]float64, len(s.Pours))
	for i := range s.Pours {
		ml[i] = s.Pours[i].ML
	}
	return ml
}

// LeastML keeps a ratio to nothing finite.
const LeastML = 1e-9

// IsBase reports whether an ingredient is a base.
func IsBase(p *Part) bool { return p.Role == flavor.PartBase }

// IsSweetener reports whether an ingredient is a syrup or sugar.
func IsSweetener(p *Part) bool { return p.Role == flavor.PartSweetener }

// IsSharp reports whether an ingredient is there to sour.
func IsSharp(p *Part) bool { return p.Role == flavor.PartSour }
