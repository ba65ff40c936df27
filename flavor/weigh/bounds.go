package weigh

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh/forgotten"
)

// OutOfBounds is a number of the finished drink that no drink has, whatever its
// family.
type OutOfBounds struct {
	Axis   ratio.Axis
	High   bool
	Amount float64
	Bound  float64   // the most that good drinks have, or the least
	Edges  float64   // squared distance from what is free, over that of the bound
	Grams  bool      // the amounts are g of ethanol in the glass
	Glass  mix.Glass // that is too small for it; without a name if it is not that
}

// Bounds of the finished drink. Proven drinks, as mixed here, have up to 1.3 g of
// acid, 18 g of sugar and 33 % vol, and 64 to 413 mL in the glass; the rest is
// common practice.
const (
	mostAcid    = 1.6  // g of citric acid in 100 mL
	mostSweet   = 22.0 // g of sucrose in 100 mL
	mostABV     = 38.0 // % vol; more is served neat
	mostNeatABV = 70.0
	leastML     = 55.0
	MostML      = 470.0
	batchML     = 1000.0 // from here a spec is for more than one glass
	freeShare   = 0.85   // of a bound, up to which it costs nothing
	freeSize    = 0.8    // of a bound of the whole glass, which a pour moves by all that it changes
)

// inGlass is a drink as its bounds see it.
type inGlass struct {
	ml, ethanol, abv, sweet, acid float64 // mL; g; % vol; g in 100 mL
}

// glass estimates what is in the glass from the pours, as the mixer does but for
// the little that volumes shrink on mixing.
func (b *Build) glass(ml []float64, e *ratio.Equivalents) inGlass {
	var still, top, ethanol, all float64
	for i := range b.spec.Pours {
		p := &b.spec.Pours[i]
		alcohol := ml[i] * p.Profile.ABV.Value / 100
		all += alcohol
		if mix.AfterIce(p) {
			top += ml[i]
			continue
		}
		still += ml[i]
		ethanol += alcohol
	}
	g := inGlass{ml: still + top, ethanol: all * mix.EthanolDensity}
	if still > 0 {
		g.ml += mix.IceML(b.spec.Method, b.spec.Service, still, top, ethanol/still)
	}
	g.abv = 100 * all / g.ml
	g.sweet = 100 * e[ratio.Sweet] * ratio.SyrupSweet / g.ml
	g.acid = 100 * e[ratio.Sour] * ratio.LemonSour / g.ml
	return g
}

// bounds tells every bound that the drink with other amounts comes near.
func (b *Build) bounds(ml []float64, e *ratio.Equivalents, tell func(OutOfBounds)) {
	g := b.glass(ml, e)
	abv := mostABV
	if b.spec.Service == flavor.Neat {
		abv = mostNeatABV
	}
	over := func(a ratio.Axis, amount, most, x float64) {
		if x > 0 {
			tell(OutOfBounds{Axis: a, High: true, Amount: amount, Bound: most, Edges: x * x})
		}
	}
	high := func(a ratio.Axis, amount, most float64) {
		over(a, amount, most, (amount/most-freeShare)/(1-freeShare))
	}
	high(ratio.Sour, g.acid, mostAcid)
	high(ratio.Sweet, g.sweet, mostSweet)
	high(ratio.Strong, g.abv, abv)
	over(ratio.Volume, g.ml, MostML, inOneGlass((g.ml/MostML-freeSize)/(1-freeSize), g.ml))
	if x := (leastML/g.ml - freeSize) / (1 - freeSize); x > 0 {
		tell(OutOfBounds{Axis: ratio.Volume, High: false, Amount: g.ml, Bound: leastML, Edges: x * x})
	}
	b.Forgotten().Lacks(ml, e, func(x forgotten.Lack) {
		tell(OutOfBounds{Axis: x.Axis, High: false, Amount: g.has(&x), Bound: x.Least, Edges: x.Edges})
	})
	b.overfull(g.ml, tell)
	b.large(g.ml, tell)
	b.tall(ml, e, g.ml, tell)
	b.potent(&g, tell)
	b.hot(ml, tell)
}

// inOneGlass returns how far a drink of so many mL is out by what one glass has of
// something at most, given how far it would be if it surely were one glass: the nearer it
// is to a batch, the less that can tell.
func inOneGlass(out, ml float64) float64 {
	const steep = 4.0 // per logarithm of the mL; a hundredth is then no cliff
	return min(out, max(0, steep*math.Log(batchML/ml)))
}

// has returns how much there is of what a drink lacks, in the unit of what counts as some.
func (g *inGlass) has(x *forgotten.Lack) float64 {
	switch x.Axis {
	case ratio.Strong:
		return g.abv
	case ratio.Sour:
		return g.acid
	case ratio.Sweet:
		return g.sweet
	}
	return x.ML
}

// Hot drinks are served between these, °C: common practice; much above, they
// scald (Brown and Diller, Burns 34:648, 2008, advise 57.8 °C; from memory).
const leastHotC, mostHotC = 48.0, 85.0

// hot bounds the temperature of a hot drink.
func (b *Build) hot(ml []float64, tell func(OutOfBounds)) {
	if b.spec.Service != flavor.Hot {
		return
	}
	c := mix.HotC(b.spec, ml)
	const degrees = 10.0 // before a bound, from where it costs
	if x := (c - mostHotC + degrees) / degrees; x > 0 {
		tell(OutOfBounds{Axis: ratio.Temperature, High: true, Amount: c, Bound: mostHotC, Edges: x * x})
	}
	if x := (leastHotC + degrees - c) / degrees; x > 0 {
		tell(OutOfBounds{Axis: ratio.Temperature, High: false, Amount: c, Bound: leastHotC, Edges: x * x})
	}
}

// boundEdges returns how far out the drink is by its bounds and its method, and by what its name says that
// it lacks.
func (b *Build) boundEdges(ml []float64, e *ratio.Equivalents) float64 {
	worst := b.Incomplete()
	b.bounds(ml, e, func(o OutOfBounds) { worst = math.Max(worst, o.Edges) })
	technique.MisstepsOf(b.spec, b.parts, ml, b.Forgotten().Stirred, func(s technique.Misstep) { worst = math.Max(worst, s.Edges) })
	return worst
}
