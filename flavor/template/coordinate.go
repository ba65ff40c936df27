package template

import (
	"math"
	"slices"

	"counterpour/flavor/ratio"
)

// Coordinate is one log-ratio of a drink in a family: √(n ÷ (n+1)) times the
// logarithm of the geometric mean of n parts over another part.
type Coordinate struct {
	Of      []ratio.Axis
	Against ratio.Axis
	Value   float64
	Centre  float64 // of good drinks of this make-up
	// Carried is what the coordinates before it lead one to expect on top of
	// the centre, since a family's parts do not stray independently.
	Carried float64
	Width   float64 // how far good drinks stray from that
	Widths  float64 // (Value − Centre − Carried) ÷ Width; its square adds to the distance
}

// Coordinate returns coordinate j of a drink that is placed in the family: its value, and
// the centre of good drinks of its make-up.
func (m *Model) Coordinate(j int, value, centre float64, fit *Placed) Coordinate {
	c := Coordinate{Of: slices.Clone(m.Axes[:j+1]), Against: m.Axes[j+1], Value: value, Centre: centre,
		Width: m.root.At(j, j), Widths: fit.away[j]}
	for a := range j {
		c.Carried += m.root.At(j, a) * fit.away[a]
	}
	return c
}

// Factor returns √(n ÷ (n+1)), by which the logarithm of the ratio is scaled so
// that distances are the same in whichever order the parts come.
func (c *Coordinate) Factor() float64 {
	n := float64(len(c.Of))
	return math.Sqrt(n / (n + 1))
}
