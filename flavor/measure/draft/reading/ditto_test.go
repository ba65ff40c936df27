package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Old handbooks write amounts in words, in measures of their own, and repeat what stands above: common practice,
// no source.
func TestHandbooksRepeatUnits(t *testing.T) {
	for text, want := range map[string]string{
		"Rye whisky, one wineglass\nGum syrup, three dashes\nOrange bitters, two do.": "Rye whisky 59.15 + Gum syrup 2.4 + Orange bitters 1.6",
		"Rye, one jigger\nCuracao, two dashes\n3 do. bitters\nAbsinthe, one do":       "Rye 44.36 + Curacao 1.6 + bitters 2.4 + Absinthe 0.8",
		"Gin, one pony\nSweet vermouth, one do.\nOrange bitters, two dashes":          "Gin 29.57 + Sweet vermouth 29.57 + Orange bitters 1.6",
		"Brandy 2 oz\nMaraschino, 2 dashes\nOrange bitters, do.":                      "Brandy 59.15 + Maraschino 1.6 + Orange bitters, 1.6",
		"Gin, two ounces\nLemon juice, one ounce\nSugar syrup, one do.":               "Gin 59.15 + Lemon juice 29.57 + Sugar syrup 29.57",
		"a jigger of rye, a pony of sweet vermouth, two dashes orange bitters":        "rye 44.36 + sweet vermouth 29.57 + orange bitters 1.6",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// No base is lost as the name of its drink, with its amount in words behind it.
func TestMeasuresInWordsAreNoNames(t *testing.T) {
	for text, want := range map[string]string{
		"Whisky, one jigger\nGum syrup, three dashes":                                "Whisky 44.36 + Gum syrup 2.4",
		"Whisky, one wineglassful\nGum syrup, three dashes\nOrange bitters, two do.": "Whisky 59.15 + Gum syrup 2.4 + Orange bitters 1.6",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}
