package cover

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/sense"
	"counterpour/flavor/technique"
)

// addLeftOut adds the drink with nothing poured in place of what went, unless that is
// far from it, or no drink: it stays in balance, and ranks before every cover or lies no
// further than any, or no cover keeps the balance. It is not the best beside a relative of
// what went. Where nothing covers a foam or a milk, what is left is offered however far it
// lies, if it is a drink in balance: a guest who avoids milk is better told of another drink
// than of none. So is a long drink without its spirit, for a guest who drinks no alcohol.
func (t *task) addLeftOut(to *Result) error {
	long := t.staysLong()
	if t.LeftOut > LastJND && !long && !t.leavesSofter(to) {
		return t.addRebuilt(to)
	}
	x, err := t.without()
	if err != nil {
		return err
	}
	if t.Req.Guest.TooStrong(x.Drink.ABV) {
		return nil // without its vermouth a drink is stronger
	}
	nearer := slices.ContainsFunc(to.Covers, func(c Cover) bool { return c.Distance < x.Distance })
	best := t.ranksFirst(to, x, long, nearer)
	balanced := long || x.Score >= t.LeastScore()
	if t.LeftOut > NearJND && !long && (!balanced || nearer && !best) {
		return t.addRebuilt(to)
	}
	if nearer && !best && t.relative(&to.Covers[0]) {
		return nil // nobody leaves out what a bottle beside it stands for
	}
	t.missedAll(x)
	c := t.describe(x)
	to.LeftOut, to.LeftOutBest = &c, best && balanced
	to.Near = to.Near || c.Keeps
	return nil
}

// leavesSofter reports whether nothing covers what went, all of it foam or milk, and other
// pours are left.
func (t *task) leavesSofter(to *Result) bool {
	return len(to.Covers) == 0 && len(t.Gap.Keep) > 1 && !t.Gap.Any(func(p *flavor.Profile) bool {
		return p.Class.Kin() != flavor.KinFoam && p.Class.Kin() != flavor.KinMilk
	})
}

// ranksFirst reports whether what is left is better served than any cover, in balance or not.
// Nearer says that some cover lies nearer.
func (t *task) ranksFirst(to *Result, x *idea.Idea, long, nearer bool) bool {
	switch {
	case len(to.Covers) == 0:
		return true
	case long:
		return !t.madeAfterIt(&to.Covers[0])
	}
	return to.Unbalanced || !nearer && x.Rank < to.Covers[0].Rank && !t.relative(&to.Covers[0])
}

// staysLong reports whether a guest who drinks no alcohol may be served what is left of a long
// drink, or one of milk: only spirits went, liqueurs, or what only seasons.
func (t *task) staysLong() bool {
	return t.Gap.NoAlcohol() && t.Gap.Less && t.IsLong(&search.Filling{}) && !t.Gap.Any(func(p *flavor.Profile) bool {
		return p.Class.Part() != flavor.PartBase && p.Class.Part() != flavor.PartSeasoning && p.Class.Kin() != flavor.KinLiqueur
	})
}

// madeAfterIt reports whether a cover pours what is made after what went, without its alcohol.
func (t *task) madeAfterIt(c *Cover) bool {
	return slices.ContainsFunc(c.Parts, func(p flavor.Pour) bool {
		return t.Gap.Any(func(q *flavor.Profile) bool { return t.Gap.StandsDry(p.Profile.Class, q.Class) })
	})
}

// without is the drink with nothing poured in place of what went; stirred, if it was shaken
// for the sake of that alone.
func (t *task) without() (*idea.Idea, error) {
	x, err := t.Pour(&search.Filling{})
	wants := func(p flavor.Pour) bool { return technique.WantsShaking(p.Profile) }
	if err != nil || !x.Spec.Method.Shaken() || !slices.ContainsFunc(t.Req.Spec.Pours, wants) || slices.ContainsFunc(x.Spec.Pours, wants) {
		return x, err
	}
	x.Spec.Method = flavor.Stir
	if err := t.InGlass(x); err != nil {
		return nil, err
	}
	if x.Score, err = t.Judge.ScoreOnly(&x.Spec); err != nil {
		return nil, err
	}
	t.Rank(x)
	return x, nil
}

// missedAll says of a drink with nothing poured in place of what went that the guest misses it, if
// it is poured for its smell: a rinse is little of a drink, and what it is known by.
func (t *task) missedAll(x *idea.Idea) {
	for m := range t.Gap.Gone {
		q := &t.Gap.Gone[m]
		if q.Missing && q.Smells && len(x.Gone) == 0 {
			x.Gone = append(x.Gone, sense.Lost{Material: q.Profile.Name})
		}
	}
}

// relative reports whether a cover keeps the drink by what the trade pours, or by one bottle
// of the class of what went: then it is poured rather than nothing, however little went.
func (t *task) relative(c *Cover) bool {
	return c.Keeps && (c.Custom || len(c.Parts) == 1 && len(t.Gap.Gone) == 1 && c.Parts[0].Profile.Class == t.Gap.Gone[0].Profile.Class)
}
