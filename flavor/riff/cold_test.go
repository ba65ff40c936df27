package riff

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

// Common practice, no source: what is brewed hot goes into a cold drink cold, and as what is made
// cold of its kind where that is at hand.
func TestCoffeeGoesColdIntoAColdDrink(t *testing.T) {
	b := bartest.New(t)
	from := b.Spec(t, "1 1/2 oz Irish whiskey\n4 oz hot filter coffee\n1/2 oz demerara syrup\n1 oz heavy cream\nbuild, hot")
	for _, c := range []struct{ beside, want string }{{"vodka", "coffee"}, {"cold brew", "cold-brew"}} {
		stock := bartest.With(b.Bottles(t, c.beside, "demerara syrup"), from)
		toward, err := wish.Parse([]string{"cold"}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		got, err := Vary(t.Context(), b.Station, Request{Spec: from, Stock: stock, Toward: toward, Limit: 3})
		require.NoError(t, err)
		require.NotEmpty(t, got.Riffs, c.beside)
		first := got.Riffs[0].Spec
		at := slices.IndexFunc(first.Pours, func(p flavor.Pour) bool { return p.Profile.ID == c.want })
		require.GreaterOrEqual(t, at, 0, "%s: %s", c.beside, got.Riffs[0].Text)
		assert.Equal(t, flavor.HeatCold, first.Pours[at].Warmth(), c.beside)
		assert.NotEqual(t, flavor.Hot, first.Service)
	}
}

// Salt is in every kitchen, until somebody says that it ran out.
func TestSaltThatRanOutIsNotPoured(t *testing.T) {
	b := bartest.New(t)
	from := b.Spec(t, "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up")
	toward, err := wish.Parse([]string{"saltier"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	salted := func(out ...*flavor.Profile) (n int) {
		got, err := Vary(t.Context(), b.Station, Request{Spec: from, Stock: bartest.With(b.Bottles(t, "gin"), from), Out: out, Toward: toward})
		require.NoError(t, err)
		for i := range got.Riffs {
			if got.Riffs[i].Spec.Has(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSaline }) {
				n++
			}
		}
		return n
	}
	require.Positive(t, salted())
	assert.Zero(t, salted(b.Bottles(t, "salt")...))
}
