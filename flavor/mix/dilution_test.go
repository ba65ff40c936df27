package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Values of the remembered equations, computed elsewhere.
func TestDilutionEquations(t *testing.T) {
	const tolerance = 0.00006 // printed to 0.0001
	for percent, want := range map[float64]float64{15: 0.3047, 20: 0.3458, 25: 0.3809, 30: 0.4099, 35: 0.4329, 40: 0.4498, 45: 0.4607} {
		assert.InDelta(t, want, Stirred(percent/100), tolerance, "stirred at %v %%", percent)
		assert.InDelta(t, want, stirredEquation.share(percent/100), tolerance)
	}
	for percent, want := range map[float64]float64{15: 0.4290, 20: 0.4887, 25: 0.5406, 30: 0.5846, 35: 0.6207} {
		assert.InDelta(t, want, Shaken(percent/100), tolerance, "shaken at %v %%", percent)
		assert.InDelta(t, want, shakenEquation.share(percent/100), tolerance)
	}
}

// Beyond their drinks the equations give way: more strength never thins a drink
// less, and a drink without alcohol still takes ice to cool.
func TestDilutionBeyondTheEquations(t *testing.T) {
	for _, e := range []equation{stirredEquation, shakenEquation} {
		for a := 0.0; a < 0.999; a += 0.001 {
			assert.LessOrEqual(t, e.share(a), e.share(a+0.001)+1e-12, "at %v", a)
		}
		assert.Greater(t, e.share(0), 0.2)
	}
	assert.Zero(t, noEquation.share(0.3))
}

// bookDrinks are the drinks of Arnold, Liquid Intelligence, 2014, with his
// inputs, an ounce of 30 mL and his results (all from memory; the volume of the
// daiquiri, Manhattan and Negroni also computed elsewhere from the equations).
var bookDrinks = []struct {
	name                  string
	method                flavor.Method
	service               flavor.Service
	parts                 []part
	ml, abv, sugar, acid  float64
	mlTolerance, dilution float64
}{
	{"daiquiri", flavor.Shake, flavor.Up, []part{{60, 40, 0, 0}, {22.5, 0, 615, 0}, {22.5, 0, 16, 60}},
		159, 15, 8.9, 0.85, 2, 0.519},
	{"manhattan", flavor.Stir, flavor.Up, []part{{60, 50, 0, 0}, {26.25, 16.5, 160, 6}, {1.6, 44.7, 42, 0}},
		129, 27, 3.4, 0.12, 3, 0.450},
	{"negroni", flavor.Stir, flavor.Up, []part{{30, 47.3, 0, 0}, {30, 24, 240, 0}, {30, 16.5, 160, 6}},
		127, 20.7, 9.4, 0.14, 2, 0.406},
}

func TestBookDrinks(t *testing.T) {
	const (
		abvTolerance   = 1.0 // % vol
		sugarTolerance = 1.0 // g/100 mL
		acidTolerance  = 0.1 // g/100 mL
	)
	m := mixer(t)
	for _, c := range bookDrinks {
		d, err := m.Mix(specOf(t, c.name, c.method, c.service, c.parts...))
		require.NoError(t, err)
		t.Logf("%-9s %.1f mL of %v, %.2f %% vol of %v, sugar %.2f of %v, acid %.3f of %v, %.1f °C", c.name,
			d.VolumeML, c.ml, d.ABV, c.abv, d.SugarPer100, c.sugar, d.AcidPer100, c.acid, d.TemperatureC)
		assert.InDelta(t, c.abv, d.ABV, abvTolerance, c.name)
		assert.InDelta(t, c.sugar, d.SugarPer100, sugarTolerance, c.name)
		assert.InDelta(t, c.acid, d.AcidPer100, acidTolerance, c.name)
		assert.InDelta(t, c.ml, d.VolumeML, c.mlTolerance, c.name)
		assert.InDelta(t, 100*c.dilution, d.DilutionPct, 0.5, c.name)
	}
}

// The ranges of the same book by class: what drinks at either end of it start
// at, and the strength and dilution that they finish with.
func TestBookClasses(t *testing.T) {
	const (
		abvTolerance      = 1.0  // % vol
		dilutionTolerance = 0.04 // of the volume
		volumeTolerance   = 10.0 // mL
	)
	m := mixer(t)
	for _, c := range []struct {
		name                           string
		method                         flavor.Method
		service                        flavor.Service
		ice                            IceKind
		startML, startABV              [2]float64
		dilution, finishABV, finishing [2]float64
	}{
		{"built", flavor.Build, flavor.Rocks, IceOfMethod, [2]float64{72, 72}, [2]float64{34, 40}, [2]float64{0.24, 0.24}, [2]float64{27, 32}, [2]float64{90, 90}},
		{"stirred", flavor.Stir, flavor.Up, IceOfMethod, [2]float64{90, 97}, [2]float64{29, 43}, [2]float64{0.41, 0.49}, [2]float64{21, 29}, [2]float64{130, 142}},
		{"shaken", flavor.Shake, flavor.Up, IceOfMethod, [2]float64{98, 112}, [2]float64{23, 31.5}, [2]float64{0.51, 0.60}, [2]float64{15, 19.7}, [2]float64{156, 178}},
		{"with egg white", flavor.DryShake, flavor.Up, IceOfMethod, [2]float64{130, 143}, [2]float64{18, 23}, [2]float64{0.46, 0.49}, [2]float64{12.1, 15.2}, [2]float64{198, 209}},
		{"blended", flavor.Blend, flavor.Up, IceOfMethod, [2]float64{82.5, 82.5}, [2]float64{28.6, 32.8}, [2]float64{0.90, 0.90}, [2]float64{15, 17.2}, [2]float64{157.5, 157.5}},
		{"carbonated", flavor.Build, flavor.Up, NoIce, [2]float64{150, 150}, [2]float64{14, 16}, [2]float64{0, 0}, [2]float64{14, 16}, [2]float64{150, 150}},
	} {
		iced, err := m.WithIce(Ice{Kind: c.ice})
		require.NoError(t, err)
		for end := range 2 {
			d, err := iced.Mix(specOf(t, c.name, c.method, c.service, part{c.startML[end], c.startABV[end], 80, 8}))
			require.NoError(t, err)
			got := d.DilutionPct / 100
			assert.InDelta(t, c.finishABV[end], d.ABV, abvTolerance, c.name)
			assert.InDelta(t, c.finishing[end], d.VolumeML, volumeTolerance, c.name)
			assert.InDelta(t, min(max(got, c.dilution[0]), c.dilution[1]), got, dilutionTolerance, c.name)
			t.Logf("%-14s %.3f of %v, %.1f %% vol of %v, %.0f mL of %v", c.name, got, c.dilution, d.ABV, c.finishABV[end], d.VolumeML, c.finishing)
		}
	}
}

// The order of the methods, strongest dilution last, is that of the bar.
func TestMethodsInOrder(t *testing.T) {
	m := mixer(t)
	last := -1.0
	for _, c := range []struct {
		method  flavor.Method
		service flavor.Service
	}{
		{flavor.Build, flavor.Up}, {flavor.Build, flavor.Rocks}, {flavor.Throw, flavor.Up}, {flavor.Stir, flavor.Up},
		{flavor.Shake, flavor.Up}, {flavor.Swizzle, flavor.Crushed}, {flavor.Blend, flavor.Up},
	} {
		d, err := m.Mix(specOf(t, "", c.method, c.service, part{100, 30, 80, 8}))
		require.NoError(t, err)
		assert.Greater(t, d.DilutionPct, last, "%s, %s", c.method, c.service)
		last = d.DilutionPct
	}
	dry, err := m.Mix(specOf(t, "", flavor.DryShake, flavor.Up, part{100, 30, 80, 8}))
	require.NoError(t, err)
	wet, err := m.Mix(specOf(t, "", flavor.Shake, flavor.Up, part{100, 30, 80, 8}))
	require.NoError(t, err)
	assert.InDelta(t, wet.DilutionPct, dry.DilutionPct, 1e-9, "the dry shake adds no water; the shake on ice does")
	long, err := m.Mix(specOf(t, "", flavor.Build, flavor.Long, part{100, 30, 80, 8}))
	require.NoError(t, err)
	rocks, err := m.Mix(specOf(t, "", flavor.Build, flavor.Rocks, part{100, 30, 80, 8}))
	require.NoError(t, err)
	assert.InDelta(t, rocks.DilutionPct, long.DilutionPct, 1e-9)
}

// What sparkles, and a top of anything, goes in after the ice: it changes
// neither the water that mixing adds nor the strength that decides it. Where ice
// stands in the glass it meets that, and melts the little that its own heat takes.
func TestTopGoesInAfterTheIce(t *testing.T) {
	m := mixer(t)
	soda := made(t, 0, 0, 0)
	soda.Carbonated = true
	still := made(t, 0, 100, 5)
	for _, c := range []struct {
		method  flavor.Method
		service flavor.Service
		onIce   bool
	}{{flavor.Shake, flavor.Up, false}, {flavor.Stir, flavor.Up, false}, {flavor.Build, flavor.Long, true}, {flavor.Shake, flavor.Long, true}} {
		base := specOf(t, "", c.method, c.service, part{45, 40, 0, 0})
		want, err := m.Mix(base)
		require.NoError(t, err)
		for _, top := range []flavor.Pour{pour(soda, 120), {Profile: still, Amount: 1, Unit: flavor.Top, ML: 90}} {
			s := base.Clone()
			s.Pours = append(s.Pours, top)
			d, err := m.Mix(&s)
			require.NoError(t, err)
			melted := d.IceWaterG - want.IceWaterG
			assert.InDelta(t, want.VolumeML+top.ML+melted, d.VolumeML, 0.6, "but for contraction")
			if !c.onIce {
				assert.InDelta(t, 0, melted, 1e-9)
				assert.InDelta(t, want.DilutionPct, d.DilutionPct, 1e-9)
				assert.Less(t, d.TemperatureC, fridgeC)
				continue
			}
			assert.GreaterOrEqual(t, melted, -1e-9)
			assert.LessOrEqual(t, melted*LatentHeat, top.ML*waterHeat*fridgeC*1.05, "no more than its heat melts")
			assert.InDelta(t, 100*d.IceWaterG/WaterDensity/d.BeforeML, d.DilutionPct, 0.1, "all of it meets the ice")
		}
	}
	only := &flavor.Spec{Method: flavor.Build, Service: flavor.Up, Pours: []flavor.Pour{pour(soda, 100)}}
	d, err := m.Mix(only)
	require.NoError(t, err)
	assert.InDelta(t, fridgeC, d.TemperatureC, 1e-9)
	assert.Zero(t, d.DilutionPct)
	assert.False(t, math.IsNaN(d.PlusMinus.TemperatureC))
}

// IceML estimates what Mix works out.
func TestIceEstimated(t *testing.T) {
	const within = 0.05 // of the volume
	m := mixer(t)
	soda := made(t, 0, 60, 3)
	soda.Carbonated = true
	for _, method := range flavor.Methods() {
		for _, service := range flavor.Services() {
			for _, topML := range []float64{0, 30, 150} {
				for _, abv := range []float64{0, 12, 25, 45} {
					s := specOf(t, "", method, service, part{90, abv, 60, 5})
					if topML > 0 {
						s.Pours = append(s.Pours, pour(soda, topML))
					}
					d, err := m.Mix(s)
					require.NoError(t, err)
					assert.InDelta(t, d.IceWaterG, IceML(method, service, 90, topML, abv/100), within*d.VolumeML, "%s, %s, %v mL of top, %v %%", method, service, topML, abv)
				}
			}
		}
	}
}
