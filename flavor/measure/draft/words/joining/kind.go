package joining

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/token"
)

// heads are words that name only what kind of pour it is; common practice. Bitters are
// dashed before the garnish is named: "2 dashes bitters, orange".
var heads = token.Words(`syrup syr sirop liqueur liq juice cordial shrub purée puree brine nectar tincture`)

// shades are words that name a pour more closely by its shade or its make, by the words
// that leave it open; common practice.
var shades = func() map[string]map[string]bool {
	bottle := token.Words(`white dark gold golden aged old light black red dry sweet medium spiced overproof amber brown green blue sparkling semi-dry extra-dry`)

	out := map[string]map[string]bool{
		"water": token.Words(`soda tonic sparkling still`), "milk": token.Words(`whole skimmed condensed evaporated`), "cream": token.Words(`heavy double single whipping light`), "lemonade": bottle,
	}
	for w := range token.Words(`rum tequila vermouth sherry port wine tea sugar whiskey whisky madeira marsala curaçao curacao quinquina cider beer chinato sake vinegar cacao menthe`) {
		out[w] = bottle
	}
	for w := range token.Words(`white whites yolk yolks`) {
		out[w] = token.Words(`egg eggs`)
	}
	out["rosé"] = bottle
	out["sugar"] = token.Words(`dark golden brown`) // "sugar 15, white" has the white of an egg behind it
	return out
}()

// headed reports whether what stands behind a comma, alone on the line of a pour, says
// which of a kind it is: "20 ml syrup, raspberry". Amid others it is laid on the drink.
func headed(a, b *Piece) bool {
	after := entry.TrimMarks(b.Toks)
	return b.Sep == "," && a.poursOne() && heads[strings.ToLower(a.Pour.Name)] && len(after) > 0 && len(after) <= 2 && b.Listed() && (len(after) == 1 || !laid.Noun(after[1].Text))
}

// shadedBy reports whether what stands behind a comma is a shade of the Pour: "rum, white",
// "rum, overproof, white". Alone on the line of a pour one is whatever that pour is: the
// white of an egg is no part of "grapefruit juice, white".
func shadedBy(a, b *Piece, alone bool) bool {
	after := entry.TrimMarks(b.Toks)
	if !a.poursOne() || len(after) == 0 || !b.Listed() && b.Pour.Shape != entry.ShapeImplied {
		return false
	}
	name, _, _ := strings.Cut(strings.ToLower(a.Pour.Name), ",")
	kind := name[strings.LastIndexByte(name, ' ')+1:]
	return shades[name][after[0].Text] || alone && (shades[kind][after[0].Text] || len(after) == 1 && after[0].Text == "white")
}
