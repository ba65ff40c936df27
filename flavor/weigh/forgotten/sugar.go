package forgotten

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// How much citrus, less what sugar meets of it, to a millilitre of 40 % spirit: a rickey
// has 0.3, a collins whose sugar was forgotten 0.5. Beer hides more, by its bitterness; with
// some sugar to the citrus nothing was forgotten, whatever the ratio says of it.
const (
	bareFrom, bareTo   = 0.32, 0.41
	sugarMeets         = 2.0        // mL of lemon juice to one of 1:1 syrup
	sugarNone, sugared = 0.05, 0.12 // mL of 1:1 syrup to one of 40 % spirit
)

// sugarless returns how far a strong drink is out by citrus that nothing sweet meets.
func (d *Draft) sugarless(ml []float64, e *ratio.Equivalents) float64 {
	bare, beer, all := -sugarMeets*e[ratio.Sweet], 0.0, floats.Sum(ml)
	for i := range d.parts {
		switch p, amount := &d.parts[i], d.parts[i].Amount(ml); {
		case makeup.IsSharp(p):
			bare += p.Per[ratio.Sour] * amount
		case p.Profile.Class.Brewed():
			beer += amount
		}
	}
	if bare <= 0 {
		return 0
	}
	forgotten := 1 - makeup.Ramp(e[ratio.Sweet]/e[ratio.Strong], sugarNone, sugared)
	x := forgotten * makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine) * (1 - makeup.Certainty(beer, all, makeup.HalfLength)) *
		(bare/e[ratio.Strong] - bareFrom) / (bareTo - bareFrom)
	return max(0, x) * max(0, x)
}

// unsyruped returns how far a sour drink without syrup, sugar or anything that modifies it is
// from the proven drinks with the same rest, if nearly all of those have syrup or sugar. The
// little sugar of a fruit is none.
func (d *Draft) unsyruped(ml []float64, e *ratio.Equivalents) float64 {
	sour, all := 0.0, floats.Sum(ml)
	for i := range d.parts {
		if p := &d.parts[i]; makeup.IsSharp(p) {
			sour += p.Per[ratio.Sour] * p.Amount(ml)
		}
	}
	if sour <= 0 {
		return 0
	}
	without := makeup.Certainty(sour, e.Total(), halfSharp) * (1 - makeup.Ramp(e[ratio.Sweet]/sour, fruitMeets, sugarMet))
	for i := range d.parts {
		if p := &d.parts[i]; makeup.IsSweetener(p) || p.Role == flavor.PartModifier {
			without *= 1 - makeup.Presence(p.Amount(ml), all, makeup.HalfLiquid)
		}
	}
	if untold(without) {
		return 0
	}
	share, ok := d.having.sweet.shareOf(d.nearUnsweetened, d.book.sweet)
	if !ok {
		return 0
	}
	x := max(0, without*(share-soberFree)/(syrupedMost-soberFree))
	return x * x
}

// From where to where what is sweet without a syrup meets what is sour, mL of 1:1 syrup to one
// of lemon juice: three parts of strawberries to two of lime do not, two of cane juice to one
// do. And of drinks with the same rest, the share with syrup or sugar from where to go without
// is a fault; proven drinks without stop at 0.78, and at 0.86 with cane juice.
const (
	fruitMeets, sugarMet = 0.5, 0.65
	syrupedMost          = 0.80
)

// Unsweet returns how surely drinks with the same rest have no syrup or sugar, 0 to 1.
func (d *Draft) Unsweet() float64 {
	share, ok := d.having.sweet.shareOf(d.nearUnsweetened, d.book.sweet)
	if !ok {
		return 0
	}
	return makeup.Ramp(1-share, leastUnsweetened, mostUnsweetened)
}

// Of drinks with the same rest, the share without syrup or sugar from where one is
// strange, and where it is as strange as can be. Chosen by the trial.
const leastUnsweetened, mostUnsweetened = 0.8, 0.94
