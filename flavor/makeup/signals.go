package makeup

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// Signal is one thing about the make-up of a drink that tells families apart:
// what sweetens it, what sours it, what lengthens it, how it is served. Each
// lies between 0 and 1 and hardly moves with the amounts, so that a drink out
// of balance still belongs to the family it set out for.
type Signal int

// The signals.
const (
	HasSour Signal = iota
	HasSyrup
	HasSpicedSyrup
	LiqueurSweetens // share of the sweetness that liqueurs bring
	ManySweeteners
	BitterSpirit // share of the alcohol that amari and bitter aperitifs bring
	WineSpirit   // share of the alcohol that aromatised and fortified wines bring
	PlainWine    // share of the alcohol that wine, beer and cider bring
	LiqueurSpirit
	HasBase
	TwoBases
	RumBase
	HasSoda
	HasSparkling
	HasJuice
	HasWeak // water, tea
	HasCoffee
	HasCream
	HasYolk
	HasEggWhite
	HasHerb
	HasBitters
	HasAbsinthe
	HasWine    // aromatised or fortified, however little of the alcohol it brings
	HasDryWine // the same, and dry
	HasBeer    // beer or cider
	HasSavoury // brines and sauces, and juices that are salty
	HasAlcohol
	Even // how equal the pours are
	IsShaken
	IsStirred
	IsBuilt
	IsBlended
	IsCrushed // crushed ice, or swizzled
	IsUp
	IsRocks
	IsLong
	IsHot

	NumSignals = int(IsHot) + 1
)

var signalNames = [NumSignals]string{"sour", "syrup", "spiced syrup", "liqueur sweetens", "many sweeteners",
	"bitter spirit", "wine spirit", "plain wine", "liqueur spirit", "base", "two bases", "rum", "soda", "sparkling", "juice",
	"weak", "coffee", "cream", "yolk", "egg white", "herb", "bitters", "absinthe",
	"wine", "dry wine", "beer", "savoury", "alcohol", "even",
	"shaken", "stirred", "built", "blended", "crushed", "up", "rocks", "long", "hot"}

// String returns the signal's name as the families' file writes it.
func (s Signal) String() string { return signalNames[s] }

// ParseSignal returns the signal that a name names.
func ParseSignal(name string) (Signal, bool) {
	for i, n := range signalNames {
		if n == name {
			return Signal(i), true
		}
	}
	return 0, false
}

// Fixed reports whether the signal does not depend on the amounts at all.
func (s Signal) Fixed() bool { return s >= IsShaken }

// Signals is a value for each signal.
type Signals [NumSignals]float64

// sums are the amounts that signals are made from.
type sums struct {
	total, ethanol, sweet                                     float64
	sour, syrup, spiced, liqueurSweet                         float64
	bitterEth, wineEth, plainEth, liqueurEth, baseEth, rumEth float64
	soda, sparkling, juice, weak, coffee                      float64
	cream, yolk, white, herb, bitters, absinthe               float64
	wine, dryWine, still, dryStill, beer, savoury             float64
	pale, paleSugar                                           float64    // mL of wines that are no sweet vermouth, and mg of their sugar
	sweeteners, bases                                         [3]float64 // the largest, falling
	jiggers                                                   float64    // mL of bases, modifiers and sours
	logs                                                      float64    // Σ v ln v of the same
	pours                                                     int
}

// largest keeps v among the largest of a few.
func largest(few *[3]float64, v float64) {
	for i, x := range few {
		if v > x {
			few[i], v = v, x
		}
	}
}

// SignalsOf reads the signals of a spec with other amounts, given its parts.
func SignalsOf(s *flavor.Spec, parts []Part, ml []float64) Signals {
	var t sums
	for i := range parts {
		t.add(&parts[i], parts[i].Amount(ml))
	}
	share := func(part, whole float64) float64 {
		if whole <= 0 {
			return 0
		}
		return part / whole
	}
	beside := share(t.baseEth, t.ethanol) // still wine beside a spirit does what vermouth does
	if t.total > 0 {                      // what hardly sweetens the drink is a dry wine in it
		t.dryWine = max(t.dryWine, t.pale*max(leastDry, 1-Ramp(t.paleSugar/t.total, drySweetens, wineSweetens)))
	}
	out := Signals{
		HasSour:         Presence(t.sour, t.total, HalfLiquid),
		HasSyrup:        Presence(t.syrup, t.total, HalfLiquid),
		HasSpicedSyrup:  Presence(t.spiced, t.total, HalfLiquid),
		LiqueurSweetens: share(t.liqueurSweet, t.sweet),
		BitterSpirit:    share(t.bitterEth, t.ethanol),
		WineSpirit:      share(t.wineEth, t.ethanol),
		PlainWine:       share(t.plainEth, t.ethanol),
		LiqueurSpirit:   share(t.liqueurEth, t.ethanol),
		HasBase:         Presence(t.baseEth, t.total, HalfLiquid),
		RumBase:         share(t.rumEth, t.ethanol),
		HasSoda:         Certainty(t.soda, t.total, HalfLength),
		HasSparkling:    Certainty(t.sparkling, t.total, HalfLength),
		HasJuice:        Certainty(t.juice, t.total, HalfLength),
		HasWeak:         Certainty(t.weak, t.total, halfWater),
		HasCoffee:       Certainty(t.coffee, t.total, HalfLength),
		HasCream:        Presence(t.cream, t.total, HalfLiquid),
		HasYolk:         Presence(t.yolk, t.total, HalfLiquid),
		HasEggWhite:     Presence(t.white, t.total, HalfLiquid),
		HasHerb:         Presence(t.herb, t.total, halfSeasoning),
		HasBitters:      Presence(t.bitters, t.total, halfSeasoning),
		HasAbsinthe:     Presence(t.absinthe, t.total, HalfLiquid),
		HasWine:         Presence(t.wine+beside*t.still, t.total, HalfWine),
		HasDryWine:      Presence(t.dryWine+beside*t.dryStill, t.total, HalfWine),
		HasBeer:         Presence(t.beer, t.total, HalfLength),
		HasSavoury:      Presence(t.savoury, t.total, HalfLiquid),
		HasAlcohol:      Presence(t.ethanol, t.total, HalfWine),
		Even:            t.evenness(),
	}
	out[ManySweeteners] = (Presence(t.sweeteners[1], t.total, HalfLiquid) + Presence(t.sweeteners[2], t.total, HalfLiquid)) / 2
	out[TwoBases] = Presence(t.bases[1], t.total, HalfLiquid)
	out.setServing(s.Method, s.Service)
	return out
}

func (t *sums) add(x *Part, ml float64) {
	p, per := x.Profile, &x.Per
	eth, sweet := per[ratio.Strong]*ml, per[ratio.Sweet]*ml
	t.total += ml
	t.ethanol += eth
	t.sweet += sweet
	switch x.Role {
	case flavor.PartBase, flavor.PartModifier, flavor.PartSour:
		if ml > 0 {
			t.jiggers += ml
			t.logs += ml * math.Log(ml)
			t.pours++
		}
	}
	switch p.Class {
	case flavor.ClassSyrup, flavor.ClassSugar, flavor.ClassFruitSyrup, flavor.ClassCordial:
		if p.Class == flavor.ClassCordial { // lime cordial sours as well as it sweetens
			t.sour += per[ratio.Sour] * ml
		}
		t.syrup += sweet
		largest(&t.sweeteners, sweet)
	case flavor.ClassSpicedSyrup:
		t.spiced += sweet
		largest(&t.sweeteners, sweet)
	case flavor.ClassLiqueur, flavor.ClassCreamLiqueur:
		t.liqueurSweet += sweet
		t.liqueurEth += eth
		largest(&t.sweeteners, sweet)
		if p.Class == flavor.ClassCreamLiqueur {
			t.cream += ml
		}
	case flavor.ClassBitterAperitif, flavor.ClassAmaro:
		t.bitterEth += eth
	case flavor.ClassVermouth, flavor.ClassAromatisedWine, flavor.ClassFortifiedWine:
		t.wineEth += eth
		t.wine += ml
		t.dryWine += ml * Dryness(p)
		if p.Sugar.Value <= paleGPerL {
			t.pale += ml
			t.paleSugar += ml * p.Sugar.Value
		}
	case flavor.ClassWine:
		t.plainEth += eth
		t.still += ml
		t.dryStill += ml * Dryness(p)
	case flavor.ClassBeer, flavor.ClassCider:
		t.plainEth += eth
		t.beer += ml
	case flavor.ClassSparklingWine:
		t.sparkling += ml
	case flavor.ClassSourJuice, flavor.ClassVinegar, flavor.ClassShrub, flavor.ClassAcid:
		t.sour += per[ratio.Sour] * ml
	case flavor.ClassSoda:
		t.soda += ml
	case flavor.ClassJuice, flavor.ClassPuree:
		t.juice += ml
		t.sour += ml * max(0, per[ratio.Sour]-sweetHides*per[ratio.Sweet]) // grapefruit sours, orange hardly does
		if p.Salt.Value >= saltyGPerL {
			t.savoury += ml
		}
	case flavor.ClassSavoury:
		t.savoury += ml
	case flavor.ClassWater, flavor.ClassTea:
		t.weak += ml
	case flavor.ClassCoffee:
		t.coffee += ml
	case flavor.ClassDairy, flavor.ClassPlantMilk:
		t.cream += ml
	case flavor.ClassEgg:
		t.addEgg(p, ml)
	case flavor.ClassFoam:
		t.white += ml
	case flavor.ClassFreshHerb:
		t.herb += ml
	case flavor.ClassCocktailBitters, flavor.ClassTincture:
		if p.ABV.Value > 0 {
			t.bitters += ml
		}
	case flavor.ClassAniseSpirit:
		t.absinthe += ml
	case flavor.ClassFruit:
		t.sour += per[ratio.Sour] * ml
	}
	if x.Role == flavor.PartBase && (p.ABV.Value > 5 || p.StandsForABV() > leastStandIn) {
		t.baseEth += eth
		largest(&t.bases, eth)
		if p.Class == flavor.ClassRum {
			t.rumEth += eth
		}
	}
}

// leastStandIn is the strength, in % vol, from which what a bottle without alcohol stands
// for is a base: alcohol-free vermouth is none.
const leastStandIn = 25.0

// paleGPerL is the sugar up to which a wine is no sweet vermouth; drySweetens and
// wineSweetens are the g/L that wines lend a drink, from where to where they sweeten it:
// dry vermouth does so by some 10 g/L at one to three.
const (
	paleGPerL                 = 120.0
	drySweetens, wineSweetens = 10.0, 20.0
	leastDry                  = 1e-9 // a signal that may grow with other amounts is never quite nothing
)

// sweetHides is how much of the sourness of a juice its sweetness hides: common practice
// calls orange and pineapple juice sweet, and grapefruit sour.
const sweetHides = 1.5

// saltyGPerL is the salt from which a juice is savoury.
const saltyGPerL = 2.0

// Dryness is 1 for a wine of 40 g/L of sugar or less, as dry vermouth and fino
// are, 0 from 100 g/L, and falls between.
func Dryness(p *flavor.Profile) float64 {
	return min(1, max(0, (100-p.Sugar.Value)/60))
}

// addEgg tells yolk from white by its fat.
func (t *sums) addEgg(p *flavor.Profile, ml float64) {
	if p.Fat.Value > 20 {
		t.yolk += ml
		return
	}
	t.white += ml
}

// evenness is how near the parts of a drink are to equal, 1 for equal parts:
// the entropy of their shares over its most.
func (t *sums) evenness() float64 {
	if t.pours < 2 {
		return 0
	}
	entropy := math.Log(t.jiggers) - t.logs/t.jiggers
	return entropy / math.Log(float64(t.pours))
}

func (s *Signals) setServing(m flavor.Method, v flavor.Service) {
	switch m {
	case flavor.Shake, flavor.DryShake:
		s[IsShaken] = 1
	case flavor.Stir, flavor.Throw:
		s[IsStirred] = 1
	case flavor.Build:
		s[IsBuilt] = 1
	case flavor.Swizzle:
		s[IsCrushed] = 1
	case flavor.Blend:
		s[IsBlended] = 1
	}
	switch v {
	case flavor.Up, flavor.Neat:
		s[IsUp] = 1
	case flavor.Rocks:
		s[IsRocks] = 1
	case flavor.Crushed:
		s[IsCrushed] = 1
	case flavor.Long:
		s[IsLong] = 1
	case flavor.Hot:
		s[IsHot] = 1
	}
}
