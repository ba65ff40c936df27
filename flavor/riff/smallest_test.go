package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

// What comes first does what was asked for and no more: in the same glass, on the same spirit,
// with one thing new at most, and nothing that a guest may not have who could have the drink.
func TestTheSmallestStepComesFirst(t *testing.T) {
	b := bartest.New(t)
	for _, text := range []string{
		"2 oz cognac\n1 oz triple sec\n3/4 oz lemon juice\nshake, up",
		"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up",
		"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz honey syrup\nshake, rocks",
	} {
		for _, wished := range []string{"drier", "more bitter", "with pineapple juice"} {
			spec := b.Spec(t, text)
			toward, err := wish.Parse([]string{wished}, wish.NamesIn(b.Usual))
			require.NoError(t, err)
			res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
			require.NoError(t, err)
			require.NotEmpty(t, res.Riffs, wished)
			first := &res.Riffs[0]
			assert.Equal(t, spec.Method, first.Spec.Method, "%s: %s", wished, first.Text)
			assert.Equal(t, spec.Service, first.Spec.Service, "%s: %s", wished, first.Text)
			assert.True(t, first.Spec.HasProfile(spec.Pours[0].Profile), "%s: %s", wished, first.Text)
			came := 0
			for i := range first.Spec.Pours {
				if !spec.HasProfile(first.Spec.Pours[i].Profile) {
					came++
				}
			}
			assert.LessOrEqual(t, came, 1, "%s: %s", wished, first.Text)
			for _, a := range first.Spec.NewAllergens(spec) {
				carried := slices.ContainsFunc(first.Spec.Allergens(), func(m flavor.AllergenMark) bool { return m.Allergen == a && m.Certainty == flavor.Contains })
				assert.False(t, carried, "%s: %s brings %s", wished, first.Text, a)
			}
		}
	}
}

// Who wants a drink longer is told of soda water before anything that changes its taste.
func TestLongerIsSodaFirst(t *testing.T) {
	b := bartest.New(t)
	toward, err := wish.Parse([]string{"longer"}, nil)
	require.NoError(t, err)
	for _, text := range []string{"2 oz gin\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", "2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"} {
		spec := b.Spec(t, text)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs)
		assert.True(t, res.Riffs[0].Spec.Has(func(p *flavor.Profile) bool { return p.ID == "soda-water" }), res.Riffs[0].Text)
	}
}

// A guest who drinks no alcohol is poured the counterpart of each bottle, where all are there.
func TestCounterpartsWithoutAlcoholComeTogether(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks")
	toward, err := wish.Parse([]string{"alcohol-free"}, nil)
	require.NoError(t, err)
	three := []string{"alcohol-free-juniper", "alcohol-free-red-bitter", "alcohol-free-red-vermouth"}
	var stock []*flavor.Profile
	for _, p := range b.Catalogue.Profiles() {
		if slices.Contains(three, p.ID) {
			stock = append(stock, p)
		}
	}
	require.Len(t, stock, len(three))
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: stock})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	for _, p := range stock {
		assert.True(t, res.Riffs[0].Spec.HasProfile(p), res.Riffs[0].Text)
	}
}
