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

// BackingOf returns how surely the spirits of a drink of so many mL of each pour only back up a
// liqueur that leads it, 0 to 1.
func BackingOf(parts []Part, ml []float64) float64 {
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
	return mostBacking * Ramp(liqueur/base, backedFrom, backedTo) * Ramp(liqueur/sour, asBaseFrom, asBaseTo) *
		(1 - Ramp((modifiers-liqueur)/base, besidesFrom, besidesTo)) * (1 - Ramp(base/sour, aloneFrom, aloneTo)) * (1 - Ramp(strength, weakFrom, weakTo))
}
