package naming

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
)

// besideAllergens are words that stand with allergens in brackets and change nothing about them.
var besideAllergens = token.Words(`contains contain containing has with may and or allergen allergens`)

// AllergensAlone are the allergens that words name, none if they say anything else.
func AllergensAlone(words string) []flavor.Allergen {
	var out []flavor.Allergen
	toks := token.Lex(nil, words, 0, len(words))
	for i := 0; i < len(toks); i++ {
		if toks[i].Kind == token.Mark || besideAllergens[toks[i].Text] {
			continue
		}
		n := min(LongestName, len(toks)-i)
		for ; n > 0; n-- {
			if a, err := flavor.ParseAllergen(words[toks[i].Start:toks[i+n-1].End]); err == nil {
				out = append(out, a)
				break
			}
		}
		if n == 0 {
			return nil
		}
		i += n - 1
	}
	return out
}

// carries reports whether words name allergens and nothing else, each of which an ingredient is
// known to contain: "advocaat (egg)".
func carries(p *flavor.Profile, words string) bool {
	named := AllergensAlone(words)
	return len(named) > 0 && !slices.ContainsFunc(named, func(a flavor.Allergen) bool {
		sure, _ := p.Allergen(a)
		return sure != flavor.Contains
	})
}
