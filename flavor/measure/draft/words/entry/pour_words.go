package entry

import (
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// leadWords begin a pour and say nothing of it.
var leadWords = vocabulary.Words(`add keep take grab get dann noch etwas pour measure plus then and with also combine use using mix start begin`)

// leadRoles are what a pour is in its drink, before its amount.
var leadRoles = vocabulary.Words(`base modifier mod split accent lengthener sweetener`)

// parts are pieces of a fruit that are a share of it: common practice.
var partsOfFruit = map[string]float64{"cheek": 1.0 / 3, "cheeks": 1.0 / 3, "half": 0.5, "halves": 0.5, "quarter": 0.25, "quarters": 0.25, "eighth": 0.125, "eighths": 0.125}

// AgeWords stand behind a number that is an age, a strength or a place in a row, and no
// amount: "12 year", "100 proof", "1st".
var AgeWords = token.Words(`proof year years yr yrs yo old abv percent month months o'clock st nd rd th ths`)
