package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// What a text names beside its pours and what carries an allergen stays with the drink, in a list on one line
// too: a guest may have to avoid it.
func TestWhatIsPassedOverKeepsItsAllergens(t *testing.T) {
	c := wholeCatalogue(t)
	for text, allergen := range map[string]flavor.Allergen{
		"2 rum, 1 lime, 3/4 simple, half a macadamia":         flavor.TreeNuts,
		"2 rum, 1 lime, 3/4 simple, cashew half":              flavor.TreeNuts,
		"2 rum and 1 lime and 3/4 simple then a pistachio":    flavor.TreeNuts,
		"2 rum, 1 lime, 3/4 simple, whichever nuts there are": flavor.TreeNuts,
		"2 oz rum, 1 oz cream, a walnut, shake":               flavor.TreeNuts,
	} {
		s, err := reading.Read(text, c)
		require.NoError(t, err, text)
		has := false
		for _, p := range s.Held() {
			for _, m := range p.AllergenMarks {
				has = has || m.Allergen == allergen
			}
		}
		assert.True(t, has, "%q keeps %v", text, s.Dressings)
	}
}
