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
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	_, err := reading.Read("gin 45 ml\nlemon 20 ml\nTip: add 10 ml umeboshi wash", wholeCatalogue(t))
	assert.Error(t, err, "what a tip pours")
}
