package useup

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/weigh"
)

// Drafts stand on serves, so each is a drink by itself: nameless, of a family that is
// known, in balance, and mixed and served as bars do.
func TestServesAreDrinks(t *testing.T) {
	b := bartest.New(t)
	require.NotEmpty(t, b.Station.Serves())
	for i := range b.Station.Serves() {
		x := &b.Station.Serves()[i]
		assert.Empty(t, x.Spec.Name)
		_, err := b.Station.Set.Centre(x.Family)
		require.NoError(t, err, "serve %d", i+1)
		score, err := b.Station.Judge.ScoreOnly(&x.Spec)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, score, weigh.BalancedFrom, "serve %d of %s", i+1, x.Spec.Pours[0].Profile.Name)
		assert.Empty(t, serve.SlipsOf(&x.Spec), "serve %d of %s", i+1, x.Spec.Pours[0].Profile.Name)
	}
}

// What hardly any proven drink pours is moved by several drafts. Common practice, no
// source.
func TestUseUpMovesWhatFewProvenDrinksPour(t *testing.T) {
	b := bartest.New(t)
	for _, name := range []string{"stout", "brown ale", "dry cider", "oat drink", "peach shrub", "cold brew coffee", "alcohol-free juniper spirit", "alcohol-free white wine", "carrot juice"} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, name), Stock: b.Usual, Limit: 5})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, len(res.Drafts), 3, name)
	}
}

// A bar without alcohol is told what it can pour, asked for or not: milk from oats with
// coffee.
func TestUseUpInABarWithoutAlcohol(t *testing.T) {
	b := bartest.New(t)
	stock := b.Bottles(t, "alcohol-free juniper spirit", "alcohol-free cane spirit", "espresso", "cold brew coffee", "vanilla syrup", "simple syrup", "lemon juice", "soda water")
	for _, g := range []guest.Guest{{}, {NoAlcohol: true}} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "oat drink"), Stock: stock, Guest: g})
		require.NoError(t, err)
		assert.True(t, slices.ContainsFunc(res.Drafts, func(d Draft) bool {
			return slices.ContainsFunc(d.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class == flavor.ClassCoffee })
		}), "oats with coffee")
		for i := range res.Drafts {
			assert.LessOrEqual(t, res.Drafts[i].Drink.ABV, flavor.NoAlcoholABV, res.Drafts[i].Text)
		}
	}
}
