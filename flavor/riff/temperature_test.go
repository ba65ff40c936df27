package riff

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

const (
	rumGrog   = "1 1/2 oz dark rum\n1/2 oz lime juice\n1/2 oz demerara syrup\n4 oz water\nbuild, hot"
	vodkaFizz = "2 oz vodka\n3/4 oz lime juice\n3/4 oz honey syrup\n2 oz soda water\nshake, long"
)

func hot(s *flavor.Spec) bool { return s.Service == flavor.Hot }

// A hot drink is cold where that is wished, and without the water that made it hot; one for a hot
// day is no stronger than that.
func TestAHotDrinkIsServedCold(t *testing.T) {
	b := bartest.New(t)
	for _, word := range []string{"chilled", "make it colder", "served iced", "summery", "on the rocks"} {
		_, res := wishing(t, b, rumGrog, word)
		require.NotEmpty(t, res.Riffs, word)
		for i := range res.Riffs {
			s := &res.Riffs[i].Spec
			assert.False(t, hot(s), "%s: %s", word, res.Riffs[i].Text)
			assert.False(t, s.Has(of("water")), "%s: %s", word, res.Riffs[i].Text)
		}
	}
}

// A drink that is cold already is told to be so.
func TestWhatIsColdIsToldSo(t *testing.T) {
	b := bartest.New(t)
	toward, err := wish.Parse([]string{"icy"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	_, err = Vary(context.Background(), b.Station, Request{Spec: b.Spec(t, bartest.GinSour), Stock: b.Usual, Toward: toward})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "cold already")
}

// What was shaken with soda is built with hot water where it is served hot.
func TestAColdDrinkIsServedHot(t *testing.T) {
	b := bartest.New(t)
	for _, text := range []string{vodkaFizz, bartest.GinSour} {
		_, res := wishing(t, b, text, "piping hot")
		require.NotEmpty(t, res.Riffs, text)
		for i := range res.Riffs {
			x := &res.Riffs[i]
			assert.True(t, hot(&x.Spec), x.Text)
			assert.Equal(t, flavor.Build, x.Spec.Method, x.Text)
			assert.False(t, sparkles(&x.Spec), x.Text)
			assert.Greater(t, x.Spec.MLOf(func(p *flavor.Profile) bool { return p.Class.Heated() }), 45.0, x.Text)
		}
	}
}

// What is drunk for the heat is no stronger than the drink it came from, and a stirred one is
// long first.
func TestForAHotDay(t *testing.T) {
	b := bartest.New(t)
	from, res := wishing(t, b, bartest.BitterThird, "for hot weather")
	require.NotEmpty(t, res.Riffs)
	was, err := b.Station.Mixer.Mix(from)
	require.NoError(t, err)
	for i := range res.Riffs {
		assert.LessOrEqual(t, res.Riffs[i].Drink.ABV, was.ABV+0.5, res.Riffs[i].Text)
	}
	assert.Equal(t, flavor.Long, res.Riffs[0].Spec.Service, res.Riffs[0].Text)

	_, res = wishing(t, b, "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "summery")
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		assert.LessOrEqual(t, res.Riffs[i].Drink.ABV, 20.0, res.Riffs[i].Text)
	}
}
