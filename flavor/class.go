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

type classInfo struct {
	class Class
	part  Part
	solid bool // poured by piece or weight, not by volume
}

var classes = []classInfo{
	{ClassGin, PartBase, false}, {ClassVodka, PartBase, false}, {ClassWhiskey, PartBase, false}, {ClassRum, PartBase, false},
	{ClassAgaveSpirit, PartBase, false}, {ClassBrandy, PartBase, false}, {ClassFruitSpirit, PartBase, false},
	{ClassAniseSpirit, PartModifier, false}, {ClassOtherSpirit, PartBase, false},
	{ClassLiqueur, PartModifier, false}, {ClassCreamLiqueur, PartModifier, false}, {ClassBitterAperitif, PartModifier, false},
	{ClassAmaro, PartModifier, false}, {ClassVermouth, PartModifier, false}, {ClassAromatisedWine, PartModifier, false},
	{ClassFortifiedWine, PartModifier, false}, {ClassWine, PartModifier, false}, {ClassSparklingWine, PartLength, false},
	{ClassBeer, PartLength, false}, {ClassCider, PartLength, false},
	{ClassCocktailBitters, PartSeasoning, false}, {ClassTincture, PartSeasoning, false},
	{ClassSyrup, PartSweetener, false}, {ClassSpicedSyrup, PartSweetener, false}, {ClassFruitSyrup, PartSweetener, false},
	{ClassCordial, PartSweetener, false}, {ClassSugar, PartSweetener, true},
	{ClassSourJuice, PartSour, false}, {ClassJuice, PartLength, false}, {ClassPuree, PartLength, false},
	{ClassFruit, PartSeasoning, true}, {ClassFreshHerb, PartSeasoning, true}, {ClassSpice, PartSeasoning, true},
	{ClassDairy, PartTexture, false}, {ClassPlantMilk, PartTexture, false}, {ClassEgg, PartTexture, false}, {ClassFoam, PartTexture, false},
	{ClassSoda, PartLength, false}, {ClassTea, PartLength, false}, {ClassCoffee, PartLength, false}, {ClassWater, PartLength, false},
	{ClassVinegar, PartSour, false}, {ClassShrub, PartSour, false}, {ClassAcid, PartSour, false},
	{ClassSaline, PartSeasoning, false}, {ClassSavoury, PartSeasoning, false}, {ClassAlcoholFree, PartBase, false},
}

// Classes lists every class, in the order of a bar's inventory.
func Classes() []Class {
	out := make([]Class, len(classes))
	for i, c := range classes {
		out[i] = c.class
	}
	return out
}

func (c Class) info() (classInfo, bool) {
	for _, i := range classes {
		if i.class == c {
			return i, true
		}
	}
	return classInfo{}, false
}

// Valid reports whether c is one of [Classes].
func (c Class) Valid() bool { _, ok := c.info(); return ok }

// Part returns what the class usually does in a drink, empty if c is not valid.
func (c Class) Part() Part { i, _ := c.info(); return i.part }

// Solid reports whether the class is poured by piece or weight.
func (c Class) Solid() bool { i, _ := c.info(); return i.solid }
