package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// measureTolerance is how far mL may lie off, as a share.
const measureTolerance = 0.01

// What bars say for an amount that is no unit has a size that is told. Sizes are common practice, no
// source.
func TestMeasuresOfTheBar(t *testing.T) {
	x := wholeCatalogue(t)
	for written, want := range map[string]float64{
		"1/2 pint lager":           284.1,
		"half pint lager":          284.1,
		"lager 1 pint":             568.3,
		"pint of lager":            568.3,
		"a tot of dark rum":        25,
		"a squirt of agave syrup":  4.93,
		"a whisper of absinthe":    1.23,
		"hint of absinthe":         1.23,
		"a kiss of maraschino":     1.23,
		"a dollop of cream":        14.79,
		"rye 1 jigger":             44.36,
		"1 Handvoll Basilikum":     5,
		"a handful of mint":        4,
		"a handful of raspberries": 25,
	} {
		s, err := reading.Read("60 ml gin\n20 ml lemon juice\n"+written, x)
		require.NoError(t, err, written)
		require.Len(t, s.Pours, 3, written)
		assert.InEpsilon(t, want, s.Pours[2].ML, measureTolerance, written)
		assert.NotEmpty(t, s.Notes, written)
	}
}

// What no bar pours so is asked for, and what a drink is called pours nothing.
func TestMeasuresOfNoSize(t *testing.T) {
	x := wholeCatalogue(t)
	for _, written := range []string{"1 pint gin", "a handful of gin", "a hint of vermouth", "a dram of gin", "2 finger limes", "2 fingers bourbon", "a finger of rye", "a knob of ginger"} {
		_, err := reading.Read("60 ml vodka\n20 ml lemon juice\n"+written, x)
		assert.Error(t, err, written)
	}
	s, err := reading.Read("Kiss of Honey\n2 oz bourbon\n1 oz lemon", x)
	require.NoError(t, err)
	assert.Equal(t, "Kiss of Honey", s.Name)
	assert.Len(t, s.Pours, 2)
}

// The glass that a drink is served in is none of its measures.
func TestGlassesAreNoMeasures(t *testing.T) {
	s, err := reading.Read("lager 330\nlime cordial 25\npint", wholeCatalogue(t))
	require.NoError(t, err)
	require.Len(t, s.Pours, 2)
	assert.InEpsilon(t, 330, s.Pours[0].ML, measureTolerance)
}

// A litre is not meant where a word that is cut short stands behind a number, a glass is no amount of
// what it is served in, and what stands in brackets before others is poured as they are.
func TestWhatIsNoMeasure(t *testing.T) {
	x := wholeCatalogue(t)
	for text, want := range map[string][]float64{
		"bbn .75 lt org aperitivo .75 alp amaro .75 lem .75 shk up": {22.18, 22.18, 22.18, 22.18},
		"30 gin + 15 lemon + 200 pale ale in a half pint":           {30, 15, 200},
		"[gin 45][fino 20][lemon 15] stir up":                       {45, 20, 15},
	} {
		s, err := reading.Read(text, x)
		require.NoError(t, err, text)
		require.Len(t, s.Pours, len(want), text)
		for i, ml := range want {
			assert.InEpsilon(t, ml, s.Pours[i].ML, measureTolerance, text)
		}
	}
}
