package mix

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"counterpour/flavor"
)

// loose is a part with spreads: of the pour's unit, and of the profile.
type loose struct {
	part
	unit             flavor.Unit
	dABV, dSugar, dA float64 // in the units of part
	carbonated       bool
}

func looseSpec(t testing.TB, m flavor.Method, s flavor.Service, parts ...loose) *flavor.Spec {
	t.Helper()
	spec := &flavor.Spec{Method: m, Service: s}
	for _, l := range parts {
		p := made(t, l.abv, l.sugar, l.acid)
		p.ABV.Spread, p.Sugar.Spread, p.Acid.Spread = l.dABV, l.dSugar, l.dA
		p.Carbonated = l.carbonated
		spec.Pours = append(spec.Pours, flavor.Pour{Profile: p, Amount: l.ml, Unit: l.unit, ML: l.ml})
	}
	return spec
}

// looseDrinks have the spreads of the catalogue: spirits by 1 to 3 % vol, made
// syrups by 2 to 5 %, fresh juice by 10 to 20 % of its acid.
func looseDrinks(t testing.TB) map[string]*flavor.Spec {
	oz, dash := flavor.Ounce, flavor.Dash
	lime := loose{part{22.5, 0, 17, 49}, oz, 0, 3, 7, false}
	syrup := loose{part{22.5, 0, 615, 0}, oz, 0, 15, 0, false}
	return map[string]*flavor.Spec{
		"daiquiri":  looseSpec(t, flavor.Shake, flavor.Up, loose{part{60, 40, 1, 0}, oz, 1.2, 0.5, 0, false}, lime, syrup),
		"manhattan": looseSpec(t, flavor.Stir, flavor.Up, loose{part{60, 47, 0, 0}, oz, 3, 0, 0, false}, loose{part{26, 16.5, 160, 6}, oz, 0.8, 12, 1, false}, loose{part{1.6, 44.7, 42, 0}, dash, 2, 10, 0, false}),
		"negroni":   looseSpec(t, flavor.Stir, flavor.Up, loose{part{30, 43, 0, 0}, oz, 2.5, 0, 0, false}, loose{part{30, 24, 240, 0}, oz, 1.5, 20, 0, false}, loose{part{30, 16.5, 160, 6}, oz, 0.8, 12, 1, false}),
		"collins":   looseSpec(t, flavor.Build, flavor.Long, loose{part{45, 43, 0, 0}, oz, 2.5, 0, 0, false}, lime, syrup, loose{part{90, 0, 0, 0}, flavor.Top, 0, 0, 0, true}),
		"swizzle":   looseSpec(t, flavor.Swizzle, flavor.Crushed, loose{part{60, 55, 2, 0}, oz, 3, 1, 0, false}, lime, syrup, loose{part{4, 45, 60, 1}, flavor.Barspoon, 2, 10, 0.2, false}),
		"flip":      looseSpec(t, flavor.DryShake, flavor.Up, loose{part{45, 38, 5, 0}, oz, 2, 2, 0, false}, loose{part{15, 0, 885, 0}, oz, 0, 27, 0, false}, loose{part{30, 0, 47, 1}, flavor.Piece, 0, 5, 0.3, false}),
	}
}

// sampled draws a spec and a dilution from their spreads, whole, and mixes it:
// each profile is completed anew, so nothing here is taken from spread.go but
// the size of a pour's spread.
func sampled(t testing.TB, s *flavor.Spec, src rand.Source) reading {
	normal := func(f flavor.Figure) float64 {
		if f.Spread == 0 {
			return f.Value
		}
		return math.Max(0, distuv.Normal{Mu: f.Value, Sigma: f.Spread, Src: src}.Rand())
	}
	drawn := s.Clone()
	for i := range drawn.Pours {
		p := *drawn.Pours[i].Profile
		p.ABV.Value, p.Sugar.Value, p.Acid.Value = normal(p.ABV), normal(p.Sugar), normal(p.Acid)
		require.NoError(t, Complete(&p))
		pour := &drawn.Pours[i]
		pour.ML = normal(flavor.Figure{Value: pour.ML, Spread: PourSpread(pour.Unit, pour.ML)})
		pour.Profile = &p
	}
	set := settingFor(s.Method, s.Service, Ice{})
	set.barC = normal(flavor.Figure{Value: usualBarC, Spread: barSpreadC})
	set.startC = set.barC
	p := potOf(pourAll(nil, &Ledger{}, &drawn))
	return set.read(&p, normal(flavor.Figure{Value: 1, Spread: set.relative}))
}

func TestPlusMinusMeetsMonteCarlo(t *testing.T) {
	const (
		tolerance = 0.05 // of the spread
		// The temperature is not smooth at 0 °C, below which ice must cool too.
		temperatureTolerance = 0.10
	)
	draws := 10000 // the spread of a spread is then 0.7 %
	if testing.Short() {
		draws = 4000 // 1.1 %
	}
	m := mixer(t)
	worst := 0.0
	for name, s := range looseDrinks(t) {
		d, err := m.Mix(s)
		require.NoError(t, err)
		first := d.PlusMinus
		want := reading{first.VolumeML, first.ABV, first.SugarPer100, first.AcidPer100, first.DilutionPct, first.EnergyKcal, first.TemperatureC}
		src := rand.NewPCG(1, 2)
		columns := make([][]float64, len(want))
		for range draws {
			for k, v := range sampled(t, s, src) {
				columns[k] = append(columns[k], v)
			}
		}
		for k, column := range columns {
			got := stat.StdDev(column, nil)
			if want[k] == 0 {
				assert.Less(t, got, 1e-9, "%s, number %d", name, k)
				continue
			}
			off := math.Abs(want[k]/got - 1)
			if k == len(want)-1 {
				assert.Less(t, off, temperatureTolerance, "%s, temperature", name)
				continue
			}
			assert.Less(t, off, tolerance, "%s, number %d", name, k)
			worst = max(worst, off)
		}
		t.Logf("%-9s ± %.2f mL, %.2f %% vol, %.2f g sugar, %.3f g acid, %.1f %% dilution, %.0f kcal, %.1f °C", name,
			want[0], want[1], want[2], want[3], want[4], want[5], want[6])
	}
	t.Logf("furthest from Monte Carlo: %.1f %% of the spread", 100*worst)
}

// Two pours from one bottle err together, as one pour of both would but for
// the hand.
func TestPoursOfOneBottleShareItsSpread(t *testing.T) {
	m := mixer(t)
	p := made(t, 40, 0, 0)
	p.ABV.Spread = 4
	other := made(t, 40, 0, 0)
	other.ABV.Spread = 4
	spread := func(a, b *flavor.Profile) float64 {
		d, err := m.Mix(&flavor.Spec{Method: flavor.Build, Service: flavor.Up, Pours: []flavor.Pour{pour(a, 30), pour(b, 30)}})
		require.NoError(t, err)
		return d.PlusMinus.ABV
	}
	assert.InDelta(t, 4, spread(p, p), 0.02)
	assert.InDelta(t, 4/math.Sqrt2, spread(p, other), 0.02)

	floated := pour(p, 30)
	floated.After = true
	d, err := m.Mix(&flavor.Spec{Method: flavor.Build, Service: flavor.Up, Pours: []flavor.Pour{pour(p, 30), floated}})
	require.NoError(t, err)
	assert.InDelta(t, 4, d.PlusMinus.ABV, 0.02, "also what is floated")
}

// A yield that states its spread says more than the rule of thumb.
func TestSpreadOfYield(t *testing.T) {
	egg := made(t, 0, 5, 0)
	egg.Yields = []flavor.Yield{{Unit: flavor.Piece, Amount: flavor.Figure{Value: 30, Spread: 3}}}
	assert.InDelta(t, 6, spreadOf(&flavor.Pour{Profile: egg, Unit: flavor.Piece, ML: 60}), 1e-12)
	assert.InDelta(t, PourSpread(flavor.Ounce, 60), spreadOf(&flavor.Pour{Profile: egg, Unit: flavor.Ounce, ML: 60}), 1e-12)
}

func TestPourSpread(t *testing.T) {
	for _, c := range []struct {
		unit     flavor.Unit
		ml, want float64
	}{
		{flavor.Ounce, 60, math.Hypot(0.5, 1.2)}, {flavor.Millilitre, 1, 0.25}, {flavor.Dash, 1.6, 0.4}, {flavor.Leaf, 2, 0.5},
		{flavor.Barspoon, 4, 0.6}, {flavor.Top, 90, 13.5}, {flavor.Gram, 10, 0.3}, {flavor.Cube, 3, 0.09},
	} {
		assert.InDelta(t, c.want, PourSpread(c.unit, c.ml), 1e-12, "%v %s", c.ml, c.unit)
	}
}
