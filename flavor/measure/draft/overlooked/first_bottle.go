package overlooked

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/pattern"
)

// amountEnds is an amount behind its name, with the sign or the line that ends the pour: "60 ml,".
var amountEnds = pattern.Of(`(?i)^[ \t]*(?:[:=–-][ \t]*)?(?:\d+[ \t]+\d/\d|\d+/\d+|\d*[.,]?\d+[½¼¾⅓⅔]?|[½¼¾⅓⅔])[ \t]?(?:oz|ml|cl|ounces?|parts?)?\.?[ \t]*(?:[,;|/+·•\n]|$)`)

// mostOfBottle is the most words before what a bottle is, "smoked salmon vodka".
const mostOfBottle = 2

// firstBottle is the fault of a name of the drink directly before the first pour that may be which bottle is
// poured, behind being what follows the name: where its words carry an allergen that nothing poured does,
// "oyster gin 60 ml", or where the amount stands behind the name of the pour, as behind every name of a list.
func firstBottle(name, behind string, pours []flavor.Pour) *flavor.DataFault {
	words := strings.Fields(name)
	if strings.Trim(name, `"“”*_`) != name || drinks.Called(name) || drinks.Known(name) || strings.HasPrefix(behind, "\n") {
		return nil
	}
	asked := pours[0].Match.Asked
	bottle := words[max(0, len(words)-mostOfBottle):]
	whole := strings.Join(bottle, " ") + " " + asked
	if brings := lostBy(bottle, pours); brings != "" && naming.Loses(whole, pours[0].Profile) != "" { // "crab apple gin" is of no crab
		return flavor.Unknown("ingredient", whole, nil, "%q may be a bottle with something in it that brings %s, which has to be stated; name the bottle in your stock, or put a colon behind the name of the drink", whole, brings)
	}
	if len(words) > mostOfBottle || entitled(words, asked) || !amountEnds.MatchString(strings.TrimPrefix(strings.TrimLeft(behind, " \t"), asked)) {
		return nil
	}
	return flavor.Unknown("ingredient", whole, nil, "unknown ingredient %q; write its category, such as %q, or \"%s %s\" on a line of its own if that is the name of the drink", whole, pours[0].Profile.Name, draft.NamePrefix, name)
}

// lostBy is what words name, whole or the last of them alone, that none of the pours carries; empty if nothing.
func lostBy(words []string, pours []flavor.Pour) string {
	for _, some := range []string{strings.Join(words, " "), words[len(words)-1]} {
		lost := ""
		for i := range pours {
			if lost = naming.Loses(some, pours[i].Profile); lost == "" {
				break
			}
		}
		if lost == "" {
			return "" // "crab apple" is no crab
		}
		if some == words[len(words)-1] || len(words) == 1 {
			return lost
		}
	}
	return ""
}

// entitled reports whether words before a pour are written as the name of a drink is and the pour is not:
// each of several with a capital, or one in capitals alone.
func entitled(words []string, pour string) bool {
	first, _ := utf8.DecodeRuneInString(pour)
	if unicode.IsUpper(first) {
		return false
	}
	for _, w := range words {
		if first, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(first) {
			return false
		}
	}
	return len(words) > 1 || strings.ToUpper(words[0]) == words[0]
}
