package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/measuretest"
)

func TestToMLGeneralSizes(t *testing.T) {
	const tolerance = 1e-9 // mL
	for _, c := range []struct {
		unit   flavor.Unit
		want   float64
		source string
	}{
		{flavor.Ounce, 29.5735295625, "NIST Handbook 44, Appendix C: 231 in³ a gallon, 128 fl oz, 16.387064 mL an in³"},
		{flavor.Ounce, 231 * 16.387064 / 128, "the same, worked out"},
		{flavor.Teaspoon, 4.92892159375, "NIST Handbook 44: 1/6 fl oz"},
		{flavor.Tablespoon, 14.78676478125, "NIST Handbook 44: 1/2 fl oz"},
		{flavor.Millilitre, 1, "SI"},
		{flavor.Centilitre, 10, "SI"},
		{flavor.Barspoon, 4, "common practice; Arnold, Liquid Intelligence, 2014 (from memory)"},
		{flavor.Dash, 0.8, "common practice; the same book (from memory)"},
		{flavor.Drop, 0.05, "common practice, 20 a mL; the same book (from memory)"},
		{flavor.Splash, 5, "common practice"},
		{flavor.Top, 90, "common practice, 60 to 150 mL"},
		{flavor.PartUnit, 30, "a ratio; the round bar ounce"},
	} {
		for _, amount := range []float64{1, 0.75, 3} {
			got, err := ToML(amount, c.unit, nil)
			require.NoError(t, err)
			assert.InDelta(t, c.want*amount, got, tolerance*amount, "%v %s: %s", amount, c.unit, c.source)
		}
	}
}

func TestToMLThroughProfile(t *testing.T) {
	b := measuretest.Bar()
	for _, c := range []struct {
		name   string
		amount float64
		unit   flavor.Unit
		want   float64
		why    string
	}{
		{"mint", 6, flavor.Leaf, 2.4, "yield of the profile"},
		{"salt", 1, flavor.Dash, 0.14, "yield wins over the general dash"},
		{"white sugar", 2, flavor.Pinch, 0.4, "yield wins over the general pinch"},
		{"salt", 1, flavor.Pinch, 0.3 / 2.16, "0.3 g over density"},
		{"simple syrup", 123, flavor.Gram, 100, "grams over density, 1.23 g/mL"},
		{"white sugar", 1, flavor.Teaspoon, 4.92892159375 * 200 / 236.5882365 / 1.5879, "USDA SR 26: 200 g a cup; crystal 1.5879 g/mL"},
		{"white sugar", 1, flavor.Teaspoon, 4.92892159375 * 0.85 / 1.5879, "the trade's 0.85 g/mL, within 1 %"},
		{"salt", 1, flavor.Teaspoon, 4.92892159375 * 1.2 / 2.16, "about 6 g a teaspoon, common practice"},
		{"lime", 1, flavor.Ounce, 29.5735295625, "fruit by volume"},
	} {
		got, err := ToML(c.amount, c.unit, b[flavor.NormaliseName(c.name)])
		require.NoError(t, err, c.name)
		assert.InEpsilon(t, c.want, got, 0.01, "%v %s %s: %s", c.amount, c.unit, c.name, c.why)
	}
}

func TestToMLRefuses(t *testing.T) {
	b := measuretest.Bar()
	for _, c := range []struct {
		amount  float64
		unit    flavor.Unit
		name    string
		suggest string
	}{
		{1, flavor.Leaf, "london dry gin", "oz"},
		{1, flavor.Ounce, "mint", "leaf"},
		{1, flavor.Wedge, "orange", "slice"},
		{1, flavor.Top, "white sugar", "tsp"},
		{1, "bucket", "gin", "ml"},
		{1, "", "gin", "ml"},
		{0, flavor.Ounce, "gin", ""},
		{-1, flavor.Ounce, "gin", ""},
		{math.NaN(), flavor.Ounce, "gin", ""},
		{math.Inf(1), flavor.Ounce, "gin", ""},
		{1e308, flavor.Ounce, "gin", ""},
	} {
		_, err := ToML(c.amount, c.unit, b[flavor.NormaliseName(c.name)])
		var f *flavor.DataFault
		require.ErrorAs(t, err, &f, "%v %s %s", c.amount, c.unit, c.name)
		require.ErrorIs(t, err, flavor.ErrInvalid)
		assert.NotEmpty(t, f.Message)
		if c.suggest != "" {
			assert.Contains(t, f.Suggest, c.suggest, "%v %s %s", c.amount, c.unit, c.name)
		}
	}
	_, err := ToML(1, flavor.Gram, &flavor.Profile{Name: "No density", Class: flavor.ClassGin})
	assert.Error(t, err)
}

func TestParseUnit(t *testing.T) {
	for _, c := range []struct {
		want  flavor.Unit
		words []string
	}{
		{flavor.Ounce, []string{"oz", "OZ", "Oz.", "ounce", "ounces", "fl oz", "fl. oz.", "Fluid Ounces"}},
		{flavor.Millilitre, []string{"ml", "mL", "ML", "milliliter", "millilitres"}},
		{flavor.Centilitre, []string{"cl", "centilitre", "centiliters"}},
		{flavor.Dash, []string{"dash", "Dashes"}},
		{flavor.Drop, []string{"drop", "drops"}},
		{flavor.Barspoon, []string{"barspoon", "barspoons", "bar spoon", "bar-spoon", "bsp", "bsp."}},
		{flavor.Teaspoon, []string{"tsp", "teaspoon", "teaspoons"}},
		{flavor.Tablespoon, []string{"tbsp", "tablespoon"}},
		{flavor.PartUnit, []string{"part", "parts"}},
		{flavor.Splash, []string{"splash", "splashes"}},
		{flavor.Pinch, []string{"pinch", "pinches"}},
		{flavor.Gram, []string{"g", "gram", "grams"}},
		{flavor.Sprig, []string{"sprig", "sprigs"}},
		{flavor.Leaf, []string{"leaf", "leaves"}},
		{flavor.Slice, []string{"slice", "slices", "wheel"}},
		{flavor.Wedge, []string{"wedge", "wedges"}},
		{flavor.Piece, []string{"piece", "pieces", "pc"}},
		{flavor.Cube, []string{"cube", "cubes"}},
		{flavor.Top, []string{"top"}},
	} {
		for _, w := range c.words {
			got, ok := ParseUnit(w)
			assert.True(t, ok, w)
			assert.Equal(t, c.want, got, w)
		}
	}
	for _, w := range []string{"", " ", "bucket", "cup", "ozz", "-"} {
		_, ok := ParseUnit(w)
		assert.False(t, ok, w)
	}
}

func TestEveryUnitIsWhole(t *testing.T) {
	for _, u := range Units() {
		got, ok := ParseUnit(string(u))
		assert.True(t, ok && got == u, u)
		if f, ok := Definition(u); ok {
			assert.NoError(t, f.Check(), u)
			assert.Positive(t, f.Value, u)
		}
		assert.Positive(t, Step(u), u)
		info, _ := infoOf(u)
		assert.GreaterOrEqual(t, info.most, Step(u), u)
	}
}

func TestNearest(t *testing.T) {
	assert.Equal(t, "oz", NearestUnits("onces")[0])
	assert.Equal(t, "dash", NearestUnits("dahsh")[0])
	assert.Equal(t, "oz", NearestUnits("ozz")[0])
	assert.Empty(t, NearestUnits("x"))
}

func TestSystemOf(t *testing.T) {
	spec := func(us ...flavor.Unit) *flavor.Spec {
		s := &flavor.Spec{}
		for _, u := range us {
			s.Pours = append(s.Pours, flavor.Pour{Unit: u})
		}
		return s
	}
	assert.Equal(t, Imperial, SystemOf(nil))
	assert.Equal(t, Imperial, SystemOf(spec(flavor.Dash, flavor.Leaf)))
	assert.Equal(t, Metric, SystemOf(spec(flavor.Millilitre, flavor.Centilitre, flavor.Ounce, flavor.Dash)))
	assert.Equal(t, Imperial, SystemOf(spec(flavor.Ounce, flavor.Ounce, flavor.Millilitre)))
	assert.Equal(t, Metric, SystemOf(spec(flavor.Millilitre, flavor.Ounce)))
	assert.Equal(t, flavor.Millilitre, Metric.Unit())
}
