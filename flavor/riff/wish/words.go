package wish

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// target is what a word asks for: a sense, or aroma families taken together, which
// some senses may stand for. Down is true of a word for less of it, such as dry. HotDay
// is true of a word for a drink for the heat, more of which is a cold one that is no stronger.
type target struct {
	sense    sense.Sense
	families []flavor.AromaFamily
	or       []sense.Sense
	down     bool
	hotDay   bool
	word     string // in its plain form
}

// wishes are for more or less of the target.
func (t *target) wishes(more bool) []Wish {
	if len(t.families) > 0 {
		aroma := Wish{Kind: Aroma, Families: t.families, Or: t.or, More: more != t.down, Of: t.word}
		switch {
		case !t.hotDay:
			return []Wish{aroma}
		case !more:
			aroma.Or = nil
			return []Wish{aroma}
		}
		return []Wish{aroma, {Kind: HotDay}}
	}
	return []Wish{{Kind: Sense, Sense: t.sense, More: more != t.down, Of: t.word}}
}

func up(s sense.Sense, words ...string) entry   { return entry{target{sense: s}, words} }
func down(s sense.Sense, words ...string) entry { return entry{target{sense: s, down: true}, words} }
func smell(words []string, f ...flavor.AromaFamily) entry {
	return entry{target{families: f}, words}
}

// also is an entry that some senses may stand for too.
func (e entry) also(or ...sense.Sense) entry {
	e.or = or
	return e
}

// forHeat is an entry of what is drunk for the heat: the smells, or more to drink, and cold.
func (e entry) forHeat() entry {
	e = e.also(sense.Volume, sense.Carbonation)
	e.hotDay = true
	return e
}

type entry struct {
	target
	words []string
}

// entries are the words of the trade for what the mouth and the nose tell, in
// their plain form; comparatives follow. Common practice, no source.
var entries = []entry{
	up(sense.Ethanol, "strong", "boozy", "stiff", "potent", "spirituous", "spirit forward", "spirit", "alcohol", "alcoholic", "abv", "proof", "strength", "booze", "punchy"),
	down(sense.Ethanol, "light", "weak", "low alcohol", "low abv", "low proof", "sessionable", "session", "gentle", "lower alcohol", "lower abv", "lower proof", "easy", "easy drinking"),
	up(sense.Sweet, "sweet", "sugar", "sugary", "sweetness", "syrupy", "luscious", "rich"),
	down(sense.Sweet, "dry", "dryness", "austere", "bone dry"),
	up(sense.Sour, "sour", "tart", "acid", "acidic", "acidity", "sourness", "tartness", "sharp", "bright", "tangy", "zingy", "zippy", "crisp", "puckery"),
	down(sense.Sour, "round", "mellow", "smooth", "soft"),
	up(sense.Bitter, "bitter", "bitterness", "bittersweet"),
	up(sense.Volume, "long", "tall", "length", "big", "refreshing", "thirst quenching", "volume"),
	down(sense.Volume, "short", "small", "compact"),
	up(sense.Salty, "salty", "salt", "saline", "briny", "salinity"),
	up(sense.Umami, "umami", "meaty", "brothy"),
	up(sense.Cooling, "cooling"),
	up(sense.Astringent, "astringent", "tannic", "tannin", "grippy"),
	up(sense.Carbonation, "fizzy", "fizz", "bubbly", "bubbles", "sparkling", "effervescent", "lively", "carbonation", "carbonated", "spritzy"),
	down(sense.Carbonation, "flat", "still"),
	up(sense.Body, "thick", "body", "full", "full bodied", "viscous", "heavy", "silky", "velvety", "texture", "mouthfeel", "unctuous"),
	down(sense.Body, "thin", "lean"),
	up(sense.Fat, "fat", "fatty"),
	up(sense.Foam, "frothy", "foamy", "foam", "froth", "fluffy", "airy"),

	smell([]string{"citrusy", "citrus", "lemony", "lemon", "limey", "grapefruity", "zesty", "zest"}, flavor.Citrus),
	smell([]string{"orangey", "mandarin", "tangerine"}, flavor.Orange),
	smell([]string{"tropical", "funky", "funk", "hogo", "estery", "exotic", "tiki", "pineapple"}, flavor.Tropical),
	smell([]string{"apple", "pear", "peachy", "peach", "apricot", "stone fruit", "orchard fruit"}, flavor.Orchard),
	smell([]string{"berries", "cherry", "red fruit", "dark fruit", "raspberry", "jammy"}, flavor.Berry),
	smell([]string{"fruity", "fruit", "juicy"}, flavor.Orchard, flavor.Berry, flavor.Tropical, flavor.Orange),
	smell([]string{"flowery", "florals", "flowers", "perfumed", "elderflower", "violet"}, flavor.Floral),
	smell([]string{"minty", "menthol", "fresh", "cool"}, flavor.Mint),
	smell([]string{"herbal", "herby", "herbs", "herbaceous", "botanical", "alpine"}, flavor.Herb),
	smell([]string{"piney", "pine", "resinous", "juniper forward"}, flavor.Juniper),
	smell([]string{"anisey", "aniseed", "liquorice", "licorice", "fennel"}, flavor.Anise),
	smell([]string{"clovey", "allspice"}, flavor.Clove),
	smell([]string{"warm", "warming", "wintry", "winter", "cold weather", "autumnal", "autumn", "christmassy", "christmas", "festive", "baking spice", "nutmeg"}, flavor.Clove, flavor.Cinnamon),
	smell([]string{"spicy", "spices", "spice"}, flavor.Pungent, flavor.Clove, flavor.Cinnamon).also(sense.Pungent),
	smell([]string{"ginger", "gingery", "hot", "heat", "peppery", "pepper", "fiery", "chilli", "chili"}, flavor.Pungent).also(sense.Pungent),
	smell([]string{"caramelly", "toffee", "molasses", "raisiny", "burnt sugar"}, flavor.Caramel),
	smell([]string{"nutty", "nuts", "almondy", "almond", "marzipan", "hazelnut", "walnut"}, flavor.Nut),
	smell([]string{"roasty", "roasted", "toasty", "toasted", "coffee", "chocolatey", "chocolaty", "chocolate", "cocoa", "cacao"}, flavor.Roast),
	smell([]string{"oaky", "woody", "wood", "cedar", "barrel", "aged"}, flavor.Oak),
	smell([]string{"smoky", "smokey", "peaty", "peat", "smoked"}, flavor.Smoke),
	smell([]string{"earthy", "rooty", "roots", "gentian", "earth"}, flavor.Root),
	smell([]string{"winey", "vinous", "grapey", "oxidative", "sherried"}, flavor.Wine),
	smell([]string{"savoury", "savory"}, flavor.Vegetal).also(sense.Salty, sense.Umami),
	smell([]string{"green", "grassy", "vegetable", "garden"}, flavor.Vegetal),
	smell([]string{"grainy", "malty", "malt", "bready", "biscuity"}, flavor.Grain),
	smell([]string{"creamy", "milky", "buttery"}, flavor.Cream).also(sense.Fat),
	smell([]string{"coconutty"}, flavor.Cream),
	smell([]string{"vanilla ice cream", "custardy"}, flavor.Vanilla),
	smell([]string{"dark", "deep", "brooding"}, flavor.Caramel, flavor.Oak, flavor.Roast),
	smell([]string{"summery", "summer", "hot weather", "hot day", "poolside", "beach"}, flavor.Citrus, flavor.Mint, flavor.Berry).forHeat(),
}

// lexicon finds what a plain word asks for.
var lexicon = func() map[string]target {
	m := map[string]target{}
	for f, info := range flavor.AromaFamilies() {
		m[info.ID] = target{families: []flavor.AromaFamily{flavor.AromaFamily(f)}, word: info.ID}
	}
	for _, e := range entries {
		for _, w := range e.words {
			t := e.target
			t.word = w
			m[w] = t
		}
	}
	return m
}()

// lookUp finds a word, or the plain form of a comparative.
func lookUp(word string) (target, bool) {
	for _, w := range plain(word) {
		if t, ok := lexicon[w]; ok {
			return t, true
		}
	}
	return target{}, false
}

// Smells returns the aroma families that a bartender means by a word, such as smoky; nil if it
// names none.
func Smells(word string) []flavor.AromaFamily {
	t, _ := lookUp(strings.ToLower(word))
	return slices.Clone(t.families)
}

// plain lists what a word may be a form of: "nuttier" of "nutty", "sharper" of
// "sharp", "bitterer" of "bitter", "hotter" of "hot", "riper" of "ripe",
// "fullest" of "full", "fruitiness" of "fruity".
func plain(word string) []string {
	out := []string{word}
	for _, x := range []struct{ suffix, with string }{
		{"ier", "y"}, {"yer", "y"}, {"iest", "y"}, {"iness", "y"}, {"er", ""}, {"er", "e"}, {"est", ""}, {"est", "e"}, {"ness", ""}, {"ed", ""},
	} {
		stem, ok := strings.CutSuffix(word, x.suffix)
		if !ok || len(stem) < 2 {
			continue
		}
		out = append(out, stem+x.with)
		if n := len(stem); x.with == "" && stem[n-1] == stem[n-2] {
			out = append(out, stem[:n-1])
		}
	}
	return out
}

const maxSuggest = 3

// unknownWish says what may be wished, nearest spellings first.
func unknownWish(word string) *flavor.DataFault {
	f := flavor.Unknown("", "", nil, "%q is no wish known here; say what there should be more or less of (strong, sweet, sour, bitter, long, an aroma such as smoke), \"no\" or \"with\" and an ingredient, or a strength such as \"below 12 %%\"", word)
	stem := word
	for _, prefix := range []string{"more ", "less "} {
		stem = strings.TrimPrefix(stem, prefix)
	}
	if len(stem) < minName {
		return f
	}
	for _, known := range knownWords() {
		if strings.HasPrefix(known, stem[:minName]) && len(f.Suggest) < maxSuggest {
			f.Suggest = append(f.Suggest, known)
		}
	}
	return f
}

// knownWords lists every plain word that a wish may be made of, in order.
func knownWords() []string {
	out := make([]string, 0, len(lexicon))
	for w := range lexicon {
		out = append(out, w)
	}
	slices.Sort(out)
	return out
}
