package weigh_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/template"
	"counterpour/flavor/template/templatetest"
	"counterpour/flavor/weigh"
)

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

func TestSetFaults(t *testing.T) {
	tuning := template.DefaultTuning()
	fitted, err := template.Learn([]template.Family{templatetest.Sours()}, nil, tuning)
	require.NoError(t, err)
	_, err = weigh.NewSet(nil, nil, nil, tuning)
	assert.ErrorContains(t, err, "fit the families again")
	for name, spoil := range map[string]func(*template.Fitted){
		"its fitted values are for": func(f *template.Fitted) { f.ID = "daisy" },
		"degrees of freedom":        func(f *template.Fitted) { f.Freedom = 0 },
		"2 coordinates":             func(f *template.Fitted) { f.Scale = f.Scale[:1] },
		"positive definite":         func(f *template.Fitted) { f.Scale = []float64{1, 2, 2, 1} },
	} {
		f := fitted[0]
		spoil(&f)
		_, err = weigh.NewSet([]template.Family{templatetest.Sours()}, []template.Fitted{f}, nil, tuning)
		assert.ErrorContains(t, err, name)
	}
	set, err := weigh.NewSet([]template.Family{templatetest.Sours()}, fitted, nil, tuning)
	require.NoError(t, err)
	_, err = set.Centre("broth")
	assert.ErrorContains(t, err, "not known")
}
