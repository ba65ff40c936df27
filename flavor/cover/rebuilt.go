package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// addRebuilt adds the drink without what went and with what is left in other amounts, so that
// it is in balance: an amaretto sour without its amaretto is a sour on its whiskey. It does so
// for a guest who avoids something, where no cover keeps the drink and its base is left; and
// where what went sparkles and something else that does is left, such as the soda of a spritz.
func (t *task) addRebuilt(to *Result) error {
	g := &t.Req.Guest
	limited := (len(g.Avoid) > 0 || len(g.NoAnimal) > 0) && !t.Gap.Asked.Labels && t.keepsBase()
	fizz := t.fizz() >= 0 && !slices.ContainsFunc(to.Covers, func(c Cover) bool { return c.Keeps })
	if t.Gap.Less || !fizz && (!limited || slices.ContainsFunc(to.Covers, Cover.worthPouring)) {
		return nil
	}
	if fizz {
		if made, err := t.addMadeWithFizz(to); made || err != nil {
			return err
		}
	}
	left, err := t.without()
	if err != nil {
		return err
	}
	x, err := t.rebuilt(left)
	if err != nil || x == nil {
		return err
	}
	c := t.describe(x)
	balanced := func(c Cover) bool { return weigh.VerdictOf(c.Score) == weigh.Balanced }
	to.LeftOut, to.LeftOutBest = &c, fizz || t.Strayed == listing.StrayedAll || !slices.ContainsFunc(to.Covers, balanced)
	if t.Strayed == listing.StrayedAll {
		to.Covers = slices.DeleteFunc(to.Covers, func(c Cover) bool { return !balanced(c) })
	}
	return nil
}

// fizz is the place among the pours that are kept of the largest that sparkles and lengthens the
// drink, where all that went sparkles too; −1 where there is none.
func (t *task) fizz() int {
	if len(t.Gap.Keep) < 2 || t.Gap.Any(func(p *flavor.Profile) bool { return !p.Class.Sparkles() }) {
		return -1 // a lemonade by itself is no shandy
	}
	most, ml := -1, 0.0
	for k, i := range t.Gap.Keep {
		if p := &t.Req.Spec.Pours[i]; p.Profile.Class.Sparkles() && p.Profile.Class.Part() == flavor.PartLength && p.ML > ml {
			most, ml = k, p.ML
		}
	}
	return most
}

// keepsBase reports whether a spirit is left of the drink, and none of what led it went.
func (t *task) keepsBase() bool {
	base := func(p *flavor.Profile) bool { return p.Base() && p.Class.Kin() == flavor.KinSpirit }
	return len(t.Gap.Keep) > 1 && t.Gap.Keeps(base) && !t.Gap.Any(base)
}

// sameML is the difference, in mL, up to which two amounts are one.
const sameML = 0.1

// mostRebuilds is how many times what is left is mended, one fix after the other.
const mostRebuilds = 4

// rebuilt is the drink of an idea in amounts that balance it, nil if no amounts do, or only such
// as a guest may not have. The base takes the room of what went and nothing stands for; what is
// poured instead stays as it is.
func (t *task) rebuilt(from *idea.Idea) (*idea.Idea, error) {
	spec := from.Spec.Clone()
	at := t.keptAt(len(from.Filling.Parts))
	t.fillUp(&spec, at)
	for range mostRebuilds {
		_, fixes, err := t.Judge.Mend(&spec, balance.MaxFixes)
		if err != nil {
			return nil, err
		}
		fix := slices.IndexFunc(fixes, func(f balance.Fix) bool { return onlyAmounts(&f, &spec, at) })
		if fix < 0 {
			break
		}
		spec = fixes[fix].Spec.Clone()
	}
	t.byTheJigger(&spec)
	out := &idea.Idea{Filling: from.Filling, Spec: spec}
	out.Filling.Moves = nil
	for k, i := range at {
		if i < 0 {
			continue
		}
		p, was := &spec.Pours[k], &t.Req.Spec.Pours[i]
		if math.Abs(p.ML-was.ML) < sameML {
			continue
		}
		out.Filling.Moves = append(out.Filling.Moves, len(t.Moves))
		t.Moves = append(t.Moves, idea.Move{Pour: i, Amount: portion.Amount{Value: p.Amount, Unit: p.Unit, ML: p.ML}})
	}
	if err := t.InGlass(out); err != nil {
		return nil, err
	}
	var err error
	if out.Score, err = t.Judge.ScoreOnly(&spec); err != nil {
		return nil, err
	}
	if weigh.VerdictOf(out.Score) != weigh.Balanced || len(out.Filling.Moves) == 0 || t.Req.Guest.TooStrong(out.Drink.ABV) {
		return nil, nil
	}
	t.Rank(out)
	return out, nil
}

// keptAt tells of each pour of a drink with so many parts which pour of the order it is, −1 for
// what is poured instead.
func (t *task) keptAt(parts int) (at []int) {
	for i := range t.Req.Spec.Pours {
		switch {
		case slices.Contains(t.Gap.Keep, i):
			at = append(at, i)
		default:
			for ; parts > 0; parts-- {
				at = append(at, -1)
			}
		}
	}
	return at
}

// rebuildUnbalanced rebuilds those of a few ideas that are out of balance, and puts what is in
// balance before what is not: orgeat for the amaretto of a sour wants more of its whiskey.
func (t *task) rebuildUnbalanced(ideas []idea.Idea) error {
	if t.Gap.Less || !t.keepsBase() {
		return nil
	}
	for i := range ideas[:min(mostRebuilt, len(ideas))] {
		if weigh.VerdictOf(ideas[i].Score) != weigh.Off {
			continue
		}
		x, err := t.rebuilt(&ideas[i])
		if err != nil {
			return err
		}
		if x != nil {
			ideas[i] = *x
		}
	}
	off := func(x *idea.Idea) int {
		if weigh.VerdictOf(x.Score) == weigh.Off {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(ideas, func(a, b idea.Idea) int { return off(&a) - off(&b) })
	return nil
}

// mostRebuilt is how many ideas of a list are rebuilt.
const mostRebuilt = 3

// fullBaseML is a full measure of a spirit, two ounces as a jigger rounds them: common practice,
// no source.
const fullBaseML = 60.0

// fillUp raises the soda that is left by as much as went of what sparkles and nothing is poured
// for or, where there is none, the largest spirit that is left, up to a full measure: it takes the
// place of the liqueur that it stood beside. At is what keptAt tells.
func (t *task) fillUp(s *flavor.Spec, at []int) {
	most, room, full := -1, t.Gap.ML, fullBaseML
	for k := range s.Pours {
		switch p := &s.Pours[k]; {
		case at[k] < 0:
			room -= p.ML
		case p.Profile.Base() && (most < 0 || p.ML > s.Pours[most].ML):
			most = k
		}
	}
	if fizz := t.fizz(); fizz >= 0 {
		most, full = slices.Index(at, t.Gap.Keep[fizz]), math.Inf(1)
	}
	if most < 0 || room <= 0 || s.Pours[most].ML >= full {
		return
	}
	p := &s.Pours[most]
	amount := measure.Snap(min(full, p.ML+room), p.Unit, p.Profile)
	if per, ok := measure.MLPerUnit(p.Unit, p.Profile); ok && amount*per > p.ML {
		p.Amount, p.ML = amount, amount*per
	}
}

// byTheJigger writes in the jigger's unit what was poured by the spoon and is now a measure.
func (t *task) byTheJigger(s *flavor.Spec) {
	unit := measure.SystemOf(s).Unit()
	for i := range s.Pours {
		p := &s.Pours[i]
		if !p.Unit.Small() || p.Profile.Class.Solid() || p.ML < jiggerML {
			continue
		}
		amount := measure.Snap(p.ML, unit, p.Profile)
		if per, ok := measure.MLPerUnit(unit, p.Profile); ok && amount > 0 {
			p.Amount, p.Unit, p.ML = amount, unit, amount*per
		}
	}
}

// jiggerML is the amount from which a jigger measures, a quarter ounce: common practice, no source.
const jiggerML = 7.0

// onlyAmounts reports whether a fix moves amounts of what is left and nothing else: nothing comes
// in, nothing is left out, and the drink is made as it was. At is what keptAt tells.
func onlyAmounts(f *balance.Fix, of *flavor.Spec, at []int) bool {
	return f.Spec.Method == of.Method && len(f.Changes) > 0 && !slices.ContainsFunc(f.Changes, func(c balance.Change) bool {
		return c.Pour >= len(of.Pours) || at[c.Pour] < 0 || c.From == 0 || c.To == 0 || of.Pours[c.Pour].Profile != c.Profile
	})
}
