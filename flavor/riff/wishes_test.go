package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
)

// A wish is met by what a bartender reaches for: each riff pours one of these, or more
// of it, and none gets there by a bottle that hardly smells of it. Common practice, no
// source.
func TestWishesAreMetByWhatIsKnownForThem(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct {
		text, wish string
		known      func(p *flavor.Profile) bool
	}{
		{bartest.GinSour, "smokier", func(p *flavor.Profile) bool { return p.Aroma[flavor.Smoke] >= p.Aroma.Total()/6 }},
		{bartest.OldWhiskey, "nuttier", func(p *flavor.Profile) bool { return p.Aroma[flavor.Nut] >= p.Aroma.Total()/6 }},
		{bartest.GinSour, "longer", func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartLength }},
		{"2 oz vodka\n1/2 oz dry vermouth\nstir, up", "saltier", func(p *flavor.Profile) bool { return p.Salt.Value > 0 }},
	} {
		spec := b.Spec(t, c.text)
		toward, err := wish.Parse([]string{c.wish}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
		require.NoError(t, err)
		require.NotEmpty(t, res.Riffs, c.wish)
		for i := range res.Riffs {
			found := false
			for _, p := range res.Riffs[i].Spec.Pours {
				found = found || c.known(p.Profile)
			}
			assert.True(t, found, "%s: %s", c.wish, res.Riffs[i].Text)
		}
	}
	// The first that salts a stirred drink is what salts it in proven ones.
	spec := b.Spec(t, "2 oz vodka\n1/2 oz dry vermouth\nstir, up")
	toward, err := wish.Parse([]string{"saltier"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	assert.True(t, station.Pours(&res.Riffs[0].Spec, b.Bottle(t, "olive brine")), res.Riffs[0].Text)
}
