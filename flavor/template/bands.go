package template

import (
	"math"
)

// Band is where good drinks of a family lie on one axis, in millilitres of the
// equivalents of the drink it was drawn for.
type Band struct {
	Has               bool // the family has the axis
	Low, Centre, High float64
}

// Bands returns, for a drink with the given amounts in mL, where the good
// drinks of a family lie on each axis. A band is the shadow that the family's
// good drinks cast on the axis, up to the edge that the score counts from, so a
// drink outside one of them is outside the family, but one inside all of them may
// be outside too: what counts is how the axes go together. For an axis that the family lacks, Low
// and Centre are 0 and High is as much as leaves a drink at the edge that is at the
// centre otherwise.
// It reports false if the drink's make-up rules the family out.
func (b *Build) Bands(family string, ml []float64) (out [NumAxes]Band, ok bool) {
	e := b.Equivalents(ml)
	s := sharesOf(&e)
	total := e.Total()
	for i := range b.active {
		m := b.model(i)
		if m.ID != family {
			continue
		}
		room := b.set.tuning.ExcessWidth * math.Sqrt(unknownness(b.centre(i).near))
		for a := range out {
			out[a].High = (m.fitted.Allowance[a] + room) * total
		}
		for k, a := range m.Axes {
			away, width := m.shadow(k, &s, b.centre(i))
			at := func(d float64) float64 {
				return total * math.Max(0, math.Exp(s.log[a]+d-away)-floors[a])
			}
			out[a] = Band{Has: true, Low: at(-width), Centre: at(0), High: at(width)}
		}
		return out, true
	}
	return out, false
}

// shadow returns how far part k of a drink lies from the centre, as a centred
// log-ratio, and how far the family's edge reaches that way.
func (m *model) shadow(k int, s *shares, c *centre) (away, width float64) {
	centre, n := &c.coords, len(m.Axes)-1
	for j := range n {
		var z float64
		for i, a := range m.Axes {
			z += m.basis.v.At(i, j) * s.log[a]
		}
		away += m.basis.v.At(k, j) * (z - centre[j])
		for l := range n {
			width += m.basis.v.At(k, j) * m.fitted.Scale[j*n+l] * m.basis.v.At(k, l)
		}
	}
	return away, math.Sqrt(m.edge * width * unknownness(c.near))
}
