package weigh

import (
	"math"

	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
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
func (b *Build) Bands(family string, ml []float64) (out [ratio.NumAxes]Band, ok bool) {
	e := b.Equivalents(ml)
	s := ratio.SharesOf(&e)
	total := e.Total()
	for i := range b.active {
		m := b.model(i)
		if m.ID != family {
			continue
		}
		room := b.set.tuning.ExcessWidth * math.Sqrt(template.Unknownness(b.centre(i).Near))
		for a := range out {
			out[a].High = (m.Fitted.Allowance[a] + room) * total
		}
		for k, a := range m.Axes {
			away, width := m.Shadow(k, &s, &b.centre(i).Middle)
			at := func(d float64) float64 {
				return total * math.Max(0, math.Exp(s.Log[a]+d-away)-ratio.Floors[a])
			}
			out[a] = Band{Has: true, Low: at(-width), Centre: at(0), High: at(width)}
		}
		return out, true
	}
	return out, false
}
