package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
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
const (
	tasteJND   = 1.5
	tasteDoubt = 2.0
)

// combination names a set of candidates; unused places are −1.
type combination [MaxParts]int

func combinationOf(parts []int) combination {
	c := combination{-1, -1, -1}
	copy(c[:], parts)
	return c
}

// addTastings works out what the house's tastings add to the rank of the
// combinations that they are about. Tastings of other drinks with the same
// bottle out count too: it is the pair that was tasted.
func (t *task) addTastings() {
	t.tasted = nil
	if len(t.req.Tastings) == 0 {
		return
	}
	type tally struct{ n, liked float64 }
	tallies := map[combination]tally{}
	for _, x := range t.req.Tastings {
		key, ok := t.about(&x)
		if !ok {
			continue
		}
		s := tallies[key]
		s.n++
		s.liked += min(max(x.Liked, 0), 1)
		tallies[key] = s
	}
	t.tasted = make(map[combination]float64, len(tallies))
	for key, s := range tallies {
		mean := (s.liked + tasteDoubt/2) / (s.n + tasteDoubt)
		t.tasted[key] = tasteJND * (1 - 2*mean)
	}
}

// about returns the combination that a tasting is about, if its parts are
// candidates here and what was out then is out now.
func (t *task) about(x *Tasting) (combination, bool) {
	missing := slices.ContainsFunc(t.req.Missing, func(m *flavor.Profile) bool { return m.ID == x.Missing })
	if !missing || len(x.Parts) == 0 || len(x.Parts) > t.req.Parts {
		return combination{}, false
	}
	parts := make([]int, 0, MaxParts)
	for _, id := range x.Parts {
		at, found := slices.BinarySearchFunc(t.cands, id, func(c candidate, id string) int { return strings.Compare(c.profile.ID, id) })
		if !found {
			return combination{}, false
		}
		parts = append(parts, at)
	}
	slices.Sort(parts)
	return combinationOf(parts), true
}

// tastedOf returns the combinations of a number of parts that were tasted, in
// order.
func (t *task) tastedOf(n int) [][]int {
	var out [][]int
	for key := range t.tasted {
		parts := slices.DeleteFunc(slices.Clone(key[:]), func(i int) bool { return i < 0 })
		if len(parts) == n {
			out = append(out, parts)
		}
	}
	slices.SortFunc(out, slices.Compare[[]int])
	return out
}
