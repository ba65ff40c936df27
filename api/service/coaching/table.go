package coaching

import (
	"context"
	"errors"

	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Table pours both sides of a triangle test from what a house knows.
type Table struct {
	Mixer *mix.Mixer
	Space *sense.Space

	// Drink returns the drink that has a name; nil if nobody in the house knows it.
	Drink func(name string) *flavor.Spec
	// Pour returns what one pour of a name is, and how the name was read; the error is
	// [flavor.ErrUnknown] if nobody in the house knows it.
	Pour func(name string) (*flavor.Profile, flavor.Match, error)
	// Instead returns a drink with an ingredient in place of the pour that it covers best, and
	// that pour. It is a fault of "cover" if it covers none.
	Instead func(ctx context.Context, drink *flavor.Spec, with *flavor.Profile) (*flavor.Spec, *flavor.Profile, error)
}

// Triangle plans a triangle test of a drink of this house, or of a proven one, against the
// same with something else poured in it, or against another such drink, and how to pour both.
// A drink that nobody here has, and what nobody here knows, is for the bar to pour. It is a fault of
// "cover" if that is in the drink already, or covers nothing in it.
func (t *Table) Triangle(ctx context.Context, r TriangleRequest) (*TriangleAnswer, error) {
	strongest, known := SpiritABV, false
	a := t.Drink(r.Drink)
	var b *flavor.Spec
	var instead *flavor.Profile
	if a != nil {
		var err error
		if b, instead, err = t.other(ctx, a, r.Cover); err != nil {
			return nil, err
		}
		strongest, known, err = t.strongest(a, b)
		if err != nil {
			return nil, err
		}
	}
	out, err := LayOut(r, strongest)
	if err != nil {
		return nil, err
	}
	t.nameTasted(out, &r, a, b)
	if out.Assumed = !known; !known || b == nil {
		return out, nil
	}
	out.Instead = instead
	return out, t.pourBoth(out, a, b, r.GlassML)
}

// nameTasted says what is in the glasses of both sides, as far as it is known. A cover in an
// unknown drink tells at least what it brings itself.
func (t *Table) nameTasted(out *TriangleAnswer, r *TriangleRequest, a, b *flavor.Spec) {
	if a == nil {
		out.Unknown = append(out.Unknown, r.Drink)
	} else {
		out.Tasted.Pours = append(out.Tasted.Pours, a.Pours...)
	}
	if b == nil {
		b = t.alone(r.Cover)
	}
	if b == nil {
		out.Unknown = append(out.Unknown, r.Cover)
		return
	}
	out.Tasted.Pours = append(out.Tasted.Pours, b.Pours...)
}

// alone returns what a name is of, a drink or one pour; nil if nobody here knows
// it.
func (t *Table) alone(name string) *flavor.Spec {
	if spec := t.Drink(name); spec != nil {
		return spec
	}
	p, _, err := t.Pour(name)
	if err != nil {
		return nil
	}
	return &flavor.Spec{Pours: []flavor.Pour{{Profile: p}}}
}

// other returns what a drink is tested against: another, or the drink with
// something poured in place of one of its own pours, which is returned too. It is nil if
// nobody here knows the name.
func (t *Table) other(ctx context.Context, a *flavor.Spec, name string) (*flavor.Spec, *flavor.Profile, error) {
	if b := t.Drink(name); b != nil {
		if b == a {
			return nil, nil, flavor.Invalid("cover", name, "both are %s, and nobody can tell it from itself; name something else to pour in it", a.Name)
		}
		return b, nil, nil
	}
	p, _, err := t.Pour(name)
	if errors.Is(err, flavor.ErrUnknown) {
		return nil, nil, nil // the bar may pour what nobody here knows
	}
	if err != nil {
		return nil, nil, err
	}
	if a.Has(func(q *flavor.Profile) bool { return q.ID == p.ID }) {
		return nil, nil, flavor.Invalid("cover", name, "%s is in %s already; name something that is not", p.Name, a.Name)
	}
	return t.Instead(ctx, a, p)
}

// strongest returns the strength of the stronger of two drinks, in % vol. known is false if
// the first cannot be weighed; the second may be nil.
func (t *Table) strongest(a, b *flavor.Spec) (abv float64, known bool, err error) {
	for _, spec := range []*flavor.Spec{a, b} {
		if spec == nil {
			continue
		}
		drink, err := t.Mixer.Mix(spec)
		if errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) {
			return SpiritABV, false, nil
		}
		if err != nil {
			return 0, false, err
		}
		abv = max(abv, drink.ABV)
	}
	return abv, true, nil
}

// pourBoth says how each side is poured for all tasters, and whether they look alike.
func (t *Table) pourBoth(out *TriangleAnswer, a, b *flavor.Spec, glassML float64) error {
	glasses := map[byte]int{}
	for i := range out.Servings {
		for k := range out.Servings[i].Order {
			glasses[out.Servings[i].Order[k]]++
		}
	}
	var looks []*sense.Percept
	for _, side := range []struct {
		mark byte
		spec *flavor.Spec
		into **TriangleSide
	}{{'A', a, &out.A}, {'B', b, &out.B}} {
		drink, err := t.Mixer.Mix(side.spec)
		if err != nil {
			return err
		}
		looks = append(looks, t.Space.Percept(side.spec, drink))
		if *side.into, err = t.sideOf(side.spec, drink, glasses[side.mark]+1, glassML); err != nil {
			return err
		}
	}
	out.Looks, _ = sense.ColourChange(looks[0], looks[1])
	return nil
}

// sideOf is a drink for so many glasses of so many mL.
func (t *Table) sideOf(spec *flavor.Spec, drink *mix.Drink, glasses int, glassML float64) (*TriangleSide, error) {
	one, err := mix.Scale(spec, glassML/drink.VolumeML)
	if err != nil {
		return nil, err
	}
	batch, err := t.Mixer.Batch(&one, float64(glasses))
	if err != nil {
		return nil, err
	}
	foams := spec.HasKin(flavor.KinFoam)
	return &TriangleSide{Spec: *spec, Glasses: glasses, Sheet: tasting.SheetOf(batch), Foams: foams}, nil
}
