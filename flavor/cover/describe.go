package cover

import (
	"cmp"
	"iter"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/fill"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/cover/wording"
	"counterpour/flavor/sense"
)

// keeps reports whether an idea keeps the drink: it lies near, or hardly further and is
// what every bar pours, or is no other drink, poured by custom, and has lost nothing that
// led. What the trade pours far off, such as a tequila for a pisco, is another drink.
func (t *task) keeps(x *idea) bool {
	switch {
	case x.distance <= NearJND:
		return true
	case x.distance <= farJND:
		return t.everyBar(x)
	}
	return x.distance <= knownJND && t.practice.Pours(x.filling.Parts) && !x.lost()
}

// describe turns an idea into a cover.
func (t *task) describe(x *idea) Cover {
	order, spared := t.order()
	steps := sense.Between(order.glass, x.glass)
	c := Cover{Distance: steps.Total(), Keeps: t.keeps(x), Rank: x.rank, Spec: x.spec, Score: x.score, Custom: t.practice.Pours(x.filling.Parts), Without: spared}
	beside := order.between(order.glass, x.glass)
	if t.gap.Less {
		c.Beside = beside
	}
	c.Keeps = c.Keeps && (len(spared) == 0 || beside <= NearJND)
	t.addParts(&c, &x.filling)
	t.addWithout(&c)
	for _, m := range x.filling.Moves {
		from := t.req.Spec.Pours[t.moves[m].pour]
		to := t.moves[m].amount
		var fromUnit flavor.Unit
		if from.Unit != to.Unit {
			fromUnit = from.Unit
		}
		c.Changes = append(c.Changes, balance.Change{Pour: t.placeInOrder(t.moves[m].pour), Profile: from.Profile, Unit: to.Unit, FromUnit: fromUnit,
			From: from.Amount, To: to.Value, FromML: from.ML, ToML: to.ML})
	}
	c.ABV, c.ABVChange, c.VolumeChange = x.drink.ABV, x.drink.ABV-order.drink.ABV, x.drink.VolumeML-order.drink.VolumeML
	c.Gone = x.gone
	c.Notice = sense.NoticeOf(c.Distance, len(c.Gone) > 0)
	c.Lost, c.Gained = wording.Aromas(order.drink, x.drink)
	c.Marks, c.NewAllergens = c.Spec.Allergens(), c.Spec.NewAllergens(order.req.Spec)
	c.Ask = c.Spec.Ask(t.req.Guest.Avoid)
	t.addRead(&c)
	c.OtherSpirit = c.otherSpirit()
	c.Text = t.text(&c, x.glass)
	for i := range x.also {
		c.Also = append(c.Also, t.describe(&x.also[i]))
	}
	return c
}

// addParts lists the parts, the most first, and what each stands for.
func (t *task) addParts(c *Cover, x *search.Filling) {
	order := slices.Clone([]int{0, 1, 2}[:len(x.Parts)])
	ml := func(k int) float64 { return t.cands[x.Parts[k]].amounts[x.Amounts[k]].ML }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(ml(b), ml(a)) })
	for _, k := range order {
		i := x.Parts[k]
		c.Parts = append(c.Parts, t.poured(i, x.Amounts[k]))
		c.For = append(c.For, t.gap.Gone[t.inPlaceOf(i, ml(k))].Profile)
	}
}

// leastWeight keeps what hardly weighed in the drink from dividing by nothing.
const leastWeight = 1e-6

// inPlaceOf is which of several things that went so much of candidate i stands for: what it is
// least strange in place of, however little of the drink that was. What is poured by the
// jigger stands for no dashes, nor the other way round, where something else went too.
func (t *task) inPlaceOf(i int, ml float64) int {
	strange := func(m int) (measure bool, by float64) {
		gone := &t.gap.Gone[m]
		return (ml > gap.SeasoningML) != (gone.ML > gap.SeasoningML), t.entries[i].Strange[m] / max(gone.Weight, leastWeight)
	}
	stands := 0
	for m := range t.gap.Gone {
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
	for m := range t.gap.Gone {
		if p := t.gap.Gone[m].Profile; !slices.Contains(c.For, p) {
			c.Without = append(slices.Clip(c.Without), p)
		}
	}
}

// addRead lists the pours that the guest may have only if the label clears them.
func (t *task) addRead(c *Cover) {
	for i := range c.Spec.Pours {
		if p := c.Spec.Pours[i].Profile; !t.req.Guest.MayHave(p) && !slices.Contains(c.Read, p) {
			c.Read, c.ReadFor = append(c.Read, p), append(c.ReadFor, t.req.Guest.Cleared(p))
		}
	}
}

// pours yields the pours of the whole drink, the substitutes in the place of
// the first pour that went.
func (t *task) pours(x *search.Filling) iter.Seq[flavor.Pour] {
	return func(yield func(flavor.Pour) bool) {
		parts := x.Parts
		for i := range t.req.Spec.Pours {
			if slices.Contains(t.gap.Keep, i) {
				if !yield(t.moved(i, x)) {
					return
				}
				continue
			}
			for k, c := range parts {
				if !yield(t.poured(c, x.Amounts[k])) {
					return
				}
			}
			parts = nil
		}
	}
}

// poured returns a part as it is poured: before the rest is mixed, or on top of it.
func (t *task) poured(part, amount int) flavor.Pour {
	p := t.cands[part].amounts[amount].Of(t.cands[part].Profile)
	p.After = t.gap.AddedAfter(p.Profile)
	return p
}

// partsOf appends what a filling pours in the gap.
func (t *task) partsOf(x *search.Filling, to []fill.Portion) []fill.Portion {
	for k, i := range x.Parts {
		to = append(to, fill.Portion{Profile: t.cands[i].Profile, ML: t.cands[i].amounts[x.Amounts[k]].ML})
	}
	return to
}

// moved returns pour i of the drink as a cover has it.
func (t *task) moved(i int, x *search.Filling) flavor.Pour {
	p := t.req.Spec.Pours[i]
	for _, m := range x.Moves {
		if t.moves[m].pour == i {
			p.Amount, p.Unit, p.ML = t.moves[m].amount.Value, t.moves[m].amount.Unit, t.moves[m].amount.ML
		}
	}
	return p
}

// specOf returns the whole drink.
func (t *task) specOf(x *search.Filling) flavor.Spec {
	s := t.req.Spec.Clone()
	s.Pours = slices.AppendSeq(make([]flavor.Pour, 0, len(t.gap.Keep)+len(x.Parts)), t.pours(x))
	return s
}
