package cover

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/wording"
	"counterpour/flavor/sense"
)

// describe turns an idea into a cover.
func (t *task) describe(x *idea.Idea) Cover {
	order, spared := t.order()
	steps := sense.Between(order.Glass, x.Glass)
	c := Cover{Distance: steps.Total(), Keeps: t.Keeps(x), Rank: x.Rank, Spec: x.Spec, Score: x.Score, Custom: t.Practice.Pours(x.Filling.Parts), Without: spared}
	beside := order.Between(order.Glass, x.Glass)
	if t.Gap.Less {
		c.Beside = beside
	}
	c.Keeps = c.Keeps && (len(spared) == 0 || beside <= NearJND)
	t.addParts(&c, &x.Filling)
	t.addWithout(&c)
	for _, m := range x.Filling.Moves {
		from := t.Req.Spec.Pours[t.Moves[m].Pour]
		to := t.Moves[m].Amount
		var fromUnit flavor.Unit
		if from.Unit != to.Unit {
			fromUnit = from.Unit
		}
		c.Changes = append(c.Changes, balance.Change{Pour: t.placeInOrder(t.Moves[m].Pour), Profile: from.Profile, Unit: to.Unit, FromUnit: fromUnit,
			From: from.Amount, To: to.Value, FromML: from.ML, ToML: to.ML})
	}
	c.ABV, c.ABVChange, c.VolumeChange = x.Drink.ABV, x.Drink.ABV-order.Drink.ABV, x.Drink.VolumeML-order.Drink.VolumeML
	c.Gone = x.Gone
	c.Notice = sense.NoticeOf(c.Distance, len(c.Gone) > 0)
	c.Lost, c.Gained = wording.Aromas(order.Drink, x.Drink)
	c.Marks, c.NewAllergens = c.Spec.Allergens(), c.Spec.NewAllergens(order.Req.Spec)
	c.Ask = c.Spec.Ask(t.Req.Guest.Avoid)
	t.addRead(&c)
	c.OtherSpirit = c.otherSpirit()
	c.Called = t.called(&c)
	c.Text = t.text(&c, x.Glass)
	for i := range x.Also {
		c.Also = append(c.Also, t.describe(&x.Also[i]))
	}
	return c
}

// called is the name of the proven drink that a cover makes, "" if it makes none that has one.
func (t *task) called(c *Cover) string {
	if len(c.Parts) != 1 || !c.OtherSpirit && c.Keeps {
		return ""
	}
	return t.Gap.Sister(c.Parts[0].Profile.ID)
}

// addParts lists the parts, the most first, and what each stands for.
func (t *task) addParts(c *Cover, x *search.Filling) {
	order := slices.Clone([]int{0, 1, 2}[:len(x.Parts)])
	ml := func(k int) float64 { return t.Cands[x.Parts[k]].Amounts[x.Amounts[k]].ML }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(ml(b), ml(a)) })
	for _, k := range order {
		i := x.Parts[k]
		c.Parts = append(c.Parts, t.Poured(i, x.Amounts[k]))
		c.For = append(c.For, t.Gap.Gone[t.inPlaceOf(i, ml(k))].Profile)
	}
}

// leastWeight keeps what hardly weighed in the drink from dividing by nothing.
const leastWeight = 1e-6

// inPlaceOf is which of several things that went so much of candidate i stands for: what it is
// least strange in place of, however little of the drink that was. What is poured by the
// jigger stands for no dashes, nor the other way round, where something else went too.
func (t *task) inPlaceOf(i int, ml float64) int {
	strange := func(m int) (measure bool, by float64) {
		gone := &t.Gap.Gone[m]
		return (ml > gap.SeasoningML) != (gone.ML > gap.SeasoningML), t.Entries[i].Strange[m] / max(gone.Weight, leastWeight)
	}
	stands := 0
	for m := range t.Gap.Gone {
		other, by := strange(m)
		if least, best := strange(stands); least && !other || least == other && by < best {
			stands = m
		}
	}
	return stands
}

// addWithout lists what nothing is poured for, beside what the drink spares: of several things
// out some may have no part that stands for them.
func (t *task) addWithout(c *Cover) {
	if len(c.Parts) == 0 {
		return // all of it is left out
	}
	for m := range t.Gap.Gone {
		if p := t.Gap.Gone[m].Profile; !slices.Contains(c.For, p) {
			c.Without = append(slices.Clip(c.Without), p)
		}
	}
}

// addRead lists the pours that the guest may have only if the label clears them.
func (t *task) addRead(c *Cover) {
	for i := range c.Spec.Pours {
		if p := c.Spec.Pours[i].Profile; !t.Req.Guest.MayHave(p) && !slices.Contains(c.Read, p) {
			c.Read, c.ReadFor = append(c.Read, p), append(c.ReadFor, t.Req.Guest.Cleared(p))
		}
	}
}
