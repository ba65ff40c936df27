package house_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

func TestSettingsCheck(t *testing.T) {
	assert.NoError(t, house.Check(house.Settings{}), "nothing need be said")
	full := house.Settings{Name: " The  Halyard Room ", Units: measure.Metric, Currency: "EUR", Decimal: house.DecimalComma, Country: "Germany"}
	require.NoError(t, house.Check(full))
	body, err := house.Encode(full)
	require.NoError(t, err)
	back, err := house.Decode(house.KindSettings, body)
	require.NoError(t, err)
	full.Name = "The Halyard Room"
	assert.Equal(t, full, back)
	assert.Equal(t, house.Ref{Kind: house.KindSettings, ID: house.SettingsID}, back.Ref())
	for field, s := range map[string]house.Settings{
		"name":     {Name: strings.Repeat("x", house.MaxLine+1)},
		"units":    {Units: "gill"},
		"currency": {Currency: "euro"},
		"decimal":  {Decimal: ";"},
		"country":  {Country: "Atlantis"},
	} {
		var fault *flavor.DataFault
		err := house.Check(s)
		require.ErrorIs(t, err, house.ErrInvalid, field)
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, field, fault.Field)
	}
}

// Three letters that no country pays with are a slip, such as the first of "red".
func TestACurrencyIsOne(t *testing.T) {
	for _, code := range []string{"EUR", "GBP", "USD", "JPY", "CHF", "MXN"} {
		assert.NoError(t, house.Check(house.Settings{Currency: code}), code)
	}
	assert.ErrorContains(t, house.Check(house.Settings{Currency: "RED"}), "no currency has the letters RED")
}

// The marks are those of jiggers in use: common practice, no source.
func TestPoursInTheUnitsOfTheHouse(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Name: "gin"}
	for _, c := range []struct {
		units  measure.System
		amount float64
		unit   flavor.Unit
		want   string
	}{
		{measure.Metric, 1, flavor.Ounce, "30 ml"},
		{measure.Metric, 0.75, flavor.Ounce, "22.5 ml"},
		{measure.Metric, 2, flavor.Ounce, "60 ml"},
		{measure.Metric, 3, flavor.Ounce, "90 ml"}, // 88.7; 87.5 is on few jiggers
		{measure.Metric, 2.5, flavor.Ounce, "75 ml"},
		{measure.Metric, 1.25, flavor.Ounce, "37.5 ml"},
		{measure.Metric, 4, flavor.Centilitre, "40 ml"},
		{measure.Metric, 2, flavor.Dash, "2 dashes"},
		{measure.Imperial, 30, flavor.Millilitre, "1 oz"},
		{measure.Imperial, 20, flavor.Millilitre, "¾ oz"}, // no jigger has ⅔
		{measure.Imperial, 50, flavor.Millilitre, "1¾ oz"},
		{measure.Imperial, 85, flavor.Millilitre, "2¾ oz"},
		{measure.Imperial, 15, flavor.Millilitre, "½ oz"},
		{measure.Imperial, 10, flavor.Millilitre, "⅜ oz"},
		{measure.Imperial, 5, flavor.Millilitre, "1 tsp"}, // an eighth is a quarter less
		{measure.Imperial, 2.5, flavor.Millilitre, "½ tsp"},
		{measure.Imperial, 1, flavor.Millilitre, "1 ml"},
		{"", 1, flavor.Ounce, "1 oz"},
	} {
		per, ok := measure.MLPerUnit(c.unit, gin)
		require.True(t, ok)
		p := house.Settings{Units: c.units}.Pour(flavor.Pour{Profile: gin, Amount: c.amount, Unit: c.unit, ML: c.amount * per})
		assert.Equal(t, c.want, measure.FormatAmount(p.Amount, p.Unit), "%v %v in %q", c.amount, c.unit, c.units)
	}
}

func TestOneListHasOneUnit(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Name: "gin"}
	in := func(u flavor.Unit) *flavor.Spec {
		return &flavor.Spec{Pours: []flavor.Pour{{Profile: gin, Amount: 1, Unit: u, ML: 30}}}
	}
	ounces, millilitres := in(flavor.Ounce), in(flavor.Millilitre)
	for _, c := range []struct {
		house  measure.System
		drinks []*flavor.Spec
		want   measure.System
	}{
		{"", []*flavor.Spec{ounces, millilitres, ounces}, measure.Imperial},
		{"", []*flavor.Spec{ounces, millilitres, millilitres}, measure.Metric},
		{"", []*flavor.Spec{ounces, millilitres}, measure.Imperial},
		{"", nil, measure.Imperial},
		{measure.Metric, []*flavor.Spec{ounces, ounces}, measure.Metric},
	} {
		assert.Equal(t, c.want, house.Settings{Units: c.house}.ForList(c.drinks).Units)
	}
}

// Whatever is poured, a card is at most a twentieth off it, or a quarter where it is shown as
// rounded; and what it has in ounces is on the mark of a jigger.
func TestUnitConversionHardlyChangesAPour(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Name: "gin"}
	rapid.Check(t, func(t *rapid.T) {
		s := house.Settings{Units: rapid.SampledFrom([]measure.System{measure.Metric, measure.Imperial}).Draw(t, "units")}
		unit := rapid.SampledFrom([]flavor.Unit{flavor.Ounce, flavor.Millilitre, flavor.Centilitre}).Draw(t, "unit")
		per, _ := measure.MLPerUnit(unit, gin)
		was := flavor.Pour{Profile: gin, Amount: rapid.Float64Range(0.1, 90).Draw(t, "amount"), Unit: unit}
		was.ML = was.Amount * per
		is := s.Pour(was)
		now, ok := measure.MLPerUnit(is.Unit, gin)
		most := 0.05
		if house.Rounded(is) {
			most = 0.25
		}
		if !ok || math.Abs(is.Amount*now-was.ML) > most*was.ML+1e-9 || is.ML != was.ML {
			t.Fatalf("%v %v became %v %v", was.Amount, was.Unit, is.Amount, is.Unit)
		}
		marks := map[bool]float64{true: 8, false: 4}[is.Amount < 0.5]
		if is.Unit != was.Unit && is.Unit == flavor.Ounce && math.Abs(is.Amount*marks-math.Round(is.Amount*marks)) > 1e-9 {
			t.Fatalf("%v %v became %v oz, which is on no jigger", was.Amount, was.Unit, is.Amount)
		}
	})
}

// Two thirds of an ounce are on no jigger: the three quarters in their place are told as such.
func TestRounded(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Name: "gin"}
	ounces := house.Settings{Units: measure.Imperial}
	for ml, rounded := range map[float64]bool{20: true, 22.5: false, 50: false, 60: false, 10: true, 5: false} {
		assert.Equal(t, rounded, house.Rounded(ounces.Pour(flavor.Pour{Profile: gin, Amount: ml, Unit: flavor.Millilitre, ML: ml})), "%v mL", ml)
	}
	assert.False(t, house.Rounded(flavor.Pour{Profile: gin, Amount: 2. / 3, Unit: flavor.Ounce, ML: 2. / 3 * measure.OunceML}), "as it is written")
	assert.False(t, house.Rounded(flavor.Pour{Amount: 1, Unit: flavor.Ounce}), "nobody says how much it is")
}

func TestFiguresAndStandardDrinks(t *testing.T) {
	comma := house.Settings{Decimal: house.DecimalComma, Country: "Germany"}
	assert.Equal(t, "22,5 ml, about 3. ", comma.Figures("22.5 ml, about 3. "))
	assert.Equal(t, "22.5 ml", house.Settings{}.Figures("22.5 ml"))
	// Germany counts 10 g, the United States 14 g: Kalinowski and Humphreys, Addiction 111:1293, 2016; NIAAA.
	const tolerance = 1e-9
	assert.InDelta(t, 2.8, comma.Standard(28).Count, tolerance)
	assert.InDelta(t, 2, house.Settings{}.Standard(28).Count, tolerance)
	assert.Equal(t, "United States", house.Settings{Country: "of a later version"}.Standard(28).Country)
	assert.Contains(t, house.Countries(), "United Kingdom")
}
