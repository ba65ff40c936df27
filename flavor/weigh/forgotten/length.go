package forgotten

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// nearUnlengthened is Weights without what lengthens, of drinks that are served as the
// draft is: what lacks its mixer has all else of a short drink.
func (d *Draft) nearUnlengthened() []float64 {
	w := d.Weights(&d.book.unlengthed, lengthens)
	for i := range w {
		if d.book.Served.Of[i] != d.served {
			w[i] *= servedOtherwise
		}
	}
	return w
}

func lengthens(p *makeup.Part) bool { return p.Role == flavor.PartLength }

// Of what is served long, the share that lengthens, tomato and the like with it: from where a
// drink has none to speak of up to where it surely has some. Proven drinks have 0.28 and more.
const hardlyLong, surelyLong = 0.03, 0.18

// lengthless returns how far a drink that is served long is out for want of what lengthens it.
func (d *Draft) lengthless(ml []float64) (edges, length float64) {
	if d.spec.Service != flavor.Long {
		return 0, 0
	}
	for i := range d.parts {
		if lengthens(&d.parts[i]) || d.parts[i].Profile.Class == flavor.ClassSavoury {
			length += d.parts[i].Amount(ml)
		}
	}
	return lengthlessEdges * (1 - makeup.Ramp(length/floats.Sum(ml), hardlyLong, surelyLong)), length
}

// lengthlessEdges is how far out a drink is that is served long and has no length.
const lengthlessEdges = 1.8
