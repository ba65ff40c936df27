package mix

import (
	"math"

	"counterpour/flavor"
)

// PourSpread returns the standard deviation in mL of one pour as a hand makes
// it: common practice, no source. A jigger errs by half a millilitre and 2 %;
// dashes, drops, leaves and the like by a quarter.
func PourSpread(u flavor.Unit, ml float64) float64 {
	switch u {
	case flavor.Dash, flavor.Drop, flavor.Splash, flavor.Pinch, flavor.Sprig, flavor.Leaf,
		flavor.Slice, flavor.Wedge, flavor.Piece:
		return 0.25 * ml
	case flavor.Barspoon, flavor.Top:
		return 0.15 * ml
	case flavor.Gram, flavor.Cube:
		return 0.03 * ml
	}
	return math.Min(math.Hypot(0.5, 0.02*ml), 0.25*ml)
}

// reading is the numbers that carry a plus-or-minus.
type reading [5]float64

func read(t *finishedTotals) reading {
	v := t.after.VolumeML()
	return reading{v, 100 * t.after.Ethanol / EthanolDensity / v, 100 * t.after.Sugar / v,
		100 * t.after.Sour / v, 100 * t.share}
}

// plusMinus propagates every independent spread to first order: each input is
// moved by one standard deviation, and the squares of what that changes add up.
func plusMinus(s *flavor.Spec, doses []dose, rule dilutionRule) PlusMinus {
	base := finish(doses, rule, 1)
	centre := read(&base)
	var variance reading
	add := func(t finishedTotals) {
		moved := read(&t)
		for i := range variance {
			d := moved[i] - centre[i]
			variance[i] += d * d
		}
	}
	for i := range doses {
		p := &s.Pours[i]
		keep := doses[i]
		doses[i].ml += PourSpread(p.Unit, p.ML)
		add(finish(doses, rule, 1))
		doses[i] = keep
		for _, per := range movedProfiles(p.Profile, keep.per) {
			doses[i].per = per
			add(finish(doses, rule, 1))
		}
		doses[i] = keep
	}
	add(finish(doses, rule, 1+rule.relative))
	return PlusMinus{VolumeML: math.Sqrt(variance[0]), ABV: math.Sqrt(variance[1]), SugarPer100: math.Sqrt(variance[2]),
		AcidPer100: math.Sqrt(variance[3]), DilutionPct: math.Sqrt(variance[4])}
}

// movedProfiles returns the millilitre of p with its strength, its sugar and
// its acid in turn one spread higher, water making room.
func movedProfiles(p *flavor.Profile, per Ledger) []Ledger {
	var out []Ledger
	if p.ABV.Spread > 0 {
		l := per
		ml := p.ABV.Spread / 100
		l.Ethanol += ml * EthanolDensity
		l.Water = math.Max(0, l.Water-ml*WaterDensity)
		out = append(out, l)
	}
	if p.Sugar.Spread > 0 {
		l := per
		l.Sugar += p.Sugar.Spread / 1000
		l.Sweet += p.Sugar.Spread / 1000 * SweetnessOf(p.Sugars)
		l.Water = math.Max(0, l.Water-p.Sugar.Spread/1000/SucroseDensity*WaterDensity)
		out = append(out, l)
	}
	if p.Acid.Spread > 0 {
		l := per
		l.Acid += p.Acid.Spread / 1000
		l.Sour += p.Acid.Spread / 1000 * CitricOf(p.Acids)
		out = append(out, l)
	}
	return out
}
