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

// asking asks for three riffs on a draft toward a wish, from nothing but some bottles.
func asking(t *testing.T, b *bartest.Bar, text, word string, bottles ...string) *Result {
	t.Helper()
	stock := b.Bottles(t, bottles...)
	toward, err := wish.Parse([]string{word}, wish.NamesIn(stock))
	require.NoError(t, err)
	res, err := Vary(context.Background(), b.Station, Request{Spec: b.Spec(t, text), Toward: toward, Stock: stock, Limit: 3})
	require.NoError(t, err)
	return res
}

// Salt is in every bar, though it is in no stock: a saltier drink has it, and nothing else new.
func TestSaltIsInEveryBar(t *testing.T) {
	b := bartest.New(t)
	res := asking(t, b, "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\n2 oz soda water\nshake, long", "saltier", "white rum", "lime juice", "simple syrup", "soda water")
	require.NotEmpty(t, res.Riffs)
	first := &res.Riffs[0]
	assert.True(t, first.Spec.HasKin(flavor.KinSaline), first.Text)
	assert.Len(t, first.Spec.Pours, 5, first.Text)
	dry := asking(t, b, "2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", "drier", "white rum", "lime juice", "simple syrup", "lemon juice")
	for i := range dry.Riffs {
		assert.False(t, dry.Riffs[i].Spec.HasKin(flavor.KinSaline), "nobody asked for salt: %s", dry.Riffs[i].Text)
	}
}

// Cream beside a half ounce of sour juice curdles, unless foam holds it: a creamier sour has egg.
// Common practice, no source.
func TestCreamIsHeldInASour(t *testing.T) {
	const halfOunce = 14.0 // mL
	b := bartest.New(t)
	_, res := wishing(t, b, "2 oz cognac\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "creamier")
	require.NotEmpty(t, res.Riffs)
	for i := range res.Riffs {
		s := &res.Riffs[i].Spec
		sour := s.MLOf(func(p *flavor.Profile) bool { return p.Class.Kin() == flavor.KinSourJuice })
		if s.Has(func(p *flavor.Profile) bool { return p.Class.Curdles() }) && sour >= halfOunce {
			assert.True(t, s.HasKin(flavor.KinFoam), res.Riffs[i].Text)
		}
	}
}

// A sour that may have no citrus stays sour where anything else that is sour is at hand.
func TestWithoutCitrusASourStaysSour(t *testing.T) {
	b := bartest.New(t)
	for _, sour := range []string{"verjus", "raspberry shrub", "citric acid solution"} {
		res := asking(t, b, "2 oz rye whiskey\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, rocks", "no citrus", "rye whiskey", "lemon juice", "simple syrup", "soda water", sour)
		require.NotEmpty(t, res.Riffs, sour)
		first := &res.Riffs[0]
		assert.True(t, first.Spec.HasPart(flavor.PartSour), "%s: %s", sour, first.Text)
		for i := range res.Riffs {
			assert.False(t, res.Riffs[i].Spec.HasProfile(b.Bottle(t, "lemon juice")), res.Riffs[i].Text)
		}
	}
}
