package riff

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"counterpour/flavor/template"
)

// The weights of the choice. Quality and sameness both run from 0 to 1.
const (
	relevance  = 0.6 // of quality against sameness: the λ of maximal marginal relevance
	likeWeight = 0.5 // of the likeness to proven drinks, in quality
	moveCost   = 0.08
	reachJND   = 8.0 // the distance at which two drinks are no longer much alike
	kindWeight = 0.30
	newWeight  = 0.25 // of what both bring in that the drink had not
)

// quality is how good a riff is by itself: how well it sits in its family, how
// much it reads like a drink that people make, and how few moves it takes.
func quality(s *solved) float64 {
	sits := (min(s.score, 100) - template.BalancedFrom) / (100 - template.BalancedFrom)
	return (1-likeWeight)*sits + likeWeight*min(1, max(0, s.rank)) - moveCost*float64(s.moves-1)
}

// sameness is how much of one riff the other repeats: near in the glass, made by
// the same move, or with the same new things.
func (w *work) sameness(a, b *solved) float64 {
	s := (1 - kindWeight - newWeight) * math.Exp(-a.at.distance(&b.at)/reachJND)
	if a.kind == b.kind {
		s += kindWeight
	}
	return s + newWeight*w.shared(a, b)
}

// shared is the share of what two riffs bring in that both do, 0 to 1.
func (w *work) shared(a, b *solved) float64 {
	if w.spec == nil {
		return 0
	}
	var both, all float64
	for i := range a.spec.Pours {
		p := a.spec.Pours[i].Profile
		if poured(w.spec, p) {
			continue
		}
		all++
		if poured(&b.spec, p) {
			both++
		}
	}
	for i := range b.spec.Pours {
		if p := b.spec.Pours[i].Profile; !poured(w.spec, p) && !poured(&a.spec, p) {
			all++
		}
	}
	if all == 0 {
		return 0
	}
	return both / all
}

// choose picks up to limit riffs by maximal marginal relevance, none nearer than
// LeastDistance to another.
func (w *work) choose(pool []*solved, limit int) []*solved {
	return w.pick(pool, limit, func(*solved) float64 { return 0 }, func(*solved) {})
}

// pick is choose with a bonus that each riff has at its turn; picked is told
// what was chosen.
func (w *work) pick(pool []*solved, limit int, bonus func(*solved) float64, picked func(*solved)) []*solved {
	slices.SortStableFunc(pool, func(a, b *solved) int {
		return cmp.Or(cmp.Compare(quality(b), quality(a)), strings.Compare(keyOf(&a.spec), keyOf(&b.spec)))
	})
	same := make([]float64, len(pool)) // greatest sameness with what is chosen
	gone := make([]bool, len(pool))
	var out []*solved
	for len(out) < limit {
		at, top := -1, math.Inf(-1)
		for i, s := range pool {
			if gone[i] {
				continue
			}
			if v := relevance*quality(s) - (1-relevance)*same[i] + bonus(s); v > top+tiny {
				at, top = i, v
			}
		}
		if at < 0 {
			break
		}
		gone[at] = true
		out = append(out, pool[at])
		picked(pool[at])
		w.compare(pool, pool[at], gone, same)
	}
	return out
}

// compare strikes out what is too near to a pick, and notes how much the others
// repeat it.
func (w *work) compare(pool []*solved, pick *solved, gone []bool, same []float64) {
	for i, s := range pool {
		if gone[i] {
			continue
		}
		if s.at.distance(&pick.at) < LeastDistance {
			gone[i] = true
			w.left.TooAlike++
			continue
		}
		same[i] = max(same[i], w.sameness(s, pick))
	}
}
