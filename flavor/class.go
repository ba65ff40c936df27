package flavor

// Class is the kind of thing an ingredient is, by trade category.
type Class string

// The classes of ingredients.
const (
	ClassGin             Class = "gin"
	ClassVodka           Class = "vodka"
	ClassWhiskey         Class = "whiskey"
	ClassRum             Class = "rum"
	ClassAgaveSpirit     Class = "agave spirit"
	ClassBrandy          Class = "brandy"
	ClassFruitSpirit     Class = "fruit spirit"
	ClassAniseSpirit     Class = "anise spirit"
	ClassOtherSpirit     Class = "other spirit"
	ClassLiqueur         Class = "liqueur"
	ClassCreamLiqueur    Class = "cream liqueur"
	ClassBitterAperitif  Class = "bitter aperitif"
	ClassAmaro           Class = "amaro"
	ClassVermouth        Class = "vermouth"
	ClassAromatisedWine  Class = "aromatised wine"
	ClassFortifiedWine   Class = "fortified wine"
	ClassWine            Class = "wine"
	ClassSparklingWine   Class = "sparkling wine"
	ClassBeer            Class = "beer"
	ClassCider           Class = "cider"
	ClassCocktailBitters Class = "cocktail bitters"
	ClassTincture        Class = "tincture"
	ClassSyrup           Class = "syrup"
	ClassSpicedSyrup     Class = "spiced syrup"
	ClassFruitSyrup      Class = "fruit syrup"
	ClassCordial         Class = "cordial"
	ClassSugar           Class = "sugar"
	ClassSourJuice       Class = "sour juice"
	ClassJuice           Class = "juice"
	ClassPuree           Class = "puree"
	ClassFruit           Class = "fruit"
	ClassFreshHerb       Class = "fresh herb"
	ClassSpice           Class = "spice"
	ClassDairy           Class = "dairy"
	ClassPlantMilk       Class = "plant milk"
	ClassEgg             Class = "egg"
	ClassFoam            Class = "foam"
	ClassSoda            Class = "soda"
	ClassTea             Class = "tea"
	ClassCoffee          Class = "coffee"
	ClassWater           Class = "water"
	ClassVinegar         Class = "vinegar"
	ClassShrub           Class = "shrub"
	ClassAcid            Class = "acid solution"
	ClassSaline          Class = "saline"
	ClassSavoury         Class = "savoury"
	ClassAlcoholFree     Class = "alcohol-free spirit"
)

// Part is what a class usually does in a drink.
type Part string

// The parts of a drink.
const (
	PartBase      Part = "base"      // the spirit a guest orders by
	PartModifier  Part = "modifier"  // liqueurs, amari, wines: part strong, part sweet, part bitter
	PartSweetener Part = "sweetener" // syrups and sugars
	PartSour      Part = "sour"      // what sours
	PartLength    Part = "length"    // sodas, teas, juices, waters
	PartTexture   Part = "texture"   // egg, dairy, foams
	PartSeasoning Part = "seasoning" // bitters, tinctures, saline, herbs, spices
)

// Kin groups the classes that take each other's place within a part.
type Kin string

// The kin of classes.
const (
	KinSpirit    Kin = "spirit"
	KinAnise     Kin = "anise"
	KinLiqueur   Kin = "liqueur"
	KinCream     Kin = "cream"
	KinBitter    Kin = "bitter"
	KinWine      Kin = "wine"
	KinSparkling Kin = "sparkling"
	KinBitters   Kin = "bitters"
	KinSweetener Kin = "sweetener"
	KinSourJuice Kin = "sour juice"
	KinSharp     Kin = "sharp"
	KinJuice     Kin = "juice"
	KinFruit     Kin = "fruit"
	KinHerb      Kin = "herb"
	KinSpice     Kin = "spice"
	KinMilk      Kin = "milk"
	KinFoam      Kin = "foam"
	KinTea       Kin = "tea"
	KinSaline    Kin = "saline"
	KinSavoury   Kin = "savoury"
)

// Niche is the kind of what a class only takes the place of: the numbers of a brine, a
// foam or a coffee may fit a gap, and the guest would not thank us.
type Niche string

// The niches. What tastes of one plant also stands in for anything of that plant.
const (
	NicheAny     Niche = ""
	NicheSavoury Niche = "savoury"
	NicheFoam    Niche = "foam"
	NicheCream   Niche = "cream"
	NicheSour    Niche = "sour"
	NichePlant   Niche = "plant"
	NicheWater   Niche = "water"
	NicheBeer    Niche = "beer"
)

// Spoilage is how what is opened, pressed or cut of a class goes off.
type Spoilage string

// The ways to go off, the quickest first; what keeps for months has none.
const (
	SpoilsNever  Spoilage = ""
	SpoilsRawEgg Spoilage = "raw egg"
	SpoilsMilk   Spoilage = "milk"        // turns within days, and in acid at once
	SpoilsCut    Spoilage = "cut"         // fruit, herbs and plant milk: brown, and ferment
	SpoilsJuice  Spoilage = "juice"       // loses its smell within hours of being pressed
	SpoilsWine   Spoilage = "open bottle" // goes flat and stale
	SpoilsMade   Spoilage = "made"        // weak and sweet or brewed: ferments within days
	SpoilsFaded  Spoilage = "faded"       // vermouth and its like: loses its smell within a week
)

// traits are what is true of everything in a class.
type traits uint32

const (
	solid   traits = 1 << iota // poured by piece or weight, not by volume
	cloudy                     // wants a shaker: juice, egg, milk and what is sharp
	fixed                      // its amount is not moved to mend the balance
	apart                      // kept out of a batch: it does not hold or is not safe
	cut                        // kept out of a batch where it is counted: cut fruit browns
	fizzy                      // usually carbonated; a profile says whether it is
	tap                        // comes from the tap and costs nothing
	smooth                     // a drink is shaken for it, with no need of juice
	mild                       // much of what it tastes of goes with the strainer
	brewed                     // fermented and drunk by the glass: no soda stands for it, nor it for one
	curdles                    // turns in acid, but for what is cultured or thick with sugar
	pressed                    // juice of fresh fruit
	laced                      // wine made stronger or sweeter, or steeped with herbs
	dosed                      // counted in dashes or drops, or rinses a glass
	steeped                    // bars put flavours of their own into a bottle of it
	fined                      // cleared with what may come from animals, which nobody has to state
	vinous                     // fermented of fruit: wines, cider
	roasted                    // brewed of roasted beans
	sipped                     // a whole drink of its own on ice, or with a spirit: sweet, thick and strong at once
	cane                       // distilled of cane, and what a tropical drink is of
	tart                       // sweetens and sours at once
	plain                      // sweetens, and is hardly of a flavour
	hued                       // told apart by colour: white and brown spirits, red and white wines, pale and dark beers, clear and dark sodas
)

// Measured is how a class is usually poured.
type Measured uint8

// The ways to pour.
const (
	ByJigger Measured = iota
	ByDash            // or by the first unit that the profile has a yield for
	ByGram
	ByPiece // the first unit that the profile has a yield for; not poured without one
)

// classInfo is one row of the table of the trade: common practice, no source.
type classInfo struct {
	class  Class
	part   Part
	kin    Kin
	by     Measured
	mostML float64 // the largest usual pour in one drink
	// strength is that of an ordinary seasoning of the class, in intensities of aroma:
	// aromatic bitters, extracts, saline of 20 %, pepper, mint, brine, berries; 1 for the rest.
	strength float64
	abv      float64 // % vol of what bottles of it without alcohol stand for; 0 if for nothing that has any
	hotC     float64 // °C at which it goes into a hot drink that it heats: water that has boiled, brews, steamed milk, warmed wine; 0 if it heats none
	traits   traits
	niche    Niche
	spoils   Spoilage
}

var classes = []classInfo{
	{ClassGin, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassVodka, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassWhiskey, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassRum, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued | cane, NicheAny, SpoilsNever},
	{ClassAgaveSpirit, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassBrandy, PartBase, KinSpirit, ByJigger, 75, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassFruitSpirit, PartBase, KinSpirit, ByJigger, 60, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassAniseSpirit, PartModifier, KinAnise, ByJigger, 15, 1, 0, 0, dosed, NicheAny, SpoilsNever},
	{ClassOtherSpirit, PartBase, KinSpirit, ByJigger, 60, 1, 0, 0, hued, NicheAny, SpoilsNever},
	{ClassLiqueur, PartModifier, KinLiqueur, ByJigger, 45, 1, 0, 0, 0, NicheAny, SpoilsNever},
	{ClassCreamLiqueur, PartModifier, KinCream, ByJigger, 60, 1, 0, 0, cloudy | curdles | smooth | sipped, NicheCream, SpoilsMilk},
	{ClassBitterAperitif, PartModifier, KinBitter, ByJigger, 60, 1, 0, 0, steeped, NicheAny, SpoilsNever},
	{ClassAmaro, PartModifier, KinBitter, ByJigger, 60, 1, 0, 0, 0, NicheAny, SpoilsNever},
	{ClassVermouth, PartModifier, KinWine, ByJigger, 90, 1, 0, 0, fined | hued | laced | steeped | vinous, NicheAny, SpoilsFaded},
	{ClassAromatisedWine, PartModifier, KinWine, ByJigger, 90, 1, 0, 0, fined | hued | laced | vinous, NicheAny, SpoilsFaded},
	{ClassFortifiedWine, PartModifier, KinWine, ByJigger, 90, 1, 0, 0, fined | hued | laced | vinous, NicheAny, SpoilsFaded},
	{ClassWine, PartModifier, KinWine, ByJigger, 150, 1, 12.5, 75, fined | hued | vinous, NicheAny, SpoilsWine},
	{ClassSparklingWine, PartLength, KinSparkling, ByJigger, 150, 1, 11.5, 0, fizzy | fined | hued | vinous, NicheAny, SpoilsWine},
	{ClassBeer, PartLength, KinSparkling, ByJigger, 180, 1, 5, 75, fizzy | brewed | fined | hued, NicheBeer, SpoilsWine},
	{ClassCider, PartLength, KinSparkling, ByJigger, 180, 1, 5, 75, fizzy | brewed | fined | hued | vinous, NicheBeer, SpoilsWine},
	{ClassCocktailBitters, PartSeasoning, KinBitters, ByDash, 3.2, 180, 0, 0, 0, NicheAny, SpoilsNever},
	{ClassTincture, PartSeasoning, KinBitters, ByDash, 1.6, 85, 0, 0, dosed, NicheAny, SpoilsNever},
	{ClassSyrup, PartSweetener, KinSweetener, ByJigger, 30, 1, 0, 0, steeped | plain, NicheAny, SpoilsNever},
	{ClassSpicedSyrup, PartSweetener, KinSweetener, ByJigger, 30, 1, 0, 0, 0, NicheAny, SpoilsNever},
	{ClassFruitSyrup, PartSweetener, KinSweetener, ByJigger, 30, 1, 0, 0, 0, NicheAny, SpoilsNever},
	{ClassCordial, PartSweetener, KinSweetener, ByJigger, 30, 1, 0, 0, tart, NicheAny, SpoilsMade},
	{ClassSugar, PartSweetener, KinSweetener, ByGram, 12, 1, 0, 0, solid | plain, NicheAny, SpoilsNever},
	{ClassSourJuice, PartSour, KinSourJuice, ByJigger, 45, 1, 0, 0, cloudy | pressed, NicheSour, SpoilsJuice},
	{ClassJuice, PartLength, KinJuice, ByJigger, 120, 1, 0, 75, cloudy | pressed, NichePlant, SpoilsJuice},
	{ClassPuree, PartLength, KinFruit, ByJigger, 60, 1, 0, 0, cloudy, NichePlant, SpoilsCut},
	{ClassFruit, PartSeasoning, KinFruit, ByPiece, 40, 10, 0, 0, solid | cut | mild, NichePlant, SpoilsCut},
	{ClassFreshHerb, PartSeasoning, KinHerb, ByPiece, 8, 100, 0, 0, solid | fixed | apart | mild, NichePlant, SpoilsCut},
	{ClassSpice, PartSeasoning, KinSpice, ByPiece, 1, 250, 0, 0, solid | fixed, NicheSavoury, SpoilsNever},
	{ClassDairy, PartTexture, KinMilk, ByJigger, 120, 1, 0, 80, cloudy | curdles | smooth, NicheCream, SpoilsMilk},
	{ClassPlantMilk, PartTexture, KinMilk, ByJigger, 60, 1, 0, 80, cloudy | smooth, NicheCream, SpoilsCut},
	{ClassEgg, PartTexture, KinFoam, ByPiece, 50, 1, 0, 0, cloudy | fixed | apart, NicheFoam, SpoilsRawEgg},
	{ClassFoam, PartTexture, KinFoam, ByJigger, 30, 1, 0, 0, cloudy | fixed | apart, NicheFoam, SpoilsMilk},
	{ClassSoda, PartLength, KinSparkling, ByJigger, 180, 1, 0, 0, fizzy | hued, NicheAny, SpoilsNever},
	{ClassTea, PartLength, KinTea, ByJigger, 150, 1, 0, 85, steeped, NichePlant, SpoilsMade},
	{ClassCoffee, PartLength, KinTea, ByJigger, 150, 1, 0, 85, smooth | roasted, NichePlant, SpoilsMade},
	{ClassWater, PartLength, KinTea, ByJigger, 120, 1, 0, 92, tap, NicheWater, SpoilsNever},
	{ClassVinegar, PartSour, KinSharp, ByJigger, 7.5, 1, 0, 0, cloudy, NicheSour, SpoilsNever},
	{ClassShrub, PartSour, KinSharp, ByJigger, 45, 1, 0, 0, cloudy, NicheSour, SpoilsMade},
	{ClassAcid, PartSour, KinSharp, ByJigger, 15, 1, 0, 0, cloudy, NicheSour, SpoilsNever},
	{ClassSaline, PartSeasoning, KinSaline, ByDash, 1, 77, 0, 0, fixed | dosed, NicheSavoury, SpoilsNever},
	{ClassSavoury, PartSeasoning, KinSavoury, ByDash, 5, 28, 0, 75, fixed, NicheSavoury, SpoilsJuice},
	{ClassAlcoholFree, PartBase, KinSpirit, ByJigger, 75, 1, 40, 0, 0, NicheAny, SpoilsMade},
}

// Classes lists every class, in the order of a bar's inventory.
func Classes() []Class {
	out := make([]Class, len(classes))
	for i, c := range classes {
		out[i] = c.class
	}
	return out
}

// places is where the classes stand in the table, counted from 1, each at its shape or, where
// another is, at the next that is free; 0 is free. To judge a drink once asks for the class of a
// pour some dozens of times, and this takes less than half of what a map does.
var places = func() (out [shapes]uint8) {
	for i := range classes {
		at := classes[i].class.shape()
		for out[at] != 0 {
			at++
		}
		out[at] = uint8(i + 1)
	}
	return out
}()

// shapes is how many shapes there are: so many that few classes share one, and all that a
// shape counts to.
const shapes = 256

// shape is a number that differs for most words that differ. The empty one is like others.
func (c Class) shape() uint8 {
	if c == "" {
		return 0
	}
	return c[0] + 3*c[len(c)/2] + 5*c[len(c)-1] + uint8(7*len(c))
}

// Place returns where the class stands among [Classes], -1 if it is not valid.
func (c Class) Place() int {
	for at := c.shape(); places[at] != 0; at++ {
		if i := int(places[at]) - 1; classes[i].class == c {
			return i
		}
	}
	return -1
}

// ClassNamed returns the class of a name, with the very letters of the table where it stands there:
// what shares its letters is compared with it at once.
func ClassNamed(name string) Class {
	if i := Class(name).Place(); i >= 0 {
		return classes[i].class
	}
	return Class(name)
}

// info returns what is known of the class: nothing, and false, if it is not valid.
func (c Class) info() (*classInfo, bool) {
	if i := c.Place(); i >= 0 {
		return &classes[i], true
	}
	return &classInfo{}, false
}

func (c Class) is(t traits) bool { i, _ := c.info(); return i.traits&t != 0 }

// Valid reports whether c is one of [Classes].
func (c Class) Valid() bool { _, ok := c.info(); return ok }

// Part returns what the class usually does in a drink, empty if c is not valid.
func (c Class) Part() Part { i, _ := c.info(); return i.part }

// Kin returns the classes that c may take the place of, empty if c is not valid.
func (c Class) Kin() Kin { i, _ := c.info(); return i.kin }

// Niche returns the kind of what c only takes the place of, empty for what may help
// anywhere.
func (c Class) Niche() Niche { i, _ := c.info(); return i.niche }

// Measured returns how the class is usually poured.
func (c Class) Measured() Measured { i, _ := c.info(); return i.by }

// MostML returns the largest usual pour of the class in one drink, in mL; zero
// if c is not valid. What proven drinks pour comes before it.
func (c Class) MostML() float64 { i, _ := c.info(); return i.mostML }

// Solid reports whether the class is poured by piece or weight.
func (c Class) Solid() bool { return c.is(solid) }

// Shaken reports whether the class wants a shaker.
func (c Class) Shaken() bool { return c.is(cloudy) }

// Movable reports whether a bartender moves a pour of the class to mend the
// balance: eggs, herbs and salt are there for something else.
func (c Class) Movable() bool { return c.Valid() && !c.is(fixed) }

// Free reports whether the class comes from the tap and costs nothing.
func (c Class) Free() bool { return c.is(tap) }

// Fined reports whether bottles of the class are cleared with [Finings], as far as nobody
// states that they are not.
func (c Class) Fined() bool { return c.is(fined) }

// Hued reports whether the trade tells bottles of the class apart by colour, as
// white spirits from brown ones and red wines from white.
func (c Class) Hued() bool { return c.is(hued) }

// Smooth reports whether a drink is shaken for a pour of the class, with no need of
// juice: milk, cream, coffee.
func (c Class) Smooth() bool { return c.is(smooth) }

// Sipped reports whether the class is a whole drink of its own on ice, or with a spirit: cream
// liqueurs.
func (c Class) Sipped() bool { return c.is(sipped) }

// Mild reports whether much of what a pour of the class tastes of goes with the strainer.
func (c Class) Mild() bool { return c.is(mild) }

// UsualStrength returns the strength of an ordinary seasoning of the class, in
// intensities of aroma; 1 for what does not season, 0 if c is not valid.
func (c Class) UsualStrength() float64 { i, _ := c.info(); return i.strength }

// Heated reports whether a hot drink is made hot with a pour of the class.
func (c Class) Heated() bool { return c.HotC() > 0 }

// HotC returns the temperature, in °C, at which a pour of the class goes into a drink
// that is made hot with it; 0 if none is.
func (c Class) HotC() float64 { i, _ := c.info(); return i.hotC }

// Milky reports whether the class is milk, cream or what is poured for them.
func (c Class) Milky() bool { return c.Niche() == NicheCream }

// Spoils returns how the class goes off; empty for what keeps for months.
func (c Class) Spoils() Spoilage { i, _ := c.info(); return i.spoils }

// Pressed reports whether the class is juice of fresh fruit.
func (c Class) Pressed() bool { return c.is(pressed) }

// Laced reports whether the class is wine made stronger or sweeter, or steeped with herbs,
// such as vermouth and sherry.
func (c Class) Laced() bool { return c.is(laced) }

// Dosed reports whether the class is counted in dashes or drops, or rinses a glass.
func (c Class) Dosed() bool { return c.is(dosed) }

// Steeped reports whether bars put flavours of their own into a bottle of the class that
// is no spirit.
func (c Class) Steeped() bool { return c.is(steeped) }

// Brewed reports whether the class is fermented and drunk by the glass, as beer and
// cider are.
func (c Class) Brewed() bool { return c.is(brewed) }

// Vinous reports whether the class is fermented of fruit, as wines and cider are.
func (c Class) Vinous() bool { return c.is(vinous) }

// Roasted reports whether the class is brewed of roasted beans: coffee.
func (c Class) Roasted() bool { return c.is(roasted) }

// Cane reports whether the class is distilled of cane, and what a tropical drink is of.
func (c Class) Cane() bool { return c.is(cane) }

// Tart reports whether the class sweetens and sours at once.
func (c Class) Tart() bool { return c.is(tart) }

// Plain reports whether the class sweetens and is hardly of a flavour: sugar, and syrups of
// it.
func (c Class) Plain() bool { return c.is(plain) }

// Soft reports whether the class sparkles and stands for nothing that has alcohol: sodas.
func (c Class) Soft() bool { i, _ := c.info(); return i.traits&fizzy != 0 && i.abv == 0 }

// StandsForSpirit reports whether the class is poured as a base and has no alcohol.
func (c Class) StandsForSpirit() bool { i, _ := c.info(); return i.part == PartBase && i.abv > 0 }

// Curdles reports whether acid turns the class.
func (c Class) Curdles() bool { return c.is(curdles) }

// Sparkles reports whether the class is usually carbonated.
func (c Class) Sparkles() bool { return c.is(fizzy) }

// Apart reports whether a pour of the class, measured in u, stays out of a
// batch and goes into each drink as it is made: raw egg and foams are not safe
// or do not hold, and herbs and cut fruit brown and turn bitter.
func (c Class) Apart(u Unit) bool { return c.is(apart) || c.is(cut) && u.Counted() }

// UsualUnit returns the unit in which a bartender pours p: the dash of what is
// strong, grams of sugar, the piece of what has yields, else that of the jigger.
// It is false if p is poured by the piece and no yield says what a piece gives.
func (p *Profile) UsualUnit(jigger Unit) (Unit, bool) {
	i, _ := p.Class.info()
	own := len(p.Yields) > 0
	switch {
	case own && (i.by == ByDash || i.by == ByPiece):
		return p.Yields[0].Unit, true // the first unit is the usual one
	case i.by == ByDash:
		return Dash, true
	case i.by == ByGram:
		return Gram, true
	case i.by == ByPiece:
		return "", false
	}
	return jigger, true
}

// soberABV is the strength up to which a bottle is sold as one without alcohol.
const soberABV = 1.2

// Base reports whether p is what a guest orders by, a spirit or what stands for one.
func (p *Profile) Base() bool { return p.Class.Part() == PartBase }

// StandsForABV returns the strength, in % vol, of what a bottle without alcohol stands
// for in a drink: 0 if it has alcohol, or stands for nothing that has. What is sweet
// stands for an aperitif, a vermouth or a liqueur, the sweeter the weaker.
func (p *Profile) StandsForABV() float64 {
	const leastShare, sweetGPerL = 0.4, 200
	i, _ := p.Class.info()
	switch {
	case p.ABV.Value > soberABV:
		return 0
	case p.Class.StandsForSpirit():
		return i.abv * max(leastShare, 1-p.Sugar.Value/sweetGPerL)
	}
	return i.abv
}
