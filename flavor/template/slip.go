package template

import "math"

// slip is one axis gone wrong in one family.
type slip struct {
	axis   Axis
	weight float64 // logarithm of how probable it is
	to     float64 // mL that the axis was meant to have
	change float64
	gain   float64
}

// mending is the search for the amount that an axis was meant to have.
type mending struct {
	*draft
	axis   Axis
	model  *model
	centre *centre
	tuning *Tuning
}

// slipOf finds the likeliest amount by which an axis went wrong in the family
// that is at place i among the active ones.
func (b *Build) slipOf(i int, axis Axis, d *draft) slip {
	m := mending{draft: d, axis: axis, model: b.model(i), centre: b.centre(i), tuning: &b.set.tuning}
	best, most := 0.0, math.Inf(-1)
	for u := -mostSlip; u <= mostSlip; u += slipStep {
		if w := m.weight(u); w > most {
			best, most = u, w
		}
	}
	// The top of the parabola through the best and its neighbours.
	left, right := m.weight(best-slipStep), m.weight(best+slipStep)
	if bend := left - 2*most + right; bend < 0 {
		u := best + slipStep/2*(left-right)/bend
		if w := m.weight(u); w > most {
			best, most = u, w
		}
	}
	s := slip{axis: axis, weight: most, to: m.amount(best), change: best}
	if s.to > 0 && d.e[axis] > 0 {
		s.change = math.Log(s.to / d.e[axis])
	}
	if d2 := m.distance(d); d2 > 0 {
		after := m.with(axis, s.to)
		s.gain = 1 - m.distance(&after)/d2
	}
	return s
}

// amount returns the mL of the axis if its lifted share changes by exp(u).
func (m *mending) amount(u float64) float64 {
	lifted := m.e[m.axis]/m.total + floors[m.axis]
	return max(0, lifted*math.Exp(u)-floors[m.axis]) * m.total
}

// distance returns a draft's squared distance from the family's centre.
func (m *mending) distance(d *draft) float64 {
	if !(d.total > 0) {
		return math.Inf(1)
	}
	shares := sharesOf(&d.e)
	var p placed
	m.model.place(&shares, &m.centre.away, m.tuning, &p)
	p.stretch(0, unknownness(m.centre.near)) // size is weighed apart
	return p.d2
}

// weight returns the logarithm of how probable it is that the drink was meant
// so: as usual in its ratio and its size, and not far from what was poured.
func (m *mending) weight(u float64) float64 {
	d := m.with(m.axis, m.amount(u))
	return m.model.density(m.distance(&d)) + sizeDensity(math.Log(d.size), m.centre.size) - math.Abs(u)/slipScale
}
