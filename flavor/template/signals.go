package template

import (
	"math"

	"counterpour/flavor"
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

// fixed reports whether the signal does not depend on the amounts at all.
func (s Signal) fixed() bool { return s >= IsShaken }

// Signals is a value for each signal.
type Signals [NumSignals]float64

// sums are the amounts that signals are made from.
type sums struct {
	total, ethanol, sweet                                     float64
	sour, syrup, spiced, liqueurSweet                         float64
	bitterEth, wineEth, plainEth, liqueurEth, baseEth, rumEth float64
	soda, sparkling, juice, weak, coffee                      float64
	cream, yolk, white, herb, bitters, absinthe               float64
	wine, dryWine, beer, savoury                              float64
	sweeteners, bases                                         [3]float64 // the largest, falling
	jiggers                                                   float64    // mL of bases, modifiers and sours
	logs                                                      float64    // Σ v ln v of the same
	pours                                                     int
}

// presence turns an amount into how surely it is there, near 1 from a tenth of
// the drink and falling smoothly to 0 with the amount.
func presence(amount, total, half float64) float64 {
	if amount <= 0 || total <= 0 {
		return 0
	}
	return amount / (amount + half*total)
}

// The share of a drink at which something counts half. A splash of what lengthens
// makes no long drink.
const (
	halfLiquid    = 0.01
	halfSeasoning = 0.0005 // dashes and leaves
	halfLength    = 0.05   // what lengthens
	halfWater     = 0.12
	halfWine      = 0.02
)

// certainty is presence, falling off faster: below half of it little is sure.
func certainty(amount, total, half float64) float64 {
	x := presence(amount, total, half)
	return x * x / (x*x + (1-x)*(1-x))
}

// largest keeps v among the largest of a few.
func largest(few *[3]float64, v float64) {
	for i, x := range few {
		if v > x {
			few[i], v = v, x
		}
	}
}

func signalsOf(s *flavor.Spec, parts []part, ml []float64) Signals {
	var t sums
	for i := range parts {
		t.add(&parts[i], parts[i].amount(ml))
	}
	share := func(part, whole float64) float64 {
		if whole <= 0 {
			return 0
		}
		return part / whole
	}
	out := Signals{
		HasSour:         presence(t.sour, t.total, halfLiquid),
		HasSyrup:        presence(t.syrup, t.total, halfLiquid),
		HasSpicedSyrup:  presence(t.spiced, t.total, halfLiquid),
		LiqueurSweetens: share(t.liqueurSweet, t.sweet),
		BitterSpirit:    share(t.bitterEth, t.ethanol),
		WineSpirit:      share(t.wineEth, t.ethanol),
		PlainWine:       share(t.plainEth, t.ethanol),
		LiqueurSpirit:   share(t.liqueurEth, t.ethanol),
		HasBase:         presence(t.baseEth, t.total, halfLiquid),
		RumBase:         share(t.rumEth, t.ethanol),
		HasSoda:         certainty(t.soda, t.total, halfLength),
		HasSparkling:    certainty(t.sparkling, t.total, halfLength),
		HasJuice:        certainty(t.juice, t.total, halfLength),
		HasWeak:         certainty(t.weak, t.total, halfWater),
		HasCoffee:       certainty(t.coffee, t.total, halfLength),
		HasCream:        presence(t.cream, t.total, halfLiquid),
		HasYolk:         presence(t.yolk, t.total, halfLiquid),
		HasEggWhite:     presence(t.white, t.total, halfLiquid),
		HasHerb:         presence(t.herb, t.total, halfSeasoning),
		HasBitters:      presence(t.bitters, t.total, halfSeasoning),
		HasAbsinthe:     presence(t.absinthe, t.total, halfLiquid),
		HasWine:         presence(t.wine, t.total, halfWine),
		HasDryWine:      presence(t.dryWine, t.total, halfWine),
		HasBeer:         presence(t.beer, t.total, halfLength),
		HasSavoury:      presence(t.savoury, t.total, halfLiquid),
		HasAlcohol:      presence(t.ethanol, t.total, halfWine),
		Even:            t.evenness(),
	}
	out[ManySweeteners] = (presence(t.sweeteners[1], t.total, halfLiquid) + presence(t.sweeteners[2], t.total, halfLiquid)) / 2
	out[TwoBases] = presence(t.bases[1], t.total, halfLiquid)
	out.setServing(s.Method, s.Service)
	return out
}

func (t *sums) add(x *part, ml float64) {
	p, per := x.profile, &x.per
	eth, sweet := per[Strong]*ml, per[Sweet]*ml
	t.total += ml
	t.ethanol += eth
	t.sweet += sweet
	switch x.role {
	case flavor.PartBase, flavor.PartModifier, flavor.PartSour:
		if ml > 0 {
			t.jiggers += ml
			t.logs += ml * math.Log(ml)
			t.pours++
		}
	}
	switch p.Class {
	case flavor.ClassSyrup, flavor.ClassSugar, flavor.ClassFruitSyrup, flavor.ClassCordial:
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
		t.dryWine += ml * dryness(p)
	case flavor.ClassWine:
		t.plainEth += eth
	case flavor.ClassBeer, flavor.ClassCider:
		t.plainEth += eth
		t.beer += ml
	case flavor.ClassSparklingWine:
		t.sparkling += ml
	case flavor.ClassSourJuice, flavor.ClassVinegar, flavor.ClassShrub, flavor.ClassAcid:
		t.sour += per[Sour] * ml
	case flavor.ClassSoda:
		t.soda += ml
	case flavor.ClassJuice, flavor.ClassPuree:
		t.juice += ml
		t.sour += ml * max(0, per[Sour]-per[Sweet]) // grapefruit sours, orange hardly does
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
		t.sour += per[Sour] * ml
	}
	if x.role == flavor.PartBase && p.ABV.Value > 5 {
		t.baseEth += eth
		largest(&t.bases, eth)
		if p.Class == flavor.ClassRum {
			t.rumEth += eth
		}
	}
}

// saltyGPerL is the salt from which a juice is savoury.
const saltyGPerL = 2.0

// dryness is 1 for a wine of 40 g/L of sugar or less, as dry vermouth and fino
// are, 0 from 100 g/L, and falls between.
func dryness(p *flavor.Profile) float64 {
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

// SignalsOf reads the signals of a spec.
func SignalsOf(s *flavor.Spec) Signals {
	return signalsOf(s, partsIn(s), amountsOf(s))
}
