package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Amounts are said in words behind names too: common practice, no source.
func TestFigures(t *testing.T) {
	for text, want := range map[string]string{
		"Gin sixty, dry vermouth ten, one dash": "Gin 60   , dry vermouth 10 , one dash",
		"Bourbon, fifty. Lemon, twenty-five.":   "Bourbon, 50   . Lemon, 25         .",
		"cachaca, fifty mils.":                  "cachaca, 50 ml     .",
		"lime twenty five":                      "lime 25         ",
		"twenty of the gin":                     "twenty of the gin",
		"seven seas sour":                       "seven seas sour",
		"6 ml gin":                              "6 ml gin",
	} {
		assert.Equal(t, want, Figures(text), text)
	}
	assert.True(t, Spells("Rhum agricole, , thirty"))
	assert.False(t, Spells("Thirty Nine Steps"))
}
