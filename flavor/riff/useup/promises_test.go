package useup

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Whatever bottles must move, out of whatever stock and for whomever, every draft is
// balanced without a fault, moves one, keeps to the guest and is made as bars make it;
// every bottle is moved or told.
func TestUseUpKeepsItsPromises(t *testing.T) {
	b := bartest.New(t)
	guests := []guest.Guest{{}, {Avoid: []flavor.Allergen{flavor.Sulphites}}, {Avoid: []flavor.Allergen{flavor.Milk, flavor.Eggs}}, {NoAlcohol: true}, {MaxABV: 12}}
	rng := rand.New(rand.NewPCG(11, 3))
	found, rounds := 0, 20
	if testing.Short() {
		rounds = 6
	}
	all := b.Catalogue.Profiles()
	for round := range rounds {
		req := Request{Limit: 6, Seed: rng.Uint64(), Stock: b.Some(rng.IntN(2), 1+rng.IntN(2)), Guest: guests[round%len(guests)]}
		for range 1 + rng.IntN(3) {
			req.Bottles = append(req.Bottles, all[rng.IntN(len(all))])
		}
		res, err := Find(context.Background(), b.Station, req)
		require.NoError(t, err)
		found += len(res.Drafts)
		moved := map[string]bool{}
		for i := range res.Drafts {
			d := &res.Drafts[i]
			checkDraft(t, b, &req, d)
			for _, u := range d.Uses {
				moved[u.Profile.ID] = true
			}
			for k := range i {
				assert.NotEqual(t, station.MadeOf(&res.Drafts[k].Spec), station.MadeOf(&d.Spec), "made of the same things")
			}
		}
		for _, u := range res.Unused {
			assert.False(t, moved[u.Profile.ID])
			moved[u.Profile.ID] = true
		}
		for _, p := range req.Bottles {
			assert.True(t, moved[p.ID], "%s is moved or told", p.ID)
		}
	}
	assert.Greater(t, found, rounds, "and there is something to pour")
}

func checkDraft(t *testing.T, b *bartest.Bar, req *Request, d *Draft) {
	t.Helper()
	judged, err := b.Station.Judge.Score(&d.Spec)
	require.NoError(t, err)
	assert.GreaterOrEqual(t, d.Score, weigh.BalancedFrom)
	assert.Empty(t, judged.Faults, d.Text)
	assert.NotEmpty(t, d.Uses, d.Text)
	assert.LessOrEqual(t, len(d.Spec.Pours), 7, d.Text)
	assert.GreaterOrEqual(t, d.Drink.VolumeML, 60.0, d.Text)
	assert.LessOrEqual(t, d.Drink.VolumeML, 450.0, d.Text)
	assert.NotEmpty(t, d.Name)
	assert.NotEmpty(t, d.Why)
	if req.Guest.MaxABV > 0 {
		assert.LessOrEqual(t, d.Drink.ABV, req.Guest.MaxABV, d.Text)
	}
	for _, p := range d.Spec.Pours {
		assert.True(t, req.Guest.Accepts(p.Profile), "%s in %s", p.Profile.Name, d.Text)
		if p.Profile.Carbonated {
			assert.True(t, p.After || d.Spec.Method == flavor.Build, "%s is shaken in %s", p.Profile.Name, d.Text)
			assert.GreaterOrEqual(t, p.ML, 29.0, "a splash of %s in %s", p.Profile.Name, d.Text)
		}
		if p.Profile.Class.Shaken() || p.Profile.Class == flavor.ClassCoffee {
			assert.NotContains(t, []flavor.Method{flavor.Stir, flavor.Throw}, d.Spec.Method, "%s is stirred in %s", p.Profile.Name, d.Text)
		}
	}
	bartest.CheckAmounts(t, &d.Spec)
}

// A guest without alcohol is given long drinks of the juices, filled up.
func TestUseUpWithoutAlcohol(t *testing.T) {
	b := bartest.New(t)
	for _, bottle := range []string{"orange juice", "cranberry juice", "pineapple juice", "grenadine"} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, bottle), Stock: b.Usual, Guest: guest.Guest{NoAlcohol: true}, Limit: 3})
		require.NoError(t, err)
		assert.NotEmpty(t, res.Drafts, bottle)
		for i := range res.Drafts {
			assert.LessOrEqual(t, res.Drafts[i].Drink.ABV, flavor.NoAlcoholABV)
		}
	}
}

// A bottle goes first where proven drinks pour it: each of these is in the first draft
// beside what it is poured with. Common practice, no source.
func TestUseUpPoursABottleWhereItIsPoured(t *testing.T) {
	b := bartest.New(t)
	for _, x := range [][2]string{
		{"melon liqueur", "lemon juice"}, {"crème de violette", "London dry gin"}, {"coffee liqueur", "heavy cream"}, {"stout", "brut champagne"}, {"tomato juice", "Worcestershire-style sauce"},
		{"crème de menthe", "white crème de cacao"}, {"absinthe", "London dry gin"},
	} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, x[0]), Stock: b.Usual, Limit: 3})
		require.NoError(t, err)
		require.NotEmpty(t, res.Drafts, x[0])
		beside := b.Bottle(t, x[1])
		some := false
		for i := range res.Drafts {
			some = some || res.Drafts[i].Spec.HasProfile(beside)
		}
		assert.True(t, some, "%s is poured with %s: %s", x[0], x[1], res.Drafts[0].Text)
	}
}

// Two bottles that the trade pours together are moved together by one draft of the list,
// however short it is. Common practice, no source.
func TestUseUpMovesTwoTogether(t *testing.T) {
	b := bartest.New(t)
	for _, two := range [][]string{
		{"rosemary", "grapefruit juice"}, {"banana liqueur", "aged rum"}, {"maraschino liqueur", "grapefruit juice"}, {"ruby port", "whole egg"},
		{"gentian aperitif", "bianco vermouth"}, {"white crème de cacao", "crème de menthe"}, {"apricot liqueur", "orange bitters"}, {"honey syrup", "mint"}, {"fino sherry", "apricot liqueur"}, {"apple juice", "black tea"},
	} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, two...), Stock: b.Usual, Limit: 3})
		require.NoError(t, err)
		assert.True(t, slices.ContainsFunc(res.Drafts, func(d Draft) bool { return len(d.Uses) == 2 }), "%v", two)
	}
}

// What seasons a drink is poured by the quarter ounce, though it must go: no more than
// usual in a drink that proven drinks do not pour it in.
func TestUseUpPoursAccentsAsAccents(t *testing.T) {
	b := bartest.New(t)
	for _, name := range []string{"allspice dram", "maraschino liqueur"} {
		p := b.Bottle(t, name)
		res, err := Find(context.Background(), b.Station, Request{Bottles: []*flavor.Profile{p}, Stock: b.Usual, Limit: 10})
		require.NoError(t, err)
		require.NotEmpty(t, res.Drafts, name)
		for i := range res.Drafts {
			d := &res.Drafts[i]
			own := slices.ContainsFunc(b.Station.Proven(), func(x template.Labelled) bool {
				return slices.ContainsFunc(x.Spec.Pours, func(q flavor.Pour) bool { return q.Profile.ID == p.ID && q.ML >= d.Uses[0].ML-0.1 })
			})
			assert.True(t, own || d.Uses[0].ML < 8, "%s: %s", name, d.Text)
		}
	}
}

// A sweet liqueur that no proven drink pours is moved long too, with soda or with
// sparkling wine. Common practice, no source.
func TestUseUpPoursALiqueurLong(t *testing.T) {
	b := bartest.New(t)
	for _, name := range []string{"limoncello", "elderflower liqueur", "raspberry liqueur"} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, name), Stock: b.Usual, Limit: 5})
		require.NoError(t, err)
		assert.True(t, slices.ContainsFunc(res.Drafts, func(d Draft) bool {
			return slices.ContainsFunc(d.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
		}), name)
	}
}

// A sour of a fortified wine keeps its syrup: no liqueur alone sweetens what no spirit
// carries, and seasons it by an ounce at most. Common practice, no source.
func TestUseUpSweetensNoWineByLiqueurAlone(t *testing.T) {
	const mostML = 31.0
	b := bartest.New(t)
	has := func(d *Draft, part flavor.Part) bool {
		return slices.ContainsFunc(d.Spec.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Part() == part })
	}
	seen := 0
	for _, name := range []string{"apricot liqueur", "peach liqueur", "elderflower liqueur"} {
		res, err := Find(context.Background(), b.Station, Request{Bottles: b.Bottles(t, "fino sherry", name), Stock: b.Usual, Limit: 6})
		require.NoError(t, err)
		for i := range res.Drafts {
			d := &res.Drafts[i]
			if len(d.Uses) < 2 || has(d, flavor.PartBase) || !has(d, flavor.PartSour) || has(d, flavor.PartLength) {
				continue
			}
			seen++
			assert.True(t, has(d, flavor.PartSweetener), d.Text)
			assert.LessOrEqual(t, d.Uses[1].ML, mostML, d.Text)
		}
	}
	assert.Positive(t, seen)
}
