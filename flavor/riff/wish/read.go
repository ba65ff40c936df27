package wish

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/sense"
)

// joints divide several wishes in one string.
var joints = pattern.Of(`\s*(?:,|;|\+|&|\band\b|\bbut\b|\byet\b)\s*`)

// tidy folds case, space and the dash between words, and drops what ends a
// sentence.
func tidy(written string) string {
	word := strings.NewReplacer("-", " ", "‑", " ", "’", "'").Replace(strings.ToLower(written))
	return strings.TrimRight(strings.Join(strings.Fields(word), " "), ".!?")
}

// parseOne reads one wish, which may stand for several: no nuts means neither
// tree nuts nor peanuts.
func parseOne(word string, names Names) ([]Wish, *flavor.DataFault) {
	for _, read := range []func(string, Names) ([]Wish, *flavor.DataFault){readStrength, readInstead, readWithout, readServed, readDirection, readWith} {
		if wishes, fault := read(word, names); wishes != nil || fault != nil {
			return wishes, fault
		}
	}
	return nil, unknownWish(word)
}

const number = `([0-9]+(?:[.,][0-9]+)?)`

var (
	strengthFirst = pattern.Of(`^(below|under|at most|max|maximum|up to|no more than|not more than|less than|above|over|at least|min|minimum|no less than|more than) ?` + number + ` ?(?:%|percent|per cent)? ?(?:vol|abv|alcohol)?$`)
	strengthLast  = pattern.Of(`^` + number + ` ?(?:%|percent|per cent) ?(?:vol|abv|alcohol)? (or less|or below|or lower|at most|max|or more|or above|at least)$`)
)

// above are the words for at least so strong.
var above = []string{"above", "over", "at least", "min", "minimum", "no less than", "more than", "or more", "or above"}

// readStrength reads a limit of strength.
func readStrength(word string, _ Names) ([]Wish, *flavor.DataFault) {
	digits, which := "", ""
	if m := strengthFirst.FindStringSubmatch(word); m != nil {
		which, digits = m[1], m[2]
	} else if m := strengthLast.FindStringSubmatch(word); m != nil {
		digits, which = m[1], m[2]
	} else {
		return nil, nil
	}
	abv, err := strconv.ParseFloat(strings.Replace(digits, ",", ".", 1), 64)
	if err != nil || abv > 100 {
		f := flavor.Invalid("", "", "%s %% vol is no strength; use 0 to 100", digits)
		f.Bounds = &flavor.Bounds{Most: 100}
		return nil, f
	}
	if slices.Contains(above, which) {
		return []Wish{{Kind: Above, ABV: abv}}, nil
	}
	return []Wish{{Kind: Below, ABV: abv}}, nil
}

var (
	withoutFirst = pattern.Of(`^(?:no|without|free of|free from|avoid|avoiding|leave out|hold|skip|omit|minus|not any|allergic to) (?:any |the |an |a |more )?(.+)$`)
	withoutLast  = pattern.Of(`^(.+) free$`)
)

// readWithout reads what is to be left out.
func readWithout(word string, names Names) ([]Wish, *flavor.DataFault) {
	switch word {
	case "non alcoholic", "zero proof", "virgin", "soft drink", "zero alcohol", "0 %", "0%", "mocktail", "alcohol free":
		return []Wish{{Kind: Below, ABV: flavor.NoAlcoholABV}}, nil
	case "vegan":
		return []Wish{{Kind: Animal, Animal: "egg"}, {Kind: Animal, Animal: "milk"}, {Kind: Animal, Animal: "honey"}, {Kind: Animal, Animal: "insect"},
			{Kind: Animal, Animal: "fish"}, {Kind: Animal, Animal: "meat"}}, nil
	}
	if m := withoutFirst.FindStringSubmatch(word); m != nil {
		return without(m[1], names)
	}
	if m := withoutLast.FindStringSubmatch(word); m != nil {
		return without(m[1], names)
	}
	return nil, nil
}

// without reads what follows "no". An allergen comes before an aroma of the same
// name: the guest who says "no nuts" may mean the allergy.
func without(what string, names Names) ([]Wish, *flavor.DataFault) {
	switch what {
	case "alcohol", "booze":
		return []Wish{{Kind: Below, ABV: flavor.NoAlcoholABV}}, nil
	case "honey", "insect", "insects", "meat":
		return []Wish{{Kind: Animal, Animal: strings.TrimSuffix(what, "s")}}, nil
	case "animal", "animals", "animal products":
		return readWithout("vegan", names)
	case "citrus", "citrus fruit", "citrus fruits", "citrus juice", "citrus juices":
		return withoutCitrus(names), nil
	}
	if meant, err := flavor.AvoidanceMeant(what); err == nil {
		out := make([]Wish, len(meant))
		for i, a := range meant {
			out[i] = Wish{Kind: Allergen, Allergen: a}
		}
		return out, nil
	}
	for _, c := range flavor.Classes() {
		if flavor.NormaliseName(string(c)) == flavor.NormaliseName(what) {
			return []Wish{{Kind: Class, Class: c}}, nil
		}
	}
	if t, ok := lookUp(what); ok && len(t.families) > 0 {
		var out []Wish
		for _, f := range t.families {
			out = append(out, Wish{Kind: Without, Families: []flavor.AromaFamily{f}})
		}
		return out, nil
	}
	if names != nil {
		if ids := names(what); len(ids) > 0 {
			return []Wish{{Kind: Bar, IDs: ids}}, nil
		}
	}
	return nil, flavor.Unknown("", "", nil, "%q names no allergen, aroma family, class of ingredient or ingredient; write one, such as \"no nuts\", \"no smoke\" or \"no rum\"", what)
}

// citrusFruit is the fruit whose juice, peel and syrup a guest means by citrus, and
// otherSour what sours and is none of it: common practice, no source.
var (
	citrusFruit = []string{"lemon", "lime", "orange", "grapefruit", "mandarin", "yuzu", "bergamot", "pomelo", "sudachi", "calamansi", "kumquat",
		"tangerine", "clementine", "citron", "citrus"}
	otherSour = []string{"verjus", "tamarind", "sea buckthorn", "kokum", "lulo"}
)

// withoutCitrus reads "no citrus": nothing that is named after the fruit, and of the sour
// juices only what is known to be of something else. A gin with lemon peel among its
// botanicals is no citrus.
func withoutCitrus(names Names) []Wish {
	barred := namedAfter(citrusFruit, names)
	spared := slices.DeleteFunc(namedAfter(otherSour, names), func(id string) bool { return slices.Contains(barred, id) })
	out := []Wish{{Kind: Class, Class: flavor.ClassSourJuice, Spared: spared}}
	if len(barred) > 0 {
		out = append(out, Wish{Kind: Bar, IDs: barred})
	}
	return out
}

// namedAfter lists the ids of what any of some words may mean, once each, in order.
func namedAfter(words []string, names Names) (ids []string) {
	if names == nil {
		return nil
	}
	for _, w := range words {
		ids = append(ids, names(w)...)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// ways are the words for how a drink is mixed and served.
var ways = map[string]Wish{
	"shaken": {Method: flavor.Shake}, "stirred": {Method: flavor.Stir}, "built": {Method: flavor.Build}, "thrown": {Method: flavor.Throw},
	"blended": {Method: flavor.Blend}, "frozen": {Method: flavor.Blend}, "swizzled": {Method: flavor.Swizzle}, "swizzle": {Method: flavor.Swizzle},
	"dry shaken": {Method: flavor.DryShake},
	"up":         {Service: flavor.Up}, "straight up": {Service: flavor.Up}, "in a coupe": {Service: flavor.Up},
	"rocks": {Service: flavor.Rocks}, "over ice": {Service: flavor.Rocks}, "on ice": {Service: flavor.Rocks},
	"crushed ice": {Service: flavor.Crushed}, "crushed": {Service: flavor.Crushed}, "highball": {Service: flavor.Long}, "collins": {Service: flavor.Long},
	"in a tall glass": {Service: flavor.Long}, "served long": {Service: flavor.Long}, "served hot": {Service: flavor.Hot}, "hot drink": {Service: flavor.Hot},
	"with ice": {Service: flavor.Rocks}, "heated": {Service: flavor.Hot}, "warmed": {Service: flavor.Hot}, "warmed up": {Service: flavor.Hot}, "steaming": {Service: flavor.Hot}, "piping hot": {Service: flavor.Hot},
}

// coldWords ask for a hot drink to be served cold.
var coldWords = []string{"cold", "colder", "iced", "ice cold", "icy", "chilled", "cold drink", "iced drink", "cooled down"}

// readServed reads how a drink is to be mixed or served, and what it is to spare.
func readServed(word string, _ Names) ([]Wish, *flavor.DataFault) {
	for _, prefix := range []string{"", "served ", "on the ", "on ", "over ", "as a ", "in a "} {
		short := strings.TrimPrefix(word, prefix)
		if w, ok := ways[short]; ok {
			w.Kind = Served
			return []Wish{w}, nil
		}
		if slices.Contains(coldWords, short) {
			return []Wish{{Kind: Cold}}, nil
		}
	}
	switch word {
	case "simpler", "simple", "fewer ingredients", "fewer pours", "less ingredients", "fewer bottles", "faster", "quicker":
		return []Wish{{Kind: Fewer}}, nil
	case "cheaper", "cheap", "less expensive", "lower cost", "costs less", "lower pour cost":
		return []Wish{{Kind: Cheaper}}, nil
	}
	return nil, nil
}

var (
	insteadOf = pattern.Of(`^(?:with |use )?(.+?) (?:instead of|in place of|rather than|for the) (?:the )?(.+)$`)
	swapFor   = pattern.Of(`^(?:swap|replace|change|switch) (?:the )?(.+?) (?:for|with|to|by) (?:a |an |the )?(.+)$`)
)

// readInstead reads one ingredient in place of another.
func readInstead(word string, names Names) ([]Wish, *flavor.DataFault) {
	came, went := "", ""
	if m := insteadOf.FindStringSubmatch(word); m != nil {
		came, went = m[1], m[2]
	} else if m := swapFor.FindStringSubmatch(word); m != nil {
		went, came = m[1], m[2]
	} else {
		return nil, nil
	}
	out, fault := readWith("with "+came, names)
	if out == nil || fault != nil {
		return nil, fault
	}
	barred, fault := without(went, names)
	if fault != nil {
		return nil, fault
	}
	return append(out, barred...), nil
}

var withFirst = pattern.Of(`^(?:with|add|adding|use up|using up|finish|finish off|use|using|plus|featuring|based on|made with|include) (?:some |a little |a |an |the |more )?(.+?)(?: in it)?$`)

// manyNames is how many ingredients must answer to a word that is an aroma too
// before it means them: smoke is an aroma although one tincture bears its name.
const manyNames = 2

// readWith reads what is to be poured: an ingredient, or a class of them.
func readWith(word string, names Names) ([]Wish, *flavor.DataFault) {
	what := word
	if m := withFirst.FindStringSubmatch(word); m != nil {
		what = m[1]
		if t, ok := lookUp(what); ok && (names == nil || len(names(what)) < manyNames) {
			return t.wishes(true), nil
		}
	}
	if names == nil {
		return nil, nil
	}
	if ids := names(what); len(ids) > 0 {
		return []Wish{{Kind: With, IDs: ids}}, nil
	}
	return nil, nil
}

// fillers say how much more, or nothing at all.
var fillers = pattern.Of(`^(?:a|an|the|bit|little|touch|tad|hint|slightly|somewhat|much|way|far|lot|lots|even|please|make|it|something|be|of|to|in|on|notes?|side|flavou?rs?|taste|aroma|smell|style|is|quite|very|really|i|want|would|like|give|me|please|as|toward|towards|for|season|evening|night)$`)

// degree is what a word says of how much there should be.
type degree int

const (
	upward   degree = iota // more of it
	downward               // less of it
	turned                 // the other way than was said before
	unmeant                // nothing
)

// degrees are the words that say how much there should be.
var degrees = map[string]degree{
	"more": upward, "extra": upward, "up": upward, "higher": upward,
	"less": downward, "fewer": downward, "lower": downward, "reduce": downward, "reduced": downward, "too": downward,
	"low": downward, "cut": downward, "without": downward, "not": downward, "isn't": downward,
	"enough": turned, "so": unmeant, "overly": unmeant,
}

// direction reads whether there should be more, whether any word says so, and of what.
func direction(words []string) (more, said bool, what string) {
	var rest []string
	more = true
	for i, w := range words {
		d, known := degrees[w]
		switch {
		case !known || w == "up" && i == len(words)-1: // a drink may be wished up
			if !fillers.MatchString(w) {
				rest = append(rest, w)
			}
		case d == upward:
			said = true
		case d == downward:
			more, said = false, true
		case d == turned:
			more, said = !more, true
		}
	}
	return more, said, strings.Join(rest, " ")
}

// readDirection reads "more bitter", "less sweet", "nuttier", "not so strong",
// "too sharp", "not bitter enough", "bitter".
func readDirection(word string, names Names) ([]Wish, *flavor.DataFault) {
	more, said, what := direction(strings.Fields(word))
	if what == "" {
		return nil, nil
	}
	if t, ok := lookUp(what); ok {
		return t.wishes(more), nil
	}
	if more && slices.Contains(coldWords, what) {
		return []Wish{{Kind: Cold}}, nil
	}
	if said && names != nil {
		if ids := names(what); len(ids) > 0 {
			return []Wish{{Kind: Poured, IDs: ids, More: more}}, nil
		}
	}
	return nil, nil
}

// opposing says, by the kinds of two wishes, when both cannot be met. Kinds that are not there
// never oppose each other.
var opposing = map[[2]Kind]func(w, e *Wish) bool{
	{Sense, Sense}:   func(w, e *Wish) bool { return w.Sense == e.Sense && w.More != e.More },
	{Aroma, Aroma}:   func(w, e *Wish) bool { return slices.Equal(w.Families, e.Families) && w.More != e.More },
	{Aroma, Without}: func(w, e *Wish) bool { return w.More && len(w.Families) == 1 && w.Families[0] == e.Families[0] },
	{Poured, Poured}: func(w, e *Wish) bool { return slices.Equal(w.IDs, e.IDs) && w.More != e.More },
	{With, Bar}:      func(w, e *Wish) bool { return isSubset(w.IDs, e.IDs) },
	{Below, Above}:   func(w, e *Wish) bool { return e.ABV > w.ABV },
	{Cold, Served}:   func(w, e *Wish) bool { return e.Service == flavor.Hot },
	{HotDay, Served}: func(w, e *Wish) bool { return e.Service == flavor.Hot },
	{HotDay, Sense}:  func(w, e *Wish) bool { return e.Sense == sense.Ethanol && e.More },
	{Served, Served}: func(w, e *Wish) bool { return differ(w.Method, e.Method) || differ(w.Service, e.Service) },
}

// opposes reports whether two wishes cannot both be met.
func (w *Wish) opposes(e *Wish) bool {
	rule := opposing[[2]Kind{w.Kind, e.Kind}]
	return rule != nil && rule(w, e)
}

// isSubset reports whether all holds each of some.
func isSubset(some, all []string) bool {
	return !slices.ContainsFunc(some, func(id string) bool { return !slices.Contains(all, id) })
}

// differ reports whether two things are both stated, and not the same.
func differ[T ~string](a, b T) bool { return a != "" && b != "" && a != b }
