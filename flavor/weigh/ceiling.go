package weigh

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// hullOf returns the hull of family i, moved to the house's palate.
func (s *Set) hullOf(i int) template.Hull {
	m := s.models[i]
	centre := s.shifted(m.ID, template.CoordsOf(m.Fitted.Centre))
	own := m.InWidths(&centre)
	h := template.Hull{Low: own, High: own, Smallest: s.sizes[i], Largest: s.sizes[i], LeastUnknown: template.MostUnknown}
	for _, r := range s.relatives[i] {
		h.Smallest, h.Largest, h.LeastUnknown = min(h.Smallest, r.Size), max(h.Largest, r.Size), template.LeastUnknown
		moved := s.shifted(m.ID, r.Coords)
		y := m.InWidths(&moved)
		for j := range y {
			h.Low[j], h.High[j] = min(h.Low[j], y[j]), max(h.High[j], y[j])
		}
	}
	for j := range h.Low {
		h.Low[j] -= template.CeilingSlack
		h.High[j] += template.CeilingSlack
	}
	return h
}

func (s *Set) hullsOf() []template.Hull {
	out := make([]template.Hull, len(s.models))
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
	signals := makeup.SignalsOf(b.spec, b.parts, ml)
	shares := ratio.SharesOf(&e)
	if b.limits == nil {
		b.limits = make([]limit, len(b.active))
	}
	t, top, logSize := &b.set.tuning, math.Inf(-1), math.Log(floats.Sum(ml))
	for i := range b.limits {
		m := b.model(i)
		h := &b.set.hulls[b.active[i]]
		near, far, slip, over := m.Span(&shares, h, t)
		least, most := h.OverSizes(logSize)
		near, far, slip = (near+least)/template.MostUnknown, (far+most)/h.LeastUnknown, (slip+least)/template.MostUnknown
		l, odds := &b.limits[i], b.voices[i].logit(&signals)
		nearOdds, farOdds := odds+t.FitWeight*m.Compat(near), odds+t.FitWeight*m.Compat(far)
		l.score = scoreOf(max(near/m.Edge, slip/m.Alone+over/template.MostUnknown))
		l.least, l.most = min(nearOdds, farOdds), max(nearOdds, farOdds)
		top = max(top, l.most)
	}
	for i := range b.limits {
		l := &b.limits[i]
		l.least, l.most = math.Exp(l.least-top), math.Exp(l.most-top)
	}
	mean := mostMean(b.limits)
	if b.set.precedents.Known() {
		mean = Excuse(mean, 1)
	}
	return min(100, mean+template.CeilingSlack)
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
