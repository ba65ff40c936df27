package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
)

// Tasting is what became of a cover that was poured: kept, sent back, or
// scored by a taster.
type Tasting struct {
	Missing string   // id of what was out
	Parts   []string // ids of what was poured instead
	// Liked is 1 for a cover that was kept, 0 for one that was sent back, and
	// between the two for a score.
	Liked float64
}

// How tastings weigh: a cover that was always sent back ranks tasteJND further
// away in the end, one always kept that much nearer; before that, the result is
// shrunk toward indifference as if tasteDoubt tastings had been undecided.
// What a house has found out for itself weighs as much as how strange a pour is by
// the trade's book.
const (
	tasteJND   = 6.0
	tasteDoubt = 2.0
)

// addTastings adds what the house's tastings are worth to the standing of the
// combinations that they are about. Tastings of other drinks with the same
// bottle out count too: it is the pair that was tasted.
func (t *task) addTastings() {
	t.practice.cameBack = map[search.Combination]bool{}
	type tally struct{ n, liked float64 }
	tallies := map[search.Combination]tally{}
	for _, x := range t.req.Tastings {
		parts, ok := t.about(&x)
		if !ok {
			continue
		}
		key := search.Combine(parts...)
		s := tallies[key]
		s.n++
		s.liked += min(max(x.Liked, 0), 1)
		tallies[key] = s
	}
	plain := search.Problem{Parts: t.entries, Costs: search.Costs{Part: t.finder.weights.Part}}
	for key, s := range tallies {
		standing, custom := t.practice.standing[key]
		if !custom {
			standing = plain.Standing(key.Parts())
		}
		if math.IsInf(standing, 1) {
			continue // no liking makes sugar stand for an aroma
		}
		mean := (s.liked + tasteDoubt/2) / (s.n + tasteDoubt)
		if mean < 0.5 {
			t.practice.cameBack[key] = true
			if t.practice.poursAlone(key.Parts()) {
				standing += t.finder.weights.Gap.Custom // it is let off nothing any more
			}
		}
		t.practice.standing[key] = standing + tasteJND*(1-2*mean)
	}
}

// about returns the combination that a tasting is about, if its parts are
// candidates here and what was out then is out now.
func (t *task) about(x *Tasting) ([]int, bool) {
	missing := slices.ContainsFunc(t.req.Missing, func(m *flavor.Profile) bool { return m.ID == x.Missing })
	if !missing || len(x.Parts) == 0 {
		return nil, false
	}
	return t.placesOf(x.Parts)
}
