package weigh

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// A pour may take a drink to another family, where it is at home: juice makes a sour of what
// is stirred, tomato makes it savoury. Its faults are then those of a drink that nobody meant.
// What tells is the company: a drink that is made as no proven one is, and is a proven one but
// for that pour.

// What of the likeness to the nearest proven drink makes a pour misplaced: the drink is less
// like any than most, it is very like one without the pour, and that is clearly more. Chosen by
// the trial.
const (
	mostAlike    = 0.87 // of the whole
	leastAlike   = 0.85 // without the pour
	clearlyAlike = 0.10 // more than the whole
)

// leastMisplaced is the share of a drink up to which a pour is a touch.
const leastMisplaced = 0.04

// Misplaced is an ingredient that takes a drink away from those that are known.
type Misplaced struct {
	Profile *flavor.Profile
	Alike   float64 // how like a proven drink it is without, 0 to 1
}

// Known reports whether some proven drink is made as the draft is.
func (b *Build) Known() bool {
	return b.set.kin.Drinks() == 0 || b.alike(slices.Max(b.cosines())) >= mostAlike
}

// OddByName returns the pour, larger than a touch, without which the draft is what it is called after; nil if
// there is none such.
func (b *Build) OddByName() *flavor.Profile {
	p := b.Forgotten().Odd()
	size := b.sizeOf(b.ml)
	if i := slices.IndexFunc(b.parts, func(o makeup.Part) bool { return o.Profile == p }); i < 0 || b.parts[i].Amount(b.ml) < leastMisplaced*size.all {
		return nil
	}
	return p
}

// Misplaced returns the ingredients without each of which the drink is made as some proven drink
// is, though it is not with it; first that without which it is most like one. A base is never
// misplaced, nor what is counted in dashes.
func (b *Build) Misplaced() []Misplaced {
	if b.Known() || len(b.parts) < 3 {
		return nil
	}
	whole := b.alike(slices.Max(b.cosines()))
	var found []Misplaced
	size := b.sizeOf(b.ml)
	for i := range b.parts {
		p := &b.parts[i]
		if makeup.IsBase(p) || p.Role == flavor.PartSeasoning || p.Profile.Class.Kin() == flavor.KinFoam || p.Amount(b.ml) < leastMisplaced*size.all {
			continue
		}
		alike := b.alikeWithout(p)
		if alike >= max(leastAlike, whole+clearlyAlike) {
			found = append(found, Misplaced{p.Profile, alike})
		}
	}
	slices.SortStableFunc(found, func(x, y Misplaced) int { return cmp.Compare(y.Alike, x.Alike) })
	return found
}

// alike returns how like the draft a proven drink is, 0 to 1, given the cosine of the angle
// between the two.
func (b *Build) alike(cosine float64) float64 {
	return makeup.Likeness(cosine, b.set.tuning.HabitWidth)
}

// alikeWithout returns how like the draft without one of its parts the nearest proven drink is.
func (b *Build) alikeWithout(out *makeup.Part) float64 {
	var parts []makeup.Part
	for i := range b.parts {
		if b.parts[i].Profile != out.Profile {
			parts = append(parts, b.parts[i])
		}
	}
	ml := slices.Clone(b.ml)
	for _, i := range out.Pours {
		ml[i] = 0
	}
	kin := makeup.KinshipOf(parts, ml)
	return b.alike(slices.Max(b.set.kin.Cosines(&kin, b.room(b.set.kin.Drinks()))))
}
