package template_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/template/templatetest"
	"counterpour/flavor/weigh"
)

// same is how far two ways of adding up the same numbers may differ.
const same = 1e-9

func TestRatioAloneIsThePrior(t *testing.T) {
	tuning := template.DefaultTuning()
	fitted, err := template.Learn([]template.Family{templatetest.Sours()}, nil, tuning)
	require.NoError(t, err)
	want, err := mustBasis(t, 3).Coordinates([]float64{8, 3, 3})
	require.NoError(t, err)
	assert.InDeltaSlice(t, want, fitted[0].Centre, same)
	assert.Equal(t, 0, fitted[0].Drinks)
	assert.Equal(t, tuning.SpreadDrinks, fitted[0].Freedom)
	set, err := weigh.NewSet([]template.Family{templatetest.Sours()}, fitted, nil, tuning)
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
		proven = append(proven, template.Labelled{Spec: *templatetest.Spec(templatetest.Of(templatetest.Spirit, 60), templatetest.Of(templatetest.Syrup, 30), templatetest.Of(templatetest.Lemon, 20)), Family: "sour"})
	}
	fitted, err := template.Learn([]template.Family{templatetest.Sours()}, proven, tuning)
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

func TestLearnFaults(t *testing.T) {
	tuning := template.DefaultTuning()
	for name, spoil := range map[string]func(*template.Family){
		"needs an id":        func(f *template.Family) { f.ID = "" },
		"a source":           func(f *template.Family) { f.Source = "" },
		"two or more":        func(f *template.Family) { f.Axes, f.Ratio = f.Axes[:1], f.Ratio[:1] },
		"as many of one":     func(f *template.Family) { f.Ratio = f.Ratio[:2] },
		"in the order":       func(f *template.Family) { f.Axes = []ratio.Axis{ratio.Sweet, ratio.Strong, ratio.Sour} },
		"each once":          func(f *template.Family) { f.Axes = []ratio.Axis{ratio.Sweet, ratio.Sweet, ratio.Sour} },
		"positive":           func(f *template.Family) { f.Ratio = []float64{8, 0, 3} },
		"must be positive a": func(f *template.Family) { f.Ratio = []float64{8, math.Inf(1), 3} },
	} {
		f := templatetest.Sours()
		spoil(&f)
		_, err := template.Learn([]template.Family{f}, nil, tuning)
		assert.ErrorContains(t, err, name)
	}
	stray := []template.Labelled{{Spec: *templatetest.Spec(templatetest.Of(templatetest.Spirit, 60)), Family: "broth"}}
	_, err := template.Learn([]template.Family{templatetest.Sours()}, stray, tuning)
	assert.ErrorContains(t, err, `family "broth"`)
	empty := []template.Labelled{{Spec: *templatetest.Spec(templatetest.Of(templatetest.Spirit, 0)), Family: "sour"}}
	_, err = template.Learn([]template.Family{templatetest.Sours()}, empty, tuning)
	assert.ErrorContains(t, err, "to weigh")
}

func mustBasis(t *testing.T, parts int) *ratio.Basis {
	b, err := ratio.NewBasis(parts)
	require.NoError(t, err)
	return b
}
