package jargon

import (
	"strings"

	"counterpour/flavor/measure/vocabulary"
)

// Epithet is what a word says of a bottle beside its name, from what tells bottles apart least to
// what does most. None of them names anything that is poured or tasted, and none carries an
// allergen: all is common practice, no source.
type Epithet int

// The kinds of epithets.
const (
	NoEpithet Epithet = iota
	Fineness          // how fine it is, how it is kept and served: of anything
	Making            // how it is made, as most of its kind are: of spirits and wines
	Origin            // where it comes from: of what is not told apart by that
	Age               // of spirits and wines
	Colour            // of spirits
)

// Epithets are all kinds, those that say least first.
var Epithets = []Epithet{Fineness, Making, Origin, Age, Colour}

// epithetWords are the words of each kind, joined by hyphens where they are several.
var epithetWords = map[Epithet]string{
	Fineness: `reserve reserva riserva select selected selection special signature original exclusive luxury deluxe heritage superb excellent great nicer better fancy soft gourmet noble fine grand-reserve
single-estate estate-bottled first-rate first-class top-quality high-class award-winning well-made unopened opened siphon syphon soda-siphon bottled draught kegged pouring serving cellar-cool room-temp room-temperature chill lovely bar-rail
finest superior supreme prestige flagship entry-level mid-range`,
	Making: `pot-still potstill pot-distilled column-still column-distilled double-distilled triple-distilled twice-distilled blended hand-blended charcoal-filtered filtered unfiltered non-chill-filtered small-lot distillery-bottled estate estate-grown
copper-still craft-distilled`,
	Origin: `caribbean island islands west-indian west-indies imported domestic foreign overseas continental burgundian alsatian provençal norman breton andalusian galician piedmontese venetian ligurian highland-grown london appalachian californian oregon antillean latin-american south-american
hungarian romanian bulgarian serbian croatian slovenian slovak georgian armenian baltic estonian latvian lithuanian icelandic new-zealand south-african filipino vietnamese indonesian malaysian singaporean`,
	Age:    `aged old mature matured well-aged long-aged oak-aged barrel-aged cask-aged wood-aged barrel-matured cask-matured rested well-rested vintage x-o extra-aged`,
	Colour: `white clear silver gold golden amber brown dark black pale`,
}

// epithets are the words of each kind.
var epithets = func() map[Epithet]*vocabulary.Set {
	out := make(map[Epithet]*vocabulary.Set, len(epithetWords))
	for kind, words := range epithetWords {
		out[kind] = vocabulary.Words(words)
	}
	return out
}()

// EpithetOf is what a word, or several joined by hyphens, says of a bottle; [NoEpithet] if it may
// say what is in it.
func EpithetOf(word string) Epithet {
	w := strings.ToLower(word)
	for _, kind := range Epithets {
		if epithets[kind].Has(w) {
			return kind
		}
	}
	if Idle(w) {
		return Fineness
	}
	return NoEpithet
}

// anywhere are origins that no rum is told apart by.
var anywhere = vocabulary.Words(`caribbean island islands west-indian west-indies imported domestic foreign overseas continental european antillean latin-american spanish`)

// Anywhere reports whether a word says of a rum that it is from somewhere, and not of which style it is.
func Anywhere(word string) bool { return anywhere.Has(strings.ToLower(word)) }

// places are where bottles come from, as nouns, by the words that names of bottles have.
var places = map[string]string{
	"jamaica": "jamaican", "cuba": "cuban", "guyana": "guyanese", "martinique": "martinique", "guadeloupe": "guadeloupe", "haiti": "haitian", "barbados": "barbados", "puerto rico": "puerto rican", "trinidad": "trinidad",
	"venezuela": "venezuelan", "guatemala": "guatemalan", "panama": "panamanian", "nicaragua": "nicaraguan", "colombia": "colombian", "brazil": "brazilian", "peru": "peruvian", "chile": "chilean", "argentina": "argentinian", "mexico": "mexican",
	"france": "french", "italy": "italian", "spain": "spanish", "portugal": "portuguese", "germany": "german", "austria": "austrian", "switzerland": "swiss", "greece": "greek", "sicily": "sicilian", "calabria": "calabrian", "corsica": "corsican",
	"england": "english", "scotland": "scotch", "islay": "islay", "ireland": "irish", "wales": "welsh", "holland": "dutch", "belgium": "belgian", "denmark": "danish", "norway": "norwegian", "sweden": "swedish", "finland": "finnish", "poland": "polish", "russia": "russian",
	"japan": "japanese", "korea": "korean", "china": "chinese", "india": "indian", "canada": "canadian", "kentucky": "kentucky", "tennessee": "tennessee", "america": "american", "california": "californian", "australia": "australian",
	"caribbean": "caribbean", "islands": "islands", "island": "island", "alps": "alpine", "west indies": "west-indies",
}

// OfPlace is the word by which the name of a bottle says that it is from a place; empty if none is known.
func OfPlace(place string) string { return places[strings.ToLower(place)] }

// shades are words for a colour by the one that names of bottles have.
var shades = map[string]string{"golden": "gold", "silver": "white", "clear": "white", "amber": "gold", "brown": "dark", "pale": "light"}

// Shade is the word for a colour that names of bottles have in place of another; empty if there is
// none.
func Shade(w string) string { return shades[strings.ToLower(w)] }
