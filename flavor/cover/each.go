package cover

import (
	"cmp"
	"context"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/guest"
)

// coversOfEach is how many bottles are looked at for each of several things that went.
const coversOfEach = 3

// addOneByOne lists what a bartender tries first when several things are out: for each
// of them what covers it alone, with all the rest in the glass, and these together. They
// have earned their place by that, and rank by their own standing like any others; the
// amounts are found for all of them at once.
func (t *task) addOneByOne(ctx context.Context) error {
	if len(t.gap.Gone) < 2 || len(t.gap.Gone) > MaxParts {
		return nil
	}
	together := [][]int{nil}
	for m := range t.gap.Gone {
		p := t.gap.Gone[m].Profile
		alone, err := t.madeAfter(m), error(nil)
		if !t.gap.Less {
			alone, err = t.bestFor(ctx, p)
		}
		if err != nil {
			return err
		}
		sugar := t.sweetFor(m)
		if len(sugar) == 0 {
			sugar = t.sugarFor(m)
		}
		alone = slices.Concat(alone, t.customFor(m, alone), t.blendsFor(p), sugar)
		if len(alone) == 0 {
			continue // the rest may still be covered one by one
		}
		var longer [][]int
		for _, some := range together {
			for _, parts := range alone {
				if all := union(some, parts); len(all) <= t.parts {
					longer = append(longer, all)
				}
			}
		}
		together = longer
	}
	plain := t.plainProblem()
	for _, parts := range together {
		if len(parts) > 1 {
			t.practice.AddOneByOne(parts, plain.Standing(parts))
		}
	}
	return nil
}

// union returns the members of both, ascending, each once.
func union(a, b []int) []int {
	all := slices.Concat(a, b)
	slices.Sort(all)
	return slices.Compact(all)
}

// customFor returns the first choice of the trade, of what is at hand, in place of removed m,
// where no such choice is among some already: it may lie too far from the drink alone.
func (t *task) customFor(m int, among [][]int) [][]int {
	custom := func(i int) bool { return t.practice.Alone(m, i) }
	if slices.ContainsFunc(among, func(parts []int) bool { return slices.ContainsFunc(parts, custom) }) {
		return nil
	}
	for _, x := range t.gap.CustomsFor(t.gap.Gone[m].Profile) {
		if at, found := t.placeOf(x.Parts[0]); found && len(x.Parts) == 1 {
			return oneEach([]int{at})
		}
	}
	return nil
}

// blendsFor returns what the trade pours together in place of one of several things out.
func (t *task) blendsFor(gone *flavor.Profile) (out [][]int) {
	for _, x := range t.gap.CustomsFor(gone) {
		if parts, all := t.placesOf(x.Parts); all && len(parts) > 1 {
			out = append(out, parts)
		}
	}
	return out
}

// sugarFor returns the plain sweetener that is the least strange in place of a flavour with
// sugar, removed m: with the rest covered too it keeps the balance.
func (t *task) sugarFor(m int) [][]int {
	best, least := -1, math.Inf(1)
	for i := range t.cands {
		if cost := t.entries[i].Strange[m] + t.entries[i].Price; cost < least && role.OnlySweetens(t.cands[i].Bottle, t.gap.Gone[m].Profile.Class) {
			best, least = i, cost
		}
	}
	if best < 0 {
		return nil
	}
	return oneEach([]int{best})
}

// madeAfter returns what holds no alcohol and is the least strange in place of removed m, as places among the candidates: what a guest who drinks none is poured for
// each thing that holds some.
func (t *task) madeAfter(m int) [][]int {
	var out []int
	for i := range t.cands {
		dry := t.gap.StandsDry(t.cands[i].Profile.Class, t.gap.Gone[m].Profile.Class) || t.gap.PouredFor(t.cands[i].Profile, t.gap.Gone[m].Profile)
		if dry && t.entries[i].Strange[m] < t.finder.weights.Gap.Aroma {
			out = append(out, i)
		}
	}
	return oneEach(t.leastStrange(out, m))
}

// leastStrange returns the few of some candidates that are the least strange in place of removed m.
func (t *task) leastStrange(of []int, m int) []int {
	cost := func(i int) float64 { return t.entries[i].Strange[m] + t.entries[i].Price }
	slices.SortStableFunc(of, func(a, b int) int { return cmp.Compare(cost(a), cost(b)) })
	return of[:min(len(of), coversOfEach)]
}

// oneEach returns places as fillings of one part.
func oneEach(places []int) [][]int {
	out := make([][]int, len(places))
	for k, i := range places {
		out[k] = []int{i}
	}
	return out
}

// bestFor returns the bottles that best cover one thing alone with the rest of the
// drink as it was, as places among the candidates.
func (t *task) bestFor(ctx context.Context, gone *flavor.Profile) ([][]int, error) {
	r := *t.req
	r.Missing, r.Parts, r.Limit = []*flavor.Profile{gone}, 1, coversOfEach
	r.Candidates = slices.DeleteFunc(slices.Clone(t.req.Candidates), func(p *flavor.Profile) bool { return t.gap.InDrink(p) || !t.gap.Accepts(p) })
	r.Guest = guest.Guest{} // the candidates of this task are already the guest's
	r.Tastings = nil
	one, err := t.finder.newTask(&r, false)
	if err != nil {
		return nil, err
	}
	defer one.done()
	if err := one.addCandidates(); err != nil {
		return nil, err
	}
	one.strict = true
	one.addMoves(false)
	ideas, _, err := one.ideas(ctx)
	if err != nil {
		return nil, err
	}
	var out []int
	for i := range ideas {
		id := one.cands[ideas[i].filling.Parts[0]].Profile.ID
		if at, found := t.placeOf(id); found {
			out = append(out, at)
		}
	}
	return oneEach(out), nil
}
