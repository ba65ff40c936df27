package cover

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/practice"
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
func (t *task) addCandidates() error {
	grid, customs := t.gap.Grid(), t.gap.Customs()
	t.desk = t.finder.borrow(len(t.req.Candidates))
	t.cands, t.entries = t.desk.cands, t.desk.entries
	t.practice = practice.New(len(t.gap.Gone))
	for _, p := range byID(t.req.Candidates) {
		if t.gap.InDrink(p) || !t.gap.Accepts(p) {
			continue
		}
		b := t.finder.trade.Cellar.Of(p)
		amounts, err := t.inLightMeasure(p, t.gap.InMeasure(p, t.gap.AtMost(b, grid.Of(p))))
		if err != nil {
			return err
		}
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
		part.Amounts, part.Strange = t.desk.list(len(amounts)), t.desk.list(len(t.gap.Gone))
		for i, a := range amounts {
			part.Amounts[i] = a.ML
		}
		part.Alike, part.Firm = t.gap.Alike(p, amounts)
		for m := range t.gap.Gone {
			part.Strange[m] = t.gap.Strange(b, m, customs.Place(m, p.ID))
		}
		t.cands = append(t.cands, candidate{b, amounts})
		t.practice.Add(p, t.gap, customs)
		t.entries = append(t.entries, part)
	}
	t.addKnown(customs)
	return nil
}

// inLightMeasure leaves of the amounts of a bottle those that a bartender pours of it in place
// of a spirit for a guest who wants less alcohol, see [gap.Gap.LightMeasure]: of a wine that is
// too strong in full measure as much as the guest may have, and of a spirit none. Beside other
// things that are out how strong the drink will be is not known yet, and half a measure may do for a guest who drinks some.
func (t *task) inLightMeasure(p *flavor.Profile, amounts []portion.Amount) ([]portion.Amount, error) {
	const rounding, alone = 1e-6, 1
	least, most := t.gap.LightMeasure(p)
	if most == 0 {
		return amounts, nil
	}
	if len(t.gap.Gone) > alone && !t.gap.NoAlcohol() {
		least /= 2
	}
	notMore := slices.DeleteFunc(slices.Clone(amounts), func(a portion.Amount) bool { return a.ML > most+rounding })
	full := slices.DeleteFunc(slices.Clone(notMore), func(a portion.Amount) bool { return a.ML < least-rounding })
	if len(t.gap.Gone) > alone {
		return full, nil
	}
	for i := len(notMore) - 1; i >= 0; i-- {
		pours := slices.Clone(t.specOf(&search.Filling{}).Pours)
		s := t.req.Spec.Clone()
		s.Pours = append(pours, notMore[i].Of(p))
		drink, err := t.finder.mixer.Mix(&s)
		switch {
		case err != nil:
			return nil, err
		case t.req.Guest.TooStrong(drink.ABV):
		case notMore[i].ML >= least-rounding:
			return full[:i+1-(len(notMore)-len(full))], nil
		case p.Class.Kin() == flavor.KinSpirit:
			return nil, nil
		default:
			return notMore[i : i+1], nil
		}
	}
	return nil, nil
}

// byID returns profiles in the order of their ids, which is that of the index.
func byID(profiles []*flavor.Profile) []*flavor.Profile {
	order := func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) }
	if slices.IsSortedFunc(profiles, order) {
		return profiles
	}
	return slices.SortedFunc(slices.Values(profiles), order)
}
