package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// Unheld reports whether a line of a text names an allergen, in brackets or in a list of allergens, that
// nothing poured is known to carry, so that no reading may pass it over.
func Unheld(text string, pours []flavor.Pour) bool {
	for line := range strings.Lines(text) {
		if unheld(line, pours) != nil || undeclared(line, pours) != nil {
			return true
		}
	}
	return false
}

// carried reports whether something poured is known to carry an allergen, for certain or perhaps.
func carried(a flavor.Allergen, pours []flavor.Pour) bool {
	return slices.ContainsFunc(pours, func(p flavor.Pour) bool { _, marked := p.Profile.Allergen(a); return marked })
}

// unheld is the fault of an allergen in brackets that nothing poured is known to carry: another
// bottle than the one that was found may be meant, "foamer (soy)", and a guest may be harmed.
func unheld(line string, pours []flavor.Pour) *flavor.DataFault {
	if !strings.ContainsAny(line, "([") {
		return nil
	}
	for _, m := range bracketed.FindAllStringSubmatch(line, -1) {
		for _, a := range declared.Allergens(m[1]) {
			if !carried(a, pours) {
				return measure.Invalid("ingredient", m[1], "%q names an allergen that is in nothing poured here; write which bottle holds it, or leave it out", m[1])
			}
		}
	}
	return nil
}

// listsAllergens begins a line that lists what a guest may have to avoid.
var listsAllergens = pattern.Of(`(?i)^[ \t•*·–—-]*(?:allergens?|contains)[ \t]*:[ \t]*(.+)$`)

// saysContains is the same as a sentence of its own: "Build long. Contains nuts".
var saysContains = pattern.Of(`(?i)(?:^|[.;!][ \t]+)contains[ \t]+([^.;!:\d]+)[.!]?$`)

// inBrackets is what stands in brackets, where it says what holds an allergen: "nuts (orgeat)".
var inBrackets = pattern.Of(`[(\[][^)\]]*[)\]]`)

// undeclared is the fault of a line that lists an allergen which nothing poured is known to carry, or
// an amount: what holds it was not read.
func undeclared(line string, pours []flavor.Pour) *flavor.DataFault {
	m := listsAllergens.FindStringSubmatch(strings.TrimRight(line, " \t\r\n"))
	if m == nil {
		m = saysContains.FindStringSubmatch(strings.TrimRight(line, " \t\r\n"))
	}
	if m == nil {
		return nil
	}
	toks := token.Lex(nil, m[1], 0, len(m[1]))
	for i := range toks {
		if entry.StartsMeasure(toks[i:]) {
			return measure.Invalid("amount", m[1], "%q states an amount in a list of allergens; write each pour on a line of its own", m[1])
		}
	}
	for part := range strings.FieldsFuncSeq(inBrackets.ReplaceAllString(m[1], ""), func(c rune) bool { return c == ',' || c == ';' || c == '/' || c == '+' || c == '&' }) {
		for _, a := range declared.Allergens(strings.Trim(part, " \t.!")) {
			if !carried(a, pours) {
				return measure.Invalid("ingredient", part, "%q is listed as an allergen and is in nothing poured here; write which bottle holds it, or leave it out", strings.TrimSpace(part))
			}
		}
	}
	return nil
}
