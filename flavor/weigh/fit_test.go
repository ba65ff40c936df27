package weigh_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/template"
	"counterpour/flavor/template/templatetest"
	"counterpour/flavor/weigh"
)

// To leave one drink out of a fit comes to what a fit of the others does: what no drink of the
// others moved to the letter, the signs as near as a search ends.
func TestLearnWithout(t *testing.T) {
	k := newKitchen(t)
	lessons := template.LessonsOf(k.book)
	for _, left := range []int{0, len(k.book) / 2, len(k.book) - 1} {
		name := k.book[left].Spec.Name
		quick, err := template.LearnWithout(k.families, lessons, left, template.DefaultTuning(), k.fitted)
		require.NoError(t, err)
		others := slices.Delete(slices.Clone(k.book), left, left+1)
		whole, err := template.Learn(k.families, others, template.DefaultTuning())
		require.NoError(t, err)
		for i := range whole {
			assert.InDeltaSlice(t, whole[i].Weights[:], quick[i].Weights[:], 1e-3, "%s: %s", name, whole[i].ID)
			assert.InDelta(t, whole[i].Bias, quick[i].Bias, 1e-3, "%s: %s", name, whole[i].ID)
			quick[i].Weights, quick[i].Bias = whole[i].Weights, whole[i].Bias
			assert.Equal(t, whole[i], quick[i], "%s: %s", name, whole[i].ID)
		}
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
