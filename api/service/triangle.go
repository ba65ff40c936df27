package service

import (
	"context"
	"errors"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Triangle plans a triangle test of a drink of this house, or of a proven one, against the
// same with something else poured in it, or against another such drink, and how to pour both.
// A drink that nobody here has, and what nobody here knows, is for the bar to pour. It is a fault of
// "cover" if that is in the drink already, or covers nothing in it.
func (s *Snapshot) Triangle(ctx context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error) {
	strongest, known := coaching.SpiritABV, false
	a := s.knownDrink(r.Drink)
	var b *flavor.Spec
	var instead *flavor.Profile
	if a != nil {
		var err error
		if b, instead, err = s.other(ctx, a, r.Cover); err != nil {
			return nil, err
		}
		strongest, known, err = s.strongest(a, b)
		if err != nil {
			return nil, err
		}
	}
	out, err := coaching.LayOut(r, strongest)
	if err != nil {
		return nil, err
	}
	s.nameTasted(out, &r, a, b)
	if out.Assumed = !known; !known || b == nil {
		return out, nil
	}
	out.Instead = instead
	return out, s.pourBoth(out, a, b, r.GlassML)
}

// nameTasted says what is in the glasses of both sides, as far as it is known. A cover in an
// unknown drink tells at least what it brings itself.
func (s *Snapshot) nameTasted(out *coaching.TriangleAnswer, r *coaching.TriangleRequest, a, b *flavor.Spec) {
	if a == nil {
		out.Unknown = append(out.Unknown, r.Drink)
	} else {
		out.Tasted.Pours = append(out.Tasted.Pours, a.Pours...)
	}
	if b == nil {
		b = s.alone(r.Cover)
	}
	if b == nil {
		out.Unknown = append(out.Unknown, r.Cover)
		return
	}
	out.Tasted.Pours = append(out.Tasted.Pours, b.Pours...)
}

// alone returns what a name is of, a drink or one pour; nil if nobody here knows
// it.
func (s *Snapshot) alone(name string) *flavor.Spec {
	if spec := s.knownDrink(name); spec != nil {
		return spec
	}
	p, _, err := s.Shelf.Resolve(name)
	if err != nil {
		return nil
	}
	return &flavor.Spec{Pours: []flavor.Pour{{Profile: p}}}
}

// drinkCalled returns the drink of the menu that has a name, nil if none has.
func (s *Snapshot) drinkCalled(name string) *flavor.Spec {
	key := flavor.NormaliseName(name)
	for i := range s.Menu {
		if flavor.NormaliseName(s.Menu[i].Spec.Name) == key {
			return &s.Menu[i].Spec
		}
	}
	return nil
}

// knownDrink returns the drink of the menu that has a name, else the proven one; nil if
// nobody here knows it.
func (s *Snapshot) knownDrink(name string) *flavor.Spec {
	if own := s.drinkCalled(name); own != nil {
		return own
	}
	return s.ProvenCalled(name)
}

// other returns what a drink is tested against: another, or the drink with
// something poured in place of one of its own pours, which is returned too. It is nil if
// nobody here knows the name.
func (s *Snapshot) other(ctx context.Context, a *flavor.Spec, name string) (*flavor.Spec, *flavor.Profile, error) {
	if b := s.knownDrink(name); b != nil {
		if b == a {
			return nil, nil, flavor.Invalid("cover", name, "both are %s, and nobody can tell it from itself; name something else to pour in it", a.Name)
		}
		return b, nil, nil
	}
	p, _, err := s.Shelf.Resolve(name)
	if errors.Is(err, flavor.ErrUnknown) {
		return nil, nil, nil // the bar may pour what nobody here knows
	}
	if err != nil {
		return nil, nil, err
	}
	if a.Has(func(q *flavor.Profile) bool { return q.ID == p.ID }) {
		return nil, nil, flavor.Invalid("cover", name, "%s is in %s already; name something that is not", p.Name, a.Name)
	}
	return s.pouredInstead(ctx, a, p)
}

// pouredInstead returns a drink with an ingredient in place of the pour that it covers best,
// and that pour.
func (s *Snapshot) pouredInstead(ctx context.Context, a *flavor.Spec, p *flavor.Profile) (*flavor.Spec, *flavor.Profile, error) {
	inside, leave, err := s.Searches.Enter(ctx)
	if err != nil {
		return nil, nil, err
	}
	defer leave()
	var best *cover.Cover
	var instead *flavor.Profile
	for i := range a.Pours {
		q := a.Pours[i].Profile
		found, err := s.Finder.Find(inside, cover.Request{Spec: a, Missing: []*flavor.Profile{q}, Candidates: []*flavor.Profile{p}, Parts: 1, Limit: 1, Effort: coverEffort})
		if err != nil {
			return nil, nil, err
		}
		if len(found.Covers) > 0 && (best == nil || found.Covers[0].Distance < best.Distance) {
			best, instead = &found.Covers[0], q
		}
	}
	if best == nil {
		return nil, nil, flavor.Invalid("cover", p.Name, "%s covers nothing in %s; name what could be poured in place of one of its pours, or another drink of the menu", p.Name, a.Name)
	}
	return &best.Spec, instead, nil
}

// strongest returns the strength of the stronger of two drinks, in % vol. known is false if
// the first cannot be weighed; the second may be nil.
func (s *Snapshot) strongest(a, b *flavor.Spec) (abv float64, known bool, err error) {
	for _, spec := range []*flavor.Spec{a, b} {
		if spec == nil {
			continue
		}
		drink, err := s.Mixer.Mix(spec)
		if errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) {
			return coaching.SpiritABV, false, nil
		}
		if err != nil {
			return 0, false, err
		}
		abv = max(abv, drink.ABV)
	}
	return abv, true, nil
}

// pourBoth says how each side is poured for all tasters, and whether they look alike.
func (s *Snapshot) pourBoth(out *coaching.TriangleAnswer, a, b *flavor.Spec, glassML float64) error {
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
		into **coaching.TriangleSide
	}{{'A', a, &out.A}, {'B', b, &out.B}} {
		drink, err := s.Mixer.Mix(side.spec)
		if err != nil {
			return err
		}
		looks = append(looks, s.Catalogue.Space().Percept(side.spec, drink))
		if *side.into, err = s.sideOf(side.spec, drink, glasses[side.mark]+1, glassML); err != nil {
			return err
		}
	}
	out.Looks, _ = sense.ColourChange(looks[0], looks[1])
	return nil
}

// sideOf is a drink for so many glasses of so many mL.
func (s *Snapshot) sideOf(spec *flavor.Spec, drink *mix.Drink, glasses int, glassML float64) (*coaching.TriangleSide, error) {
	one, err := mix.Scale(spec, glassML/drink.VolumeML)
	if err != nil {
		return nil, err
	}
	batch, err := s.Mixer.Batch(&one, float64(glasses))
	if err != nil {
		return nil, err
	}
	foams := spec.HasKin(flavor.KinFoam)
	return &coaching.TriangleSide{Spec: *spec, Glasses: glasses, Sheet: tasting.SheetOf(batch), Foams: foams}, nil
}
