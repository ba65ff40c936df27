package idea

import (
	"iter"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/ratio"
)

// Pours yields the pours of the whole drink, the substitutes in the place of
// the first pour that went.
func (t *Task) Pours(x *search.Filling) iter.Seq[flavor.Pour] {
	return func(yield func(flavor.Pour) bool) {
		parts := x.Parts
		for i := range t.Req.Spec.Pours {
			if slices.Contains(t.Gap.Keep, i) {
				if !yield(t.moved(i, x)) {
					return
				}
				continue
			}
			for k, c := range parts {
				if !yield(t.Poured(c, x.Amounts[k])) {
					return
				}
			}
			parts = nil
		}
	}
}

// Poured returns a part as it is poured: before the rest is mixed, or on top of it.
func (t *Task) Poured(part, amount int) flavor.Pour {
	p := t.Cands[part].Amounts[amount].Of(t.Cands[part].Profile)
	p.After = t.Gap.AddedAfter(p.Profile)
	return p
}

// moved returns pour i of the drink as a cover has it.
func (t *Task) moved(i int, x *search.Filling) flavor.Pour {
	p := t.Req.Spec.Pours[i]
	for _, m := range x.Moves {
		if t.Moves[m].Pour == i {
			p.Amount, p.Unit, p.ML = t.Moves[m].Amount.Value, t.Moves[m].Amount.Unit, t.Moves[m].Amount.ML
		}
	}
	return p
}

// SpecOf returns the whole drink.
func (t *Task) SpecOf(x *search.Filling) flavor.Spec {
	s := t.Req.Spec.Clone()
	s.Pours = slices.AppendSeq(make([]flavor.Pour, 0, len(t.Gap.Keep)+len(x.Parts)), t.Pours(x))
	return s
}

// weighs reports whether there is anything in a drink that a family is told by.
func weighs(s flavor.Spec) bool {
	e := ratio.EquivalentsOf(&s)
	return e.Total() > 0
}

// Pour mixes a filling and rates it.
func (t *Task) Pour(x *search.Filling) (*Idea, error) {
	out, err := t.Mixed(x)
	if err != nil {
		return nil, err
	}
	return out, t.Rate(out)
}

// Mixed mixes a filling and measures how far from the original the glass is.
func (t *Task) Mixed(x *search.Filling) (*Idea, error) {
	out := &Idea{Filling: *x, Spec: t.SpecOf(x)}
	return out, t.InGlass(out)
}

// InGlass mixes the drink of an idea, and measures how far from the original its glass is.
func (t *Task) InGlass(x *Idea) (err error) {
	if x.Drink, err = t.Mixer.Mix(&x.Spec); err != nil {
		return err
	}
	x.Glass = t.Space.Percept(&x.Spec, x.Drink)
	x.Distance = t.Between(t.Glass, x.Glass)
	return nil
}
