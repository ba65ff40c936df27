package declared

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

// longestName is the most words of the name of an allergen.
const longestName = 4

// besideAllergens are words that stand with allergens in brackets and change nothing about them.
var besideAllergens = token.Words(`contains contain containing has with may and or allergen allergens`)

// Allergens are the allergens that words name, none if they say anything else.
func Allergens(words string) []flavor.Allergen {
	var out []flavor.Allergen
	toks := token.Lex(nil, words, 0, len(words))
	for i := 0; i < len(toks); i++ {
		if toks[i].Kind == token.Mark || besideAllergens[toks[i].Text] {
			continue
		}
		n := min(longestName, len(toks)-i)
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
