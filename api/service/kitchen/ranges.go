package kitchen

import (
	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Range is what a family pours on one axis, scaled to the volume of one drink, in mL of
// the axis's equivalent (see [ratio.Equivalents]).
type Range struct {
	// Has is false if the family pours nothing on this axis. Then Low and Centre are
	// zero, and High is the largest amount that still leaves a drink balanced.
	Has               bool
	Low, Centre, High float64 // nine in ten good drinks of the family lie between Low and High
	PlusMinus         float64 // one standard deviation of the drink's own amount
}

// Ranges returns, for each axis, what good drinks of a family contain at the volume and
// make-up of a spec. ok is false if the family is unknown or the spec has nothing to
// weigh.
func (k *Kitchen) Ranges(s *flavor.Spec, family string) (out [ratio.NumAxes]Range, ok bool) {
	build, err := k.Set.Prepare(s)
	if err != nil {
		return out, false
	}
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return out, false
	}
	spreads := makeup.Spreads(s)
	e := build.Equivalents(build.Amounts())
	for a, band := range bands {
		out[a] = Range{Has: band.Has, Low: band.Low, Centre: band.Centre, High: band.High, PlusMinus: spreads[a] * e[a]}
	}
	return out, true
}
