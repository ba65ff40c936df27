package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/wish"
)

// What the trade pours in place of what a guest must not have comes first in a riff, as in a
// cover. Common practice, no source.
func TestCustomsLeadWhereAPourMayNotBe(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		text  string
		guest guest.Guest
		stock []string
		want  string
	}{
		{"1 1/2 oz vodka\n1 oz coffee liqueur\n1 oz heavy cream\nbuild, rocks", guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}},
			[]string{"unsweetened coconut cream", "melon liqueur", "advocaat", "vanilla vodka", "orange juice"}, "coconut-cream"},
		{"1 1/2 oz vodka\n1 oz coffee liqueur\n2 oz whole milk\nbuild, rocks", guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}},
			[]string{"oat drink", "creme de cassis", "elderflower liqueur", "aged rum"}, "oat-drink"},
		{"2 oz aged rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up", guest.Guest{NoAlcohol: true},
			[]string{"alcohol-free juniper spirit", "alcohol-free cane spirit", "alcohol-free agave spirit"}, "alcohol-free-cane"},
	} {
		s := b.Spec(t, c.text)
		res, err := Vary(context.Background(), b.Station, Request{Spec: s, Guest: c.guest, Limit: 3, Stock: bartest.With(b.Bottles(t, c.stock...), s)})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, c.text)
		assert.True(t, res.Riffs[0].Spec.Has(of(c.want)), res.Riffs[0].Text)
	}
}

// Where less alcohol is asked for, what the trade pours in place of a spirit is in the list:
// a sherry for gin, and none of it for the guest who must not have what is in it.
func TestCustomsOfLessStrength(t *testing.T) {
	b := bartest.New(t)
	s := b.Spec(t, "2 oz bourbon\n1 oz lemon juice\n3/4 oz honey syrup\nshake, rocks")
	stock := bartest.With(b.Bottles(t, "sweet vermouth", "amontillado sherry", "soda water", "pineapple juice"), s)
	toward, err := wish.Parse([]string{"below 12 %"}, nil)
	require.NoError(t, err)
	for _, c := range []struct {
		name  string
		avoid []flavor.Allergen
		wine  bool
	}{{"any", nil, true}, {"no sulphites", []flavor.Allergen{flavor.Sulphites}, false}} {
		res, err := Vary(context.Background(), b.Station, Request{Spec: s, Guest: guest.Guest{Avoid: c.avoid}, Toward: toward, Limit: 4, Stock: stock})
		require.NoError(t, err)
		wine, soda := false, false
		for i := range res.Riffs {
			wine = wine || res.Riffs[i].Spec.Has(of("sweet-vermouth")) || res.Riffs[i].Spec.Has(of("amontillado-sherry"))
			soda = soda || res.Riffs[i].Spec.Has(of("soda-water"))
		}
		assert.Equal(t, c.wine, wine, c.name)
		assert.True(t, soda, "plain soda goes with every syrup")
	}
}

// A sour is lengthened with a sweet soda in place of its syrup, not beside it.
func TestASourBecomesABuck(t *testing.T) {
	b := bartest.New(t)
	s := b.Spec(t, "2 oz aged rum\n1 oz lime juice\n3/4 oz demerara syrup\nshake, up")
	toward, err := wish.Parse([]string{"longer"}, nil)
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: s, Toward: toward, Limit: 4, Stock: bartest.With(b.Bottles(t, "ginger beer", "mezcal", "vodka", "soda water"), s)})
	require.NoError(t, err)
	bucks := 0
	for i := range res.Riffs {
		if x := &res.Riffs[i].Spec; x.Has(of("ginger-beer")) {
			bucks++
			assert.False(t, x.HasProfile(s.Pours[2].Profile), res.Riffs[i].Text)
		}
	}
	assert.Positive(t, bucks)
	assert.True(t, res.Riffs[0].Spec.Has(of("aged-rum")), "who wants it longer wants no other spirit")
}

// of tells an ingredient by its id.
func of(id string) func(*flavor.Profile) bool {
	return func(p *flavor.Profile) bool { return p.ID == id }
}

// Nobody pours a hot sauce into a sweet soda, whatever is wished. Common practice, no source.
func TestNoSauceInASweetSoda(t *testing.T) {
	b := bartest.New(t)
	s := b.Spec(t, "2 oz vodka\n1/2 oz lime juice\n4 oz ginger ale\nbuild, long")
	toward, err := wish.Parse([]string{"spicier"}, nil)
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: s, Toward: toward, Limit: 6, Stock: bartest.With(b.Bottles(t, "hot pepper sauce", "ginger beer", "cola", "ginger syrup"), s)})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		x := &res.Riffs[i].Spec
		assert.False(t, x.HasKin(flavor.KinSavoury) && (x.Has(of("ginger-ale")) || x.Has(of("cola"))), res.Riffs[i].Text)
	}
}

// Without its spirit a long drink that has a soda is poured with more of it, and that comes
// before another soda beside it. Common practice, no source.
func TestALongDrinkWithoutItsSpirit(t *testing.T) {
	b := bartest.New(t)
	s := b.Spec(t, "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\n8 leaves mint\n3 oz soda water\nbuild, long")
	res, err := Vary(context.Background(), b.Station, Request{Spec: s, Guest: guest.Guest{NoAlcohol: true}, Limit: 3, Stock: bartest.With(b.Bottles(t, "tonic water", "ginger ale", "grenadine"), s)})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	first := &res.Riffs[0].Spec
	assert.Len(t, first.Pours, len(s.Pours)-1, res.Riffs[0].Text)
	assert.True(t, first.Has(of("soda-water")))
}
