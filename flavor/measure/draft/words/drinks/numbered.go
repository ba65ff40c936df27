package drinks

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/vocabulary"
)

// kindWords are words in which the names of drinks end: common practice.
var kindWords = vocabulary.Words(`sour fizz collins punch highball julep smash swizzle flip spritz martini cooler rickey buck mule sling daisy cobbler toddy crusta fix
manhattan negroni margarita daiquiri paloma mojito old-fashioned fashioned cocktail cup royale royal grog nog sangaree sbagliato spritzer`)

// spirits are what a drink is mostly made of.
var spirits = vocabulary.Words(`gin rum vodka whisky whiskey bourbon rye scotch tequila mezcal brandy cognac pisco cachaca cachaça vermouth sherry aquavit absinthe amaro liqueur wine`)

// Numbered reports whether a name is that of a place or a thing with its number, and a kind of drink, all
// written with capitals: "Gate 7 Collins". A spirit before a number is poured.
func Numbered(name string) bool {
	words := strings.Fields(name)
	if len(words) < 3 || len(words) > MostWords || !kindWords.Has(strings.ToLower(words[len(words)-1])) {
		return false
	}
	numbers := 0
	for i, w := range words {
		switch first, _ := utf8.DecodeRuneInString(w); {
		case strings.Trim(w, "0123456789") == "":
			if numbers++; i == 0 {
				return false
			}
		case !unicode.IsUpper(first) || strings.ContainsFunc(w, unicode.IsNumber) || spirits.Has(strings.ToLower(w)) && numbers == 0:
			return false
		}
	}
	return numbers == 1
}
