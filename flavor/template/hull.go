package template

import (
	"math"

	"counterpour/flavor/ratio"
)

// Hull is a box around the local centres that drinks of a family can have,
// whatever they are made of, as independent deviations: a local centre is a
// mean of the family's own and its relatives'.
type Hull struct {
	Low, High         [ratio.NumAxes - 1]float64
	Smallest, Largest float64 // usual sizes, logarithms of mL
	LeastUnknown      float64 // see unknownness
}

// CeilingSlack covers what rounding may do to a mean of centres and to a score.
const CeilingSlack = 1e-9

// Span returns between what squared distances a drink lies from the centres
// within a hull, as place measures them, the least that a slip of one axis explains
// of that, and the squared excess.
func (m *Model) Span(s *ratio.Shares, h *Hull, t *Tuning) (near, far, slip, excess float64) {
	var from, to [ratio.NumAxes - 1]float64 // the deviations
	for j := range len(m.Axes) - 1 {
		var y float64
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.Log[a]
		}
		from[j], to[j] = y-h.High[j], y-h.Low[j]
		below, above := h.Low[j]-y, y-h.High[j] // above zero outside
		out := max(0, below, above)
		in := max(math.Abs(h.Low[j]-y), math.Abs(y-h.High[j]))
		near += out * out
		far += in * in
	}
	for a := range s.Part {
		x := m.excess(ratio.Axis(a), s, t)
		excess += x * x
	}
	for i := range m.Axes {
		var least, most float64
		for j := range len(m.Axes) - 1 {
			x, y := from[j]*m.slide[i][j], to[j]*m.slide[i][j]
			least, most = least+min(x, y), most+max(x, y)
		}
		out := max(0, least, -most)
		slip = max(slip, out*out)
	}
	return near + m.Edge*excess, far + m.Edge*excess, slip, excess
}
