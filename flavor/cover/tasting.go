package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/practice"
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

// addTastings adds what the house's tastings are worth to the standing of the
// combinations that they are about. Tastings of other drinks with the same
// bottle out count too: it is the pair that was tasted.
func (t *task) addTastings() {
	var tasted []practice.Tasted
	for _, x := range t.req.Tastings {
		if parts, ok := t.about(&x); ok {
			tasted = append(tasted, practice.Tasted{Parts: parts, Liked: x.Liked})
		}
	}
	t.practice.Heed(tasted, t.plainProblem().Standing, t.finder.weights.Gap.Custom)
}

// plainProblem is the task as far as it says what combinations must earn that nobody knows.
func (t *task) plainProblem() *search.Problem {
	return &search.Problem{Parts: t.entries, Costs: search.Costs{Part: t.finder.weights.Part}}
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
