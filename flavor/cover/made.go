package cover

import (
	"cmp"
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// What the trade makes of several pours where one bottle is out, and a list of few parts has no
// place for: three at once, as lemon, sugar and soda are a lemonade, or one beside more of what
// the drink pours anyway.

// addMadeOfThree adds covers of three parts that the trade pours together for the only thing that
// went, where nothing of fewer keeps the drink.
func (f *Finder) addMadeOfThree(ctx context.Context, r *Request, to *Result) error {
	if to.Near || len(to.Removed) != 1 || cmp.Or(r.Parts, asked.UsualParts) != asked.UsualParts {
		return nil
	}
	var named []string
	for _, c := range f.tools.Trade.Customs.For(to.Removed[0].ID) {
		if len(c.Parts) == MaxParts {
			for _, id := range c.Parts {
				named = append(append(named, id), f.tools.Trade.Customs.Kin(id)...)
			}
		}
	}
	of := *r
	of.Parts = MaxParts
	of.Candidates = slices.DeleteFunc(slices.Clone(r.Candidates), func(p *flavor.Profile) bool { return !slices.Contains(named, p.ID) })
	if len(of.Candidates) < MaxParts {
		return nil
	}
	all, err := f.covers(ctx, &of, false)
	if err != nil {
		return err
	}
	made := slices.DeleteFunc(all.Covers, func(c Cover) bool {
		return !c.Custom || len(c.Parts) != MaxParts || !c.worthPouring() && c.Distance > LastJND
	})
	if len(made) == 0 {
		return nil
	}
	to.Covers = append(made, slices.DeleteFunc(to.Covers, func(c Cover) bool { return c.Distance > made[0].Distance })...)
	to.Covers = to.Covers[:min(len(to.Covers), r.Limit)]
	to.Near, to.Unbalanced = all.Near, all.Unbalanced
	if to.LeftOut != nil && to.LeftOut.Distance > made[0].Distance {
		to.LeftOut, to.LeftOutBest = nil, false
	}
	return nil
}

// What of a wine that sparkles a still one is poured for, beside as much soda as is left of it:
// a half to three quarters. Common practice, no source.
const (
	leastStill = 0.5
	mostStill  = 0.75
)

// madeWithFizz returns the best cover in balance that pours something still of what the trade pours
// with a soda in place of what sparkled and went, and more of that soda, which the drink holds:
// white wine and more soda in a spritz. It is nil if there is none.
func (t *task) madeWithFizz() (best *idea.Idea, err error) {
	at := t.fizz()
	if at < 0 || len(t.Gap.Gone) != 1 {
		return nil, nil
	}
	at = t.Gap.Keep[at]
	for _, i := range t.beside(t.Req.Spec.Pours[at].Profile.ID) {
		for k, a := range t.Cands[i].Amounts {
			if a.ML < leastStill*t.Gap.ML || a.ML > mostStill*t.Gap.ML || !a.Unit.Jigger() {
				continue
			}
			more, ok := t.raised(at, t.Gap.ML-a.ML)
			if !ok {
				continue
			}
			x := search.Filling{Parts: []int{i}, Moves: []int{len(t.Moves)}}
			x.Amounts[0] = k
			t.Moves = append(t.Moves, more)
			made, err := t.Pour(&x)
			if err != nil {
				return nil, err
			}
			g := &t.Req.Guest
			if weigh.VerdictOf(made.Score) != weigh.Balanced || g.TooStrong(made.Drink.ABV) || g.MaxCost > 0 && t.Cost(&x) > g.MaxCost {
				continue
			}
			if best == nil || made.Distance < best.Distance {
				best = made
			}
		}
		if best != nil {
			return best, nil // the trade's first choice of what is at hand
		}
	}
	return nil, nil
}

// beside lists the candidates that the trade pours with an ingredient alone in place of what went, by
// the order of its choices.
func (t *task) beside(id string) (out []int) {
	for _, c := range t.finder.Customary(t.Gap.Gone[0].Profile) {
		if len(c.Parts) != 2 || !slices.Contains(c.Parts, id) {
			continue
		}
		for _, part := range c.Parts {
			for _, name := range append([]string{part}, t.finder.tools.Trade.Customs.Kin(part)...) {
				if i, ok := t.PlaceOf(name); ok && part != id && !slices.Contains(out, i) {
					out = append(out, i)
				}
			}
		}
	}
	return out
}

// raised is a pour of the drink with so many mL more; false where no hand pours that.
func (t *task) raised(at int, ml float64) (idea.Move, bool) {
	p := &t.Req.Spec.Pours[at]
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return idea.Move{}, false
	}
	amount := measure.Snap(p.ML+ml, p.Unit, p.Profile)
	return idea.Move{Pour: at, Amount: portion.Amount{Value: amount, Unit: p.Unit, ML: amount * per}}, amount*per > p.ML
}

// addMadeWithFizz puts what [task.madeWithFizz] finds before the covers of a list that do not keep
// the drink, and leaves out those that lie further; false if there is none.
func (t *task) addMadeWithFizz(to *Result) (bool, error) {
	x, err := t.madeWithFizz()
	if err != nil || x == nil {
		return false, err
	}
	c := t.describe(x)
	c.Custom = true
	nearer := slices.DeleteFunc(to.Covers, func(o Cover) bool { return o.Distance > c.Distance })
	to.Covers = append([]Cover{c}, nearer...)
	to.Covers = to.Covers[:min(len(to.Covers), t.Req.Limit)]
	to.Near, to.Unbalanced = to.Near || c.Keeps, false
	return true, nil
}
