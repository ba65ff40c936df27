package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/wording"
)

// A drink is led to what its nearest proven kin pour beside it, where that is at hand and
// the guest may have it. Common practice, no source.
func TestWhatTheNearestKinPour(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct{ text, stock, came string }{
		{"8 oz lager\n1 oz lime juice\n2 dashes Worcestershire sauce\n2 dashes hot sauce\n1 pinch salt\nbuild, long", "tomato juice", "tomato-juice"},
		{"8 oz lager\n1 oz lime juice\n2 dashes Worcestershire sauce\n2 dashes hot sauce\n1 pinch salt\nbuild, long", "blanco tequila", "blanco-tequila"},
	} {
		spec := b.Spec(t, c.text)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: bartest.With(b.Bottles(t, c.stock, "stout", "vodka"), spec), Limit: 3})
		require.NoError(t, err)
		at := slices.IndexFunc(res.Riffs, func(r Riff) bool { return r.Spec.HasProfile(b.Bottle(t, c.came)) })
		require.GreaterOrEqual(t, at, 0, c.came)
		was, is := spec.VolumeML(), res.Riffs[at].Spec.VolumeML()
		assert.InDelta(t, was, is, 0.15*was, "what is added is little, or takes the place of what is long: %s", res.Riffs[at].Text)
	}
}

// What is left out is told with whether anything here could do its work.
func TestNothingStandsIn(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "1 1/2 oz cognac\n1 oz dark creme de cacao\n1 oz heavy cream\nshake, up")
	for cream, want := range map[string]bool{"oloroso sherry": true, "coconut cream": false} {
		var g guest.Guest
		require.NoError(t, g.Keep("no dairy"))
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Guest: g, Stock: bartest.With(b.Bottles(t, cream, "aged rum"), spec)})
		require.NoError(t, err)
		require.Len(t, res.LeftOut, 1, cream)
		if want {
			assert.Contains(t, res.LeftOut[0].Why, wording.NothingStands, cream)
		} else {
			assert.NotContains(t, res.LeftOut[0].Why, wording.NothingStands, cream)
		}
	}
}
