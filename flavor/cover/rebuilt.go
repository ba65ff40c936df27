package cover

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// addRebuilt adds the drink without what went and with what is left in other amounts, so that
// it is in balance: an amaretto sour without its amaretto is a sour on its whiskey. It does so
// for a guest who avoids something, where no cover keeps the drink and its base is left.
func (t *task) addRebuilt(to *Result) error {
	g := &t.Req.Guest
	limited := len(g.Avoid) > 0 || len(g.NoAnimal) > 0
	if !limited || t.Gap.Less || t.Gap.Asked.Labels || slices.ContainsFunc(to.Covers, Cover.worthPouring) || !t.keepsBase() {
		return nil
	}
	x, err := t.rebuilt()
	if err != nil || x == nil {
		return err
	}
	c := t.describe(x)
	balanced := func(c Cover) bool { return weigh.VerdictOf(c.Score) == weigh.Balanced }
	to.LeftOut, to.LeftOutBest = &c, t.Strayed == listing.StrayedAll || !slices.ContainsFunc(to.Covers, balanced)
	if t.Strayed == listing.StrayedAll {
		to.Covers = slices.DeleteFunc(to.Covers, func(c Cover) bool { return !balanced(c) })
	}
	return nil
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

// rebuilt is what is left in amounts that balance it, nil if no amounts do, or only such as a
// guest may not have.
func (t *task) rebuilt() (*idea.Idea, error) {
	x, err := t.without()
	if err != nil {
		return nil, err
	}
	spec := x.Spec.Clone()
	t.fillWithBase(&spec)
	for range mostRebuilds {
		_, fixes, err := t.Judge.Mend(&spec, balance.MaxFixes)
		if err != nil {
			return nil, err
		}
		at := slices.IndexFunc(fixes, func(f balance.Fix) bool { return onlyAmounts(&f, &spec) })
		if at < 0 {
			break
		}
		spec = fixes[at].Spec.Clone()
	}
	t.byTheJigger(&spec)
	out := &idea.Idea{Filling: search.Filling{}, Spec: spec}
	for k, i := range t.Gap.Keep {
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
	if out.Score, err = t.Judge.ScoreOnly(&spec); err != nil {
		return nil, err
	}
	if weigh.VerdictOf(out.Score) != weigh.Balanced || len(out.Filling.Moves) == 0 || t.Req.Guest.TooStrong(out.Drink.ABV) {
		return nil, nil
	}
	t.Rank(out)
	return out, nil
}

// fullBaseML is a full measure of a spirit, two ounces as a jigger rounds them: common practice,
// no source.
const fullBaseML = 60.0

// fillWithBase raises the largest spirit of what is left by as much as went, up to a full
// measure: it takes the place of the liqueur that it stood beside.
func (t *task) fillWithBase(s *flavor.Spec) {
	at := -1
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile.Base() && (at < 0 || p.ML > s.Pours[at].ML) {
			at = i
		}
	}
	if at < 0 || s.Pours[at].ML >= fullBaseML {
		return
	}
	p := &s.Pours[at]
	amount := measure.Snap(min(fullBaseML, p.ML+t.Gap.ML), p.Unit, p.Profile)
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

// onlyAmounts reports whether a fix moves amounts and nothing else: nothing comes in, nothing
// is left out, and the drink is made as it was.
func onlyAmounts(f *balance.Fix, of *flavor.Spec) bool {
	return f.Spec.Method == of.Method && len(f.Changes) > 0 && !slices.ContainsFunc(f.Changes, func(c balance.Change) bool {
		return c.Pour >= len(of.Pours) || c.From == 0 || c.To == 0 || of.Pours[c.Pour].Profile != c.Profile
	})
}
