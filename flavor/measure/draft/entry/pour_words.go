package entry

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
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

// AgeWords stand behind a number that is an age, a strength or a place in a row, and no
// amount: "12 year", "100 proof", "1st".
var AgeWords = token.Words(`proof year years yr yrs yo old abv percent month months o'clock st nd rd th ths`)
