package template

import (
	"math"

	"counterpour/flavor/ratio"
)

// Shadow returns how far part k of a drink lies from the centre, as a centred
// log-ratio, and how far the family's edge reaches that way.
func (m *Model) Shadow(k int, s *ratio.Shares, c *Middle) (away, width float64) {
	centre, n := &c.Coords, len(m.Axes)-1
	for j := range n {
		var z float64
		for i, a := range m.Axes {
			z += m.Basis.Contrasts.At(i, j) * s.Log[a]
		}
		away += m.Basis.Contrasts.At(k, j) * (z - centre[j])
		for l := range n {
			width += m.Basis.Contrasts.At(k, j) * m.Fitted.Scale[j*n+l] * m.Basis.Contrasts.At(k, l)
		}
	}
	return away, math.Sqrt(m.Edge * width * Unknownness(c.Near))
}
