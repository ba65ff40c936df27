package riff

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
)

// texts are what a riff was asked for, to compare lists by.
func texts(r *Result) (out []string) {
	for _, x := range r.Riffs {
		out = append(out, fmt.Sprintf("%s %.6f %s", x.Kind, x.Score, edit.Format(x.Spec)))
	}
	return out
}

// Each wish is met in the finished drink by a step that can be told.
func TestWishesAreMet(t *testing.T) {
	b := bartest.New(t)
	type glass struct {
		drink *mix.Drink
		in    *sense.Percept
		spec  *flavor.Spec
	}
	steps := func(s sense.Sense, least float64) func(before, after glass) bool {
		return func(before, after glass) bool {
			x := sense.Between(before.in, after.in)
			return x[s] >= least && least > 0 || x[s] <= least && least < 0
		}
	}
	smells := func(f flavor.AromaFamily, least float64) func(before, after glass) bool {
		return func(before, after glass) bool {
			x := sense.StepsBetween(sense.Aroma, before.drink.Aroma[f], after.drink.Aroma[f])
			return x >= least && least > 0 || x <= least && least < 0
		}
	}
	pours := func(id string, want bool) func(before, after glass) bool {
		return func(_, after glass) bool {
			return slices.ContainsFunc(after.spec.Pours, func(p flavor.Pour) bool { return p.Profile.ID == id }) == want
		}
	}
	const asStrong = 0.975   // times as strong is not told from it
	const moreAlcohol = 1.14 // times: a half ounce more of two ounces of spirit, less what makes room for it
	stronger := func(before, after glass) bool {
		return steps(sense.Ethanol, aim.LeastStep)(before, after) || after.drink.ABV >= asStrong*before.drink.ABV && after.drink.Before.Ethanol >= moreAlcohol*before.drink.Before.Ethanol
	}
	for _, c := range []struct {
		text, wish string
		met        func(before, after glass) bool
	}{
		{bartest.GinSour, "more bitter", steps(sense.Bitter, aim.LeastStep)},
		{bartest.GinSour, "not so sweet", steps(sense.Sweet, -aim.LeastStep)},
		{bartest.AgaveDaisy, "rounder", steps(sense.Sour, -aim.LeastStep)},
		{bartest.OldWhiskey, "nuttier", smells(flavor.Nut, 1.5)},
		{bartest.OldWhiskey, "smokier", smells(flavor.Smoke, 1.5)},
		{bartest.AgaveDaisy, "below 12 %", func(_, after glass) bool { return after.drink.ABV <= 12 }},
		{bartest.BitterThird, "lighter", steps(sense.Ethanol, -aim.LeastStep)},
		{bartest.GinSour, "boozier", stronger},
		{bartest.BitterThird, "longer", steps(sense.Volume, aim.LeastStep)},
		{bartest.OldWhiskey, "no clove", func(_, after glass) bool { return after.drink.Aroma[flavor.Clove] < 0.4 }},
		{bartest.GinSour, "no gin", func(_, after glass) bool { return largestClass(after.spec) != flavor.ClassGin }},
		{bartest.GinSour, "with mezcal", pours("mezcal", true)},
		{bartest.GinSour, "no lemon juice", pours("lemon-juice", false)},
		{bartest.GinSour, "on the rocks", func(_, after glass) bool { return after.spec.Service == flavor.Rocks }},
		{bartest.Tropical, "simpler", func(before, after glass) bool { return len(after.spec.Pours) < len(before.spec.Pours) }},
	} {
		spec := b.Spec(t, c.text)
		toward, err := wish.Parse([]string{c.wish}, wish.NamesIn(b.Usual))
		require.NoError(t, err)
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(b.Usual, spec)})
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(res.Riffs), 3, c.wish)
		drink, err := b.Station.Mixer.Mix(spec)
		require.NoError(t, err)
		before := glass{drink, b.Station.Space.Percept(spec, drink), spec}
		for i := range res.Riffs {
			x := &res.Riffs[i]
			assert.True(t, c.met(before, glass{x.Drink, x.Glass, &x.Spec}), "%s: %s", c.wish, x.Text)
		}
	}
}

// A wish for what is not in stock says so.
func TestWishForWhatIsNotThere(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.GinSour)
	toward, err := wish.Parse([]string{"with mezcal"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	_, err = Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: bartest.With(nil, spec)})
	var fault *flavor.DataFault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "with mezcal", fault.Value)
}

func largestClass(s *flavor.Spec) flavor.Class {
	return s.Pours[max(0, largest(s, flavor.PartBase))].Profile.Class
}

// What loses a pour to the guest loses no other to a wish: gin and tonic is no
// riff of gin, bitter and vermouth.
func TestARiffKeepsTheDrink(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.BitterThird)
	toward, err := wish.Parse([]string{"lighter"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	house, err := b.Catalogue.Demo()
	require.NoError(t, err)
	req := Request{Spec: spec, Stock: bartest.With(house.Stock, spec), Toward: toward, Limit: 20, Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}}
	res, err := Vary(context.Background(), b.Station, req)
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	checkRiffs(t, b, &req, res)
}

// Coffee lengthens a stirred drink to one that reads as a hot one; on ice it is
// not listed.
func TestHotDrinksAreOnNoIce(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.OldWhiskey)
	var stock []*flavor.Profile
	for _, p := range b.Catalogue.Profiles() {
		if p.Class.Kin() == flavor.KinTea {
			stock = append(stock, p)
		}
	}
	toward, err := wish.Parse([]string{"below 15 %"}, wish.NamesIn(b.Usual))
	require.NoError(t, err)
	req := Request{Spec: spec, Stock: bartest.With(stock, spec), Toward: toward, Limit: MaxLimit}
	res, err := Vary(context.Background(), b.Station, req)
	require.NoError(t, err)
	checkRiffs(t, b, &req, res)
}

// An ingredient whose allergens nobody has stated is poured for nobody who
// avoids any.
func TestUnknownAllergensCountAsPresent(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.GinSour)
	secret := *b.Bottle(t, "mezcal")
	secret.ID, secret.AllergensKnown = "unlabelled-spirit", false
	stock := append(bartest.With(nil, spec), &secret)
	ask := func(avoid ...flavor.Allergen) bool {
		res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: stock, Guest: guest.Guest{Avoid: avoid}})
		require.NoError(t, err)
		assert.Empty(t, res.LeftOut)
		assert.Equal(t, len(avoid) > 0, slices.Contains(res.Labels, &secret), "its label may clear it")
		for i := range res.Riffs {
			if res.Riffs[i].Spec.HasProfile(&secret) {
				return true
			}
		}
		return false
	}
	assert.True(t, ask(), "it is poured for anybody else")
	assert.False(t, ask(flavor.Celery))
}

// What of a drink is not poured is told, with the reason.
func TestLeftOutIsTold(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "2 oz bourbon\n1/4 oz orgeat\n2 dashes aromatic bitters\n1/4 oz maple syrup\nstir, rocks")
	stock := slices.DeleteFunc(bartest.With(nil, spec), func(p *flavor.Profile) bool { return p.ID == "maple-syrup" })
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: stock, Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	require.NoError(t, err)
	var said []string
	for _, x := range res.LeftOut {
		said = append(said, fmt.Sprintf("%s %s, %v", x.Profile.Name, x.Why, x.Read))
	}
	assert.Equal(t, []string{"orgeat contains tree nuts, and nothing here stands in for it, false",
		"aromatic bitters may carry tree nuts (nobody has stated it: read the label), and nothing here stands in for it, true",
		"maple syrup is not among what may be poured, and nothing here stands in for it, false"}, said)
}

func TestCostIsOfTheWholeDrink(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.GinSour)
	stock := bartest.With(b.Some(0, 2), spec)
	prices := map[string]float64{}
	for i, p := range stock {
		if i%4 != 0 || spec.HasProfile(p) {
			prices[p.ID] = 0.01 + 0.0005*float64(i%90)
		}
	}
	req := Request{Spec: spec, Stock: stock, Guest: guest.Guest{Prices: prices, MaxCost: 2.4}}
	res, err := Vary(context.Background(), b.Station, req)
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	checkRiffs(t, b, &req, res)
	for i := range res.Riffs {
		for _, p := range res.Riffs[i].Spec.Pours {
			assert.Contains(t, prices, p.Profile.ID, "without a price it is not poured")
		}
	}
}

func TestSeedsDifferAndLimitsHold(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.GinSour)
	req := Request{Spec: spec, Stock: bartest.With(b.Usual, spec), Limit: MaxLimit}
	long, err := Vary(context.Background(), b.Station, req)
	require.NoError(t, err)
	assert.Greater(t, len(long.Riffs), 30)
	checkRiffs(t, b, &req, long)
	req.Limit = 10
	one, err := Vary(context.Background(), b.Station, req)
	require.NoError(t, err)
	other := one
	for req.Seed = 1; req.Seed <= 5 && slices.Equal(texts(one), texts(other)); req.Seed++ { // two may happen to agree
		other, err = Vary(context.Background(), b.Station, req)
		require.NoError(t, err)
	}
	assert.NotEqual(t, texts(one), texts(other))
	kinds := map[station.Kind]int{}
	for _, x := range one.Riffs {
		kinds[x.Kind]++
	}
	assert.GreaterOrEqual(t, len(kinds), 5, "a list worth reading is of many kinds: %v", kinds)
}

func TestRequestFaults(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, bartest.GinSour)
	ok := Request{Spec: spec, Stock: b.Some(0, 4)}
	for name, spoil := range map[string]func(*Request){
		"no spec":         func(r *Request) { r.Spec = nil },
		"empty spec":      func(r *Request) { r.Spec = &flavor.Spec{} },
		"no ingredient":   func(r *Request) { r.Spec = &flavor.Spec{Pours: []flavor.Pour{{ML: 30}}} },
		"no stock":        func(r *Request) { r.Stock = nil },
		"limit too big":   func(r *Request) { r.Limit = MaxLimit + 1 },
		"limit negative":  func(r *Request) { r.Limit = -1 },
		"strength absurd": func(r *Request) { r.Guest.MaxABV = math.NaN() },
		"cost negative":   func(r *Request) { r.Guest.MaxCost = -1 },
		"wish unknown":    func(r *Request) { r.Toward = []wish.Wish{{Kind: "odd"}} },
	} {
		r := ok
		spoil(&r)
		_, err := Vary(context.Background(), b.Station, r)
		var fault *flavor.DataFault
		require.ErrorAs(t, err, &fault, name)
		assert.NotEmpty(t, fault.Message)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Vary(ctx, b.Station, ok)
	assert.ErrorIs(t, err, context.Canceled)
}

// Once its time is over, a search answers with what it has and says so.
func TestRiffsOutOfTime(t *testing.T) {
	b := bartest.New(t)
	over, cancel := context.WithDeadline(context.Background(), time.Now())
	defer cancel()
	res, err := Vary(over, b.Station, Request{Spec: b.Spec(t, bartest.GinSour), Stock: b.Usual})
	require.NoError(t, err)
	assert.True(t, res.CutShort)
}

// A card has one unit: what comes into a drink written in centilitres is poured so.
func TestRiffsKeepTheUnit(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "4.5 cl cachaca\n2.25 cl lime juice\n2.25 cl simple syrup\n9 cl prosecco\nshake, long")
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Stock: bartest.With(b.Usual, spec), Limit: 5})
	require.NoError(t, err)
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		for _, p := range res.Riffs[i].Spec.Pours {
			assert.NotEqual(t, flavor.Millilitre, p.Unit, res.Riffs[i].Text)
		}
	}
}
