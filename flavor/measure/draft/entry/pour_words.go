package entry

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// approximations stand before an amount or a unit. The first list changes
// nothing that can be measured; the second is said in a note.
var (
	LooseWords = token.Words(`about approx approximately ca circa roughly around full level even exactly ~ good`)
	BiasWords  = token.Words(`scant fat heavy generous healthy short heaping heaped rounded bare hefty big small large tiny light thick thin nearly almost barely just under over shy`)
)

// leadWords begin a pour and say nothing of it.
var leadWords = vocabulary.Words(`add keep take grab get dann noch etwas pour measure plus then and with also combine use using mix start begin`)

// leadRoles are what a pour is in its drink, before its amount.
var leadRoles = vocabulary.Words(`base modifier mod split accent lengthener sweetener`)

// Measures are what bars say for an amount of another unit: common practice.
var Measures = map[string]struct {
	Stated float64
	unit   flavor.Unit
	note   string
}{
	"dl": {10, flavor.Centilitre, ""}, "decilitre": {10, flavor.Centilitre, ""}, "decilitres": {10, flavor.Centilitre, ""},
	"deciliter": {10, flavor.Centilitre, ""}, "deciliters": {10, flavor.Centilitre, ""},
	"l": {100, flavor.Centilitre, ""}, "lt": {100, flavor.Centilitre, ""}, "ltr": {100, flavor.Centilitre, ""}, "litre": {100, flavor.Centilitre, ""}, "litres": {100, flavor.Centilitre, ""},
	"liter": {100, flavor.Centilitre, ""}, "liters": {100, flavor.Centilitre, ""}, "qt": {32, flavor.Ounce, "a quart is taken as 32 oz"}, "qts": {32, flavor.Ounce, "a quart is taken as 32 oz"},
	"quart": {32, flavor.Ounce, "a quart is taken as 32 oz"}, "quarts": {32, flavor.Ounce, "a quart is taken as 32 oz"},
	"jigger": {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"}, "jiggers": {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"},
	"jig":  {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"},
	"pony": {1, flavor.Ounce, "a pony is taken as 1 oz"}, "ponies": {1, flavor.Ounce, "a pony is taken as 1 oz"},
	"measure": {1, flavor.PartUnit, "a measure is taken as a part"}, "measures": {1, flavor.PartUnit, "a measure is taken as a part"},
	"cup": {8, flavor.Ounce, "a cup is taken as 8 oz"}, "cups": {8, flavor.Ounce, "a cup is taken as 8 oz"},
	"bl": {1, flavor.Barspoon, "“bl” is taken as a barspoon"}, "misurino": {1, flavor.PartUnit, "a measure is taken as a part"}, "misurini": {1, flavor.PartUnit, "a measure is taken as a part"},
	"medida": {1, flavor.PartUnit, "a measure is taken as a part"}, "medidas": {1, flavor.PartUnit, "a measure is taken as a part"}, "mesure": {1, flavor.PartUnit, "a measure is taken as a part"}, "mesures": {1, flavor.PartUnit, "a measure is taken as a part"},
	"d": {1, flavor.Dash, "“d” is taken as a dash"}, "shakes": {1, flavor.Dash, "a shake is taken as a dash"},
	"spoon": {1, flavor.Barspoon, "a spoon is taken as a barspoon"}, "spoons": {1, flavor.Barspoon, "a spoon is taken as a barspoon"}, "spoonful": {1, flavor.Barspoon, "a spoon is taken as a barspoon"}, "spoonfuls": {1, flavor.Barspoon, "a spoon is taken as a barspoon"},
	"nip": {30, flavor.Millilitre, "a nip is taken as 30 ml"}, "nips": {30, flavor.Millilitre, "a nip is taken as 30 ml"},
	"bottle": {1, "", ""}, "bottles": {1, "", ""}, "btl": {1, "", ""}, "btls": {1, "", ""}, "can": {1, "", ""}, "cans": {1, "", ""}, // of what size, the ingredient tells
	"shot": {1.5, flavor.Ounce, ""}, "shots": {1.5, flavor.Ounce, ""},
}

// parts are pieces of a fruit that are a share of it: common practice.
var partsOfFruit = map[string]float64{"cheek": 1.0 / 3, "cheeks": 1.0 / 3, "half": 0.5, "halves": 0.5, "quarter": 0.25, "quarters": 0.25, "eighth": 0.125, "eighths": 0.125}

// tail is what the words after a name say.
type tail struct {
	Unit     flavor.Unit // of a pour without an amount
	after    bool
	muddled  bool
	squeezed bool
	Garnish  bool
	each     bool
	remark   string // kept as a note
	refuse   bool   // states no amount: "to taste"
	Beside   bool   // is served beside the drink, and kept as its garnish
}

// tails are the words that may follow a name, the longest first.
var tails = []struct {
	words []string
	tail  tail
}{
	{[]string{"to", "top", "up"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "top", "off"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"to", "fill", "up"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "top", "with"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"for", "the", "rinse"}, tail{Unit: flavor.Rinse, after: true}}, {[]string{"as", "a", "float"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"to", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"top", "up"}, tail{Unit: flavor.Top, after: true}}, {[]string{"top-up"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"top", "off"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "fill"}, tail{Unit: flavor.Top, after: true}}, {[]string{"fill", "up"}, tail{Unit: flavor.Top, after: true}}, {[]string{"full", "up"}, tail{Unit: flavor.Top, after: true}}, {[]string{"filled", "up"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"on", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"en", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"as", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"as", "a", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"on", "foam"}, tail{Unit: flavor.Top, after: true}}, {[]string{"on", "the", "foam"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"auffüllen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"aufgießen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"for", "topping"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"to", "lengthen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "finish"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"to", "float"}, tail{Unit: flavor.Float, after: true}}, {[]string{"floated", "on", "top"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"to", "rinse"}, tail{Unit: flavor.Rinse, after: true}}, {[]string{"for", "rinse"}, tail{Unit: flavor.Rinse, after: true}},
	{[]string{"to", "spritz"}, tail{Unit: flavor.Spritz, after: true}}, {[]string{"to", "mist"}, tail{Unit: flavor.Spritz, after: true}},
	{[]string{"to", "taste"}, tail{refuse: true}}, {[]string{"as", "needed"}, tail{refuse: true}}, {[]string{"if", "needed"}, tail{refuse: true}},
	{[]string{"for", "muddling"}, tail{muddled: true}}, {[]string{"to", "muddle"}, tail{muddled: true}},
	{[]string{"to", "garnish"}, tail{Garnish: true}}, {[]string{"for", "garnish"}, tail{Garnish: true}}, {[]string{"as", "garnish"}, tail{Garnish: true}},
	{[]string{"as", "a", "garnish"}, tail{Garnish: true}}, {[]string{"for", "the", "garnish"}, tail{Garnish: true}}, {[]string{"garnish"}, tail{Garnish: true}},
	{[]string{"top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"topper"}, tail{Unit: flavor.Top, after: true}}, {[]string{"topped"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"auff"}, tail{Unit: flavor.Top, after: true}}, {[]string{"auffüllend"}, tail{Unit: flavor.Top, after: true}}, {[]string{"aufgefüllt"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"zum", "auffüllen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"zum", "aufgießen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"a", "colmare"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"per", "colmare"}, tail{Unit: flavor.Top, after: true}}, {[]string{"colmare"}, tail{Unit: flavor.Top, after: true}}, {[]string{"pour", "allonger"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"pour", "compléter"}, tail{Unit: flavor.Top, after: true}}, {[]string{"à", "compléter"}, tail{Unit: flavor.Top, after: true}}, {[]string{"compléter"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"para", "completar"}, tail{Unit: flavor.Top, after: true}}, {[]string{"a", "completar"}, tail{Unit: flavor.Top, after: true}}, {[]string{"para", "rellenar"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"om", "aan", "te", "vullen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"om", "af", "te", "toppen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"aftoppen"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"til", "topp"}, tail{Unit: flavor.Top, after: true}}, {[]string{"fyll", "opp"}, tail{Unit: flavor.Top, after: true}}, {[]string{"topped", "up"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"float"}, tail{Unit: flavor.Float, after: true}}, {[]string{"floated"}, tail{Unit: flavor.Float, after: true}}, {[]string{"flt"}, tail{Unit: flavor.Float, after: true}}, {[]string{"floater"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"rinse"}, tail{Unit: flavor.Rinse, after: true}}, {[]string{"rinsed"}, tail{Unit: flavor.Rinse, after: true}}, {[]string{"wash"}, tail{Unit: flavor.Rinse, after: true}},
	{[]string{"spritz"}, tail{Unit: flavor.Spritz, after: true}}, {[]string{"spray"}, tail{Unit: flavor.Spritz, after: true}}, {[]string{"mist"}, tail{Unit: flavor.Spritz, after: true}},
	{[]string{"muddled"}, tail{muddled: true}}, {[]string{"mudd"}, tail{muddled: true}}, {[]string{"muddle"}, tail{muddled: true}}, {[]string{"muddeln"}, tail{muddled: true}}, {[]string{"anmuddeln"}, tail{muddled: true}}, {[]string{"gemuddled"}, tail{muddled: true}},
	{[]string{"squeezed"}, tail{squeezed: true}}, {[]string{"juiced"}, tail{squeezed: true}}, {[]string{"exprimido"}, tail{squeezed: true}}, {[]string{"exprimida"}, tail{squeezed: true}}, {[]string{"espremido"}, tail{squeezed: true}}, {[]string{"espremida"}, tail{squeezed: true}}, {[]string{"pressée"}, tail{squeezed: true}}, {[]string{"spremuta"}, tail{squeezed: true}}, {[]string{"pressé"}, tail{squeezed: true}}, {[]string{"spremuto"}, tail{squeezed: true}}, {[]string{"ausgepresst"}, tail{squeezed: true}},
	{[]string{"machacado"}, tail{muddled: true}}, {[]string{"machacada"}, tail{muddled: true}}, {[]string{"machacados"}, tail{muddled: true}}, {[]string{"machacadas"}, tail{muddled: true}}, {[]string{"gemuddelt"}, tail{muddled: true}}, {[]string{"pestato"}, tail{muddled: true}}, {[]string{"pestata"}, tail{muddled: true}}, {[]string{"pestati"}, tail{muddled: true}}, {[]string{"pestate"}, tail{muddled: true}}, {[]string{"pilé"}, tail{muddled: true}}, {[]string{"pilée"}, tail{muddled: true}}, {[]string{"pilées"}, tail{muddled: true}}, {[]string{"macerado"}, tail{muddled: true}}, {[]string{"macerada"}, tail{muddled: true}}, {[]string{"gekneusd"}, tail{muddled: true}}, {[]string{"squeezed", "in"}, tail{squeezed: true}},
	{[]string{"on", "the", "side"}, tail{Garnish: true, Beside: true}}, {[]string{"on", "side"}, tail{Garnish: true, Beside: true}}, {[]string{"a", "parte"}, tail{Garnish: true, Beside: true}}, {[]string{"aparte"}, tail{Garnish: true, Beside: true}}, {[]string{"à", "part"}, tail{Garnish: true, Beside: true}}, {[]string{"separat"}, tail{Garnish: true, Beside: true}},
	{[]string{"squeeze"}, tail{Unit: flavor.Wedge, remark: "a squeeze is taken as a wedge"}},
	{[]string{"sunk"}, tail{after: true}}, {[]string{"sink"}, tail{Unit: flavor.Float, after: true}}, {[]string{"sinker"}, tail{Unit: flavor.Float, after: true}}, {[]string{"to", "sink"}, tail{after: true}}, {[]string{"fill"}, tail{Unit: flavor.Top, after: true}}, {[]string{"drizzled"}, tail{Unit: flavor.Float, after: true}}, {[]string{"drizzle"}, tail{Unit: flavor.Float, after: true}}, {[]string{"drizzle", "on", "top"}, tail{Unit: flavor.Float, after: true}}, {[]string{"drizzle", "over"}, tail{Unit: flavor.Float, after: true}}, {[]string{"drizzled", "over"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"poured", "over"}, tail{Unit: flavor.Float, after: true}}, {[]string{"layered"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"over", "the", "top"}, tail{Unit: flavor.Float, after: true}}, {[]string{"over", "top"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"layered", "on", "top"}, tail{Unit: flavor.Float, after: true}}, {[]string{"drizzled", "on", "top"}, tail{Unit: flavor.Float, after: true}},
	{[]string{"muddled", "lightly"}, tail{muddled: true}}, {[]string{"muddled", "gently"}, tail{muddled: true}}, {[]string{"muddled", "softly"}, tail{muddled: true}}, {[]string{"muddled", "hard"}, tail{muddled: true}}, {[]string{"muddled", "well"}, tail{muddled: true}},
	{[]string{"lightly", "muddled"}, tail{muddled: true}}, {[]string{"gently", "muddled"}, tail{muddled: true}}, {[]string{"softly", "muddled"}, tail{muddled: true}},
	{[]string{"splash"}, tail{Unit: flavor.Splash}}, {[]string{"splsh"}, tail{Unit: flavor.Splash}},
	{[]string{"to", "curdle"}, tail{}}, {[]string{"to", "clarify"}, tail{}}, {[]string{"to", "dilute"}, tail{}}, {[]string{"to", "balance"}, tail{}}, {[]string{"to", "sweeten"}, tail{}}, {[]string{"to", "loosen"}, tail{}}, {[]string{"to", "lift"}, tail{}},
	{[]string{"last"}, tail{after: true}}, {[]string{"from", "freezer"}, tail{}}, {[]string{"from", "the", "freezer"}, tail{}}, {[]string{"fr", "freezer"}, tail{}}, {[]string{"ex", "freezer"}, tail{}},
	{[]string{"from", "fridge"}, tail{}}, {[]string{"from", "the", "fridge"}, tail{}}, {[]string{"from", "siphon"}, tail{}}, {[]string{"from", "the", "siphon"}, tail{}}, {[]string{"from", "the", "gun"}, tail{}}, {[]string{"from", "gun"}, tail{}},
	{[]string{"v", "cold"}, tail{}}, {[]string{"very", "cold"}, tail{}}, {[]string{"ice", "cold"}, tail{}}, {[]string{"to", "start"}, tail{}},
	{[]string{"give", "or", "take"}, tail{}}, {[]string{"more", "or", "less"}, tail{}}, {[]string{"or", "so"}, tail{}}, {[]string{"or", "thereabouts"}, tail{}},
	{[]string{"dropped", "in"}, tail{}}, {[]string{"drop", "in"}, tail{}},
	{[]string{"in", "shaker"}, tail{}}, {[]string{"in", "the", "shaker"}, tail{}}, {[]string{"in", "tin"}, tail{}}, {[]string{"in", "the", "tin"}, tail{}},
	{[]string{"in", "glass"}, tail{}}, {[]string{"in", "the", "glass"}, tail{}},
	{[]string{"freshly", "squeezed"}, tail{squeezed: true}}, {[]string{"fresh", "squeezed"}, tail{squeezed: true}},
	{[]string{"to", "the", "brim"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "brim"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "the", "top"}, tail{Unit: flavor.Top, after: true}}, {[]string{"to", "the", "rim"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"fino", "al", "bordo"}, tail{Unit: flavor.Top, after: true}}, {[]string{"hasta", "el", "borde"}, tail{Unit: flavor.Top, after: true}}, {[]string{"à", "ras", "bord"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"tot", "de", "rand"}, tail{Unit: flavor.Top, after: true}}, {[]string{"bis", "zum", "rand"}, tail{Unit: flavor.Top, after: true}}, {[]string{"till", "kanten"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"hasta", "arriba"}, tail{Unit: flavor.Top, after: true}}, {[]string{"al", "tope"}, tail{Unit: flavor.Top, after: true}}, {[]string{"a", "tope"}, tail{Unit: flavor.Top, after: true}}, {[]string{"hasta", "el", "tope"}, tail{Unit: flavor.Top, after: true}}, {[]string{"al", "colmo"}, tail{Unit: flavor.Top, after: true}}, {[]string{"fino", "al", "colmo"}, tail{Unit: flavor.Top, after: true}}, {[]string{"para", "encher"}, tail{Unit: flavor.Top, after: true}}, {[]string{"para", "topear"}, tail{Unit: flavor.Top, after: true}}, {[]string{"para", "terminar"}, tail{Unit: flavor.Top, after: true}}, {[]string{"per", "completare"}, tail{Unit: flavor.Top, after: true}}, {[]string{"à", "volonté"}, tail{Unit: flavor.Top, after: true}}, {[]string{"ad", "libitum"}, tail{Unit: flavor.Top, after: true}}, {[]string{"obendrauf"}, tail{Unit: flavor.Top, after: true}}, {[]string{"drauf"}, tail{Unit: flavor.Top, after: true}}, {[]string{"por", "encima"}, tail{Unit: flavor.Top, after: true}}, {[]string{"encima"}, tail{Unit: flavor.Top, after: true}}, {[]string{"sopra"}, tail{Unit: flavor.Top, after: true}}, {[]string{"par", "dessus"}, tail{Unit: flavor.Top, after: true}}, {[]string{"till", "toppen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"tot", "boven"}, tail{Unit: flavor.Top, after: true}}, {[]string{"om", "te", "vullen"}, tail{Unit: flavor.Top, after: true}}, {[]string{"om", "af", "te", "vullen"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "pełna"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "góry"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "plna"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "dopełnienia"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "uzupełnienia"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"na", "dopełnienie"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"na", "dolití"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"k", "dolití"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "verchu"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"до", "верха"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"до", "краев"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"до", "краёв"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"для", "топа"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"топ"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"μέχρι", "πάνω"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"ως", "επάνω"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"μέχρι", "επάνω"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"για", "γέμισμα"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"til", "toppen"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"til", "kanten"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"oppe", "på"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"på", "toppen"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"ovenpå"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"fyld", "op"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"適量"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"フルアップ"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"で満たす"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"を満たす"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"zum", "toppen"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"als", "topping"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"als", "top"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"erop"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"bovenop"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"na", "wierzch"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"na", "górze"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"navrch"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"сверху"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"από", "πάνω"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"ovanpå"}, tail{Unit: flavor.Top, after: true}},
	{[]string{"do", "smaku"}, tail{refuse: true}},
	{[]string{"podle", "chuti"}, tail{refuse: true}},
	{[]string{"по", "вкусу"}, tail{refuse: true}},
	{[]string{"κατά", "βούληση"}, tail{refuse: true}},
	{[]string{"efter", "smag"}, tail{refuse: true}},
	{[]string{"efter", "smak"}, tail{refuse: true}},
	{[]string{"etter", "smak"}, tail{refuse: true}},
	{[]string{"à", "goût"}, tail{refuse: true}},
	{[]string{"q", "s"}, tail{refuse: true}},
	{[]string{"rozgnieciona"}, tail{muddled: true}},
	{[]string{"rozgniecione"}, tail{muddled: true}},
	{[]string{"rozgniecionych"}, tail{muddled: true}},
	{[]string{"utłuczone"}, tail{muddled: true}},
	{[]string{"muddlowane"}, tail{muddled: true}},
	{[]string{"muddlowana"}, tail{muddled: true}},
	{[]string{"rozmačkané"}, tail{muddled: true}},
	{[]string{"rozmačkaná"}, tail{muddled: true}},
	{[]string{"мадл"}, tail{muddled: true}},
	{[]string{"размять"}, tail{muddled: true}},
	{[]string{"размятый"}, tail{muddled: true}},
	{[]string{"размятой"}, tail{muddled: true}},
	{[]string{"stødt"}, tail{muddled: true}},
	{[]string{"muddlet"}, tail{muddled: true}},
	{[]string{"muddlad"}, tail{muddled: true}},
	{[]string{"krossad"}, tail{muddled: true}},
	{[]string{"muddlade"}, tail{muddled: true}},
	{[]string{"qb"}, tail{refuse: true}}, {[]string{"al", "gusto"}, tail{refuse: true}}, {[]string{"nach", "belieben"}, tail{refuse: true}}, {[]string{"a", "gusto"}, tail{refuse: true}}, {[]string{"naar", "smaak"}, tail{refuse: true}}, {[]string{"selon", "goût"}, tail{refuse: true}},
	{[]string{"eq", "parts"}, tail{Unit: flavor.PartUnit, each: true}}, {[]string{"equal", "parts"}, tail{Unit: flavor.PartUnit, each: true}},
	{[]string{"optional"}, tail{remark: "is optional, and counted"}}, {[]string{"each"}, tail{each: true}}, {[]string{"ea"}, tail{each: true}},
}

// tailsByLast finds the tails that end in a word.
var tailsByLast = func() map[string][]int {
	m := map[string][]int{}
	for i := range tails {
		w := tails[i].words
		m[w[len(w)-1]] = append(m[w[len(w)-1]], i)
	}
	return m
}()

// WasWords begin a note on what an amount or a name was before.
var WasWords = vocabulary.Words(`sub subs alt alternatively substitute was were formerly previously originally orig prev old before used not instead replaces replaced down`)

// cutWords say in what a fruit is cut, after "in" or "into": it is the same fruit.
var cutWords = vocabulary.Words(`kawałki kawałkach ćwiartki plastry kousky čtvrtky kolečka кусочки дольки ломтики κομμάτια biter bitar både klyftor Stücke stücke viertel achtel pedaços rodelas trozos pezzi stukken spicchi fette morceaux wedges wedge quarters quarter halves half slices chunks cubes pieces wheels eighths rounds
gajos cuartos trozos rodajas pezzi spicchi dadi cubetti quartiers morceaux tranches rondelles partjes stukjes plakjes pedaços quartos rodelas achtel viertel stücke spalten scheiben`)

// cutInto stand between a fruit and what it is cut in.
var cutInto = vocabulary.Words(`in into en em à a w na на σε i`)

// cutVerbs say that a fruit is cut.
var cutVerbs = vocabulary.Words(`pokrojona pokrojony pokrojone nakrájená nakrájený нарезанный нарезанная κομμένο skåret skuren geachtelt geviertelt halbiert coupé coupée tagliato tagliata cortado cortada troceado troceada gesneden geschnitten cut quartered halved sliced chopped diced`)

// cutLast say behind a fruit that it is cut.
var cutLast = vocabulary.Words(`cut quartered halved chopped diced`)

// cutAt returns how many tokens at the end say how a fruit is cut: "cut in wedges".
func cutAt(toks []token.Token) int {
	n := len(toks)
	if n > 2 && (toks[n-1].Text == "ths" || toks[n-1].Text == "th") && toks[n-2].Kind == token.Numeral { // "cut into 8ths"
		n--
	}
	if n > 2 && toks[n-1].Kind == token.Numeral && (toks[n-2].Text == "in" || toks[n-2].Text == "into") && (n == 3 || cutVerbs.Has(toks[n-3].Text)) {
		return len(toks) - n + min(n-1, 3)
	}
	if n > 1 && cutLast.Has(toks[n-1].Text) && toks[n-2].Kind == token.Word { // "½ lime cut"
		return len(toks) - n + 1
	}
	if n < 3 || !cutWords.Has(toks[n-1].Text) || !cutInto.Has(toks[n-2].Text) {
		return 0
	}
	if n > 3 && cutVerbs.Has(toks[n-3].Text) {
		return 3
	}
	return 2
}

// EndsTopping reports whether a word behind one that tops the drink belongs to it: "top up", "top
// off", which say nothing of how it is served.
func EndsTopping(t *token.Token) bool { return t.Text == "up" || t.Text == "off" }

// vesselAt returns how many tokens at the end say with which ice, or into which
// vessel, a pour goes: "with ice", "to a tin", "over ice in a rocks glass".
func vesselAt(toks []token.Token) int {
	for i := 1; i < len(toks); i++ {
		if last := toks[i-1].Text; i > 1 && (last == "top" || last == "topped" || last == "float" || last == "rinse") && !EndsTopping(&toks[i]) { // "gingr beer top copper mug"
			if s := serving.Read(toks[i:]); len(s.Unknown) == 0 && s.Method == "" && s.States() && s.Conflict == nil {
				return len(toks) - i
			}
		}
		if i == len(toks)-1 {
			break
		}
		switch toks[i].Text {
		case "with", "over", "to", "in", "into", "on":
			rest := toks[i:]
			s := serving.Read(rest)
			last := rest[len(rest)-1].Text
			if len(s.Unknown) == 0 && s.Method == "" && (IceOnly(rest) || s.Glass != "" || last == "tin" || last == "shaker" || last == "glass") {
				return len(rest)
			}
		}
	}
	return 0
}

// garnishNouns end what is laid on a drink rather than poured into it.
var garnishNouns = vocabulary.Words(`twist twists peel peels zest zests wheel wheels halfwheel half-wheel half-wheels wedge wedges slice slices coin coins swath swathe ribbon ribbons fan fans flag
cherry cherries olive olives onion onions sprig sprigs bouquet crown stick stalk frond fronds spear skewer pick flower flowers petal petals cheek cheeks curl spiral horse's neck
umbrella leaf leaves berry berries dust dusting nutmeg shavings bean beans tuft horsesneck crescent disc disk knot blossom bloom pod quill twirl wing feather straw chip crisp
pickle pickles gherkin cornichon bacon marshmallow marshmallows biscuit cookie juniper lychee candy oils shell shells hull husk dots shave shaves shaving curls crumb crumbs
dill sage tarragon shiso parsley cilantro coriander lavender verbena raspberry raspberries blackberry blackberries strawberry strawberries mint rosemary basil thyme none kirsche cocktailkirsche minze minzzweig minzblatt menthe hierbabuena munt mynta kaffeebohnen kaffeebohne limettenrad limettenscheibe limettenspalte orangenscheibe zitronenscheibe gurkenscheibe rodaja gajo scorza fetta spicchio rondelle zitronenzeste orangenzeste limettenzeste zesten oliven oliver aceitunas olivas oliva aceituna cereza cerezas ciliegia ciliegie ciliegina ciliegine cerise cerises cereja cerejas kirschen kers kersen körsbär azeitona azeitonas olijf olijven piel cáscara cascara casca peladura rodela rodelas fatia fatias schijfje schijfjes partje partjes muscade citronzest limeskiva zeste orangenzeste zitronenzeste plasterek plaster plastry ćwiartka skórka skórki skórką gałązka listek listki wiśnia wiśnie wisienka oliwka oliwki plátek kůra kůrou snítka višeň oliva třešeň долька ломтик слайс цедра цедрой веточка лист вишня вишенка оливка оливки маслина φέτα φλούδα φλούδας κλωναράκι φύλλο φύλλα κεράσι ελιά レモンピール オレンジピール ライムピール オレンジスライス レモンスライス カットライム ライムウェッジ ミント ミントの葉 チェリー オリーブ ピール スライス appelsinskal sitronskal citronskal limebåd appelsinskive citronskive`)

// cuts are words of garnishNouns for a part of a fruit: they say nothing without its name.
var cuts = vocabulary.Words(`twist twists peel peels zest zests wheel wheels halfwheel half-wheel half-wheels wedge wedges slice slices coin coins swath swathe ribbon ribbons fan fans flag
sprig sprigs bouquet crown stick stalk frond fronds spear flower flowers petal petals cheek cheeks curl spiral leaf leaves bean beans disc disk berry berries blossom bloom pod dust shell shells`)

// Cut reports whether a word is one for a part of a fruit, "wheel".
func Cut(w string) bool { return cuts.Has(w) }

// laidEndings end words that are put together for what is laid on a drink.
var laidEndings = []string{"zeste", "zesten", "scheibe", "scheiben", "schale", "spalte", "spalten", "achtel", "zweig", "blatt", "schnitz", "rädchen", "skal", "skive", "schil"}

// LaidNoun reports whether a word ends what is laid on a drink.
func LaidNoun(w string) bool {
	return garnishNouns.Has(w) || slices.ContainsFunc(laidEndings, func(e string) bool { return len(w) > len(e)+2 && strings.HasSuffix(w, e) })
}

// garnishVerbs begin what is laid on a drink.
var garnishVerbs = vocabulary.Words(`dekoruj udekoruj udekorować ozdobić ozdób przybrać ozdobit ozdobte zdobit украсить украсьте украсим γαρνίρουμε γαρνίρω γαρνίρισμα pynt pyntes pyntas garnera garneras garnér garniere garnish décorez garnissez decora adorna guarnisci decorate decorar decorare décorer decorer garnieren garnir guarnire guarnecer dekorieren adornar garneren garnish garnished garn gar express expressed expressing grate grated sprinkle sprinkled dust dusted dusting twist decorate flamed flame dehydrated spanked slapped skewered charred torched candied crystallised crystallized`)

// Label says what follows a word before a colon.
type Label uint8

const (
	NoLabel      Label = iota
	LabelName          // the drink's name
	LabelPours         // pours follow
	LabelServing       // method, service, ice
	LabelStep          // a step, kept as it is
	LabelGlass
	LabelGarnish
	LabelRim
	LabelRemark
)

// Labels are the words before a colon, or another sign that parts them from the rest.
var Labels = map[string]Label{
	"name": LabelName, "drink": LabelName, "cocktail": LabelName, "title": LabelName, "item": LabelName, "spec": LabelName, "recipe": LabelName,
	"ingredients": LabelPours, "ingredient": LabelPours, "pours": LabelPours, "base": LabelPours, "tin": LabelPours, "shaker": LabelPours, "in the tin": LabelPours,
	"in tin": LabelPours, "in shaker": LabelPours, "in glass": LabelPours, "in the glass": LabelPours, "build order": LabelPours, "mix": LabelPours, "specs": LabelPours, "combine": LabelPours,
	"modifiers": LabelPours, "modifier": LabelPours, "citrus": LabelPours, "sweet": LabelPours, "sour": LabelPours, "strong": LabelPours, "weak": LabelPours, "after": LabelPours, "add": LabelPours,
	"cheater": LabelPours, "length": LabelPours, "lengthener": LabelPours, "mixer": LabelPours, "fizz": LabelPours, "herb": LabelPours, "herbs": LabelPours, "fruit": LabelPours, "egg": LabelPours, "seasoning": LabelPours, "bitters": LabelPours, "spirit": LabelPours, "spirits": LabelPours, "liqueur": LabelPours, "short tin": LabelPours, "large tin": LabelPours, "small tin": LabelPours,
	"split": LabelPours, "split base": LabelPours, "flav": LabelPours, "flavour": LabelPours, "flavor": LabelPours, "other": LabelPours, "others": LabelPours, "extra": LabelPours, "extras": LabelPours,
	"texture": LabelPours, "dairy": LabelPours, "froth": LabelPours, "savoury": LabelPours, "aromatics": LabelPours, "dilution": LabelPours, "sweetener": LabelPours, "acid": LabelPours, "mod": LabelPours, "mods": LabelPours, "accent": LabelPours, "foam": LabelPours, "finish": LabelPours,
	"method": LabelServing, "build": LabelServing, "meth": LabelServing, "how made": LabelServing, "service": LabelServing, "serve": LabelServing, "served": LabelServing, "ice": LabelServing, "technique": LabelServing, "style": LabelServing,
	"mixing": LabelServing, "prep": LabelServing, "temp": LabelServing, "temperature": LabelServing, "strain": LabelServing,
	"directions": LabelServing, "instructions": LabelServing, "preparation": LabelServing, "procedure": LabelServing, "steps": LabelServing, "how": LabelServing, "to make": LabelServing,
	"step":  LabelStep,
	"glass": LabelGlass, "glassware": LabelGlass, "vessel": LabelGlass, "serve in": LabelGlass, "served in": LabelGlass, "glas": LabelGlass,
	"garnish": LabelGarnish, "garnishes": LabelGarnish, "garn": LabelGarnish, "gar": LabelGarnish, "g": LabelGarnish, "top note": LabelGarnish, "finish with": LabelGarnish, "decoration": LabelGarnish,
	"decoración": LabelGarnish, "decoracion": LabelGarnish, "guarnición": LabelGarnish, "guarnicion": LabelGarnish, "guarnizione": LabelGarnish, "decorazione": LabelGarnish, "décor": LabelGarnish, "decor": LabelGarnish, "décoration": LabelGarnish, "garniture": LabelGarnish, "garnitur": LabelGarnish, "deko": LabelGarnish, "dekoration": LabelGarnish, "guarnição": LabelGarnish, "decoração": LabelGarnish, "garnering": LabelGarnish, "pynt": LabelGarnish,
	"método": LabelServing, "metodo": LabelServing, "méthode": LabelServing, "methode": LabelServing, "preparación": LabelServing, "preparacion": LabelServing, "preparazione": LabelServing, "préparation": LabelServing, "zubereitung": LabelServing, "preparo": LabelServing, "bereiding": LabelServing, "elaboración": LabelServing, "técnica": LabelServing, "tecnica": LabelServing, "technik": LabelServing, "hielo": LabelServing, "ghiaccio": LabelServing, "eis": LabelServing, "gelo": LabelServing, "ijs": LabelServing,
	"ingredientes": LabelPours, "ingredienti": LabelPours, "ingrédients": LabelPours, "zutaten": LabelPours, "ingrediënten": LabelPours, "ingredienser": LabelPours,
	"vaso": LabelGlass, "copa": LabelGlass, "bicchiere": LabelGlass, "verre": LabelGlass, "copo": LabelGlass, "glass type": LabelGlass, "servir en": LabelGlass,
	"składniki": LabelPours, "složení": LabelPours, "ingredience": LabelPours, "ингредиенты": LabelPours, "состав": LabelPours, "υλικά": LabelPours, "συστατικά": LabelPours, "材料": LabelPours, "skład": LabelPours, "ingrediensen": LabelPours, "suroviny": LabelPours, "ingrediente": LabelPours,
	"przygotowanie": LabelServing, "sposób": LabelServing, "sposób przygotowania": LabelServing, "wykonanie": LabelServing, "postup": LabelServing, "příprava": LabelServing, "приготовление": LabelServing, "метод": LabelServing, "способ": LabelServing, "εκτέλεση": LabelServing, "παρασκευή": LabelServing, "μέθοδος": LabelServing, "作り方": LabelServing, "手順": LabelServing, "技法": LabelServing, "lód": LabelServing, "led": LabelServing, "лед": LabelServing, "πάγος": LabelServing, "氷": LabelServing, "tilberedning": LabelServing, "tillagning": LabelServing, "fremgangsmåde": LabelServing, "fremgangsmåte": LabelServing, "werkwijze": LabelServing, "modo de preparo": LabelServing, "esecuzione": LabelServing, "procedimento": LabelServing, "zubereitungsart": LabelServing,
	"szkło": LabelGlass, "kieliszek": LabelGlass, "sklo": LabelGlass, "sklenka": LabelGlass, "бокал": LabelGlass, "посуда": LabelGlass, "подача": LabelGlass, "ποτήρι": LabelGlass, "グラス": LabelGlass, "glaswerk": LabelGlass, "cristalería": LabelGlass, "servizio": LabelGlass,
	"dekoracja": LabelGarnish, "ozdoba": LabelGarnish, "przybranie": LabelGarnish, "zdobení": LabelGarnish, "украшение": LabelGarnish, "гарнир": LabelGarnish, "декор": LabelGarnish, "γαρνιτούρα": LabelGarnish, "γαρνίρισμα": LabelGarnish, "ガーニッシュ": LabelGarnish, "飾り": LabelGarnish, "デコレーション": LabelGarnish, "garnityr": LabelGarnish, "versiering": LabelGarnish,
	"nazwa": LabelName, "název": LabelName, "название": LabelName, "όνομα": LabelName, "名前": LabelName, "カクテル名": LabelName,
	"nombre": LabelName, "nome": LabelName, "nom": LabelName,
	"rim": LabelRim, "rimmed": LabelRim,
	"bartender": LabelRemark, "barkeeper": LabelRemark, "barman": LabelRemark, "shift": LabelRemark, "venue": LabelRemark, "event": LabelRemark, "created by": LabelRemark, "written by": LabelRemark, "made by": LabelRemark, "datum": LabelRemark, "fecha": LabelRemark, "flavour profile": LabelRemark, "profile": LabelRemark, "inspiration": LabelRemark, "story": LabelRemark,
	"from": LabelRemark, "subject": LabelRemark, "re": LabelRemark, "allergens": LabelRemark, "allergen": LabelRemark, "contains": LabelRemark, "price": LabelRemark,
	"note": LabelRemark, "notes": LabelRemark, "source": LabelRemark, "by": LabelRemark, "credit": LabelRemark, "comment": LabelRemark, "comments": LabelRemark, "remark": LabelRemark,
	"cost": LabelRemark, "station": LabelRemark, "family": LabelRemark, "section": LabelRemark, "version": LabelRemark, "status": LabelRemark, "abv": LabelRemark, "shelf life": LabelRemark, "upsell": LabelRemark, "sells at": LabelRemark, "tested": LabelRemark, "approved": LabelRemark, "tip": LabelRemark, "tips": LabelRemark,
	"to finish": LabelPours, "to top": LabelPours, "charge": LabelPours, "bitter": LabelPours, "presentation": LabelServing, "process": LabelServing,
	"yield": LabelRemark, "serves": LabelRemark, "makes": LabelRemark, "date": LabelRemark, "author": LabelRemark, "tasting": LabelRemark, "history": LabelRemark, "category": LabelRemark, "tags": LabelRemark,
}

// Joins are words between two names, or between a number and what it is of.
var Joins = token.Words(`or to and with of over for about approx than in at into from by the plus x around`)

// AgeWords stand behind a number that is an age, a strength or a place in a row, and no
// amount: "12 year", "100 proof", "1st".
var AgeWords = token.Words(`proof year years yr yrs yo old abv percent month months o'clock st nd rd th ths`)
