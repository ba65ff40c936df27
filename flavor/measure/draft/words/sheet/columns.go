package sheet

import (
	"strconv"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/token"
)

// role is what a column holds.
type role uint8

const (
	unknown role = iota
	drink        // the name of the drink
	thing        // the name of a drink or of an ingredient, by what the other columns are
	name         // of an ingredient
	amount
	unit
	said   // how the drink is made and served
	listed // all that is poured
	apart  // nothing that is poured
)

// column is what a head says of a column.
type column struct {
	role  role
	head  string      // as written
	unit  flavor.Unit // of the amounts in it; empty where none is said
	size  int         // of the drink, where a column is for one of several: 1 is the usual one
	label label.Kind  // of what is said
}

// roles are the words of heads.
var roles = func() map[string]role {
	m := map[string]role{}
	for r, words := range map[role]string{
		drink: `drink cocktail recipe title cóctel bebida getränk boisson`,
		thing: `name item product bottle`,
		name: `ingredient ingredients spirit spirits base mod mods modifier modifiers liq liqueur liqueurs citrus acid sweet sweetener sour bitter bitters juice syrup length lengthener mixer
top topper float fizz bubbles accent split strong weak other extra component wine fruit herb egg foam what zutat zutaten ingrediente ingredientes ingredienti ingrédient ingrédients`,
		amount: `qty quantity amount amt measure meas volume vol pour dose spec count menge cantidad quantità quantité`,
		unit:   `unit units uom einheit unidad unité`,
		apart: `cost costs price prices note notes gp abv vol% %vol alc proof supplier brand code sku id nr ref stock par kcal cal type role category cat comment comments remark remarks source margin total ext
allergen allergens % $ £ € sell rrp`,
	} {
		for _, w := range strings.Fields(words) {
			m[w] = r
		}
	}
	return m
}()

// systems are the words of heads for the units of a column.
var systems = map[string]flavor.Unit{"us": flavor.Ounce, "imperial": flavor.Ounce, "imp": flavor.Ounce, "ounces": flavor.Ounce, "metric": flavor.Millilitre, "metrisch": flavor.Millilitre}

// sizes are the words of heads for the size of a drink, the usual one first.
var sizes = map[string]int{"reg": 1, "regular": 1, "std": 1, "standard": 1, "single": 1, "sgl": 1, "one": 1,
	"small": 2, "sml": 2, "sm": 2, "half": 2, "large": 3, "lrg": 3, "lge": 3, "lg": 3, "double": 3, "dbl": 3, "batch": 4, "jug": 4, "pitcher": 4, "carafe": 4, "keg": 4}

// counted are words of heads that say for how many drinks a column is.
var counted = token.Words(`x per one each of for drink drinks serve serves serving servings glass glasses cocktail cocktails portion portions pour pours person people persons guest guests pax ppl unit batch batched event keg`)

// holdsAll are the heads of a column that holds all pours of a drink, beside its name.
var holdsAll = token.Words(`spec specs ingredients recipe build pours ingrédients ingredienti ingredientes zutaten`)

// passing are words of heads that change nothing about a column.
var passing = token.Words(`x in per of the for a serve serving each by to used drink glass`)

// wordsOfHead are the words of the head of a column, in lower case, without numbers and signs
// but those of money and of shares.
func wordsOfHead(cell string) []string {
	return strings.FieldsFunc(strings.ToLower(cell), func(c rune) bool {
		return !unicode.IsLetter(c) && c != '%' && !unicode.Is(unicode.Sc, c)
	})
}

// columnOf is what the head of a column says; its role is unknown where it says nothing known.
func columnOf(cell string) column {
	c := column{head: cell}
	if many, u := multiple(cell); many > 0 { // "1x" beside "10x"
		c.role, c.size, c.unit = amount, 1, u
		if many > 1 {
			c.size = sizes["batch"]
		}
		return c
	}
	words := wordsOfHead(cell)
	if len(words) == 0 || len(words) > mostWords || poured(cell) {
		return c
	}
	if l := saidBy(strings.Join(words, " ")); l != label.None {
		c.role, c.label = said, l
		return c
	}
	for _, w := range words {
		r := roles[w]
		u, ok := measure.ParseUnit(w)
		if own := systems[w]; own != "" {
			u, ok = own, true
		}
		if ok && (r == unknown || r == name) && (u.Jigger() || u == flavor.PartUnit || u == flavor.Dash) {
			r, c.unit = amount, u
		} else if s := sizes[w]; s > 0 {
			r, c.size = amount, s
		}
		switch {
		case r == unknown && len(words) > 1 && passing[w]:
		case r == unknown:
			return column{head: cell}
		case c.role == unknown, r == apart, r == amount && c.role != name && c.role != apart, c.role == amount && r == name:
			c.role = r
		}
	}
	return c
}

// multiple is how many drinks the amounts of a column are for, "x10", "20 serves (oz)", "per
// drink", and their unit; 0 where its head does not say.
func multiple(cell string) (many int, u flavor.Unit) {
	fields := strings.FieldsFunc(strings.ToLower(cell), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) && c != '.' })
	known, told := 0, false
	for i, f := range fields {
		figures := strings.TrimSuffix(strings.TrimPrefix(f, "x"), "x")
		n, err := strconv.Atoi(figures)
		unit, isUnit := measure.ParseUnit(strings.Trim(f, "."))
		switch {
		case err == nil && n > 0 && many == 0:
			many, told = n, told || figures != f
			if u, ok := measure.ParseUnit(next(fields, i)); ok && u.Jigger() && figures == f { // "45 ml"
				return 0, ""
			}
		case isUnit && unit.Jigger() && u == "":
			u = unit
		case counted[f]:
			known++
			told = told || f != "of" && f != "for" && f != "batch"
		default:
			return 0, ""
		}
	}
	switch {
	case many > 0 && (told || known > 0):
		return many, u
	case len(fields) > 1 && fields[0] == "per" && known > 1: // beside "batch"
		return 1, u
	}
	return 0, ""
}

// next is the field behind another, empty behind the last.
func next(fields []string, i int) string {
	if i+1 < len(fields) {
		return fields[i+1]
	}
	return ""
}

// HeadsBatch reports whether a line heads the amounts for one drink and for a batch, and pours
// nothing: "Single / Batch (x12)", "1 serve / 20 serves".
func HeadsBatch(line string) bool {
	known := 0
	for f := range strings.FieldsFuncSeq(strings.ToLower(line), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) }) {
		n, err := strconv.Atoi(strings.TrimSuffix(strings.TrimPrefix(f, "x"), "x"))
		u, isUnit := measure.ParseUnit(f)
		switch {
		case err == nil && n > 0 && f[0] != 'x' && !strings.HasSuffix(f, "x") || isUnit && u.Jigger():
		case err == nil && n > 0, counted[f] || sizes[f] > 0 || roles[f] == name:
			known++
		default:
			return false
		}
	}
	return known > 0
}

// poured reports whether a cell states an amount, as a pour does: "2 oz", but not "1 drink".
func poured(cell string) bool {
	toks := token.Lex(nil, cell, 0, len(cell))
	return entry.StartsAmount(toks) && !(len(toks) > 1 && passing[toks[1].Text])
}

// mostWords is the most words of the head of a column.
const mostWords = 4

// saidBy is the label of what a column says of making and serving.
func saidBy(words string) label.Kind {
	switch l := label.Words[words]; l {
	case label.Serving, label.Glass, label.Garnish, label.Rim:
		return l
	}
	return label.None
}
