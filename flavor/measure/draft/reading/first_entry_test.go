package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// What stands in a list as its pours do is no name because it is unknown: it is asked
// about. A name that ends with a sign of its own is read. Common practice, no source.
func TestAnUnknownFirstEntryIsNoName(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"A - 50 gin, B - 25 lemon - 20 simple",
		"umeboshi wash + .75 lemon + .75 simple + soda to top",
		"umeboshi wash / .75 lemon / .75 simple",
		"blorp + 50 gin + 25 lemon + 20 simple",
		"Caipirinha. Cut 1 lime into 8 pieces, muddle with 2 tsp sugar in the glass. Add 50 ml cachaca, fill with crushed ice. Build and churn.",
	} {
		_, err := reading.Read(text, x)
		assert.ErrorContains(t, err, "line 1", text)
	}
	for text, name := range map[string]string{
		"Halyard Sour: 50 gin + 25 lemon + 20 simple": "Halyard Sour",
		"Halyard - 50 gin, 25 lemon, 20 simple":       "Halyard",
		"Halyard sour 50 gin + 25 lemon + 20 simple":  "Halyard sour",
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			assert.Equal(t, name, s.Name, text)
			assert.Len(t, s.Pours, 3, text)
		}
	}
}
