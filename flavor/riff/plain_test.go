package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/weigh"
)

// wishing asks for five riffs on a draft toward a wish, from a bar's usual bottles without
// some.
func wishing(t *testing.T, b *bartest.Bar, text, word string, out ...string) (*flavor.Spec, *Result) {
	t.Helper()
	spec := b.Spec(t, text)
	toward, err := wish.Parse([]string{word}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	gone := b.Bottles(t, out...)
	stock := slices.DeleteFunc(bartest.With(b.Usual, spec), func(p *flavor.Profile) bool { return slices.Contains(gone, p) })
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: stock, Limit: 5})
	require.NoError(t, err)
	return spec, res
}

// ofItsOwn reports whether a drink pours nothing that another does not.
func ofItsOwn(s, from *flavor.Spec) bool {
	return !slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return !from.HasProfile(p.Profile) })
}

// Whoever wants less of something is told to pour less of it before anything else comes
// in: first in the list where that is balanced, beside it where it is not. No more of
// what brings it is poured. Common practice, no source.
func TestLessIsPlainlyLess(t *testing.T) {
	b := bartest.New(t)
	for _, c := range []struct{ text, wish, of string }{
		{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "less sweet", "simple-syrup"},
		{"2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up", "drier", "triple-sec"},
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "less bitter", "red-bitter-aperitif"},
		{"2 oz vodka\n1/2 oz lime juice\n4 oz ginger beer\nbuild, long", "lighter", "vodka"},
		{"1 1/2 oz vodka\n1 oz espresso\n3/4 oz coffee liqueur\n1/4 oz simple syrup\nshake, up", "less sweet", "coffee-liqueur"},
		{"2 oz rye whiskey\n3/4 oz sweet vermouth\n1/4 oz absinthe\nstir, up", "less anise", "absinthe"},
	} {
		spec, res := wishing(t, b, c.text, c.wish)
		first := res.Nearest
		if first == nil {
			require.NotEmpty(t, res.Riffs, c.text)
			first = &res.Riffs[0]
		}
		assert.True(t, ofItsOwn(&first.Spec, spec), "%s: %s", c.wish, first.Text)
		for i := range res.Riffs {
			for _, was := range spec.Pours {
				for _, is := range res.Riffs[i].Spec.Pours {
					if was.Profile.ID == c.of && is.Profile.ID == c.of {
						assert.LessOrEqual(t, is.ML, was.ML+bartest.Rounding, res.Riffs[i].Text)
					}
				}
			}
		}
	}
}

// Where nothing meets a wish in balance, what comes nearest is told, with what it lacks.
func TestTheNearestMissIsTold(t *testing.T) {
	b := bartest.New(t)
	_, res := wishing(t, b, "1 1/2 oz gin\n1/2 oz kirsch\n1/2 oz dry vermouth\nstir, up", "less bitter, lower in alcohol")
	require.NotNil(t, res.Nearest)
	assert.Equal(t, station.MissesWish, res.Misses)
	assert.Contains(t, res.Nearest.Text, "lighter")
	_, res = wishing(t, b, "2 oz gin\n1 oz dry vermouth\n1 dash orange bitters\nstir, up", "lower in alcohol")
	assert.Nil(t, res.Nearest, "it may be made of its wine")
	require.NotEmpty(t, res.Riffs)
	assert.GreaterOrEqual(t, res.Riffs[0].Score, weigh.BalancedFrom)
	_, res = wishing(t, b, "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "less sweet")
	assert.Nil(t, res.Nearest, "the list has the plain way")
	assert.Empty(t, res.Misses)
}

// A drink that keeps to a limit already is told as it is written, and as one in balance.
func TestAWishThatIsMetIsToldSo(t *testing.T) {
	b := bartest.New(t)
	for _, c := range [][2]string{
		{"1 1/2 oz red bitter aperitif\n1 1/2 oz sweet vermouth\n3 oz soda water\nbuild, long", "below 10 %"},
		{"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up", "below 20 %"},
	} {
		spec, res := wishing(t, b, c[0], c[1])
		require.NotNil(t, res.Nearest, c[1])
		assert.Equal(t, station.MissesNothing, res.Misses, c[1])
		assert.GreaterOrEqual(t, res.Nearest.Score, weigh.BalancedFrom, c[1])
		assert.Empty(t, res.Nearest.Changes, c[1])
		assert.Len(t, res.Nearest.Spec.Pours, len(spec.Pours), c[1])
	}
}

// What sweetens in place of plain soda leaves so much less room for the syrup. Common
// practice, no source.
func TestASweetSodaTakesThePlaceOfSyrup(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "8 mint leaves\n1 oz lime juice\n3/4 oz simple syrup\n4 oz soda water\nbuild, long")
	stock := bartest.With(b.Bottles(t, "tonic water", "grapefruit soda", "ginger ale"), spec)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: stock, Limit: 8})
	require.NoError(t, err)
	syrup := b.Bottle(t, "simple-syrup")
	found := 0
	for i := range res.Riffs {
		s := &res.Riffs[i].Spec
		sweet := slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Soft() && p.Profile.Sugar.Value >= sweetSoda })
		if sweet && !s.HasProfile(b.Bottle(t, "soda-water")) {
			found++
			assert.Less(t, s.MLOf(syrup.Is), spec.MLOf(syrup.Is)-bartest.Rounding, res.Riffs[i].Text)
		}
	}
	assert.Positive(t, found)
}

// Where less strength is wished, a stirred drink is turned round, more wine than spirit: in
// the list or beside it, however the strength is asked for. Common practice, no source.
func TestAStirredDrinkIsTurnedRound(t *testing.T) {
	b := bartest.New(t)
	for _, wish := range []string{"lower in alcohol", "below 20 %"} {
		spec, res := wishing(t, b, "2 oz gin\n1 oz dry vermouth\n1 dash orange bitters\nstir, up", wish)
		all := res.Riffs
		if res.Nearest != nil {
			all = append(all, *res.Nearest)
		}
		assert.True(t, slices.ContainsFunc(all, func(x Riff) bool {
			return ofItsOwn(&x.Spec, spec) && x.Spec.Pours[1].ML > x.Spec.Pours[0].ML
		}), wish)
	}
}

// Where one bottle alone meets a wish, it comes in a few times and not with every base.
func TestOneIdeaIsNotAList(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up")
	toward, err := wish.Parse([]string{"nuttier"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	sherry := b.Bottle(t, "amontillado sherry")
	stock := append(b.Bottles(t, "bourbon", "cognac", "aged rum", "white rum", "pisco", "dry vermouth", "soda water"), sherry)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(stock, spec)})
	require.NoError(t, err)
	times := 0
	for i := range res.Riffs {
		if res.Riffs[i].Spec.HasProfile(sherry) {
			times++
		}
	}
	assert.Positive(t, times)
	assert.LessOrEqual(t, times, 3)
}

// A list toward a wish meets it in several ways, not one way in several shirts: nothing
// that came in is in all of five. Common practice, no source.
func TestAListHasSeveralIdeas(t *testing.T) {
	b := bartest.New(t)
	for _, c := range [][2]string{
		{"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\n2 oz soda water\nshake, long", "more spice"},
		{"2 oz bourbon\n1/4 oz demerara syrup\n2 dashes aromatic bitters\nstir, rocks", "smokier"},
		{"1 1/2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n3 oz soda water\nshake, long", "fruitier"},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "more herbal"},
	} {
		spec, res := wishing(t, b, c[0], c[1])
		require.Len(t, res.Riffs, 5, c[1])
		times := map[string]int{}
		for i := range res.Riffs {
			for _, p := range res.Riffs[i].Spec.Pours {
				if !spec.HasProfile(p.Profile) {
					times[p.Profile.ID]++
				}
			}
		}
		for id, n := range times {
			assert.LessOrEqual(t, n, 3, "%s: %s", c[1], id)
		}
		assert.GreaterOrEqual(t, len(times), 3, c[1])
	}
}

// Where a pour of the drink is not there, what stands in for it is chosen for what it is,
// and a wish is held against that: soda where sparkling wine was, and fruit beside it.
func TestAWishIsHeldAgainstWhatIsPoured(t *testing.T) {
	b := bartest.New(t)
	_, res := wishing(t, b, "1 1/2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n3 oz prosecco\nshake, long", "fruitier", "prosecco", "cava", "brut champagne", "dry cider")
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		assert.True(t, slices.ContainsFunc(res.Riffs[i].Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated }), "it sparkles still: %s", res.Riffs[i].Text)
	}
}

// A guest who takes no alcohol is poured nothing savoury with what is sweet either.
func TestNothingSavouryInASweetSoda(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "1 1/2 oz alcohol-free red bitter aperitif\n3 oz tonic water\n1/2 oz lemon juice\nbuild, long")
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: bartest.With(b.Usual, spec), Limit: 20})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	tomato, tonic := b.Bottle(t, "tomato juice"), b.Bottle(t, "tonic water")
	for i := range res.Riffs {
		assert.False(t, res.Riffs[i].Spec.HasProfile(tomato) && res.Riffs[i].Spec.HasProfile(tonic), res.Riffs[i].Text)
	}
}
