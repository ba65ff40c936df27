package technique

import (
	"math"
	"regexp"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
)

// Acid in milk and cream, g of citric acid. Milk turns at pH 4.6, which takes some
// 3 to 4 g to a litre of it: a spoon of lemon juice to a cup makes it thicken
// (common practice). Egg takes up acid as milk does, so that an egg nog on sherry
// stands. Cream has little casein to its fat; what counts there is how sharp the
// drink is: a splash of orange juice is taken, a sour is not. From memory, held
// against the proven drinks.
const (
	milkFrom, milkTo   = 2.8, 4.2 // to a litre of milk and egg
	creamFrom, creamTo = 2.6, 4.2 // to a litre of the drink, beyond what the cream takes up
	creamTakesGPerL    = 2.0
	blendedTimes       = 2.0   // of that, where ice and the blender keep it fine
	fizzedTimes        = 2.6   // of that, shaken and then made long with what sparkles, as fizzes show
	hotTimes           = 0.5   // of that in a hot drink: heat turns cream sooner; common practice
	culturedGPerL      = 5.0   // acid from which milk is turned already
	preservedGPerL     = 300.0 // sugar from which it thickens and does not part
	leastProteinGPL    = 10.0  // protein below which nothing curdles
)

// From where to where a glass is full of curds, which is worse than what only thickens, and by how
// many edges. Judged.
const curdsFrom, curdsTo, curds = 0.5, 0.85, 1.8

// curdled tells whether acid turns the milk or the cream of a drink: never less
// with more of the acid, nor with more of the cream until it takes the acid up.
func (w *workshop) curdled() {
	var t turning
	for i := range w.parts {
		t.add(&w.parts[i], w.parts[i].Amount(w.ml))
	}
	if t.milk+t.cream <= 0 || t.acid <= 0 || w.clarified() {
		return
	}
	milk := makeup.Ramp(t.acid*1000/math.Max(t.milk+t.egg, makeup.LeastML), milkFrom, milkTo) * makeup.Presence(t.milk, w.total, makeup.HalfLiquid)
	cream := t.ofCream(w.total, w.bearing()) * makeup.Presence(t.cream, w.total, makeup.HalfLiquid)
	if w.spec.Method.Aerates() { // egg white beaten with it holds cream in its foam, as fizzes show
		cream *= 1 - makeup.Presence(t.white, w.total, makeup.HalfLiquid)
	}
	if x := math.Max(milk, cream); x > 0 {
		w.tell(Misstep{Flaw: Curdled, Profile: t.by, With: t.with, Edges: ruinMisstep*x + curds*makeup.Ramp(x, curdsFrom, curdsTo)})
	}
}

// Curdles reports whether acid turns the milk or the cream of a drink so far that it cannot be
// served as balanced.
func Curdles(s *flavor.Spec) bool {
	curdles, ml := false, makeup.AmountsOf(s)
	w := workshop{spec: s, parts: makeup.PartsIn(s), ml: ml, total: floats.Sum(ml), tell: func(x Misstep) { curdles = x.Edges >= 1 }}
	w.curdled()
	return curdles
}

// turning is what of a drink turns and what turns it, in mL; acid in g.
type turning struct {
	milk, cream, egg, white, acid float64
	by, with                      *flavor.Profile // the most of each
	byML, withAcid                float64
}

func (t *turning) add(x *makeup.Part, ml float64) {
	p := x.Profile
	switch {
	case Turns(p):
		if p.Class.Kin() == flavor.KinCream || p.Cream() {
			t.cream += ml
		} else {
			t.milk += ml
		}
		if ml > t.byML {
			t.by, t.byML = p, ml
		}
		return
	case p.Class.Kin() == flavor.KinFoam:
		t.egg += ml
		if p.Whitens() {
			t.white += ml
		}
	case p.Class.Kin() == flavor.KinTea:
		return // tea and coffee stay above the pH at which milk turns
	}
	if acid := ml * x.Per[ratio.Sour] * ratio.LemonSour; acid > 0 {
		t.acid += acid
		if acid > t.withAcid {
			t.with, t.withAcid = p, acid
		}
	}
}

// bearing returns how many times the acid of a cold drink, that is shaken and served as it is,
// cream takes in the drink.
func (w *workshop) bearing() float64 {
	switch {
	case w.spec.Method == flavor.Blend:
		return blendedTimes
	case w.spec.Service == flavor.Hot:
		return hotTimes
	case w.spec.Method.Aerates():
		fizz, _ := w.of(bubbly)
		return 1 + (fizzedTimes-1)*makeup.Certainty(fizz, w.total, makeup.HalfLength)
	}
	return 1
}

// ofCream returns how far the acid curdles cream in a drink of total mL, which bears so many
// times the usual.
func (t *turning) ofCream(total, times float64) float64 {
	return makeup.Ramp((t.acid*1000-creamTakesGPerL*t.cream)/total, creamFrom*times, creamTo*times)
}

// Turns reports whether acid curdles an ingredient: milk, cream and cream
// liqueurs, but for what is cultured, or thick with sugar. Soy turns as milk does, of
// what is milked from plants; the others have no protein to speak of, or none that sets.
func Turns(p *flavor.Profile) bool {
	soy, _ := p.Allergen(flavor.Soybeans)
	return (p.Class.Curdles() || p.Class == flavor.ClassPlantMilk && soy == flavor.Contains) && p.Acid.Value < culturedGPerL && p.Sugar.Value < preservedGPerL && p.Texture.Value-p.Fat.Value >= leastProteinGPL
}

// clarified reports whether the draft's steps mean the milk to curdle and strain it
// off. What the drink is called says nothing of how it is made.
func (w *workshop) clarified() bool {
	return slices.ContainsFunc(w.spec.Steps, func(step string) bool {
		return clarifying.MatchString(step) && !warning.MatchString(step)
	})
}

// clarifying finds the words for milk that is meant to turn: not juice that is
// clarified already. Warning finds those that say what must not happen.
var (
	clarifying = regexp.MustCompile(`(?i)\b(?:clarify|clarified (?:milk|punch|drink)|milk[- ]wash(?:ed|ing)?|curds|the curd|whey|(?:let|until|till|leave|allow)\b[^.;]*\bcurdles?)\b`)
	warning    = regexp.MustCompile(`(?i)\b(?:not|never|avoid|without|lest)\b|n['’]t\b`)
)
