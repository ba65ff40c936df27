package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// A text that forbids a way of mixing and asks for it afterwards, or in which two tell two ways, is asked.
func TestMixingToldTwice(t *testing.T) {
	for _, text := range []string{
		"vodka 45 ml, lime 20 ml, cream 30 ml. Stir, do not shake. Shake hard and strain.",
		"2 oz rye\n1 oz sweet vermouth\nblue pen says SHAKEN, black pen says STIRRED",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "does not agree", text)
	}
	for text, want := range map[string]flavor.Method{
		"gin 60, dry vermouth 10. Stir. Don't shake. up":                                     flavor.Stir,
		"gin 60, lemon 30, syrup 20. Don't stir. Shake hard. up":                             flavor.Shake,
		"gin 50, lemon 25, syrup 20, soda 60. shake first three, don't shake the soda. tall": flavor.Shake,
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Method, text)
	}
}

// Ice in what a drink is mixed in is not what it is served on, and so much that sparkles over ice fills a tall glass:
// common practice, no source.
func TestIceAndTheGlass(t *testing.T) {
	for text, want := range map[string]flavor.Service{
		"Pour 2½ ounces of gin and half an ounce of dry vermouth over ice in a mixing glass. Stir thirty seconds and strain.": flavor.Up,
		"dark rum 60 / ginger beer 120 / lime 10. build over ice":                                                             flavor.Long,
		"red bitter 30 / sweet vermouth 30 / soda 60, over ice":                                                               flavor.Rocks,
		"dark rum 45, orange juice 30, lime 15. Shake. Hurricane glass. Ice.":                                                 flavor.Long,
		"gin 60 / dry vermouth 10 / stir over ice in the tin, rocks":                                                          flavor.Rocks,
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Service, text)
	}
}
