package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Drafts in turns of phrase of bars, and what they pour: common practice, no source.
func TestTurnsOfPhrase(t *testing.T) {
	for text, want := range map[string]string{
		"2 1/2 rye 1/2 sv 2 maraschino dashes 2 absinthe dashes 2 ango stir up": "rye 73.93 + sv 14.79 + maraschino 1.6 + absinthe 1.6 + ango 1.6",
		".75 of everything: mezcal, yellow herbal, lime. shake, coupe":          "mezcal 22.18 + yellow herbal 22.18 + lime 22.18",
		".5 each vodka gin tequila triple sec, .75 lemon, cola, tall":           "vodka 14.79 + gin 14.79 + tequila 14.79 + triple sec 14.79 + lemon 22.18 + cola 90",
		"long one 15 each vodka gin rum triple sec, 25 lemon, 15 simple":        "vodka 15 + gin 15 + rum 15 + triple sec 15 + lemon 25 + simple 15",
		"Tommys 2-1-.5 tequila repo, lime, agave. shake":                        "tequila repo 60 + lime 30 + agave 15",
		"Gibson, 70/10, gin + dry verm, stir, coupe":                            "gin 70 + dry verm 10",
		"2 gin, juice of 1/2 lemon, .75 simple, shake":                          "gin 59.15 + lemon 22.18 + simple 22.18",
		"60 gin\nJuice ½ lemon\n15 simple\nshake":                               "gin 60 + lemon 22.5 + simple 15",
		"Black Manhattan\n2 rye\n1 amaro\n1 ango 1 orange\nstir up":             "rye 59.15 + amaro 29.57 + ango 0.8 + orange 0.8",
		"Royal Bermuda Yacht Club 2 gold rum .75 lime .25 falernum shake up":    "gold rum 59.15 + lime 22.18 + falernum 7.39",
		"60 rye, 5 dem, 4 ango. stir. lemon, bin it":                            "rye 60 + dem 5 + ango 3.2",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"gin martini 6:1, orange bitters, lemon",                                       // nobody says of how much
		"2 rye, 1 sv, 1 ango, 1 orange, stir", "2 rum, 1 lime\n1 ango 1 orange\nshake", // juice, or bitters
		".5 each vodka gin tequila, bourbon to taste",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
}
