package weigh

import (
	"math"

	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// slip is one axis gone wrong in one family.
type slip struct {
	axis   ratio.Axis
	family string  // its id
	weight float64 // logarithm of how probable it is
	to     float64 // mL that the axis was meant to have
	change float64
	gain   float64
}

// mending is the search for the amount that an axis was meant to have.
type mending struct {
	*draft
	axis    ratio.Axis
	model   *template.Model
	centre  *centre
	unknown float64 // see unknownness
	tuning  *template.Tuning
}

// slipOf finds the likeliest amount by which an axis went wrong in the family
// that is at place i among the active ones.
func (b *Build) slipOf(i int, axis ratio.Axis, d *draft) slip {
	c := b.centre(i)
	m := mending{draft: d, axis: axis, model: b.model(i), centre: c, unknown: template.Unknownness(c.Near), tuning: &b.set.tuning}
	best, most := m.likeliest()
	// The top of the parabola through the best and its neighbours.
	left, right := m.weight(best-slipStep, anyhow), m.weight(best+slipStep, anyhow)
	if bend := left - 2*most + right; bend < 0 {
		u := best + slipStep/2*(left-right)/bend
		if w := m.weight(u, anyhow); w > most {
			best, most = u, w
		}
	}
	s := slip{axis: axis, family: m.model.ID, weight: most, to: m.amount(best), change: best}
	if s.to > 0 && d.e[axis] > 0 {
		s.change = math.Log(s.to / d.e[axis])
	}
	if d2 := m.distance(d); d2 > 0 {
		after := m.with(axis, s.to)
		s.gain = 1 - m.distance(&after)/d2
	}
	return s
}

// anyhow is the least weight of what is worked out whatever it is.
var anyhow = math.Inf(-1)

// likeliest returns the likeliest of the slips that are weighed, the most negative of
// equals, and its weight. It goes outward from none, and stops where slips of that size
// are too rare to be likelier, whatever they mend.
func (m *mending) likeliest() (best, most float64) {
	best, most = 0, m.weight(0, anyhow)
	bound := m.model.Peak + sizePeak
	for u := slipStep; u <= mostSlip && bound-u/slipScale >= most; u += slipStep {
		for _, u := range [...]float64{u, -u} {
			if w := m.weight(u, most); w > most || w == most && u < best {
				best, most = u, w
			}
		}
	}
	return best, most
}

// amount returns the mL of the axis if its lifted share changes by exp(u).
func (m *mending) amount(u float64) float64 {
	lifted := m.e[m.axis]/m.total + ratio.Floors[m.axis]
	return max(0, lifted*math.Exp(u)-ratio.Floors[m.axis]) * m.total
}

// distance returns a draft's squared distance from the family's centre.
func (m *mending) distance(d *draft) float64 {
	if !(d.total > 0) {
		return math.Inf(1)
	}
	return m.model.Squared(&d.e, d.total, &m.centre.away, m.tuning) / m.unknown // size is weighed apart
}

// weight returns the logarithm of how probable it is that the drink was meant
// so: as usual in its ratio and its size, and not far from what was poured. It is
// −∞ where that is quickly seen to be below least.
func (m *mending) weight(u, least float64) float64 {
	d := m.with(m.axis, m.amount(u))
	rest := template.SizeDensity(math.Log(d.size), m.centre.Size) - math.Abs(u)/slipScale
	if m.model.Peak+rest < least {
		return math.Inf(-1)
	}
	return m.model.Density(m.distance(&d)) + rest
}
