package makeup

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// sum is one of the amounts that pours are added up to, by what they are.
type sum uint8

// The sums: of mL poured, of ethanol and of sweetness, both as [PerML] counts them.
const (
	uncounted sum = iota

	sodaML
	sparklingML
	juiceML
	weakML // water, tea
	coffeeML
	creamML
	milkML // what is thin of milk and plant drinks
	yolkML
	whiteML // of egg, or what foams like it
	herbML
	bittersML
	aniseML
	wineML  // aromatised or fortified
	stillML // plain wine
	beerML  // beer or cider
	savouryML

	bitterStrong // of amari, bitter aperitifs and bitters
	wineStrong
	plainStrong // of plain wine, beer and cider
	liqueurStrong

	syrupSweet
	spicedSweet
	liqueurSweet
	sodaSweet

	numSums
)

// tally is the sums that the pours of a class go to.
type tally struct {
	volume, strong, sweet sum
	sours                 bool // what it sours counts
}

// tallies has a row for each class that a signal tells of: common practice, no source.
// Bases count by their part, whatever their class.
var tallies = map[flavor.Class]tally{
	flavor.ClassAniseSpirit:     {volume: aniseML},
	flavor.ClassLiqueur:         {strong: liqueurStrong, sweet: liqueurSweet},
	flavor.ClassCreamLiqueur:    {volume: creamML, strong: liqueurStrong, sweet: liqueurSweet},
	flavor.ClassBitterAperitif:  {strong: bitterStrong},
	flavor.ClassAmaro:           {strong: bitterStrong},
	flavor.ClassVermouth:        {volume: wineML, strong: wineStrong},
	flavor.ClassAromatisedWine:  {volume: wineML, strong: wineStrong},
	flavor.ClassFortifiedWine:   {volume: wineML, strong: wineStrong},
	flavor.ClassWine:            {volume: stillML, strong: plainStrong},
	flavor.ClassSparklingWine:   {volume: sparklingML},
	flavor.ClassBeer:            {volume: beerML, strong: plainStrong},
	flavor.ClassCider:           {volume: beerML, strong: plainStrong},
	flavor.ClassCocktailBitters: {volume: bittersML, strong: bitterStrong}, // by the ounce they do what an amaro does
	flavor.ClassTincture:        {volume: bittersML},
	flavor.ClassSyrup:           {sweet: syrupSweet},
	flavor.ClassSugar:           {sweet: syrupSweet},
	flavor.ClassFruitSyrup:      {sweet: syrupSweet},
	flavor.ClassCordial:         {sweet: syrupSweet, sours: true}, // lime cordial sours as well as it sweetens
	flavor.ClassSpicedSyrup:     {sweet: spicedSweet},
	flavor.ClassSourJuice:       {sours: true},
	flavor.ClassVinegar:         {sours: true},
	flavor.ClassShrub:           {sours: true},
	flavor.ClassAcid:            {sours: true},
	flavor.ClassFruit:           {sours: true},
	flavor.ClassJuice:           {volume: juiceML, sours: true},
	flavor.ClassPuree:           {volume: juiceML, sours: true},
	flavor.ClassFreshHerb:       {volume: herbML},
	flavor.ClassDairy:           {volume: creamML},
	flavor.ClassPlantMilk:       {volume: creamML},
	flavor.ClassEgg:             {volume: whiteML},
	flavor.ClassFoam:            {volume: whiteML},
	flavor.ClassSoda:            {volume: sodaML, sweet: sodaSweet},
	flavor.ClassTea:             {volume: weakML},
	flavor.ClassWater:           {volume: weakML},
	flavor.ClassCoffee:          {volume: coffeeML},
	flavor.ClassSavoury:         {volume: savouryML},
}

// counting is what a pour of one ingredient is counted as.
type counting struct {
	tally
	base, rum, salty bool
	souring          float64 // mL of lemon juice to one mL of it
}

// countingOf returns what an ingredient is counted as, of which one mL is per.
func countingOf(p *flavor.Profile, per *ratio.Equivalents) counting {
	c := counting{tally: tallies[p.Class]}
	c.base = p.Base() && (p.ABV.Value > leastBaseABV || p.StandsForABV() > leastStandIn)
	c.rum = c.base && p.Class.Cane()
	switch {
	case p.Yolky():
		c.volume = yolkML
	case c.volume == creamML && p.Class.Part() == flavor.PartTexture && p.Fat.Value < leastCreamFat:
		c.volume = milkML
	case c.volume == bittersML && p.ABV.Value <= 0:
		c.volume = uncounted
	}
	switch {
	case c.volume == juiceML: // grapefruit sours, orange hardly does
		c.souring = max(0, per[ratio.Sour]-sweetHides*per[ratio.Sweet])
		c.salty = p.Salt.Value >= saltyGPerL
	case c.sours:
		c.souring = per[ratio.Sour]
	}
	return c
}

// leastCreamFat is the fat, g/L, from which milk or a plant drink is cream: single cream has
// 180, whole milk 36.
const leastCreamFat = 80.0

// leastBaseABV is the strength, in % vol, from which a bottle of a spirit's class is a
// base; leastStandIn is that from which what a bottle without alcohol stands for is one:
// alcohol-free vermouth is none.
const leastBaseABV, leastStandIn = 5.0, 25.0

// sweetHides is how much of the sourness of a juice its sweetness hides: common practice
// calls orange and pineapple juice sweet, and grapefruit sour.
const sweetHides = 1.5

// saltyGPerL is the salt from which a juice is savoury.
const saltyGPerL = 2.0

// sums are the amounts that signals are made from.
type sums struct {
	of                      [numSums]float64
	total                   float64 // mL
	ethanol, sweet, sour    float64
	baseEthanol, rumEthanol float64
	dryWine, dryStill       float64    // mL of wines that are dry
	paleWine, paleSugar     float64    // mL of wines that are no sweet vermouth, and mg of their sugar
	sweeteners, bases       [3]float64 // the largest, falling
	jiggers, logs           float64    // mL of bases, modifiers and sours, and Σ v ln v of each
	pours                   int        // of the same
}

func (t *sums) add(x *Part, ml float64) {
	c := &x.counted
	ethanol, sweet := x.Per[ratio.Strong]*ml, x.Per[ratio.Sweet]*ml
	t.total += ml
	t.ethanol += ethanol
	t.sweet += sweet
	t.sour += c.souring * ml
	t.of[c.volume] += ml
	t.of[c.strong] += ethanol
	t.of[c.sweet] += sweet
	if c.salty {
		t.of[savouryML] += ml
	}
	if c.sweet != uncounted && c.sweet != sodaSweet { // a mixer is no second sweetener
		keepLargest(&t.sweeteners, sweet)
	}
	t.addBase(c, ethanol)
	t.addWine(x.Profile, c.volume, ml)
	if x.Role == flavor.PartBase || x.Role == flavor.PartModifier || x.Role == flavor.PartSour {
		t.addJigger(ml)
	}
}

func (t *sums) addBase(c *counting, ethanol float64) {
	if !c.base {
		return
	}
	t.baseEthanol += ethanol
	keepLargest(&t.bases, ethanol)
	if c.rum {
		t.rumEthanol += ethanol
	}
}

// addWine adds how dry a wine is, by its volume in mL.
func (t *sums) addWine(p *flavor.Profile, to sum, ml float64) {
	switch to {
	case stillML:
		t.dryStill += ml * Dryness(p)
	case wineML:
		t.dryWine += ml * Dryness(p)
		if p.Sugar.Value <= paleGPerL {
			t.paleWine += ml
			t.paleSugar += ml * p.Sugar.Value
		}
	}
}

func (t *sums) addJigger(ml float64) {
	if ml <= 0 {
		return
	}
	t.jiggers += ml
	t.logs += ml * math.Log(ml)
	t.pours++
}

// keepLargest keeps v among the largest of a few.
func keepLargest(few *[3]float64, v float64) {
	for i, x := range few {
		if v > x {
			few[i], v = v, x
		}
	}
}

// dry returns the mL of the drink that are dry wine: what hardly sweetens the drink is dry
// in it, whatever its sugar.
func (t *sums) dry() float64 {
	if t.total <= 0 {
		return t.dryWine
	}
	return max(t.dryWine, t.paleWine*max(leastDry, 1-Ramp(t.paleSugar/t.total, drySweetens, wineSweetens)))
}

// paleGPerL is the sugar up to which a wine is no sweet vermouth; drySweetens and
// wineSweetens are the g/L that wines lend a drink, from where to where they sweeten it:
// dry vermouth does so by some 10 g/L at one to three.
const (
	paleGPerL                 = 120.0
	drySweetens, wineSweetens = 10.0, 20.0
	leastDry                  = 1e-9 // a signal that may grow with other amounts is never quite nothing
)

// Dryness is 1 for a wine of 40 g/L of sugar or less, as dry vermouth and fino
// are, 0 from 100 g/L, and falls between.
func Dryness(p *flavor.Profile) float64 {
	return min(1, max(0, (100-p.Sugar.Value)/60))
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
