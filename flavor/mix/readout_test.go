package mix

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Where each figure of a shaken sour with a bitter aperitif lies, so that a tenth or
// ten times as much lies elsewhere: 45 mL of spirit, 20 mL of a bitter aperitif of
// 25 % vol, 20 mL of citrus and 15 mL of syrup make some 150 mL. Common practice, no
// source; the bounds are less than ten times apart.
var sizes = map[string][2]float64{
	"volume_ml": {110, 200}, "abv_pct": {10, 20}, "sugar_g_per_100ml": {5, 14}, "acid_g_per_100ml": {0.4, 1.5}, "bitter": {10, 60},
	"dilution_pct": {25, 75}, "temperature_c": {-9, -1.5}, "ethanol_g": {12, 25}, "energy_kcal": {120, 260},
}

func readOff(t *testing.T) *Drink {
	t.Helper()
	s := specOf(t, "sour", flavor.Shake, flavor.Up, part{ml: 45, abv: 40}, part{ml: 20, abv: 25, sugar: 200}, part{ml: 20, acid: 60}, part{ml: 15, sugar: 615})
	s.Pours[1].Profile.Bitter.Value = 200
	d, err := mixer(t).Mix(s)
	require.NoError(t, err)
	return d
}

// A figure that is read ten times too small, or too large, is not in its range.
func TestReadoutsAreOfTheRightSize(t *testing.T) {
	d := readOff(t)
	for _, r := range Readouts() {
		within, ok := sizes[r.Key]
		require.True(t, ok, "%s has no range here", r.Key)
		for _, v := range []float64{r.Value(d), r.Shown(r.Value(d))} {
			assert.Greater(t, v, within[0], r.Key)
			assert.Less(t, v, within[1], r.Key)
		}
		if r.Spread != nil {
			spread := r.Spread(&d.PlusMinus)
			assert.Positive(t, spread, r.Key)
			assert.Less(t, spread, 0.5*max(r.Value(d), -r.Value(d)), r.Key)
		}
	}
}

// Every spread that a drink carries is read off once, and every readout says all
// that a face needs.
func TestReadoutsAreWhole(t *testing.T) {
	read := map[float64]string{}
	var p PlusMinus
	fields := reflect.ValueOf(&p).Elem()
	for i := range fields.NumField() {
		fields.Field(i).SetFloat(float64(i + 1))
	}
	keys := map[string]bool{}
	for _, r := range Readouts() {
		assert.False(t, keys[r.Key], "%s stands twice", r.Key)
		keys[r.Key] = true
		for _, said := range []string{r.Key, r.Label, r.Unit, r.Means} {
			assert.NotEmpty(t, said, r.Key)
		}
		assert.True(t, strings.HasSuffix(r.Means, "."), "%s: a sentence", r.Key)
		if r.Spread != nil {
			assert.Empty(t, read[r.Spread(&p)], "%s reads the spread of another", r.Key)
			read[r.Spread(&p)] = r.Key
		}
		same, ok := ReadoutOf(r.Key)
		assert.True(t, ok)
		assert.Equal(t, r.Label, same.Label)
	}
	for i := range fields.NumField() {
		assert.NotEmpty(t, read[float64(i+1)], "nothing reads the spread %s", fields.Type().Field(i).Name)
	}
	_, ok := ReadoutOf("mass_g")
	assert.False(t, ok)
}
