package tongue

import (
	"iter"
	"maps"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

// Name is what a whole name, as a key, is called in English; empty if it is not known.
func Name(key string) string { return known().names[key] }

// Stem is what a key that something is made of means, "fläder" the elderflower; empty if it
// is not known.
func Stem(key string) string { return known().stems[key] }

// Names yields every whole name with what it means, in no order.
func Names() iter.Seq2[string, string] { return maps.All(known().names) }

// Linking reports whether a word stands between others and brings nothing of its own: "de".
func Linking(word string) bool { return known().linking[word] }

// Idle reports whether a key says of what it stands beside only that it is fresh, hot or
// whipped, which makes no other ingredient of it.
func Idle(key string) bool { return known().tastes[key] == "fresh" || known().linking[key] }

// spoons are words for a spoon that stand for an ingredient in English, and are one of them
// before a name of their own tongue alone: "2 ts brunt sukker".
var spoons = map[string]flavor.Unit{"ts": flavor.Teaspoon, "ss": flavor.Tablespoon, "sk": flavor.Teaspoon, "pl": flavor.Tablespoon}

// Spoon returns the unit that a word is before a name in another tongue; empty for a word that
// is none, and before a name in English.
func Spoon(word, name string) flavor.Unit {
	if u := spoons[word]; u != "" {
		if _, foreign := English(flavor.NormaliseName(name)); foreign || Name(flavor.NormaliseName(name)) != "" {
			return u
		}
	}
	return ""
}

// fruits are words that name one fruit in one country and another in the next, that of the
// Americas first. A lemon of Latin America may be a lime: "limon" asks.
var fruits = map[string][]string{"succo di mirtillo": {"cranberry juice", "blueberry juice"}, "conhaque": {"cognac", "brandy"}, "limon": {"lime juice", "lemon juice"}, "limao": {"lime juice", "lemon juice"}, "jugo de limon": {"lime juice", "lemon juice"}, "suco de limao": {"lime juice", "lemon juice"}}

// Fruits are the juices that a key names in one country and in the next, the one of the
// Americas first; nil for a key that names one.
func Fruits(key string) []string { return fruits[key] }

// lent are words of other tongues that bars everywhere write; common practice.
var lent = token.Words(`rosso bianco blanc blanco rosé rose creme crème menthe cacao cassis mure mûre pêche peche framboise poire violette amaro bitter de la`)

// Foreign reports whether a name holds a word of another tongue that bars who write
// English do not use, and that the name of what it means does not hold either.
func Foreign(name, means string) bool {
	own := strings.Fields(strings.ToLower(means))
	for _, w := range strings.Fields(strings.ToLower(name)) {
		if lent[w] || slices.Contains(own, w) {
			continue
		}
		if english, ok := English(flavor.NormaliseName(w)); ok && english != flavor.NormaliseName(w) {
			return true
		}
	}
	return false
}

// continental are words, and the ends of words, of tongues whose bars measure in
// centilitres; those of the Americas, where an ounce is poured, write Spanish too.
var (
	continental     = keys(`succo sciroppo liquore purea limone arancia pesca fragola lampone zucchero albume panna spumante acqua jus sirop citron poire fraise pêche sucre lait eau œuf oeuf rhum zumo limette zitrone zucker eiweiß sahne wermut citroen limoen eiwit suiker vermout`)
	continentalEnds = []string{"saft", "sirup", "likör", "likor", "sap", "siroop", "likeur"}
)

// Continental reports whether a name is written in such a tongue.
func Continental(name string) bool {
	return slices.ContainsFunc(strings.Fields(flavor.NormaliseName(name)), func(w string) bool {
		return continental[w] || slices.ContainsFunc(continentalEnds, func(e string) bool { return len(w) > len(e)+leastStem && strings.HasSuffix(w, e) })
	})
}

// keys is the set of words, as [flavor.NormaliseName] makes them.
func keys(words string) map[string]bool {
	out := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		out[flavor.NormaliseName(w)] = true
	}
	return out
}
