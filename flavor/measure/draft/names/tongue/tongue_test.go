package tongue

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// A name is put together of what its parts mean, whatever the tongue and its endings; common
// practice, no source.
func TestReadings(t *testing.T) {
	for name, want := range map[string]string{
		"Gurkensaft":                 "cucumber juice",
		"jugo de naranja":            "orange juice",
		"sirop d'amande":             "almond syrup",
		"zumo de fruta de la pasión": "passion fruit juice",
		"bitter de naranja":          "orange bitters",
	} {
		assert.Contains(t, Readings(flavor.NormaliseName(name)), want, name)
	}
	for _, name := range []string{"gin", "", "Zorblax"} {
		assert.Empty(t, Readings(flavor.NormaliseName(name)), name)
	}
}

// What is wrong with a line of words is told with its place.
func TestLoadRefuses(t *testing.T) {
	for text, said := range map[string]string{
		"stem lemon: citron":               "has no \" = \"",
		"root lemon = citron":              "is no line of words",
		"linking de = la":                  "is no line of words",
		"stem lemon = a\nstem lime = a, b": "\"a\" means \"lemon\" and \"lime\"",
	} {
		_, err := load(fstest.MapFS{"words/x.txt": {Data: []byte(text)}})
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), said, text)
		assert.Contains(t, err.Error(), "words/x.txt:", text)
	}
	l, err := load(fstest.MapFS{"words/x.txt": {Data: []byte("# Polish\nendings = y, ego, a\nstem lemon = cytrynow~")}})
	require.NoError(t, err)
	assert.Equal(t, map[string]string{"cytrynowy": "lemon", "cytrynowego": "lemon", "cytrynowa": "lemon"}, l.stems)
}
