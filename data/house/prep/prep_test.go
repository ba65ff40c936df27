package prep_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

func stand(t *testing.T) (*data.Catalogue, *mix.Mixer) {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	m, err := mix.NewMixer()
	require.NoError(t, err)
	return c, m
}

func spec(t *testing.T, c *data.Catalogue, text string) flavor.Spec {
	t.Helper()
	s, err := c.ReadSpec("Test", text)
	require.NoError(t, err)
	return s
}

func ptr(v float64) *float64 { return &v }

func TestCosts(t *testing.T) {
	c, _ := stand(t)
	assert.InDelta(t, 1.8, prep.PourCost(21, 700, 60), 1e-12)
	assert.Zero(t, prep.PourCost(21, 0, 60))
	bottles := []house.Bottle{
		{ID: "a", Ingredient: "london-dry-gin", Price: ptr(21), Currency: "EUR", SizeML: 700},
		{ID: "b", Ingredient: "lemon-juice", Price: ptr(4), Currency: "EUR", SizeML: 1000},
		{ID: "c", Ingredient: "white-sugar", Price: ptr(1.6), Currency: "EUR", SizeG: 1000},
		{ID: "d", Ingredient: "orgeat", SizeML: 1000},
	}
	made := []house.Made{{ID: "our-syrup", Name: "Our syrup", Class: flavor.ClassSyrup, YieldML: 1000, Parts: []house.Pour{
		{Ingredient: "white-sugar", Amount: 500, Unit: flavor.Gram}, {Ingredient: "water", Amount: 500, Unit: flavor.Gram}}},
		{ID: "our-orgeat", Name: "Our orgeat", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "orgeat", Amount: 5, Unit: flavor.Millilitre}}}}
	list, faults := house.Overlay(c.Profiles(), bottles, made)
	require.Empty(t, faults)
	shelf := house.NewShelf(list)
	p, err := prep.NewPrices(shelf, bottles, made)
	require.NoError(t, err)
	assert.Equal(t, []string{"our-orgeat"}, p.Unpriced)

	kept := house.Spec{ID: "x", Name: "x", Method: "shake", Service: "up", Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 60, Unit: "ml"},
		{Ingredient: "lemon-juice", Amount: 20, Unit: "ml"}, {Ingredient: "our-syrup", Amount: 15, Unit: "ml"}, {Ingredient: "water", Amount: 5, Unit: "ml"}}}
	s, err := kept.Flavor(shelf)
	require.NoError(t, err)
	cost := p.Drink(s)
	assert.InDelta(t, 1.8+0.08+15*0.8/1000, cost.Amount, 1e-12)
	assert.Empty(t, cost.Unpriced)
	kept.Pours[2].Ingredient = "orgeat"
	cover, err := kept.Flavor(shelf)
	require.NoError(t, err)
	d := p.Compare(s, cover)
	assert.False(t, d.Sure)
	assert.Equal(t, []string{"orgeat"}, d.Cover.Unpriced)
	assert.InDelta(t, -15*0.8/1000, d.More, 1e-12)

	bottles[1].Currency = "GBP"
	_, err = prep.NewPrices(shelf, bottles, nil)
	assert.ErrorIs(t, err, house.ErrInvalid)
}

func TestABatchTastesLikeTheDrink(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2½ oz London dry gin\n½ oz dry vermouth\n1 dash orange bitters\nstir, up")
	one, err := m.Mix(&s)
	require.NoError(t, err)
	b, err := prep.Scale(m, s, prep.Target{Servings: 8, Place: prep.Fridge}, nil)
	require.NoError(t, err)
	assert.InDelta(t, one.ABV, b.ABVPct, 1e-6)
	assert.InDelta(t, 8*one.VolumeML, b.TotalML, 1e-6)
	assert.Len(t, b.Lines, 4)
	assert.Equal(t, b.Water, b.Lines[3])
	assert.InDelta(t, b.ABVPct, b.ByJugABVPct, 0.3)
	assert.InDelta(t, b.ByJugABVPct, b.ByScaleABVPct, 0.05)
	assert.Equal(t, 7, b.Keep.Days, "vermouth")
}

// The sum is that of the lines as somebody pours them; what is counted is not in it.
func TestTheLinesAddUpToTheirSum(t *testing.T) {
	c, m := stand(t)
	for _, text := range []string{"2½ oz London dry gin\n½ oz dry vermouth\n1 dash orange bitters\nstir, up", "2 oz bourbon\n1 cube white sugar cube\n2 dashes aromatic bitters\nstir, rocks"} {
		b, err := prep.Scale(m, spec(t, c, text), prep.Target{Servings: 10, Place: prep.Fridge}, nil)
		require.NoError(t, err)
		var jug, scale, ml, g float64
		for _, l := range b.Lines {
			if l.Count == 0 {
				jug, scale, ml, g = jug+l.JugML, scale+l.ScaleG, ml+l.ML, g+l.G
			}
		}
		const tolerance = 1e-9
		assert.InDelta(t, jug, b.Sum.JugML, tolerance, text)
		assert.InDelta(t, scale, b.Sum.ScaleG, tolerance, text)
		assert.InDelta(t, ml, b.Sum.ML, tolerance, text)
		assert.InDelta(t, g, b.Sum.G, tolerance, text)
		assert.Zero(t, b.Sum.Count)
	}
}

// A batch that fills a bottle goes into it as its lines are rounded, and leaves no more of it empty than
// that rounding may take.
func TestABatchFillsItsBottle(t *testing.T) {
	c, m := stand(t)
	const unfilled, overfull = 0.01, 0.002 // of the bottle; nobody reads less off a jug
	s := spec(t, c, "2 oz bourbon\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up")
	for _, box := range []prep.Container{prep.Bottle750, prep.Bottle1000, prep.Keg} {
		b, err := prep.Scale(m, s, prep.Target{Fill: box, Place: prep.Fridge}, nil)
		require.NoError(t, err)
		assert.InDelta(t, b.TotalML, b.Servings*b.ServingML, 1e-6)
		assert.LessOrEqual(t, b.Sum.JugML, (1+overfull)*box.ML, box.Name)
		assert.Greater(t, b.TotalML, (1-unfilled)*box.ML, box.Name)
	}
}

func TestFreezerBatchStaysLiquid(t *testing.T) {
	c, m := stand(t)
	strong := spec(t, c, "2 oz cask-strength bourbon\n1 barspoon rich demerara syrup\n2 dashes aromatic bitters\nstir, up")
	weak := spec(t, c, "1 oz fino sherry\n1 oz dry vermouth\n1 dash orange bitters\nstir, up")
	middle := spec(t, c, "2½ oz London dry gin\n½ oz dry vermouth\nstir, up")
	for _, k := range []struct {
		about        string
		spec         flavor.Spec
		later, slush bool
	}{{"strong", strong, false, false}, {"middle", middle, true, false}, {"weak", weak, false, true}} {
		b, err := prep.Scale(m, k.spec, prep.Target{Servings: 10, Place: prep.Freezer}, nil)
		require.NoError(t, err)
		assert.Equal(t, k.later, b.LaterML > 0, "%s: %v", k.about, b.Notes)
		assert.Equal(t, !k.slush, b.FreezingC <= -18.9, "%s freezes at %v", k.about, b.FreezingC)
		fridge, err := prep.Scale(m, k.spec, prep.Target{Servings: 10, Place: prep.Fridge}, nil)
		require.NoError(t, err)
		assert.InDelta(t, fridge.Water.ML, b.Water.ML+10*b.LaterML, 1e-6, "the water is all accounted for")
	}
}

// What is served hot is warmed, and no ice waters it, wherever it is kept.
func TestABatchOfAHotDrink(t *testing.T) {
	c, m := stand(t)
	hot := spec(t, c, "1 1/2 oz brandy\n1/2 oz lemon juice\n1/2 oz honey syrup\n4 oz black tea\nbuild, hot")
	for _, place := range []prep.Storage{prep.Fridge, prep.Freezer, prep.ToOrder} {
		b, err := prep.Scale(m, hot, prep.Target{Servings: 4, Place: place, JuiceApart: true}, nil)
		require.NoError(t, err)
		said := strings.Join(b.Notes, " ")
		assert.True(t, b.Hot)
		assert.Contains(t, said, "served hot")
		assert.NotContains(t, said, "with ice", place)
		assert.NotContains(t, said, "The water for it", place)
		assert.Zero(t, b.Water.ML, place)
	}
}

// Only acid turns milk.
func TestKeepTellsOfAcidBesideMilk(t *testing.T) {
	c, m := stand(t)
	b, err := prep.Scale(m, spec(t, c, "2 oz brandy\n3/4 oz lemon juice\n1 oz cream\nshake, up"), prep.Target{Servings: 4, Place: prep.Fridge}, nil)
	require.NoError(t, err)
	assert.Contains(t, b.Keep.Text, "The acid in it curdles the milk.")
	b, err = prep.Scale(m, spec(t, c, "6 oz whole milk\n2 oz brandy\n1/2 oz sweet vermouth\n1/2 oz simple syrup\nshake, up"), prep.Target{Servings: 4, Place: prep.Fridge}, nil)
	require.NoError(t, err)
	assert.NotContains(t, b.Keep.Text, "curdles", "a spoon of wine in a glass of milk")
}

func TestKeepOf(t *testing.T) {
	c, m := stand(t)
	for text, want := range map[string]int{
		"2 oz brandy\n1 oz dark crème de cacao\n1 oz cream\nshake, up":              1,
		"2 oz London dry gin\n1 oz lemon juice\n1 oz simple syrup\nshake, up":       1,
		"2 oz bourbon\n1 tsp simple syrup\n2 dashes aromatic bitters\nbuild, rocks": 28,
	} {
		b, err := prep.Scale(m, spec(t, c, text), prep.Target{Servings: 4, Place: prep.Fridge}, nil)
		if !assert.NoError(t, err, text) {
			continue
		}
		assert.Equal(t, want, b.Keep.Days, text)
		assert.Contains(t, b.Keep.Text, "food-safety law comes first")
		assert.NotContains(t, b.Keep.Text, "curdles", "nothing sour is beside the milk")
	}
	s := spec(t, c, "2 oz bourbon\n1 tsp simple syrup\nbuild, rocks")
	for abv, because := range map[float64]string{0: "no alcohol", 12: "Too weak for the alcohol to keep it", 30: "about four weeks"} {
		assert.Contains(t, prep.KeepOf(s, abv, nil).Text, because)
	}
	egg := spec(t, c, "2 oz London dry gin\n1 oz lemon juice\n1 oz simple syrup\n1 oz egg white\ndry shake, up")
	assert.Zero(t, prep.KeepOf(egg, 20, nil).Days)
	k := prep.KeepOf(s, 30, []house.Made{{ID: "simple-syrup", Name: "Our syrup", KeepsDays: 14}})
	assert.Equal(t, 14, k.Days)
}

func TestSparklingStaysOut(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz London dry gin\n¾ oz lemon juice\n½ oz simple syrup\n6 mint leaves\ntop soda water\nshake, long")
	b, err := prep.Scale(m, s, prep.Target{Servings: 10, Place: prep.ToOrder}, nil)
	require.NoError(t, err)
	require.Len(t, b.Tops, 1)
	assert.Equal(t, "soda-water", b.Tops[0].Profile.ID)
	assert.Zero(t, b.Water)
	require.Len(t, b.Apart, 1)
	assert.Equal(t, "mint", b.Apart[0].Profile.ID)
	assert.Len(t, b.Lines, 3)

	cubes := spec(t, c, "2 oz bourbon\n1 sugar cube\n2 dashes aromatic bitters\nbuild, rocks")
	b, err = prep.Scale(m, cubes, prep.Target{Servings: 10, Place: prep.Fridge}, nil)
	require.NoError(t, err)
	assert.Equal(t, 10.0, b.Lines[1].Count)
}

// Without its juice a batch keeps longer, and holds the water of the whole drink,
// so that a serve and its juice together are the drink.
func TestJuiceStaysOutIfAsked(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz London dry gin\n¾ oz lemon juice\n¾ oz simple syrup\nshake, up")
	whole, err := prep.Scale(m, s, prep.Target{Fill: prep.Container{Name: "5 litres", ML: 5000}, Place: prep.Fridge}, nil)
	require.NoError(t, err)
	b, err := prep.Scale(m, s, prep.Target{Fill: prep.Container{Name: "5 litres", ML: 5000}, Place: prep.Fridge, JuiceApart: true}, nil)
	require.NoError(t, err)
	require.Len(t, b.Apart, 1)
	assert.Equal(t, "lemon-juice", b.Apart[0].Profile.ID)
	const tolerance = 0.001 // of the volume
	assert.InEpsilon(t, 5000, b.TotalML, tolerance)
	assert.InEpsilon(t, whole.Water.ML/whole.Servings, b.Water.ML/b.Servings, tolerance, "the water of the whole drink")
	assert.Greater(t, b.Keep.Days, whole.Keep.Days)
	assert.Contains(t, strings.Join(b.Notes, " "), "pressed the same day")
	assert.True(t, prep.HasJuice(&s))
}

// Raw egg is never made ahead, and what waits beside it keeps as long as it would
// alone. With the water of the whole drink a serve and its egg together are the drink.
func TestEggStaysOut(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz London dry gin\n1 oz lemon juice\n1 oz simple syrup\n1 oz egg white\ndry shake, up")
	plain := spec(t, c, "2 oz London dry gin\n1 oz lemon juice\n1 oz simple syrup\ndry shake, up")
	drink, err := m.Mix(&s)
	require.NoError(t, err)
	for _, place := range []prep.Storage{prep.Fridge, prep.Freezer, prep.ToOrder} {
		b, err := prep.Scale(m, s, prep.Target{Servings: 6, Place: place}, nil)
		require.NoError(t, err)
		require.Len(t, b.Apart, 1)
		assert.Contains(t, b.Notes[0], "pasteurised")
		assert.Equal(t, place != prep.ToOrder, strings.Contains(b.Notes[0], "without ice"), place)
		without, err := prep.Scale(m, plain, prep.Target{Servings: 6, Place: place}, nil)
		require.NoError(t, err)
		assert.Equal(t, without.Lines[:3], b.Lines[:3])
		assert.Equal(t, 1, b.Keep.Days)
		if place != prep.ToOrder {
			assert.InDelta(t, drink.IceWaterG/mix.WaterDensity, b.Water.ML/6+b.LaterML, 1e-6, "%s", place)
		}
	}
	_, err = prep.Scale(m, spec(t, c, "1 oz egg white\ndry shake, up"), prep.Target{Servings: 6, Place: prep.Fridge}, nil)
	assert.ErrorIs(t, err, house.ErrInvalid)
}

// What a batch costs is what its drinks cost together, whatever stays out.
func TestABatchCostsWhatItsDrinksDo(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz London dry gin\n¾ oz lemon juice\n½ oz simple syrup\n1 oz egg white\ntop soda water\nshake, long")
	p := prep.Prices{Currency: "EUR", PerML: map[string]float64{"london-dry-gin": 0.03, "lemon-juice": 0.006, "egg-white": 0.01, "soda-water": 0.002}}
	one := p.Drink(s)
	shares := p.Shares(s)
	require.Len(t, shares, 5)
	var sum, part float64
	for _, x := range shares {
		sum, part = sum+x.Amount, part+x.Part
		assert.Equal(t, x.Ingredient != "simple-syrup", x.Priced, x.Ingredient)
	}
	assert.InDelta(t, one.Amount, sum, 1e-12)
	assert.InDelta(t, 1, part, 1e-12)
	for _, target := range []prep.Target{{Servings: 10, Place: prep.Fridge}, {Fill: prep.Bottle750, Place: prep.ToOrder}} {
		b, err := prep.Scale(m, s, target, nil)
		require.NoError(t, err)
		cost := p.Batch(b)
		assert.InEpsilon(t, one.Amount*b.Servings, cost.Amount, 1e-9)
		assert.Equal(t, []string{"simple-syrup"}, cost.Unpriced)
		assert.Equal(t, "EUR", cost.Currency)
	}
	assert.Empty(t, p.Shares(flavor.Spec{}))
}

func TestTargetFaults(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz vodka\nstir, up")
	for _, target := range []prep.Target{{Place: prep.Fridge}, {Servings: 2, Fill: prep.Keg, Place: prep.Fridge}, {Servings: 2},
		{Servings: math.NaN(), Place: prep.Fridge}, {Servings: -1, Place: prep.Fridge}, {Servings: math.Inf(1), Place: prep.Fridge}} {
		_, err := prep.Scale(m, s, target, nil)
		assert.ErrorIs(t, err, house.ErrInvalid, "%+v", target)
	}
}

// Whatever the size, a jug and a scale round by little enough not to be tasted, and both make the
// same batch: a weight differs from its volume by no more than the last figure of its scale.
func TestRoundingIsBelowTheThreshold(t *testing.T) {
	c, m := stand(t)
	s := spec(t, c, "2 oz bourbon\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up")
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Float64Range(2, 300).Draw(t, "servings")
		b, err := prep.Scale(m, s, prep.Target{Servings: n, Place: prep.Fridge}, nil)
		require.NoError(t, err)
		assert.InDelta(t, b.ABVPct, b.ByJugABVPct, 0.6)
		assert.InDelta(t, b.ByJugABVPct, b.ByScaleABVPct, 0.1)
		for _, l := range b.Lines {
			lastFigure := 0.05 // of the scale up to 200 g
			switch weight := l.JugML * l.G / l.ML; {
			case weight >= 5000:
				lastFigure = 2.5
			case weight >= 200:
				lastFigure = 0.5
			}
			assert.InDelta(t, l.JugML*l.G/l.ML, l.ScaleG, lastFigure+1e-9, "%s: %v", l.Name, l.ML)
			assert.Positive(t, l.JugML)
			assert.InEpsilon(t, l.ML, l.JugML, 0.13, "%s: %v", l.Name, l.ML)
		}
	})
}
