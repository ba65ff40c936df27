package useup

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/riff/station"
)

const (
	sizeRounds = 60
	// stay is how much a pour's amount in its frame is worth against the ratio:
	// enough to settle what the ratio leaves open.
	stay = 0.01
)

// sized returns a frame whose pours have the fitted ratio of its family: the
// amounts x ≥ 0 that minimise
//
//	Σ_a ((Σ_i e_ia x_i − T c_a) / (T c_a))² + stay Σ_i ((x_i − f_i) / f_i)²
//
// over the family's axes a, with e the equivalents of a millilitre, T the
// equivalents of the frame in all, c the fitted ratio and f the frame's amounts.
// The sum is convex and is minimised a pour at a time. What seasons or gives
// texture keeps its amount.
func (u *user) sized(f *frame) (*flavor.Spec, error) {
	centre, err := u.work.Station.Set.Centre(f.family)
	if err != nil {
		return nil, err
	}
	out := f.spec.Clone()
	axes := u.axesOf(f.family)
	total := 0.0
	for _, v := range ratio.EquivalentsOf(&f.spec) {
		total += v
	}
	per := make([]ratio.Equivalents, len(out.Pours))
	x := make([]float64, len(out.Pours))
	for i := range out.Pours {
		per[i] = ratio.PerML(out.Pours[i].Profile)
		x[i] = out.Pours[i].ML
	}
	for range sizeRounds {
		for i := range x {
			if sizes(&out.Pours[i]) {
				x[i] = bestAmount(i, x, per, axes, centre, total, f.spec.Pours[i].ML)
			}
		}
	}
	for i := range x {
		p := &out.Pours[i]
		if !sizes(p) {
			continue
		}
		if made, ok := station.Pour(p.Profile, p.Unit, math.Min(math.Max(x[i], u.work.LeastOf(p)), u.work.MostOf(p.Profile))); ok {
			made.After = p.After // what sparkles still goes in last
			*p = made
		}
	}
	return &out, nil
}

// sizes reports whether the ratio sets the amount of a pour.
func sizes(p *flavor.Pour) bool {
	return station.Moves(p) && p.Profile.Class.Part() != flavor.PartSeasoning
}

// bestAmount minimises over one pour, the others kept.
func bestAmount(i int, x []float64, per []ratio.Equivalents, axes []ratio.Axis, centre []float64, total, was float64) float64 {
	var along, curve float64
	for k, a := range axes {
		want := total * centre[k]
		have := 0.0
		for j := range x {
			if j != i {
				have += per[j][a] * x[j]
			}
		}
		e := per[i][a] / want
		along += e * (1 - have/want)
		curve += e * e
	}
	along += stay / was
	curve += stay / (was * was)
	return math.Max(0, along/curve)
}

func (u *user) axesOf(family string) []ratio.Axis {
	families, _ := u.work.Station.Set.Families()
	for i := range families {
		if families[i].ID == family {
			return families[i].Axes
		}
	}
	return nil
}
