package makeup

import (
	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// A sour may be made of a liqueur, with a spirit to back it up: the spirit is then a part of the
// base and not all of it, and how much of it there is is a matter of taste. What leads is told by
// the amounts: the liqueur is clearly more than all spirits, and it stands to the acid as a base
// does, not as a sweetener.

// From where to where a liqueur is clearly more than all spirits, and from where to where it stands
// to lemon juice as a base does: as a sweetener there is as much of the one as of the other, as a
// base twice as much. Common practice, no source.
const (
	backedFrom, backedTo = 1.2, 1.45
	asBaseFrom, asBaseTo = 1.15, 1.45
)

// How much of anything else that modifies, to one of all spirits, from where to where the liqueur
// does not lead alone: in equal parts one liqueur poured twice is no base. And how much of all
// spirits to lemon juice, from where to where they are a base by themselves.
const (
	besidesFrom, besidesTo = 0.4, 0.8
	aloneFrom, aloneTo     = 1.35, 1.65
)

// From what strength to what a liqueur is as strong as a spirit, % vol, and needs none to back it
// up: an orange liqueur is poured beside a spirit. Common practice, no source.
const weakFrom, weakTo = 32.0, 38.0

// mostBacking keeps a base that backs another from being none: a signal that is nothing is nothing
// with other amounts too.
const mostBacking = 0.9999

// BackingOf returns how surely the spirits of a drink of so many mL of each pour only back up
// what leads it, a liqueur or a wine, 0 to 1.
func BackingOf(parts []Part, ml []float64) float64 {
	return mostBacking * max(behindLiqueur(parts, ml), behindWine(parts, ml))
}

// behindLiqueur is that for a liqueur.
func behindLiqueur(parts []Part, ml []float64) float64 {
	var liqueur, strength, modifiers, base, sour float64
	for i := range parts {
		p := &parts[i]
		x := p.Amount(ml)
		switch p.Role {
		case flavor.PartBase:
			base += x
		case flavor.PartSour:
			sour += x * p.Per[ratio.Sour]
		case flavor.PartModifier:
			modifiers += x
			if p.Profile.Class == flavor.ClassLiqueur && x > liqueur {
				liqueur, strength = x, p.Profile.ABV.Value
			}
		}
	}
	if liqueur <= backedFrom*base || base <= 0 || sour <= 0 {
		return 0
	}
	return Ramp(liqueur/base, backedFrom, backedTo) * Ramp(liqueur/sour, asBaseFrom, asBaseTo) *
		(1 - Ramp((modifiers-liqueur)/base, besidesFrom, besidesTo)) * (1 - Ramp(base/sour, aloneFrom, aloneTo)) * (1 - Ramp(strength, weakFrom, weakTo))
}

// A stirred drink may be made of aromatised or fortified wine, as a reverse martini is, with a
// spirit to back it up. From where to where the wine is clearly more than all spirits: half as
// much again may be a slip. And how much of anything else, dashes aside, to one of all spirits,
// from where to where the wine does not lead alone. Common practice, no source.
const (
	wineLeadsFrom, wineLeadsTo = 1.4, 1.8
	wineOtherFrom, wineOtherTo = 0.2, 0.5
)

// From where to where, in mL, the wine is poured as a base is: where it is no more than what a
// spirit takes beside it, the drink is short of its spirit. And up to where to where, with all
// else, it is one stirred drink: beyond, a glass of wine was poured into one. Common practice,
// no source.
const (
	baseFromML, baseToML   = 42.0, 52.0
	wholeFromML, wholeToML = 110.0, 130.0
)

// behindWine returns how surely the spirits only back up aromatised or fortified wine.
func behindWine(parts []Part, ml []float64) float64 {
	var wine, base, other float64
	for i := range parts {
		p, x := &parts[i], parts[i].Amount(ml)
		switch class := p.Profile.Class; {
		case p.Role == flavor.PartBase:
			base += x
		case class.Kin() == flavor.KinWine && class.Laced():
			wine += x
		case !class.Dosed() && !class.Free():
			other += x
		}
	}
	if base <= 0 || wine <= wineLeadsFrom*base {
		return 0
	}
	return Ramp(wine, baseFromML, baseToML) * (1 - Ramp(wine+base+other, wholeFromML, wholeToML)) * Ramp(wine/base, wineLeadsFrom, wineLeadsTo) * (1 - Ramp(other/base, wineOtherFrom, wineOtherTo))
}
