package declared

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// freeWords say that a bottle has no alcohol, before its name or behind it.
var freeWords = token.Names(`alcohol-free, alc free, af, na, n/a, non alcoholic, nonalcoholic, nonalc, non alc, no alcohol, no alc, no abv, zero proof, zero alcohol, zero abv, 0 proof, 0 abv, spirit free, booze free,
alkoholfrei, alkoholfreier, alkoholfreie, alkoholfreies, alkoholfri, alkoholfritt, alcoholvrij, alcoholvrije, sans alcool, sin alcohol, sem álcool, analcolico, analcolica, senza alcol, dealcoholised, dealcoholized, virgin`)

// NoAlcohol reports whether words say that a drink has no alcohol, and nothing else.
func NoAlcohol(words string) bool { return freeWords[flavor.NormaliseName(words)] }

// NoStrength reports whether words are a strength of nothing: "0 %", "0.0%", "0.0".
func NoStrength(words string) bool { return strengthNone.MatchString(words) }

var strengthNone = pattern.Of(`^0([.,]0+)? ?%$|^0[.,]0+$`)

// LeadingNoAlcohol returns the words with which the title of a drink begins that say that it has no alcohol, or
// hardly any: "0 % collins", "non-alc sour". A drink that is called a virgin may be a place's. Empty for none.
func LeadingNoAlcohol(title string) string {
	if m := leadingStrength.FindString(title); m != "" {
		return m
	}
	words := strings.Fields(title)
	for n := min(longestFree, len(words)); n > 0; n-- {
		if lead := strings.Join(words[:n], " "); NoAlcohol(lead) && !strings.EqualFold(lead, "virgin") {
			return lead
		}
	}
	return ""
}

// leadingStrength is a strength of nothing, or of little, that begins a title.
var leadingStrength = pattern.Of(`(?i)^(?:0([.,]0+)?[ \t]?%(?:[ \t]|$)|low/no\b)`)

// noStrength is a strength of nothing, before a name or behind it: "0.0 % gin".
var noStrength = pattern.Of(`(^| )\(?0([.,]0+)?\s*(%|$)( abv| vol)?\)?|(^| )0[.,]0+`)

// longestFree is the most words that say it: "non alcoholic".
const longestFree = 2

// WithoutNoAlcohol returns a name without the words that say that it has no alcohol; false if
// there are none.
func WithoutNoAlcohol(name string) (string, bool) {
	if strings.IndexByte(name, '0') >= 0 {
		if at := noStrength.FindStringIndex(name); at != nil {
			return token.OneLine(name[:at[0]] + " " + name[at[1]:]), true
		}
	}
	words := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '(' || r == ')' || r == ',' })
	for n := min(longestFree, len(words)-1); n > 0; n-- {
		if freeWords[flavor.NormaliseName(strings.Join(words[:n], " "))] {
			return strings.Join(words[n:], " "), true
		}
		if freeWords[flavor.NormaliseName(strings.Join(words[len(words)-n:], " "))] {
			return strings.Join(words[:len(words)-n], " "), true
		}
	}
	return "", false
}
