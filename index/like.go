package index

import (
	"errors"
	"slices"

	"counterpour/flavor"
)

// Measure returns how far others are from an ingredient, 0 for one just like it
// and never below. The index does not judge: whoever asks brings the measure.
type Measure func(of *flavor.Profile) func(other *flavor.Profile) float64

var errNoMeasure = errors.New("index: a query with Like needs a Measure")

// like orders the profiles at the positions by nearness to the one at self,
// which is left out, and scores them 1/(1+distance). It measures every one:
// bleve has no vectors without cgo, and a scan of thousands takes milliseconds.
func (x *Index) like(self int, positions []int, q *Query) Result {
	far := q.Measure(x.profiles[self])
	hits := make([]Hit, 0, len(positions))
	for _, i := range positions {
		if i != self {
			hits = append(hits, Hit{x.profiles[i], 1 / (1 + far(x.profiles[i]))})
		}
	}
	r := Result{Total: len(hits), Classes: countClasses(hits)}
	slices.SortFunc(hits, func(a, b Hit) int { return byScore(a.Score, a.Profile, b.Score, b.Profile) })
	r.Hits = hits[:min(q.limit(), len(hits))]
	return r
}

func countClasses(hits []Hit) []Facet {
	count := map[flavor.Class]int{}
	for _, h := range hits {
		count[h.Profile.Class]++
	}
	out := make([]Facet, 0, len(count))
	for c, n := range count {
		out = append(out, Facet{string(c), n})
	}
	sortFacets(out)
	return out
}
