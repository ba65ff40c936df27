package riff

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/wish"
)

// riffsFor are riffs for a guest, toward wishes.
func riffsFor(t *testing.T, b *bartest.Bar, text string, avoid []flavor.Allergen, wishes ...string) (*flavor.Spec, *Result) {
	t.Helper()
	spec := b.Spec(t, text)
	toward, err := wish.Parse(wishes, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	stock := append(bartest.With(b.Usual, spec), b.Bottle(t, "alcohol-free juniper spirit"))
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Guest: guest.Guest{Avoid: avoid}, Stock: stock, Limit: 10})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs, text)
	return spec, res
}

// A spirit without alcohol comes in where less strength is wished and it is made after the
// base, and in no other drink that holds alcohol: common practice, no source.
func TestNoSpiritWithoutAlcoholUnasked(t *testing.T) {
	b := bartest.New(t)
	free := func(p flavor.Pour) bool { return p.Profile.Class == flavor.ClassAlcoholFree }
	for _, c := range []struct {
		text, wish string
		may        bool
	}{
		{"1 oz aquavit\n1 oz dry vermouth\n1 oz fino sherry\nstir, up", "more citrus", false},
		{"4 oz red wine\n1 oz cognac\n1 oz orange juice\n1/2 oz simple syrup\nbuild, rocks", "lighter", false},
		{"2 oz rye whiskey\n1/2 oz absinthe\n1/4 oz demerara syrup\n3 dashes aromatic bitters\nstir, up", "below 20 %", false},
		{"1 1/2 oz gin\n1 oz sweet vermouth\n1 oz red bitter aperitif\nstir, rocks", "lighter", true},
	} {
		_, res := riffsFor(t, b, c.text, nil, c.wish)
		there := slices.ContainsFunc(res.Riffs, func(x Riff) bool { return slices.ContainsFunc(x.Spec.Pours, free) })
		assert.Equal(t, c.may, there, c.text)
	}
}

// A guest who avoids peanuts is told of what holds tree nuts after all that holds none:
// common practice, no source.
func TestWhatUnsettlesAGuestComesLast(t *testing.T) {
	b := bartest.New(t)
	_, res := riffsFor(t, b, "2 oz peanut liqueur\n1 oz heavy cream\n1/2 oz coffee liqueur\nshake, rocks", []flavor.Allergen{flavor.Peanuts})
	nutty := func(x Riff) bool {
		return slices.ContainsFunc(x.Spec.Pours, func(p flavor.Pour) bool { return !p.Profile.Avoids([]flavor.Allergen{flavor.TreeNuts}) })
	}
	assert.False(t, nutty(res.Riffs[0]), res.Riffs[0].Text)
	assert.False(t, nutty(res.Riffs[1]), res.Riffs[1].Text)
}

// A wish that no riff meets against a drink of which a part cannot be poured is held
// against the rest, and that is said.
func TestWhatAWishIsHeldAgainstIsSaid(t *testing.T) {
	b := bartest.New(t)
	_, res := riffsFor(t, b, "2 oz aged rum\n3/4 oz lime juice\n1/2 oz orgeat\n1/2 oz dry curacao\nshake, crushed", []flavor.Allergen{flavor.TreeNuts}, "nuttier")
	assert.True(t, res.OfRest)
	_, res = riffsFor(t, b, "2 oz aged rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", nil, "nuttier")
	assert.False(t, res.OfRest)
}

// Tomato goes with more of the hot sauce that it has, and with no syrup of spice nor
// sparkling wine: common practice, no source.
func TestTomatoGetsHotterBySauce(t *testing.T) {
	b := bartest.New(t)
	spec, res := riffsFor(t, b, "2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\n3 dashes hot pepper sauce\nbuild, long", nil, "spicier")
	sauce := b.Bottle(t, "hot pepper sauce")
	of := func(s *flavor.Spec) (ml float64) {
		for _, p := range s.Pours {
			if p.Profile.ID == sauce.ID {
				ml += p.ML
			}
		}
		return ml
	}
	assert.Greater(t, of(&res.Riffs[0].Spec), of(spec), res.Riffs[0].Text)
	for i := range res.Riffs {
		for _, p := range res.Riffs[i].Spec.Pours {
			assert.NotEqual(t, flavor.PartSweetener, p.Profile.Class.Part(), res.Riffs[i].Text)
			assert.NotEqual(t, flavor.ClassSparklingWine, p.Profile.Class, res.Riffs[i].Text)
		}
		assert.True(t, res.Riffs[i].Spec.HasProfile(b.Bottle(t, "tomato juice")), res.Riffs[i].Text)
	}
}
