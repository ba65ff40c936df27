package template_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/template"
)

// sours is a family of three parts, for tests that need no catalogue.
func sours() template.Family {
	return template.Family{ID: "sour", Name: "Sour", Axes: []template.Axis{template.Strong, template.Sweet, template.Sour},
		Ratio: []float64{8, 3, 3}, Source: "made up for this test"}
}

func TestRatioAloneIsThePrior(t *testing.T) {
	tuning := template.DefaultTuning()
	fitted, err := template.Learn([]template.Family{sours()}, nil, tuning)
	require.NoError(t, err)
	want, err := mustBasis(t, 3).Coordinates([]float64{8, 3, 3})
	require.NoError(t, err)
	assert.InDeltaSlice(t, want, fitted[0].Centre, same)
	assert.Equal(t, 0, fitted[0].Drinks)
	assert.Equal(t, tuning.SpreadDrinks, fitted[0].Freedom)
	set, err := template.NewSet([]template.Family{sours()}, fitted, nil, tuning)
	require.NoError(t, err)
	centre, err := set.Centre("sour")
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{8.0 / 14, 3.0 / 14, 3.0 / 14}, centre, same)
}

// The mean of the prior and the drinks, weighted by how many each counts for.
func TestDrinksMoveTheCentreByTheConjugateRule(t *testing.T) {
	tuning := template.DefaultTuning()
	var proven []template.Labelled
	for range 12 {
		proven = append(proven, template.Labelled{Spec: *spec(of(spirit, 60), of(syrup, 30), of(lemon, 20)), Family: "sour"})
	}
	fitted, err := template.Learn([]template.Family{sours()}, proven, tuning)
	require.NoError(t, err)
	basis := mustBasis(t, 3)
	prior, err := basis.Coordinates([]float64{8, 3, 3})
	require.NoError(t, err)
	// Sugar and acid in water leave next to no length beside the three parts.
	const floor, digits = 0.004, 2e-3
	poured, err := basis.Coordinates([]float64{60.0/110 + floor, 30.0/110 + floor, 20.0/110 + floor})
	require.NoError(t, err)
	for j := range prior {
		want := (tuning.RatioDrinks*prior[j] + 12*poured[j]) / (tuning.RatioDrinks + 12)
		assert.InDelta(t, want, fitted[0].Centre[j], digits)
	}
	assert.Equal(t, 12, fitted[0].Drinks)
	assert.Equal(t, tuning.SpreadDrinks+12, fitted[0].Freedom)
}

// Fitting from where an earlier fit left off comes to the same end.
func TestLearnFromAnEarlierFit(t *testing.T) {
	k := newKitchen(t)
	again, err := template.LearnFrom(k.families, k.book, template.DefaultTuning(), k.fitted)
	require.NoError(t, err)
	for i := range again {
		assert.InDeltaSlice(t, k.fitted[i].Weights[:], again[i].Weights[:], 1e-3, k.fitted[i].ID)
		assert.InDelta(t, k.fitted[i].Bias, again[i].Bias, 1e-3, k.fitted[i].ID)
	}
}

func TestLearnFaults(t *testing.T) {
	tuning := template.DefaultTuning()
	for name, spoil := range map[string]func(*template.Family){
		"needs an id":        func(f *template.Family) { f.ID = "" },
		"a source":           func(f *template.Family) { f.Source = "" },
		"two or more":        func(f *template.Family) { f.Axes, f.Ratio = f.Axes[:1], f.Ratio[:1] },
		"as many of one":     func(f *template.Family) { f.Ratio = f.Ratio[:2] },
		"in the order":       func(f *template.Family) { f.Axes = []template.Axis{template.Sweet, template.Strong, template.Sour} },
		"each once":          func(f *template.Family) { f.Axes = []template.Axis{template.Sweet, template.Sweet, template.Sour} },
		"positive":           func(f *template.Family) { f.Ratio = []float64{8, 0, 3} },
		"must be positive a": func(f *template.Family) { f.Ratio = []float64{8, math.Inf(1), 3} },
	} {
		f := sours()
		spoil(&f)
		_, err := template.Learn([]template.Family{f}, nil, tuning)
		assert.ErrorContains(t, err, name)
	}
	stray := []template.Labelled{{Spec: *spec(of(spirit, 60)), Family: "broth"}}
	_, err := template.Learn([]template.Family{sours()}, stray, tuning)
	assert.ErrorContains(t, err, `family "broth"`)
	empty := []template.Labelled{{Spec: *spec(of(spirit, 0)), Family: "sour"}}
	_, err = template.Learn([]template.Family{sours()}, empty, tuning)
	assert.ErrorContains(t, err, "to weigh")
}

func TestSetFaults(t *testing.T) {
	tuning := template.DefaultTuning()
	fitted, err := template.Learn([]template.Family{sours()}, nil, tuning)
	require.NoError(t, err)
	_, err = template.NewSet(nil, nil, nil, tuning)
	assert.ErrorContains(t, err, "fit the families again")
	for name, spoil := range map[string]func(*template.Fitted){
		"its fitted values are for": func(f *template.Fitted) { f.ID = "daisy" },
		"degrees of freedom":        func(f *template.Fitted) { f.Freedom = 0 },
		"2 coordinates":             func(f *template.Fitted) { f.Scale = f.Scale[:1] },
		"positive definite":         func(f *template.Fitted) { f.Scale = []float64{1, 2, 2, 1} },
	} {
		f := fitted[0]
		spoil(&f)
		_, err = template.NewSet([]template.Family{sours()}, []template.Fitted{f}, nil, tuning)
		assert.ErrorContains(t, err, name)
	}
	set, err := template.NewSet([]template.Family{sours()}, fitted, nil, tuning)
	require.NoError(t, err)
	_, err = set.Centre("broth")
	assert.ErrorContains(t, err, "not known")
}

func TestNamesReadBack(t *testing.T) {
	for _, a := range template.Axes() {
		got, ok := template.ParseAxis(a.String())
		assert.True(t, ok)
		assert.Equal(t, a, got)
	}
	_, ok := template.ParseAxis("salty")
	assert.False(t, ok)
	assert.Equal(t, "axis(99)", template.Axis(99).String())
	seen := map[string]bool{}
	for i := range template.NumSignals {
		name := template.Signal(i).String()
		assert.NotEmpty(t, name)
		assert.False(t, seen[name], "%q names two signals", name)
		seen[name] = true
		got, ok := template.ParseSignal(name)
		assert.True(t, ok)
		assert.Equal(t, template.Signal(i), got)
	}
}

func TestVerdicts(t *testing.T) {
	for score, want := range map[float64]template.Verdict{0: template.Off, 49.9: template.Off, 50: template.Near,
		69.9: template.Near, 70: template.Balanced, 100: template.Balanced} {
		assert.Equal(t, want, template.VerdictOf(score), "%v", score)
	}
}
