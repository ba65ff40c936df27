package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// What a bracket names belongs to the pour before it, or is asked: an allergen that is passed
// over would harm a guest. Common practice, no source.
func TestBracketsThatNameWhatAPourHolds(t *testing.T) {
	for text, want := range map[string]string{
		"pisco 45ml, lime 20ml, simple 20ml, 3 drops foamer (soy). Shake once. Coupe.": "soy-lecithin-foamer",
		"2 oz gin .75 lime .75 simple (rich) shake up":                                 "rich-simple-syrup",
		"2 oz gin .75 lime .75 syrup (agave) shake up":                                 "agave-syrup",
		"45ml gin, 20ml lime, 20 ml orgeat (contains nuts). Shake.":                    "orgeat",
		"45 ml vodka\n20 ml coffee liqueur\n20 ml advocaat (allergen: egg)\nshake":     "advocaat",
		"45ml gin, 20ml simple, 20ml limón (lime)":                                     "lime-juice",
		"45ml gin, 20ml simple, 20ml limón (lemon)":                                    "lemon-juice",
		"45ml gin, 20ml simple, 20ml jugo de limón verde (lima)":                       "lime-juice",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, want, s.Pours[len(s.Pours)-1].Profile.ID, text)
	}
	for text, fault := range map[string]string{
		"45ml gin, 20ml lime, simple 20 ml (hazelnut), shake":   "says more than simple syrup",
		"45ml gin, 20ml lime, simple 20 ml [hazelnut], shake":   "hazelnut",
		"45ml gin, 20ml lime, simple 20 ml (sesame), shake":     "says more than simple syrup",
		"45ml gin\n20ml lime\nsimple 20 ml (contains fish)":     "says more than simple syrup",
		"45ml gin\n20ml lime\nsimple 20 ml (lupin)":             "says more than simple syrup",
		"45ml gin\n20ml lime\n3 drops foamer [soy]\nshake":      "names an allergen",
		"45ml gin, 20ml lime, simple 20 ml (shellfish), shake":  "says more than simple syrup",
		"45ml gin, 20ml lime, simple 15 ml, foamer (egg) 15 ml": "unknown ingredient",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, fault, text)
	}
}
