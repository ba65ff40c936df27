package sheet

import (
	"strconv"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/token"
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
	said  // how the drink is made and served
	apart // nothing that is poured
)

// column is what a head says of a column.
type column struct {
	role  role
	head  string      // as written
	unit  flavor.Unit // of the amounts in it; empty where none is said
	size  int         // of the drink, where a column is for one of several: 1 is the usual one
	label entry.Label // of what is said
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
		apart: `cost costs price prices note notes gp abv vol% %vol alc proof supplier brand code sku stock par kcal cal type role category cat comment comments remark remarks source margin total ext
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
	"small": 2, "sml": 2, "sm": 2, "half": 2, "large": 3, "lrg": 3, "lge": 3, "lg": 3, "double": 3, "dbl": 3, "batch": 4, "jug": 4, "pitcher": 4, "carafe": 4}

// perOne are what a column of amounts is for, behind "per".
var perOne = token.Words(`drink serve serving glass cocktail portion pour person guest one each unit`)

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
	if many := multiple(cell); many > 0 { // "1x" beside "10x"
		c.role, c.size = amount, 1
		if many > 1 {
			c.size = sizes["batch"]
		}
		return c
	}
	words := wordsOfHead(cell)
	if len(words) == 0 || len(words) > mostWords || poured(cell) {
		return c
	}
	if l := saidBy(strings.Join(words, " ")); l != entry.NoLabel {
		c.role, c.label = said, l
		return c
	}
	if words[0] == "per" && len(words) == 2 && perOne[words[1]] { // beside "batch"
		c.role, c.size = amount, 1
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

// multiple is how many drinks the amounts of a column are for, "x10", "1x"; 0 where its head does
// not say.
func multiple(cell string) int {
	bare := strings.ToLower(strings.TrimSpace(cell))
	figures := strings.TrimSuffix(strings.TrimPrefix(bare, "x"), "x")
	if figures == bare {
		return 0
	}
	n, err := strconv.Atoi(strings.TrimSpace(figures))
	if err != nil || n < 1 {
		return 0
	}
	return n
}

// poured reports whether a cell states an amount, as a pour does: "2 oz", but not "1 drink".
func poured(cell string) bool {
	toks := token.Lex(nil, cell, 0, len(cell))
	return entry.StartsAmount(toks) && !(len(toks) > 1 && passing[toks[1].Text])
}

// mostWords is the most words of the head of a column.
const mostWords = 4

// saidBy is the label of what a column says of making and serving.
func saidBy(words string) entry.Label {
	switch l := entry.Labels[words]; l {
	case entry.LabelServing, entry.LabelGlass, entry.LabelGarnish, entry.LabelRim:
		return l
	}
	return entry.NoLabel
}
