package mix

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Densities at 20 °C from OIML R 22, Table IVa; European Pharmacopoeia 5.5.
func TestEthanolWaterDensity(t *testing.T) {
	const tolerance = 0.05 // kg/m³
	for _, c := range []struct{ percent, celsius, want float64 }{
		{0, 20, 998.20}, {10, 20, 984.71}, {20, 20, 973.56}, {40, 20, 948.05},
		{50, 20, 930.14}, {96, 20, 807.42}, {100, 20, 789.24},
		{40, -20, 971.82}, {40, -10, 966.41}, {40, 0, 960.63}, {40, 15, 951.33}, {40, 40, 933.97}, {0, 4, 999.97},
		{20, -5, 979.34}, {96, 15, 811.73},
	} {
		got, err := EthanolWaterDensity(MassFraction(c.percent/100), c.celsius)
		require.NoError(t, err)
		assert.InDelta(t, c.want, got*1000, tolerance, "%v %% vol at %v °C", c.percent, c.celsius)
	}
}

func TestContractionQuick(t *testing.T) {
	l := Ledger{Ethanol: 50 * EthanolDensity, Water: 50 * WaterDensity}
	assert.InDelta(t, 96.46, l.VolumeML(), 0.02)
}

func prof(abv, sugar, acid float64) *flavor.Profile {
	p := &flavor.Profile{ID: "x", Name: "x", Class: flavor.ClassGin, ABV: flavor.Figure{Value: abv}, Sugar: flavor.Figure{Value: sugar},
		Sugars: flavor.SugarBlend{Sucrose: 1}, Acid: flavor.Figure{Value: acid}, Acids: flavor.AcidBlend{Citric: 1}}
	if err := Complete(p); err != nil {
		panic(err)
	}
	return p
}

func TestBookDrinks(t *testing.T) {
	m, err := NewMixer()
	require.NoError(t, err)
	s := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: prof(40, 0, 0), ML: 60, Unit: flavor.Millilitre}, {Profile: prof(0, 615, 0), ML: 22.5, Unit: flavor.Millilitre}, {Profile: prof(0, 16, 60), ML: 22.5, Unit: flavor.Millilitre}}}
	d, err := m.Mix(&s)
	require.NoError(t, err)
	t.Logf("%+v", d)
	melt, c := m.EquilibriumMelt(d.Before, 20, 150)
	t.Log(melt, c)
	s = flavor.Spec{Method: flavor.Stir, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: prof(47.3, 0, 0), ML: 30, Unit: flavor.Millilitre}, {Profile: prof(24, 240, 0), ML: 30, Unit: flavor.Millilitre}, {Profile: prof(16.5, 160, 6), ML: 30, Unit: flavor.Millilitre}}}
	d, err = m.Mix(&s)
	require.NoError(t, err)
	t.Logf("%+v", d)
}
func BenchmarkMix(b *testing.B) {
	m, _ := NewMixer()
	s := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: prof(40, 0, 0), ML: 60, Unit: flavor.Millilitre}, {Profile: prof(0, 615, 0), ML: 22.5, Unit: flavor.Millilitre}, {Profile: prof(0, 16, 60), ML: 22.5, Unit: flavor.Millilitre}}}
	for b.Loop() {
		m.Mix(&s)
	}
}
