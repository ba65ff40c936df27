// Package gauge knows what bars measure by that is no unit of its own, such as a jigger, a wineglass or a
// handful, and how much one of it is.
package gauge

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Measure is how much of a unit a measure of another kind is.
type Measure struct {
	Stated float64
	Unit   flavor.Unit // empty: the ingredient tells
	Note   string      // what is assumed; empty where nothing is
}

// measured lists what bars say for an amount of another unit, by the words for it. Where bars do not
// agree how much one is, the smallest that is sensible is taken. Common practice, no source.
var measured = []struct {
	words string
	is    Measure
}{
	{"dl decilitre decilitres deciliter deciliters", Measure{10, flavor.Centilitre, ""}},
	{"l lt ltr litre litres liter liters", Measure{100, flavor.Centilitre, ""}},
	{"kg kilo kilos kilogram kilograms", Measure{1000, flavor.Gram, ""}},
	{"lb lbs pound pounds", Measure{453.59237, flavor.Gram, ""}},
	{"drachm drachms", Measure{0.125, flavor.Ounce, "a drachm is taken as ⅛ oz"}},
	{"qt qts quart quarts", Measure{32, flavor.Ounce, "a quart is taken as 32 oz"}},
	{"gallon gallons gal", Measure{128, flavor.Ounce, "a gallon is taken as 128 oz, that of the United States; the imperial one is 4546 ml"}},
	{"pint pints pinte pintes", Measure{16, flavor.Ounce, "a pint is taken as 16 oz, that of the United States; the imperial one is 568 ml"}},
	{"cup cups", Measure{8, flavor.Ounce, "a cup is taken as 8 oz"}},
	{"gill gills", Measure{4, flavor.Ounce, "a gill is taken as 4 oz, that of the United States; the imperial one is 142 ml"}},
	{"wineglass wineglasses wineglassful wineglassfuls wine-glass wine-glasses wine-glassful wine-glassfuls", Measure{2, flavor.Ounce, "a wineglass is taken as 2 oz, as in old handbooks"}},
	{"jigger jiggers jig", Measure{1.5, flavor.Ounce, "a jigger is taken as 1½ oz"}},
	{"shot shots", Measure{1.5, flavor.Ounce, ""}},
	{"pony ponies", Measure{1, flavor.Ounce, "a pony is taken as 1 oz"}},
	{"nip nips", Measure{30, flavor.Millilitre, "a nip is taken as 30 ml"}},
	{"tot tots", Measure{25, flavor.Millilitre, "a tot is taken as 25 ml"}},
	{"dollop dollops", Measure{1, flavor.Tablespoon, "a dollop is taken as a tablespoon"}},
	{"squirt squirts capful capfuls", Measure{1, flavor.Teaspoon, "a squirt is taken as a teaspoon"}},
	{"measure measures misurino misurini medida medidas mesure mesures", Measure{1, flavor.PartUnit, "a measure is taken as a part"}},
	{"bl", Measure{1, flavor.Barspoon, "“bl” is taken as a barspoon"}},
	{"spoon spoons spoonful spoonfuls chamach chammach lepel lepels skje skjeer sked skedar ske skeer löffel", Measure{1, flavor.Barspoon, "a spoon is taken as a barspoon"}},
	{"d", Measure{1, flavor.Dash, "“d” is taken as a dash"}},
	{"shakes", Measure{1, flavor.Dash, "a shake is taken as a dash"}},
	{"grind grinds", Measure{0.1, flavor.Gram, "a grind is taken as 0.1 g"}},
	{handfuls, Measure{10, "", "a handful is taken as 10"}},
	{"bottle bottles btl btls can cans", Measure{1, "", ""}},
}

// handfuls are words for as many leaves or berries as a hand takes.
const handfuls = "handful handfuls handvoll poignée poignées puñado puñados manciata manciate handvol punhado punhados håndfuld håndfull handfull näve garść garści mutthi"

// little is the least that a hand pours, and littleOf the words for it. They stand before "of": "a touch
// too dry" measures nothing. Common practice, no source.
var little = Measure{0.25, flavor.Teaspoon, "so little is taken as ¼ tsp"}

const littleOf = "whisper whispers kiss hint hints touch suspicion soupçon soupcon whiff trace smidge smidgen hauch"

// Measures are those measures by their words.
var Measures = func() map[string]Measure {
	m := map[string]Measure{}
	for _, row := range measured {
		for w := range strings.FieldsSeq(row.words) {
			m[w] = row.is
		}
	}
	return m
}()

// At is the measure at the start of some tokens; false if there is none.
func At(toks []token.Token) (Measure, bool) {
	if len(toks) == 0 || toks[0].Kind != token.Word {
		return Measure{}, false
	}
	if len(toks) > 2 && Little(toks[0].Text) && ofWords.Has(toks[1].Text) {
		return little, true
	}
	m, ok := Measures[toks[0].Text]
	return m, ok
}

// ofWords join a measure and what it is of.
var ofWords = vocabulary.Words(`of de di`)

var (
	// alone are measures that bars name without a number for one of them.
	alone = vocabulary.Words(`jigger jig pony spoon spoonful nip bl squirt glug handvoll poignée puñado manciata handvol punhado håndfuld håndfull handfull näve garść mutthi`)
	// aloneOf are those that stand before "of" then.
	aloneOf = vocabulary.Words(littleOf + ` pint can`)
	// pulled is what bars pour by the pint without saying so.
	pulled = vocabulary.Words(`lager beer ale stout cider bitter pilsner pils ipa porter perry`)
	// littles are the words for the least that a hand pours.
	littles = vocabulary.Words(littleOf)
	inHand  = vocabulary.Words(handfuls)
)

// Handful reports whether a measure is as many leaves or berries as a hand takes.
func Handful(w string) bool { return inHand.Has(w) }

// Little reports whether a measure is one of the least that a hand pours, of which drinks are named
// too: "Kiss of Honey".
func Little(w string) bool { return littles.Has(w) }

// mostMeasured is how many pints or cups go into one drink at most; common practice.
const mostMeasured = 3

// Behind reports whether the last token is a measure behind its number, "stout 1 pint", and no
// glass: nobody pours 25 pints.
func Behind(toks []token.Token) bool {
	last := len(toks) - 1
	return last > 0 && toks[last-1].Kind == token.Numeral && toks[last-1].Value <= mostMeasured && glasses.Has(toks[last].Text) && !ServedIn(toks, last-1)
}

// glasses are measures that are glasses too.
var glasses = vocabulary.Words(`pint pints cup cups`)

// ServedIn reports whether the amount at a token is that of a glass that the drink is served in: "in a
// half pint".
func ServedIn(toks []token.Token, at int) bool {
	before := at - 1
	if before > 0 && (toks[before].Text == "a" || toks[before].Text == "an" || toks[before].Text == "the") {
		before--
	}
	return before > 0 && (toks[before].Text == "in" || toks[before].Text == "into")
}

// Alone reports whether some tokens begin with a measure that bars name without a number for one of it,
// "jigger rye", and go on.
func Alone(toks []token.Token) bool {
	return len(toks) > 1 && (alone.Has(toks[0].Text) || toks[0].Text == "pint" && pulled.Has(toks[1].Text) || aloneOf.Has(toks[0].Text) && len(toks) > 2 && ofWords.Has(toks[1].Text))
}
