package cover

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/shelf"
	"counterpour/flavor/guest"
)

// addOneByOne lists what a bartender tries first when several things are out: for each
// of them what covers it alone, with all the rest in the glass, and these together. They
// have earned their place by that, and rank by their own standing like any others; the
// amounts are found for all of them at once.
func (t *task) addOneByOne(ctx context.Context) error {
	if len(t.Gap.Gone) < 2 || len(t.Gap.Gone) > MaxParts {
		return nil
	}
	together := [][]int{nil}
	for m := range t.Gap.Gone {
		p := t.Gap.Gone[m].Profile
		alone, err := t.MadeAfter(m), error(nil)
		if !t.Gap.Less {
			alone, err = t.bestFor(ctx, p)
		}
		if err != nil {
			return err
		}
		sugar := t.SweetFor(m)
		if len(sugar) == 0 {
			sugar = t.SugarFor(m)
		}
		alone = slices.Concat(alone, t.CustomFor(m, alone), t.BlendsFor(p), sugar)
		if len(alone) == 0 {
			continue // the rest may still be covered one by one
		}
		var longer [][]int
		for _, some := range together {
			for _, parts := range alone {
				if all := shelf.Union(some, parts); len(all) <= t.MostParts {
					longer = append(longer, all)
				}
			}
		}
		together = longer
	}
	plain := t.PlainProblem()
	for _, parts := range together {
		if len(parts) > 1 {
			t.Practice.AddOneByOne(parts, plain.Standing(parts))
		}
	}
	return nil
}

// bestFor returns the bottles that best cover one thing alone with the rest of the
// drink as it was, as places among the candidates.
func (t *task) bestFor(ctx context.Context, gone *flavor.Profile) ([][]int, error) {
	r := *t.Req
	r.Missing, r.Parts, r.Limit = []*flavor.Profile{gone}, 1, shelf.CoversOfEach
	r.Candidates = slices.DeleteFunc(slices.Clone(t.Req.Candidates), func(p *flavor.Profile) bool { return t.Gap.InDrink(p) || !t.Gap.Accepts(p) })
	r.Guest = guest.Guest{} // the candidates of this task are already the guest's
	r.Tastings = nil
	one, err := t.finder.newTask(&r, false)
	if err != nil {
		return nil, err
	}
	defer one.Done()
	if err := one.AddCandidates(); err != nil {
		return nil, err
	}
	one.Strict = true
	one.AddMoves(false)
	ideas, _, err := one.Ideas(ctx)
	if err != nil {
		return nil, err
	}
	var out []int
	for i := range ideas {
		id := one.Cands[ideas[i].Filling.Parts[0]].Profile.ID
		if at, found := t.PlaceOf(id); found {
			out = append(out, at)
		}
	}
	return shelf.OneEach(out), nil
}
