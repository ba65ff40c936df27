package portion

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Steps returns a step down and a step up of a pour, as far as there are any.
func Steps(p *flavor.Pour) []Amount {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok || p.Profile.Class.Solid() {
		return nil
	}
	var out []Amount
	for _, a := range measure.Neighbours(p.Amount, p.Unit, 1) {
		out = append(out, Amount{a, p.Unit, a * per})
	}
	return out
}
