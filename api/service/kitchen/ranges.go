package kitchen

import (
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
)

// Range is one axis of a family at the size of one drink, in mL of the axis's
// equivalent (see ratio.Equivalents).
type Range struct {
	// Has is false if the family has no such part. Low and Centre are then
	// zero and High is the most that leaves a drink balanced all the same.
	Has               bool
	Low, Centre, High float64 // nine in ten of the family's good drinks lie between Low and High
	PlusMinus         float64 // one standard deviation of the drink's own amount
}

// Ranges returns, for each axis, what the good drinks of a family carry at the
// size and make-up of a spec. It is false for an unknown family or a spec with
// nothing to weigh.
func (k *Kitchen) Ranges(s *flavor.Spec, family string) (out [ratio.NumAxes]Range, ok bool) {
	build, err := k.Set.Prepare(s)
	if err != nil {
		return out, false
	}
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return out, false
	}
	spreads := balance.AxisSpreads(s)
	e := build.Equivalents(build.Amounts())
	for a, band := range bands {
		out[a] = Range{Has: band.Has, Low: band.Low, Centre: band.Centre, High: band.High, PlusMinus: spreads[a] * e[a]}
	}
	return out, true
}
