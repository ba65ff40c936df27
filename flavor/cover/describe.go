package cover

import (
	"cmp"
	"iter"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
)

// found is one combination with its amounts.
type found struct {
	parts   []int         // candidates, ascending
	amounts [MaxParts]int // index into each one's amounts
	moves   []int
	square  float64 // squared distance
	rank    float64
	score   float64 // of the whole drink; 0 if it was not worked out
}

// describe turns a combination into a cover.
func (t *task) describe(x *found) (Cover, error) {
	c := Cover{Distance: math.Sqrt(x.square), rank: x.rank, Spec: t.specOf(x)}
	var err error
	if c.Ideal, err = t.ideal(x.parts); err != nil {
		return Cover{}, err
	}
	for k, i := range x.parts {
		a := t.cands[i].amounts[x.amounts[k]]
		c.Parts = append(c.Parts, pourOf(t.cands[i].profile, a))
	}
	slices.SortStableFunc(c.Parts, func(a, b flavor.Pour) int { return cmp.Compare(b.ML, a.ML) })
	for _, m := range x.moves {
		from := t.req.Spec.Pours[t.moves[m].pour]
		to := t.moves[m].amount
		c.Changes = append(c.Changes, balance.Change{Pour: t.moves[m].pour, Profile: from.Profile, Unit: from.Unit,
			From: from.Amount, To: to.value, FromML: from.ML, ToML: to.ml})
	}
	drink, err := t.finder.mixer.Mix(&c.Spec)
	if err != nil {
		return Cover{}, err
	}
	if c.Score = x.score; c.Score == 0 {
		if c.Score, err = t.finder.judge.ScoreOnly(&c.Spec); err != nil {
			return Cover{}, err
		}
	}
	c.ABVChange, c.VolumeChange = drink.ABV-t.drink.ABV, drink.VolumeML-t.drink.VolumeML
	t.compareAromas(&c, drink)
	t.compareAllergens(&c)
	c.Text = t.text(&c)
	return c, nil
}

func pourOf(p *flavor.Profile, a amount) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: a.value, Unit: a.unit, ML: a.ml,
		Match: flavor.Match{Asked: p.Name, How: flavor.MatchExact}}
}

// pours yields the pours of the whole drink, the substitutes in the place of
// the first pour that went.
func (t *task) pours(x *found) iter.Seq[flavor.Pour] {
	return func(yield func(flavor.Pour) bool) {
		parts := x.parts
		for i := range t.req.Spec.Pours {
			if slices.Contains(t.keep, i) {
				if !yield(t.moved(i, x)) {
					return
				}
				continue
			}
			for k, c := range parts {
				if !yield(pourOf(t.cands[c].profile, t.cands[c].amounts[x.amounts[k]])) {
					return
				}
			}
			parts = nil
		}
	}
}

// moved returns pour i of the drink as a cover has it.
func (t *task) moved(i int, x *found) flavor.Pour {
	p := t.req.Spec.Pours[i]
	for _, m := range x.moves {
		if t.moves[m].pour == i {
			p.Amount, p.ML = t.moves[m].amount.value, t.moves[m].amount.ml
		}
	}
	return p
}

// specOf returns the whole drink.
func (t *task) specOf(x *found) flavor.Spec {
	s := *t.req.Spec
	s.Notes = slices.Clone(s.Notes)
	s.Pours = slices.AppendSeq(make([]flavor.Pour, 0, len(t.keep)+len(x.parts)), t.pours(x))
	return s
}
