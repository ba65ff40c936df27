package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
)

// candidate is one ingredient that may be a part.
type candidate struct {
	*role.Bottle
	amounts []portion.Amount
}

// addCandidates lists what may be poured, in the order of the ids, and what each
// must earn.
func (t *task) addCandidates() {
	grid, customs := t.gap.Grid(), t.gap.Customs()
	t.cands = make([]candidate, 0, len(t.req.Candidates))
	t.entries = make([]search.Part, 0, len(t.req.Candidates))
	for _, p := range byID(t.req.Candidates) {
		if t.gap.InDrink(p) || !t.gap.Accepts(p) {
			continue
		}
		amounts := t.gap.InMeasure(p, grid.Of(p))
		b := t.finder.trade.Cellar.Of(p)
		if len(amounts) == 0 || !t.gap.Admits(b, customs.Names(p.ID)) {
			continue
		}
		part := search.Part{Per: t.gap.RowOf(&b.Holds), Odd: role.Odd(p.Class)}
		if t.req.Common != nil {
			part.Price = t.finder.weights.Rare * t.req.Common.Rarity(p.ID) * t.gap.Otherwise(b)
		}
		if t.gap.Stretches(b) {
			part.Price += t.finder.weights.Part
		}
		part.Amounts, part.Strange = make([]float64, len(amounts)), make([]float64, 0, len(t.gap.Gone))
		for i, a := range amounts {
			part.Amounts[i] = a.ML
		}
		part.Alike, part.Firm = t.gap.Alike(p, amounts)
		for m := range t.gap.Gone {
			part.Strange = append(part.Strange, t.gap.Strange(b, m, customs.Place(m, p.ID)))
		}
		t.cands = append(t.cands, candidate{b, amounts})
		t.practice.add(p, t.gap, customs)
		t.entries = append(t.entries, part)
	}
	t.addKnown(customs)
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}
