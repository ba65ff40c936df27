package template

import (
	"slices"

	"counterpour/flavor"
)

// part is one ingredient of a spec, in however many pours it comes.
type part struct {
	profile *flavor.Profile
	role    flavor.Part
	per     Equivalents
	pours   []int
}

// amount returns the part's millilitres, given those of each pour.
func (x *part) amount(ml []float64) float64 {
	var v float64
	for _, i := range x.pours {
		v += ml[i]
	}
	return v
}

// partsIn gathers the pours of a spec by ingredient, in the order of first use.
func partsIn(s *flavor.Spec) []part {
	out := make([]part, 0, len(s.Pours))
	pours := make([]int, len(s.Pours))
	for i := range s.Pours {
		pours[i] = i
		p := s.Pours[i].Profile
		at := slices.IndexFunc(out, func(x part) bool { return x.profile.ID == p.ID })
		if at < 0 {
			out = append(out, part{profile: p, role: p.Class.Part(), per: PerML(p), pours: pours[i : i+1 : i+1]})
			continue
		}
		out[at].pours = append(out[at].pours, i)
	}
	return out
}

func amountsOf(s *flavor.Spec) []float64 {
	ml := make([]float64, len(s.Pours))
	for i := range s.Pours {
		ml[i] = s.Pours[i].ML
	}
	return ml
}
