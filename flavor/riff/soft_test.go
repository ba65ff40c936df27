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
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/wish"
)

// withoutAlcohol asks for riffs without alcohol, from a bar's usual bottles and some more.
func withoutAlcohol(t *testing.T, b *bartest.Bar, text string, more ...string) (*flavor.Spec, *Result) {
	t.Helper()
	spec := b.Spec(t, text)
	stock := slices.Concat(bartest.With(b.Usual, spec), b.Bottles(t, more...))
	toward, err := wish.Parse([]string{"alcohol-free"}, wish.NamesIn(stock))
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Toward: toward, Stock: stock, Limit: 5})
	require.NoError(t, err)
	return spec, res
}

// A guest who drinks no alcohol is poured what is made after the spirit, by its measure; without
// that a sour or a daisy becomes a lemonade of its own juice, with sugar for its liqueur, and is
// nothing else. Common practice, no source.
func TestASourWithoutAlcohol(t *testing.T) {
	const measure, least = 60.0, 14.0 // mL
	b := bartest.New(t)
	for _, c := range []struct {
		text, stead string
	}{
		{"2 oz blanco tequila\n1 oz triple sec\n1 oz lime juice\nshake, rocks", "alcohol-free agave spirit"},
		{"2 oz cognac\n3/4 oz triple sec\n3/4 oz lemon juice\nshake, up", "alcohol-free oak-aged spirit"},
		{"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "alcohol-free juniper spirit"},
	} {
		spec, res := withoutAlcohol(t, b, c.text, c.stead, "alcohol-free red bitter aperitif")
		require.NotEmpty(t, res.Riffs, c.text)
		stead := b.Bottle(t, c.stead)
		assert.InDelta(t, measure, res.Riffs[0].Spec.MLOf(stead.Is), 1, res.Riffs[0].Text)

		_, res = withoutAlcohol(t, b, c.text, "alcohol-free red bitter aperitif")
		require.NotEmpty(t, res.Riffs, c.text)
		for i := range res.Riffs {
			r := &res.Riffs[i]
			sour := r.Spec.MLOf(func(p *flavor.Profile) bool { return p.Class.Part() == flavor.PartSour && spec.HasProfile(p) })
			assert.False(t, r.Spec.HasProfile(b.Bottle(t, "alcohol-free red bitter aperitif")), "a bitter stands for no spirit: %s", r.Text)
			assert.False(t, r.Spec.Has(func(p *flavor.Profile) bool { return p.ID == "tomato-juice" }), r.Text)
			if i == 0 {
				assert.GreaterOrEqual(t, sour, least-bartest.Rounding, r.Text)
				assert.LessOrEqual(t, len(r.Spec.Pours), len(spec.Pours)+1, r.Text)
			}
		}
	}
}

// What is left of a drink says what it is: nothing savoury comes into a sour, a savoury drink
// stays one, nothing that sparkles goes into what is hot, and what keeps nothing of a drink is no
// riff of it. Common practice, no source.
func TestWithoutAlcoholNothingElseIsPoured(t *testing.T) {
	b := bartest.New(t)
	for _, text := range []string{
		"2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\n3 dashes hot pepper sauce\nbuild, long",
		"2 oz bourbon\n1/2 oz lemon juice\n1/2 oz honey syrup\n4 oz water\nbuild, hot",
		"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up",
		"2 oz blanco tequila\n1 oz triple sec\n1 oz lime juice\nshake, rocks",
		"1 oz London dry gin\n1/2 oz lemon juice\n1/2 oz simple syrup\n3 oz prosecco\nshake, up",
	} {
		spec, res := withoutAlcohol(t, b, text)
		all := make([]*flavor.Spec, 0, len(res.Riffs)+1)
		for i := range res.Riffs {
			all = append(all, &res.Riffs[i].Spec)
		}
		if res.Nearest != nil {
			all = append(all, &res.Nearest.Spec)
		}
		was := slices.ContainsFunc(spec.Pours, func(p flavor.Pour) bool { return station.Savoury(&p) })
		for _, s := range all {
			is := slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return station.Savoury(&p) })
			assert.Equal(t, was, is, "%v", s.Pours)
			sodas := 0
			for _, p := range s.Pours {
				assert.LessOrEqual(t, p.Profile.ABV.Value, flavor.NoAlcoholABV)
				if p.Profile.Carbonated {
					sodas++
				}
			}
			assert.True(t, spec.Service != flavor.Hot || sodas == 0, "%v", s.Pours)
			assert.LessOrEqual(t, sodas, 1, "%v", s.Pours)
			assert.True(t, slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return spec.HasProfile(p.Profile) }), "%v", s.Pours)
		}
	}
}

// A toddy without its spirit is tea with its lemon and honey, told though no family holds it.
func TestAHotDrinkWithoutItsSpiritIsTold(t *testing.T) {
	b := bartest.New(t)
	spec, res := withoutAlcohol(t, b, "2 oz bourbon\n1/2 oz lemon juice\n1/2 oz honey syrup\n4 oz water\nbuild, hot")
	x := res.Nearest
	if len(res.Riffs) > 0 {
		x = &res.Riffs[0]
	}
	require.NotNil(t, x)
	assert.Equal(t, flavor.Hot, x.Spec.Service)
	for _, p := range spec.Pours[1:3] {
		assert.True(t, x.Spec.HasProfile(p.Profile), x.Text)
	}
	assert.True(t, x.Spec.Has(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinTea }), x.Text)
}

// Where what is left without alcohol is a drink that no score judges, that is said of it: it is no
// drink out of balance. Common practice, no source.
func TestASoftDrinkIsToldAsOne(t *testing.T) {
	b := bartest.New(t)
	spec := b.Spec(t, "2 oz vodka\n5 oz tomato juice\n1/2 oz lemon juice\n3 dashes hot pepper sauce\nbuild, long")
	stock := []*flavor.Profile{b.Bottle(t, "tomato juice"), b.Bottle(t, "lemon juice"), b.Bottle(t, "hot pepper sauce"), b.Bottle(t, "lime juice")}
	res, err := Vary(context.Background(), b.Station, Request{Spec: spec, Guest: guest.Guest{NoAlcohol: true}, Stock: stock})
	require.NoError(t, err)
	require.NotNil(t, res.Nearest)
	assert.Equal(t, station.MissesSpirit, res.Misses)
	assert.True(t, res.Nearest.Spec.HasProfile(stock[0]), res.Nearest.Text)
}
