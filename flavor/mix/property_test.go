package mix

import (
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

// drawSpec draws a still drink of any method, one to six pours.
func drawSpec(rt *rapid.T, tb testing.TB) *flavor.Spec {
	n := rapid.IntRange(1, 6).Draw(rt, "pours")
	parts := make([]part, n)
	for i := range parts {
		parts[i] = part{
			ml:    rapid.Float64Range(0.5, 200).Draw(rt, "ml"),
			abv:   rapid.Float64Range(0, 60).Draw(rt, "abv"),
			sugar: rapid.Float64Range(0, 400).Draw(rt, "sugar"),
			acid:  rapid.Float64Range(0, 60).Draw(rt, "acid"),
		}
	}
	return specOf(tb, "drawn", rapid.SampledFrom(flavor.Methods()).Draw(rt, "method"),
		rapid.SampledFrom(flavor.Services()).Draw(rt, "service"), parts...)
}

func TestMixKeepsMassAndBounds(t *testing.T) {
	m := mixer(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSpec(rt, t)
		d, err := m.Mix(s)
		require.NoError(t, err)
		var poured float64
		for _, p := range s.Pours {
			poured += p.ML * p.Profile.DensityGPerML
		}
		assert.InEpsilon(t, poured, d.Before.MassG(), 1e-9, "mass of the pours")
		assert.InEpsilon(t, poured+d.IceWaterG, d.After.MassG(), 1e-9, "mass with the ice")
		assert.InDelta(t, d.Before.Ethanol, d.After.Ethanol, 1e-12, "ice adds no alcohol")
		assert.InDelta(t, d.Before.Sugar, d.After.Sugar, 1e-12)
		assert.Less(t, d.BeforeML, s.VolumeML()*1.003, "mixing may swell a weak drink a little")
		assert.Greater(t, d.BeforeML, s.VolumeML()*0.94)
		assert.GreaterOrEqual(t, d.TemperatureC, d.FreezingC)
		if s.Service == flavor.Hot { // liquids swell
			assert.LessOrEqual(t, d.TemperatureC, usualHotC+1e-9)
			assert.Less(t, d.ColdML, d.VolumeML*1.06)
		} else {
			assert.LessOrEqual(t, d.TemperatureC, usualBarC+1e-9)
			assert.LessOrEqual(t, d.ColdML, d.VolumeML*(1+1e-9))
		}
		assert.LessOrEqual(t, d.ABV, d.Before.ABV()+1e-9)
		assert.Greater(t, d.ColdML, d.VolumeML*0.96)
		assert.InDelta(t, d.IceWaterG/WaterDensity, d.DilutionPct/100*d.BeforeML, 1e-6)
	})
}

func TestMixIgnoresOrder(t *testing.T) {
	m := mixer(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSpec(rt, t)
		turned := s.Clone()
		turned.Pours = rapid.Permutation(s.Pours).Draw(rt, "order")
		a, err := m.Mix(s)
		require.NoError(t, err)
		b, err := m.Mix(&turned)
		require.NoError(t, err)
		for _, n := range [][2]float64{
			{a.VolumeML, b.VolumeML}, {a.ABV, b.ABV}, {a.SugarPer100, b.SugarPer100}, {a.AcidPer100, b.AcidPer100},
			{a.DilutionPct, b.DilutionPct}, {a.TemperatureC, b.TemperatureC}, {a.EnergyKcal, b.EnergyKcal},
			{a.PlusMinus.VolumeML, b.PlusMinus.VolumeML}, {a.PlusMinus.ABV, b.PlusMinus.ABV},
		} {
			assert.InDelta(t, n[0], n[1], 1e-6*(1+math.Abs(n[0])))
		}
	})
}

// Twice the drink is twice the volume and the same in the glass; only the
// vessel does not grow, so the temperature may move.
func TestMixScales(t *testing.T) {
	m := mixer(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawSpec(rt, t)
		times := rapid.Float64Range(0.1, 50).Draw(rt, "times")
		big, err := Scale(s, times)
		require.NoError(t, err)
		a, err := m.Mix(s)
		require.NoError(t, err)
		b, err := m.Mix(&big)
		require.NoError(t, err)
		assert.InEpsilon(t, times*a.VolumeML, b.VolumeML, 1e-9)
		assert.InDelta(t, times*a.IceWaterG, b.IceWaterG, 1e-9*(1+b.IceWaterG))
		assert.InDelta(t, times*a.EnergyKcal, b.EnergyKcal, 1e-9*(1+b.EnergyKcal))
		assert.InDelta(t, a.ABV, b.ABV, 1e-9)
		assert.InDelta(t, a.SugarPer100, b.SugarPer100, 1e-9)
		assert.InDelta(t, a.AcidPer100, b.AcidPer100, 1e-9)
	})
}

// A completed millilitre is a millilitre, whatever is in it.
func TestCompleteFillsTheMillilitre(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := &flavor.Profile{Class: flavor.ClassLiqueur, ABV: flavor.Figure{Value: rapid.Float64Range(0, 96).Draw(rt, "abv")},
			Sugar: flavor.Figure{Value: rapid.Float64Range(0, 1100).Draw(rt, "sugar")}, Sugars: flavor.SugarBlend{Sucrose: 1}}
		if err := Complete(p); err != nil {
			assert.ErrorContains(t, err, "leaves no room for water; lower abv, sugar")
			return
		}
		l := PerML(p)
		assert.InDelta(t, 1, l.VolumeML(), 1e-9)
		assert.InDelta(t, p.ABV.Value, l.ABV(), 1e-6)
		assert.InDelta(t, p.DensityGPerML, l.MassG(), 1e-12)
	})
}

func TestCompleteCrystals(t *testing.T) {
	sugar := &flavor.Profile{Class: flavor.ClassSugar, Sugar: flavor.Figure{Value: 1587.9}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	require.NoError(t, Complete(sugar))
	assert.Zero(t, sugar.WaterGPerML)
	assert.InDelta(t, sucroseDensity, sugar.DensityGPerML, 1e-6)
	salt := &flavor.Profile{Class: flavor.ClassSaline, Salt: flavor.Figure{Value: 2160}}
	require.NoError(t, Complete(salt))
	assert.InDelta(t, 2.16, salt.DensityGPerML, 1e-9)
}

func TestEmptyLedger(t *testing.T) {
	var l Ledger
	assert.Zero(t, l.VolumeML())
	assert.Zero(t, l.ABV())
	assert.Zero(t, l.MassG())
}

func TestMixRefuses(t *testing.T) {
	m := mixer(t)
	p := made(t, 40, 0, 0)
	for name, s := range map[string]*flavor.Spec{
		"no pours":      {},
		"no profile":    {Pours: []flavor.Pour{{ML: 10}}},
		"nothing":       {Pours: []flavor.Pour{pour(p, 0)}},
		"below nothing": {Pours: []flavor.Pour{pour(p, -1)}},
		"not a number":  {Pours: []flavor.Pour{pour(p, math.NaN())}},
		"endless":       {Pours: []flavor.Pour{pour(p, math.Inf(1))}},
		"a lake":        {Pours: []flavor.Pour{pour(p, 1e6)}},
	} {
		_, err := m.Mix(s)
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
	_, err := m.Mix(&flavor.Spec{Pours: []flavor.Pour{pour(p, 10), {ML: 10}}})
	assert.ErrorContains(t, err, "pours[1]")
}

// Many at once, for the race detector.
func TestMixerIsSafeForConcurrentUse(t *testing.T) {
	m := mixer(t)
	s := fivePours(t)
	want, err := m.Mix(s)
	require.NoError(t, err)
	var wg sync.WaitGroup
	for range 8 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			got, err := m.Mix(s)
			assert.NoError(t, err)
			assert.Equal(t, want, got)
		}()
	}
	wg.Wait()
}

// A sugar cube and bitters, and a pour of pure water, have numbers too.
func TestMixOddDrinks(t *testing.T) {
	m := mixer(t)
	cube := &flavor.Profile{Name: "cube", Class: flavor.ClassSugar, Sugar: flavor.Figure{Value: 1587.9}, Sugars: flavor.SugarBlend{Sucrose: 1}}
	require.NoError(t, Complete(cube))
	for _, method := range flavor.Methods() {
		for _, pours := range [][]flavor.Pour{{pour(cube, 3)}, {pour(made(t, 0, 0, 0), 100)}, {pour(made(t, 99, 0, 0), 100)}} {
			d, err := m.Mix(&flavor.Spec{Method: method, Service: flavor.Rocks, Pours: pours})
			require.NoError(t, err)
			for _, v := range []float64{d.VolumeML, d.ColdML, d.ABV, d.TemperatureC, d.FreezingC, d.PlusMinus.ABV, d.PlusMinus.TemperatureC, d.PlusMinus.VolumeML} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s", method)
			}
		}
	}
}
