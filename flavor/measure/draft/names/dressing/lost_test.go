package dressing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// A word for what carries an allergen, beside a bottle whose record does not, is asked about
// wherever it stands; common practice, no source.
func TestNoWordForAnAllergenIsPassedOver(t *testing.T) {
	c, err := datatest.Calibrated()
	require.NoError(t, err)
	for line, asks := range map[string]bool{
		"2 oz gin (almond-washed) no salt rim": true, "2 oz gin (no ice, almond-washed)": true,
		"2 oz gin (almond-washed)": true, "2 oz gin, almond-washed": true, "2 oz gin - almond washed": true, "2 oz gin [milk-washed]": true, "2 oz gin (clarified with milk)": true,
		"2 oz rum (peanut fat washed)": true, "2 oz gin (hazelnut)": true, "2 oz gin, infused with pecans": true, "2 oz gin (brown butter)": true, "2 oz gin / almond-washed": true, "2 oz almond-washed gin": true,
		"2 oz gin (house, almond)": true, "2 oz gin (honey infused)": true, "2 oz gin – bacon fat washed": true,
		"2 oz gin": false, "2 oz rye": false, "0.5 oz orgeat": false, "0.5 oz orgeat (almond)": false, "2 oz wheat vodka": false, "1 oz Irish cream": false, "1 oz coconut cream": false, "1 oz heavy cream": false,
		"1 egg white": false, "0.5 oz honey syrup": false, "1 oz dry sherry": false, "2 oz rum (aged)": false, "2 dashes black walnut bitters": false, "2 dashes chocolate bitters": false, "1 oz cream sherry": false,
	} {
		s, err := reading.Read("Foo Sour\n2 oz vodka\n.75 oz lime juice\n.75 oz simple syrup\n"+line+"\nshake, up", c.Catalogue)
		if asks {
			counts := err != nil || s.Clear([]flavor.Allergen{flavor.TreeNuts, flavor.Peanuts, flavor.Milk}) != flavor.Free
			assert.True(t, counts, "%s: %v", line, s.Notes)
			continue
		}
		assert.NoError(t, err, line)
	}
	for _, line := range []string{"top note: sesame seeds", "served with a sesame cracker", "(garnish: sesame)"} {
		s, err := reading.Read("Foo Sour\n2 oz vodka\n.75 oz lime juice\n.75 oz simple syrup\n"+line+"\nshake, up", c.Catalogue)
		assert.True(t, err != nil || s.Clear([]flavor.Allergen{flavor.Sesame}) != flavor.Free, "%s: %v", line, s.Notes)
	}
}
