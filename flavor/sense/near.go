package sense

import (
	"math"

	"counterpour/flavor"
)

// Rows is the length of a [Row]: a [Vector] and the volume.
const Rows = Dims + 1

// Row is what a millilitre of an ingredient moves one glass by, in steps, near
// that glass. Rows add up: the length of a sum is the steps that the glass moves
// by, as far as it moves little.
type Row [Rows]float64

// Near is the space near one glass, where steps are linear in what is poured:
// concentrations fall as the volume grows, and a step has the size it has there.
// Far away it overstates what is added and understates what is taken away;
// [Between] tells exactly.
type Near struct {
	space  *Space
	centre Vector
	slope  Row     // steps per unit of each place
	growth float64 // mL of finished drink that a poured mL makes
	volume float64 // mL
	// direction and radial: along the aroma of the glass a unit counts radial
	// times as much as across it.
	direction [AromaDims]float64
	radial    float64
}

// Near returns the space near a glass that holds more than nothing.
func (s *Space) Near(g *Percept) *Near {
	n := &Near{space: s, centre: g.Holds, volume: g.VolumeML, growth: g.VolumeML / g.PouredML}
	for i := range numSingles {
		n.slope[i] = laws[i].slope(g.Holds[i])
	}
	for i := atRed; i <= atBlue; i++ {
		n.slope[i] = laws[Colour].slope(g.Holds[i]) / math.Sqrt(bands)
	}
	l, r := &laws[Aroma], norm(g.Holds.aroma())
	across := stretch(l, r)
	for i := range AromaDims {
		n.slope[atAroma+i] = across
		if r > 0 {
			n.direction[i] = g.Holds[atAroma+i] / r
		}
	}
	n.radial = l.slope(r) / across
	n.slope[Dims] = laws[Volume].slope(g.VolumeML)
	return n
}

// Row returns what a millilitre of p moves the glass by.
func (n *Near) Row(p *flavor.Profile) Row {
	v := n.space.PerML(p)
	return n.RowOf(&v)
}

// RowOf does the same for what [Space.PerML] returned, so that a vector can be
// kept and used near many glasses.
func (n *Near) RowOf(v *Vector) Row {
	var row Row
	for i := range v {
		row[i] = (v[i] - n.growth*n.centre[i]) / n.volume
	}
	aroma := row[atAroma:Dims]
	along := dot(aroma, n.direction[:])
	for i := range aroma {
		aroma[i] += (n.radial - 1) * along * n.direction[i]
	}
	for i := range v {
		row[i] *= n.slope[i]
	}
	row[Dims] = n.growth * n.slope[Dims]
	return row
}
