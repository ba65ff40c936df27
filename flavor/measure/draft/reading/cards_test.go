package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// Cards and sheets have labels, columns and numbered steps; common practice, no source.
func TestCardsAndSheets(t *testing.T) {
	for text, want := range map[string]string{
		"Sour | Lemon juice | 22.5 ml\nTexture | egg white | 20 ml\nSpirit | gin | 45 ml":                              "Lemon juice 22.5 + egg white 20 + gin 45",
		"Sour\ngin 45 ml\nlemon 20 ml\nsimple 15 ml\nStep 1: dry shake for 10 seconds\nStep 2: shake with ice":         "gin 45 + lemon 20 + simple 15",
		"Base: 50 ml gin\nAcid: 20 ml lemon juice\nBitter: 2 dashes aromatic bitters\nProcess: shake":                  "gin 50 + lemon juice 20 + aromatic bitters 1.6",
		"Sour\ngin 45 ml\nlemon 20 ml\nCost: 1.90\nStation: 2\nFamily: sour":                                           "gin 45 + lemon 20",
		"45 ml blanco tequila\n20 ml lime juice\n15 ml agave syrup\nTo finish: 60 ml grapefruit soda\nServe: highball": "blanco tequila 45 + lime juice 20 + agave syrup 15 + grapefruit soda 60",
		"Fizz\n45 ml gin\n20 ml lemon juice\nCharge: 60 ml soda water":                                                 "gin 45 + lemon juice 20 + soda water 60",
		"hazelnut liqueur - 20 ml\nespresso - 30 ml hot":                                                               "hazelnut liqueur 20 + espresso 30",
		"Till\n45 ml aged rum\n1 dash (1 ml) chocolate bitters":                                                        "aged rum 45 + chocolate bitters 0.8",
		"mezcal 240 ml\nsweet vermouth 240 ml\nTo serve pour 90 ml over block ice, orange":                             "mezcal 240 + sweet vermouth 240",
		"Station: Bar 2\nDrink: Sour\nBuild order: simple 3/4 oz, lemon 1 oz, gin 2 oz":                                "simple 22.18 + lemon 29.57 + gin 59.15",
		"COST SHEET\nSour\nbourbon;50;1.20\nlemon;25;0.18\ntotal cost 1.38 / sell 11 / GP 83%\nshake, rocks":           "bourbon 50 + lemon 25",
		"gin | 45 ml\nmilk, cold | 60 ml\nhoney syrup | 15 ml":                                                         "gin 45 + milk, cold 60 + honey syrup 15",
		"| rum | 45 ml |\n| coffee, hot | 120 ml |":                                                                    "rum 45 + coffee, hot 120",
		"Sour, two covers\n100 ml gin\n40 ml lemon juice":                                                              "gin 100 + lemon juice 40",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"gin 45 ml\nlemon 20 ml\nTip: add 10 ml umeboshi wash",
		"gin 45 ml\nlemon 20 ml\nto serve pour 90 ml umeboshi wash over ice",
		"gin 45 ml\nlemon 20 ml\n1 dash (3 ml) saline",
		"gin 45 ml\nlemon 20 ml\numeboshi - 30 ml hot",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
