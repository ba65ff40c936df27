package forgotten

import (
	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// What is not sweet needs nothing sour: from where to where a drink is, as a share of 1:1
// syrup in all.
const sweetFrom, sweetTo = 0.02, 0.06

// sourless returns how far a sweet drink without anything sour is from the proven drinks
// with the same rest, if nearly all of those have something; or one whose fruit has hardly more
// acid than its own sugar meets, if nearly all of those have citrus.
func (d *Draft) sourless(ml []float64, e *ratio.Equivalents) float64 {
	sweet, all := makeup.Ramp(e[ratio.Sweet]/e.Total(), sweetFrom, sweetTo), floats.Sum(ml)
	for i := range d.parts {
		if wantsNoJuice(d.parts[i].Profile) {
			sweet *= 1 - makeup.Presence(d.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	without := sweet * (1 - makeup.Certainty(souring(d.parts, ml, tastedAcid), e.Total(), halfSharp))
	mild := sweet * (1 - makeup.Certainty(souring(d.parts, ml, spareAcid), e.Total(), halfSharp))
	if untold(without) && untold(mild) {
		return 0
	}
	sharp, ok := d.having.sharp.shareOf(d.nearUnsoured, d.book.sharp)
	if !ok {
		return 0
	}
	soured, _ := d.having.soured.shareOf(d.nearUnsoured, d.book.soured)
	most := soberMost - d.clear(ml)*(soberMost-clearMost)
	fruitMost := soberMost
	if mild > 0 { // the less of it tastes of nothing sour at all, the surer the fruit stands for the citrus
		pressed := souring(d.parts, ml, pressedAcid) / max(souring(d.parts, ml, tastedAcid), leastTasted)
		fruitMost -= pressed * (1 - without/mild) * (soberMost - mildMost)
	}
	x := max(without*(sharp-soberFree)/(most-soberFree), mild*(soured-soberFree)/(fruitMost-soberFree))
	return max(0, x) * max(0, x)
}

// souring returns how much lemon juice, in mL, is as sour as what sours a drink with such
// amounts, by what each ingredient has of it in a millilitre.
func souring(parts []makeup.Part, ml []float64, acid func(*makeup.Part) float64) (sum float64) {
	for i := range parts {
		sum += acid(&parts[i]) * parts[i].Amount(ml)
	}
	return sum
}

// tastedAcid is how much lemon juice a millilitre is as sour as: the little acid of a syrup is
// lost in its sugar.
func tastedAcid(p *makeup.Part) float64 {
	sour, sweet := p.Per[ratio.Sour], p.Per[ratio.Sweet]
	if makeup.IsSharp(p) || sour <= 0 {
		return sour
	}
	return sour * makeup.Ramp(sour, lostFrom*sweet, tastedFrom*sweet)
}

// pressedAcid is tastedAcid of what is pressed of a fruit that is no citrus: what sparkles brings
// its own acid.
func pressedAcid(p *makeup.Part) float64 {
	if makeup.IsSharp(p) || !p.Profile.Class.Pressed() {
		return 0
	}
	return tastedAcid(p)
}

// leastTasted keeps a share of nothing finite, mL of lemon juice.
const leastTasted = 1e-9

// spareAcid is how much lemon juice a millilitre is as sour as beside what its own sugar
// meets: that of pineapples has hardly any to spare.
func spareAcid(p *makeup.Part) float64 {
	if makeup.IsSharp(p) {
		return p.Per[ratio.Sour]
	}
	return max(0, p.Per[ratio.Sour]-metBySugar*p.Per[ratio.Sweet])
}

// How much lemon juice to one of 1:1 syrup an ingredient has, up to where its sugar hides its
// acid, from where both are tasted, and what its sugar meets of it: raspberry syrup has 0.19,
// ginger beer 0.33, the juice of cranberries 0.54 and that of pineapples 0.66.
const lostFrom, tastedFrom, metBySugar = 0.20, 0.35, 0.45

// What is shaken though nothing in it wants shaking lacks its juice sooner than other
// drinks: from this share, of those with the same rest, that have some. Proven drinks made
// so stop at 0.82.
const clearMost = 0.83

// clear returns how surely a drink is shaken with nothing in it that wants shaking, 0 to 1.
func (d *Draft) clear(ml []float64) float64 {
	if d.spec.Method != flavor.Shake {
		return 0
	}
	x, all := 1.0, floats.Sum(ml)
	for i := range d.parts {
		if p := d.parts[i].Profile; technique.WantsShaking(p) && !p.Whitens() {
			x *= 1 - makeup.Presence(d.parts[i].Amount(ml), all, makeup.HalfLiquid)
		}
	}
	return x
}

// wantsNoJuice reports whether a drink is shaken for an ingredient, with no need of juice: milk,
// cream, an egg with its yolk, coffee.
func wantsNoJuice(p *flavor.Profile) bool {
	return p.Class.Smooth() || p.Yolky()
}

// mildMost is the share of drinks with the same rest that have citrus from where the juice of a
// sweet fruit, which tastes sour and has no acid to spare, is as bad as the edge. Chosen by the
// trial.
const mildMost = 0.82

// halfSharp is the share of lemon juice at which a drink is half a sour one.
const halfSharp = 0.03
