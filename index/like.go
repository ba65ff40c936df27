package index

import (
	"errors"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

var errNoMeasure = errors.New("index: a query with Like needs a Measure")

// like sorts the profiles at the positions by their distance from the one at self, which
// is left out, and scores them 1/(1+distance). It measures all of them: bleve has no
// vector search without cgo, and scanning thousands takes milliseconds.
func (x *Index) like(self int, positions []int, q *lookup.Query) lookup.Result {
	far := q.Measure(x.profiles[self])
	hits := make([]lookup.Hit, 0, len(positions))
	for _, i := range positions {
		if i != self {
			hits = append(hits, lookup.Hit{Profile: x.profiles[i], Score: 1 / (1 + far(x.profiles[i]))})
		}
	}
	r := lookup.Result{Total: len(hits), Classes: countClasses(hits)}
	slices.SortFunc(hits, func(a, b lookup.Hit) int { return byScore(a.Score, a.Profile, b.Score, b.Profile) })
	r.Hits = hits[:min(q.Most(), len(hits))]
	return r
}

func countClasses(hits []lookup.Hit) []lookup.Facet {
	count := map[flavor.Class]int{}
	for _, h := range hits {
		count[h.Profile.Class]++
	}
	out := make([]lookup.Facet, 0, len(count))
	for c, n := range count {
		out = append(out, lookup.Facet{Name: string(c), Count: n})
	}
	sortFacets(out)
	return out
}
