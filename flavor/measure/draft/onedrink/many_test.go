package onedrink

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// Words that tell of more than one drink are told back: common practice, no source.
func TestMany(t *testing.T) {
	for _, text := range []string{
		"makes two", "Makes 2 cocktails.", "for two:", "for a pair", "x2", "2x", "serves 4", "Yield: 6 drinks", "Pitcher for 4", "feeds a couple", "4 oz gin, enough for two",
		"shake, split between two coupes", "strain into 2 chilled coupes", "Double batch", "Batch (750):", "half batch",
	} {
		assert.Len(t, Many(text, nil), 1, text)
	}
	for _, text := range []string{
		"makes one", "serves 1", "yield 1", "for one", "x1", "shake for 10.", "stir for 30 seconds", "for the two of us we shake", "2 oz gin", "2 x 30 ml gin", "keep the batch cold, 2 oz gin",
		"pour into two tins", "# makes two", "split between tin and glass", "batch date 12/4, gin 50", "serves 20 ml of gin",
	} {
		assert.Empty(t, Many(text, nil), text)
	}
	assert.Empty(t, Many("serves 2", []string{"line 1: “serves 2” is skipped: the amounts are taken as those of one drink"}), "told already")
}

// Raspberries and sugar by the pound are a syrup, and a sour of that name is a drink: common practice, no source.
func TestMakes(t *testing.T) {
	sugar, rum := &flavor.Profile{Class: flavor.ClassSugar}, &flavor.Profile{Class: flavor.ClassRum}
	syrup := flavor.Spec{Name: "Plum syrup", Pours: []flavor.Pour{{Profile: sugar, ML: 400}}}
	assert.Len(t, Makes(&syrup), 1)
	for _, s := range []flavor.Spec{
		{Name: "Plum sour", Pours: syrup.Pours},
		{Name: "Plum shrub", Pours: []flavor.Pour{{Profile: sugar, ML: 30}}},
		{Name: "Rum shrub", Pours: []flavor.Pour{{Profile: rum, ML: 400}}},
	} {
		assert.Empty(t, Makes(&s), s.Name)
	}
}
