package weigh

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// What a pour is in its drink: how large, whether the drink is made of it, whether it is a
// base or an accent.

// size is the mL of a drink, and of its core: what lengthens it counts in part
// there, so that a splash more of soda makes no pour another one.
type size struct{ all, core float64 }

// lengthOff is the share of what lengthens that is no part of the core. Chosen by
// the trial.
const lengthOff = 0.55

func (b *Build) sizeOf(ml []float64) size {
	s := size{all: floats.Sum(ml)}
	s.core = s.all
	for i := range b.parts {
		if b.parts[i].Role == flavor.PartLength {
			s.core -= lengthOff * b.parts[i].Amount(ml)
		}
	}
	return s
}

// share returns what part of the core an ingredient is or, if it lengthens, of the
// drink.
func (s *size) share(x *makeup.Part, ml []float64) float64 {
	if x.Role == flavor.PartLength {
		return x.Amount(ml) / s.all
	}
	return x.Amount(ml) / s.core
}

// leading returns how surely a drink is made of part i first: of the spirits,
// liqueurs and wines that are poured nearly as much of as of any. What backs a liqueur up is
// a part of the base with it.
func (b *Build) leading(i int, ml []float64, most float64, size *size) float64 {
	if !leads(&b.parts[i]) || most <= 0 {
		return 0
	}
	amount, backs := b.parts[i].Amount(ml), 0.0
	if makeup.IsBase(&b.parts[i]) {
		amount, backs = b.baseML(ml), makeup.BackingOf(b.parts, ml)
	}
	return (1 - b.accent(i)) * max(backs, makeup.Ramp(amount/most, beside, foremost), size.large(&b.parts[i], ml))
}

// accent returns how surely part i is an accent however large it is poured, see
// [habit.Book.Accent]; a drink of no set is proven itself.
func (b *Build) accent(i int) float64 {
	if b.set == nil {
		return 0
	}
	return b.habit().accents[i]
}

// A pour is beside the largest up to a share beside of it; from foremost on a drink is made of
// both alike. Chosen by the trial, and so that a barspoon between them is no cliff.
const beside, foremost = 0.6, 0.92

// large returns how surely a pour is so large a part of a drink that it is made of it
// too, whatever else there is more of.
func (s *size) large(x *makeup.Part, ml []float64) float64 {
	const from, to = 0.27, 0.43
	return makeup.Ramp(s.share(x, ml), from, to)
}

// smells returns how surely a drink may smell of part i as it will: below nearlyMost of
// the largest pour a pour is an accent, and so is what proven drinks pour as one only.
func (b *Build) smells(i int, ml []float64, most float64, size *size) float64 {
	if !maySmell(&b.parts[i]) || most <= 0 {
		return 0
	}
	x := (1 - b.accent(i)) * max(makeup.Ramp(b.parts[i].Amount(ml)/most, nearlyMost, 1), size.large(&b.parts[i], ml))
	if b.parts[i].Role == flavor.PartBase && b.parts[i].Profile.Aroma[flavor.Smoke] > smoky {
		x *= b.ofTheBase(i, ml)
	}
	return x
}

// ofTheBase returns how surely part i is the base of a drink, or the half of a split one,
// and no accent: from half of the spirit on, and less surely from two fifths. What no proven
// drink pours splits only with its own class; beside others it has to be all but alone.
func (b *Build) ofTheBase(i int, ml []float64) float64 {
	akin := true
	for k := range b.parts {
		akin = akin && (!makeup.IsBase(&b.parts[k]) || b.parts[k].Profile.Class == b.parts[i].Profile.Class)
	}
	from, to := 0.40, 0.5
	if !akin && !b.isPoured(b.parts[i].Profile) {
		from, to = 0.65, 0.85
	}
	return makeup.Ramp(b.parts[i].Amount(ml)/b.baseML(ml), from, to)
}

// isPoured reports whether some proven drink pours an ingredient; a drink of no set is
// proven itself.
func (b *Build) isPoured(p *flavor.Profile) bool { return b.set == nil || b.set.book.Pours(p) }

const (
	nearlyMost = 0.75
	smoky      = 2.5 // intensity of smoke from which a spirit smothers others
)

// leads reports whether a drink may be made of an ingredient first.
func leads(p *makeup.Part) bool {
	return p.Role == flavor.PartBase || p.Role == flavor.PartModifier
}

// maySmell reports whether an ingredient is one that a drink may smell of first.
func maySmell(p *makeup.Part) bool {
	return p.Role == flavor.PartLength || leads(p) && p.Profile.Class != flavor.ClassAniseSpirit
}

// most returns the mL of the largest of some parts.
func (b *Build) most(ml []float64, in func(*makeup.Part) bool) float64 {
	var most float64
	for i := range b.parts {
		if in(&b.parts[i]) {
			most = max(most, b.parts[i].Amount(ml))
		}
	}
	return most
}

// besideBase returns how surely part i modifies a base: without one, with a dash of one, or
// with one that only backs it up, it stands for it.
func (b *Build) besideBase(i int, ml []float64) float64 {
	const from, to = 0.1, 0.4
	return makeup.Ramp(b.baseML(ml)/b.parts[i].Amount(ml), from, to) * (1 - makeup.BackingOf(b.parts, ml))
}

// baseML returns the mL of all bases, which are one where a base is split.
func (b *Build) baseML(ml []float64) (sum float64) {
	for i := range b.parts {
		if makeup.IsBase(&b.parts[i]) {
			sum += b.parts[i].Amount(ml)
		}
	}
	return sum
}

// largest returns the mL of what there is most of among what leads: a modifier, or all
// bases.
func (b *Build) largest(ml []float64) float64 { return max(b.most(ml, leads), b.baseML(ml)) }

// Of what is served by the glass on ice, the share of the drink that is neither that nor spirit
// nor water from where it is another drink, to where it surely is. Judged.
const hardlyBeside, surelyBeside = 0.1, 0.4

// sipping returns how surely a drink is part i on ice or with a spirit, and hardly anything
// beside: it is served so by the glass, so no amount of it is too much in itself.
func (b *Build) sipping(i int, ml []float64) float64 {
	if !b.parts[i].Profile.Class.Sipped() {
		return 0
	}
	var other float64
	for k := range b.parts {
		p := &b.parts[k]
		if c := p.Profile.Class; !c.Sipped() && !c.Free() && !makeup.IsBase(p) {
			other += p.Amount(ml)
		}
	}
	return 1 - makeup.Ramp(other/floats.Sum(ml), hardlyBeside, surelyBeside)
}
