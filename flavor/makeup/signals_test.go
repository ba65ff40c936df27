package makeup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/mix"
)

// The amounts are common practice; what is in a drink is near 1, what is not is 0.
func TestSignalsTellWhatIsPoured(t *testing.T) {
	figure := func(v float64) flavor.Figure { return flavor.Figure{Value: v} }
	sucrose := flavor.SugarBlend{Sucrose: 1}
	rum := &flavor.Profile{ID: "rum", Class: flavor.ClassRum, ABV: figure(40)}
	require.NoError(t, mix.Complete(rum))
	for _, c := range []struct {
		poured *flavor.Profile
		ml     float64
		has    makeup.Signal
	}{
		{&flavor.Profile{Class: flavor.ClassSyrup, Sugar: figure(600), Sugars: sucrose}, 20, makeup.HasSyrup},
		{&flavor.Profile{Class: flavor.ClassSpicedSyrup, Sugar: figure(600), Sugars: sucrose}, 20, makeup.HasSpicedSyrup},
		{&flavor.Profile{Class: flavor.ClassCordial, Sugar: figure(600), Sugars: sucrose, Acid: figure(30), Acids: flavor.AcidBlend{Citric: 1}}, 20, makeup.HasSyrup},
		{&flavor.Profile{Class: flavor.ClassCordial, Sugar: figure(600), Sugars: sucrose, Acid: figure(30), Acids: flavor.AcidBlend{Citric: 1}}, 20, makeup.HasSour},
		{&flavor.Profile{Class: flavor.ClassSourJuice, Acid: figure(60), Acids: flavor.AcidBlend{Citric: 1}}, 25, makeup.HasSour},
		{&flavor.Profile{Class: flavor.ClassLiqueur, ABV: figure(24), Sugar: figure(300), Sugars: sucrose}, 30, makeup.LiqueurSweetens},
		{&flavor.Profile{Class: flavor.ClassVermouth, ABV: figure(16), Sugar: figure(30)}, 30, makeup.HasWine},
		{&flavor.Profile{Class: flavor.ClassVermouth, ABV: figure(16), Sugar: figure(30)}, 30, makeup.HasDryWine},
		{&flavor.Profile{Class: flavor.ClassSoda}, 120, makeup.HasSoda},
		{&flavor.Profile{Class: flavor.ClassSoda, Sugar: figure(90), Sugars: sucrose}, 120, makeup.SodaSweetens},
		{&flavor.Profile{Class: flavor.ClassSparklingWine, ABV: figure(12)}, 120, makeup.HasSparkling},
		{&flavor.Profile{Class: flavor.ClassBeer, ABV: figure(5)}, 180, makeup.HasBeer},
		{&flavor.Profile{Class: flavor.ClassJuice, Sugar: figure(100), Acid: figure(8), Acids: flavor.AcidBlend{Citric: 1}}, 120, makeup.HasJuice},
		{&flavor.Profile{Class: flavor.ClassJuice, Sugar: figure(30), Salt: figure(6)}, 120, makeup.HasSavoury},
		{&flavor.Profile{Class: flavor.ClassCoffee}, 120, makeup.HasCoffee},
		{&flavor.Profile{Class: flavor.ClassDairy}, 60, makeup.HasCream},
		{&flavor.Profile{Class: flavor.ClassEgg, Fat: figure(276)}, 18, makeup.HasYolk},
		{&flavor.Profile{Class: flavor.ClassEgg, Fat: figure(2)}, 30, makeup.HasEggWhite},
		{&flavor.Profile{Class: flavor.ClassFoam}, 10, makeup.HasEggWhite},
		{&flavor.Profile{Class: flavor.ClassCocktailBitters, ABV: figure(45)}, 1.6, makeup.HasBitters},
		{&flavor.Profile{Class: flavor.ClassAniseSpirit, ABV: figure(60)}, 5, makeup.HasAbsinthe},
	} {
		require.NoError(t, mix.Complete(c.poured))
		s := flavor.Spec{Method: flavor.Build, Service: flavor.Rocks, Pours: []flavor.Pour{{Profile: rum, ML: 50}, {Profile: c.poured, ML: c.ml}}}
		got := makeup.SignalsOf(&s, makeup.PartsIn(&s), makeup.AmountsOf(&s))
		assert.Greater(t, got[c.has], 0.7, "%s of %s", c.has, c.poured.Class)
		assert.Greater(t, got[makeup.RumBase], 0.0, "%s", c.poured.Class)
		assert.Equal(t, []float64{1, 1, 0}, []float64{got[makeup.IsBuilt], got[makeup.IsRocks], got[makeup.IsShaken]})

		s.Pours = s.Pours[:1]
		alone := makeup.SignalsOf(&s, makeup.PartsIn(&s), makeup.AmountsOf(&s))
		assert.Zero(t, alone[c.has], "%s of rum alone", c.has)
	}
}

func TestSignalNamesReadBack(t *testing.T) {
	seen := map[string]bool{}
	for i := range makeup.NumSignals {
		name := makeup.Signal(i).String()
		assert.NotEmpty(t, name)
		assert.False(t, seen[name], "%q names two signals", name)
		seen[name] = true
		got, ok := makeup.ParseSignal(name)
		assert.True(t, ok)
		assert.Equal(t, makeup.Signal(i), got)
	}
}
