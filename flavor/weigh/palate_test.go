package weigh_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

const (
	usualSour   = "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	sweeterSour = "2 oz gin\n3/4 oz lemon juice\n1 1/4 oz simple syrup\nshake, up"
)

// poured returns n specs of a sour that a house marks as right.
func (k *kitchen) poured(t *testing.T, text string, n int) []template.Labelled {
	out := make([]template.Labelled, n)
	for i := range out {
		out[i] = template.Labelled{Spec: *k.read(t, text), Family: "sour", Source: "a house"}
	}
	return out
}

// centreFor returns the ratio that a set holds a sour against.
func centreFor(t *testing.T, k *kitchen, s *weigh.Set, text string) []float64 {
	b, err := s.Prepare(k.read(t, text))
	require.NoError(t, err)
	for _, f := range b.Detail(b.Amounts()).Families {
		if f.ID == "sour" {
			return f.Centre
		}
	}
	require.Fail(t, "the drink is no sour")
	return nil
}

func TestNoSpecsLeaveThePalateAlone(t *testing.T) {
	k := newKitchen(t)
	set, err := k.set.WithPalate(nil)
	require.NoError(t, err)
	assert.Empty(t, set.Palates())
	for _, p := range k.book {
		with, err := set.Prepare(&p.Spec)
		require.NoError(t, err)
		without := k.build(t, &p.Spec)
		assert.Equal(t, without.Judge(without.Amounts()), with.Judge(with.Amounts()), p.Spec.Name)
	}
}

// By the conjugate rule n drinks poured alike bring the centre n ÷ (n + 8) of
// the way to them, if the published ratio counts for eight.
func TestPalatePullsTheCentre(t *testing.T) {
	k := newKitchen(t)
	prior := template.DefaultTuning().RatioDrinks
	before := centreFor(t, k, k.set, sweeterSour)
	b := k.build(t, k.read(t, sweeterSour))
	var poured []float64
	for _, f := range b.Detail(b.Amounts()).Families {
		if f.ID == "sour" {
			for i, p := range f.Part {
				poured = append(poured, p+f.Floor[f.Axes[i]])
			}
		}
	}
	whole, err := ratio.AitchisonDistance(before, poured)
	require.NoError(t, err)
	for _, n := range []int{1, 20} {
		set, err := k.set.WithPalate(k.poured(t, sweeterSour, n))
		require.NoError(t, err)
		moved, err := ratio.AitchisonDistance(before, centreFor(t, k, set, sweeterSour))
		require.NoError(t, err)
		assert.InDelta(t, float64(n)/(float64(n)+prior), moved/whole, same, "%d drinks", n)
	}
}

func TestPalateMovesScoresTheHousesWay(t *testing.T) {
	k := newKitchen(t)
	score := func(s *weigh.Set, text string) float64 {
		b, err := s.Prepare(k.read(t, text))
		require.NoError(t, err)
		return b.Score(b.Amounts())
	}
	twenty, err := k.set.WithPalate(k.poured(t, sweeterSour, 20))
	require.NoError(t, err)
	one, err := k.set.WithPalate(k.poured(t, sweeterSour, 1))
	require.NoError(t, err)
	own := score(k.set, sweeterSour)
	assert.Greater(t, score(one, sweeterSour), own)
	assert.Greater(t, score(twenty, sweeterSour), score(one, sweeterSour))
	assert.Less(t, score(twenty, usualSour), score(k.set, usualSour), "the usual is not theirs")

	other := "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	assert.InDelta(t, score(k.set, other), score(twenty, other), 1, "families that the house said nothing of stay")

	palates := twenty.Palates()
	require.Len(t, palates, 1)
	assert.Equal(t, "sour", palates[0].ID)
	assert.Equal(t, 20, palates[0].Drinks)
	require.Equal(t, []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour}, palates[0].Axes)
	assert.Greater(t, palates[0].Factors[1], 1.2, "sweeter")
	assert.Less(t, palates[0].Factors[0], 1.0, "against the rest")
}

func TestPalateIsReplacedNotAdded(t *testing.T) {
	k := newKitchen(t)
	once, err := k.set.WithPalate(k.poured(t, sweeterSour, 5))
	require.NoError(t, err)
	twice, err := once.WithPalate(k.poured(t, sweeterSour, 5))
	require.NoError(t, err)
	assert.Equal(t, once.Palates(), twice.Palates())
	none, err := twice.WithPalate(nil)
	require.NoError(t, err)
	assert.Equal(t, centreFor(t, k, k.set, usualSour), centreFor(t, k, none, usualSour))

	want, err := k.set.Centre("sour")
	require.NoError(t, err)
	got, err := once.Centre("sour")
	require.NoError(t, err)
	assert.NotEqual(t, want, got, "the family's ratio shows the palate")
}

func TestPalateFaults(t *testing.T) {
	k := newKitchen(t)
	wrong := k.poured(t, usualSour, 1)
	wrong[0].Family = "broth"
	_, err := k.set.WithPalate(wrong)
	assert.ErrorContains(t, err, `family "broth"`)
	empty := k.poured(t, usualSour, 1)
	empty[0].Spec.Pours = nil
	_, err = k.set.WithPalate(empty)
	assert.Error(t, err)
}
