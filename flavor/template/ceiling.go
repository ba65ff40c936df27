package template

import "math"

// hull is a box around the local centres that drinks of a family can have,
// whatever they are made of, as independent deviations: a local centre is a
// mean of the family's own and its relatives'.
type hull struct {
	low, high         [NumAxes - 1]float64
	smallest, largest float64 // usual sizes, logarithms of mL
	leastUnknown      float64 // see unknownness
}

// ceilingSlack covers what rounding may do to a mean of centres and to a score.
const ceilingSlack = 1e-9

// hullOf returns the hull of family i, moved to the house's palate.
func (s *Set) hullOf(i int) hull {
	m := s.models[i]
	centre := s.shifted(m.ID, coordsOf(m.fitted.Centre))
	own := m.inWidths(&centre)
	h := hull{low: own, high: own, smallest: s.sizes[i], largest: s.sizes[i], leastUnknown: mostUnknown}
	for _, r := range s.relatives[i] {
		h.smallest, h.largest, h.leastUnknown = min(h.smallest, r.size), max(h.largest, r.size), leastUnknown
		moved := s.shifted(m.ID, r.coords)
		y := m.inWidths(&moved)
		for j := range y {
			h.low[j], h.high[j] = min(h.low[j], y[j]), max(h.high[j], y[j])
		}
	}
	for j := range h.low {
		h.low[j] -= ceilingSlack
		h.high[j] += ceilingSlack
	}
	return h
}

func (s *Set) hullsOf() []hull {
	out := make([]hull, len(s.models))
	for i := range out {
		out[i] = s.hullOf(i)
	}
	return out
}

// limit is the most that a family can say for a drink, wherever its local
// centre is: the score in it, and between what weights that counts.
type limit struct {
	score       float64
	least, most float64 // first as log-odds, then as weights
}

// Ceiling returns what Score does not exceed with the same amounts. It takes a
// small part of the time, because it does not look for the drink's relatives:
// the centre of each family may be any that its drinks can have. It returns
// 100 if there is nothing to weigh.
func (b *Build) Ceiling(ml []float64) float64 {
	e := b.Equivalents(ml)
	if !(e.Total() > 0) {
		return 100
	}
	signals := signalsOf(b.spec, b.parts, ml)
	shares := sharesOf(&e)
	if b.limits == nil {
		b.limits = make([]limit, len(b.active))
	}
	t, top := &b.set.tuning, math.Inf(-1)
	for i := range b.limits {
		m := b.model(i)
		h := &b.set.hulls[b.active[i]]
		near, far, slip, over := m.span(&shares, h, t)
		least, most := h.overSizes(math.Log(sum(ml)))
		near, far, slip = (near+least)/mostUnknown, (far+most)/h.leastUnknown, (slip+least)/mostUnknown
		l, odds := &b.limits[i], b.voices[i].logit(&signals)
		nearOdds, farOdds := odds+t.FitWeight*m.compat(near), odds+t.FitWeight*m.compat(far)
		l.score = scoreOf(max(near/m.edge, slip/m.alone+over/mostUnknown))
		l.least, l.most = min(nearOdds, farOdds), max(nearOdds, farOdds)
		top = max(top, l.most)
	}
	for i := range b.limits {
		l := &b.limits[i]
		l.least, l.most = math.Exp(l.least-top), math.Exp(l.most-top)
	}
	return min(100, mostMean(b.limits)+ceilingSlack)
}

// overSizes returns between what squared distances a size lies, given its
// logarithm, with any of the usual sizes of the hull.
func (h *hull) overSizes(size float64) (least, most float64) {
	least, most = overSize(size, h.largest), overSize(size, h.smallest)
	if size-h.smallest > logBatchFrom && h.smallest < h.largest { // perhaps a batch
		return 0, mostOverSize
	}
	return least, most
}

// span returns between what squared distances a drink lies from the centres
// within a hull, as place measures them, the least that a slip of one axis explains
// of that, and the squared excess.
func (m *model) span(s *shares, h *hull, t *Tuning) (near, far, slip, excess float64) {
	var from, to [NumAxes - 1]float64 // the deviations
	for j := range len(m.Axes) - 1 {
		var y float64
		for i, a := range m.Axes {
			y += m.lift[j][i] * s.log[a]
		}
		from[j], to[j] = y-h.high[j], y-h.low[j]
		below, above := h.low[j]-y, y-h.high[j] // above zero outside
		out := max(0, below, above)
		in := max(math.Abs(h.low[j]-y), math.Abs(y-h.high[j]))
		near += out * out
		far += in * in
	}
	for a := range s.part {
		x := m.excess(Axis(a), s, t)
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
	return near + m.edge*excess, far + m.edge*excess, slip, excess
}

// mostMean returns the greatest mean of the scores that weights within the
// limits can give. The weights that give it are the most for the scores above
// that mean and the least for the others, so it is sought from below.
func mostMean(limits []limit) float64 {
	mean := 0.0
	for {
		var sum, weights float64
		for _, l := range limits {
			w := l.least
			if l.score > mean {
				w = l.most
			}
			sum += w * l.score
			weights += w
		}
		if next := sum / weights; next > mean {
			mean = next
			continue
		}
		return mean
	}
}
