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
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/riff/station"
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
		assert.Empty(t, serve.BreachesOf(&x.Spec), "serve %d of %s", i+1, x.Spec.Pours[0].Profile.Name)
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

// Two bottles that are strange to each other are moved apart first, and a list is not filled
// with what proven drinks pour with neither. Common practice, no source.
func TestStrangersAreNotTheFirstDraft(t *testing.T) {
	b := bartest.New(t)
	res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "fino sherry", "crème de violette"), Stock: b.Usual})
	require.NoError(t, err)
	require.NotEmpty(t, res.Drafts)
	assert.Len(t, res.Drafts[0].Uses, 1, res.Drafts[0].Text)
	res, err = Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "fino sherry", "pear liqueur"), Stock: b.Usual})
	require.NoError(t, err)
	assert.True(t, slices.ContainsFunc(res.Drafts, func(d Draft) bool { return len(d.Uses) == 2 }), "one moves both")
	u := &user{}
	usual, strange := make([]*station.Settled, enoughUsual), b.Station.NewJob(b.Usual, &aim.Limits{}, "oz", 0)
	for i := range usual {
		usual[i], err = strange.Settle(&station.Sketch{Spec: *b.Spec(t, bartest.GinSour)})
		require.NoError(t, err)
	}
	odd, err := strange.Settle(&station.Sketch{Spec: *b.Spec(t, "1 oz mezcal\n1 oz sambuca\n3/4 oz light orange bitter aperitif\n3/4 oz lime juice\nshake, up")})
	require.NoError(t, err)
	require.Greater(t, odd.Odd(), strangeFrom)
	u.req = &Request{}
	assert.Equal(t, usual, u.familiar(append(slices.Clone(usual), odd)))
	assert.Len(t, u.familiar([]*station.Settled{usual[0], odd}), 2, "a short list is not cut")
}

// Wine without alcohol is for who takes none: nobody pours a liqueur into it otherwise.
func TestUseUpSparesNobodyTheAlcohol(t *testing.T) {
	b := bartest.New(t)
	stock := slices.Concat(b.Usual, b.Bottles(t, "alcohol-free sparkling wine", "alcohol-free juniper spirit", "alcohol-free red bitter"))
	res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "pear liqueur"), Stock: stock})
	require.NoError(t, err)
	require.NotEmpty(t, res.Drafts)
	for i := range res.Drafts {
		for _, p := range res.Drafts[i].Spec.Pours {
			assert.NotContains(t, p.Profile.ID, "alcohol-free", res.Drafts[i].Text)
		}
	}
	res, err = Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "alcohol-free juniper spirit"), Stock: stock})
	require.NoError(t, err)
	assert.NotEmpty(t, res.Drafts, "and what must move is moved")
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
