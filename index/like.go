package index

import (
	"math"
	"slices"

	"counterpour/flavor"
)

// The scales of nearness. They put a difference that decides which of two
// bottles to reach for at about one on every axis. Judged, not measured: they
// only order a list for a person; what a swap does to a drink is worked out in
// the glass, by package cover.
const (
	abvScale    = 10.0 // % vol
	sugarScale  = 5.0  // of √(g/L): 100 and 225 g/L, or 300 and 498, are one apart
	acidScale   = 2.0  // of √(g/L): 6 and 20 g/L are one apart
	bitterScale = 10.0 // mg/L of quinine, inside log1p
	aromaScale  = 1.5  // of log1p of the intensity: a leading note of 10 and none are 1.6 apart
)

// numbers is how many columns a row has before those of the aroma.
const numbers = 4

// row is a profile on scales of nearness: abv linear; sugar and acid by square
// root, since a given step matters less where there is much already; bitter
// and every aroma by log1p, since both scales are open-ended and cocktail
// bitters would dwarf all else.
type row [numbers + flavor.NumFamilies]float64

func rowOf(p *flavor.Profile) row {
	r := row{
		p.ABV.Value / abvScale,
		math.Sqrt(p.Sugar.Value) / sugarScale,
		math.Sqrt(p.Acid.Value) / acidScale,
		math.Log1p(p.Bitter.Value / bitterScale),
	}
	for f, v := range p.Aroma {
		r[numbers+f] = math.Log1p(v) / aromaScale
	}
	return r
}

// distance is Euclidean.
func distance(a, b *row) float64 {
	var sum float64
	for i := range a {
		d := a[i] - b[i]
		sum += d * d
	}
	return math.Sqrt(sum)
}

// like orders the profiles at the positions by nearness to the one at self,
// which is left out, and scores them 1/(1+distance). It looks at every row:
// bleve has no vectors without cgo, and a scan of thousands takes microseconds.
func (x *Index) like(self int, positions []int, limit int) Result {
	hits := make([]Hit, 0, len(positions))
	for _, i := range positions {
		if i != self {
			hits = append(hits, Hit{x.profiles[i], 1 / (1 + distance(&x.matrix[self], &x.matrix[i]))})
		}
	}
	r := Result{Total: len(hits), Classes: countClasses(hits)}
	slices.SortFunc(hits, func(a, b Hit) int { return byScore(a.Score, a.Profile, b.Score, b.Profile) })
	r.Hits = hits[:min(limit, len(hits))]
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
