package tables

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Worked by hand from the rows as published.
func TestRulesByHand(t *testing.T) {
	food := context{vary: 0.1}
	for _, c := range []struct {
		what    string
		row     row
		field   string
		context context
		value   float64
		within  float64
		spread  float64
	}{
		// 100 g of lemon juice: 92.31 g of water fill 92.5 mL, 7.69 g of solids some 4.7 mL; 1.03 g/mL.
		{"lemon juice", row{table: "usda", cells: map[string]float64{"water": 92.31, "sugars": 2.52}}, "sugar", food, 25.9, 0.2, 2.59},
		{"sodium as salt", row{table: "usda", cells: map[string]float64{"water": 94.3, "sodium": 269}}, "salt", food, 6.98, 0.1, 0.7},
		// 33.4 g of alcohol in 100 g is 40 % vol: USDA SR 26, NDB 14037.
		{"80 proof", row{table: "usda", cells: map[string]float64{"water": 66.6, "alcohol": 33.4}}, "abv", food, 40, 0.15, 4},
		{"caffeine", row{table: "usda", cells: map[string]float64{"water": 99.39, "caffeine": 40}}, "caffeine", food, 400, 4, 40},
		// Black tea, USDA Flavonoid Database 3.3: 28.16 + 1.58 + 81.3 mg/100 g in about 1 g/mL.
		{"tannin of black tea", row{table: "flavonoids", cells: map[string]float64{"catechins": 28.16, "theaflavins": 1.58, "thearubigins": 81.3}}, "tannin", food, 1.108, 0.005, 0.111},
		// 90 g of fruit with 10 % sugar and 10 g of sugar.
		{"nine parts of fruit", row{table: "usda", cells: map[string]float64{"water": 90, "sugars": 10}}, "sugar", context{plus: 0.1}, 190 * 1.073, 3, 0},
		{"median of few", row{table: "market", cells: map[string]float64{"sugar": 220, "sugar_n": 7, "sugar_sd": 25.45}}, "sugar", context{}, 220, 1e-9, 25.45},
		{"median of many", row{table: "market", cells: map[string]float64{"abv": 40, "abv_n": 22, "abv_sd": 4.95, "abv_p10": 37.5, "abv_p90": 42.626}}, "abv", context{}, 40, 1e-9, 2},
		// 75.04 g of tartaric and 64.04 g of citric acid hold as much acid hydrogen.
		{"tartaric as citric", row{table: "market", cells: map[string]float64{"acid": 7.504, "acid_n": 4, "acid_sd": 0.7504}}, "acid", context{acids: flavor.AcidBlend{Citric: 1}}, 6.404, 1e-3, 0.6404},
		{"bitterness units", row{table: "beer", cells: map[string]float64{"ibu": 31.77, "ibu_n": 53, "ibu_sd": 7.08}}, "bitter", context{}, 31.77, 1e-9, 7.08},
		{"citric alone", row{table: "juices", cells: map[string]float64{"citric": 48, "citric_sd": 3.82}}, "acid", context{acids: flavor.AcidBlend{Citric: 0.95, Malic: 0.05}}, 50.53, 0.01, 4.02},
	} {
		got, ok := rules[c.row.table][c.field](&c.row, c.context)
		require.True(t, ok, c.what)
		assert.InDelta(t, c.value, got.value, c.within, c.what)
		assert.InDelta(t, c.spread, got.spread, 0.02*c.spread+1e-9, c.what)
	}
	_, ok := rules["market"]["acid"](&row{table: "market", cells: map[string]float64{"acid": 5, "acid_n": 3}}, context{})
	assert.False(t, ok, "no blend of acids, no acid")
}

// Rows are weighed by the products behind them, and the spread between rows
// joins that within.
func TestAverage(t *testing.T) {
	f := average([]sample{{value: 10, spread: 3, weight: 1}, {value: 18, spread: 3, weight: 3}}, "sugar", "two rows")
	assert.InDelta(t, 16, f.Value, 1e-9)
	assert.InDelta(t, 4.6, f.Spread, 1e-9, "√(9 + (36 + 3·4)/4), to a tenth")
	assert.Equal(t, flavor.OriginComputed, f.Origin)
	f = average([]sample{{value: 40, spread: 0, weight: 5, plain: true}}, "abv", "one row")
	assert.InDelta(t, 0.3, f.Spread, 1e-9, "no bottle is surer than its label")
	assert.Equal(t, flavor.OriginPublished, f.Origin)
	f = average([]sample{{weight: 1, plain: true}}, "fat", "none")
	assert.Zero(t, f.Spread)
	f = average([]sample{{value: 30, spread: 5, weight: 1, remembered: true}}, "bitter", "by a factor")
	assert.Equal(t, flavor.OriginComputedMemory, f.Origin)
}

func TestBookIsSound(t *testing.T) {
	b, err := Load()
	require.NoError(t, err)
	for _, id := range b.IDs() {
		e := b.entries[id]
		assert.NotEmpty(t, e.Rows, id)
		assert.True(t, e.Vary >= 0 && e.Vary <= 1 && e.Plus >= 0 && e.Plus < 0.5, id)
		for _, s := range b.sources[id] {
			r := s.rows[0]
			if kindOf(r) == "food" && r.or0("sugars")+r.or0("acids")+r.or0("total")+r.or0("caffeine") > 0.5 {
				assert.Positive(t, e.Vary, "%s: %s: say how far the food differs", id, r.ref())
			}
		}
	}
	for field, why := range b.entries["creme-de-menthe"].Keep {
		assert.Contains(t, Fields, field)
		assert.NotEmpty(t, why)
	}
	_, err = parseSource("usda 99999", map[string]map[string][]*row{})
	assert.ErrorContains(t, err, "99999")
}
