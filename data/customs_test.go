package data

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestCustoms(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	customs, err := c.Customs()
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(customs.Out()), 60)
	for _, out := range customs.Out() {
		places := customs.For(out)
		require.NotEmpty(t, places, out)
		for i, x := range places {
			assert.NotContains(t, x.Parts, out, "nothing stands in for itself")
			assert.True(t, slices.IsSorted(x.Parts), out)
			if i > 0 {
				assert.LessOrEqual(t, places[i-1].Place, x.Place, "the first choice first")
			}
		}
	}
	// Common practice, no source: what anyone behind a bar would say first.
	for out, first := range map[string][]string{
		"bourbon":             {"rye-whiskey"},
		"rye-whiskey":         {"bourbon"},
		"absinthe":            {"pastis"},
		"elderflower-liqueur": {"elderflower-cordial"},
		"elderflower-cordial": {"elderflower-liqueur"},
		"egg-white":           {"chickpea-water"},
		"chickpea-water":      {"egg-white"},
		"lemon-juice":         {"lime-juice"},
		"ginger-beer":         {"ginger-ale", "ginger-syrup"},
	} {
		at := slices.IndexFunc(customs.For(out), func(x flavor.Custom) bool { return slices.Equal(x.Parts, first) })
		require.GreaterOrEqual(t, at, 0, out)
		assert.Zero(t, customs.For(out)[at].Place, out)
	}
}

// What is poured for each member of a kinship comes after the other members.
func TestCustomsForEachOfAKinship(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	customs, err := c.Customs()
	require.NoError(t, err)
	place := func(out, pour string) int {
		at := slices.IndexFunc(customs.For(out), func(x flavor.Custom) bool { return slices.Equal(x.Parts, []string{pour}) })
		require.GreaterOrEqual(t, at, 0, "%s for %s", pour, out)
		return customs.For(out)[at].Place
	}
	for _, out := range []string{"stout", "porter", "imperial-stout"} {
		assert.Greater(t, place(out, "dry-cider"), place(out, customs.Kin(out)[0]), out)
	}
	var to flavor.Customs
	kin := []kinshipRecord{{Name: "gins", Any: []string{"london-dry-gin", "old-tom-gin"}}}
	for _, bad := range []customRecord{
		{Each: "rums", Pour: []string{"vodka"}},
		{Each: "gins", Out: "pisco", Pour: []string{"vodka"}},
		{Each: "gins", Pour: []string{"vodka"}, Both: true},
		{Each: "gins", Pour: []string{"old-tom-gin"}},
		{Each: "gins"},
	} {
		assert.NotEmpty(t, c.addForEach(&to, bad, kin), "%v", bad)
	}
}

func TestCommonness(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	_, proven, err := c.Set()
	require.NoError(t, err)
	common, err := c.Commonness(proven)
	require.NoError(t, err)
	for i := range proven {
		for _, p := range proven[i].Spec.Pours {
			assert.Positive(t, common.Drinks(p.Profile.ID))
		}
	}
	drinks := 0
	for i := range proven {
		if slices.ContainsFunc(proven[i].Spec.Pours, func(p flavor.Pour) bool { return p.Profile.ID == "sweet-vermouth" }) {
			drinks++
		}
	}
	assert.Equal(t, drinks, common.Drinks("sweet-vermouth"), "each drink counts once")
	usual, err := c.UsualBar()
	require.NoError(t, err)
	for _, p := range usual {
		assert.True(t, common.Usual(p.ID), p.ID)
		assert.Zero(t, common.Rarity(p.ID), p.ID)
	}
	for _, p := range c.Profiles() {
		r := common.Rarity(p.ID)
		assert.True(t, r >= 0 && r <= 1, p.ID)
		if !common.Usual(p.ID) {
			assert.InDelta(t, 1/float64(1+common.Drinks(p.ID)), r, 1e-12)
		}
	}
	assert.Equal(t, 1.0, common.Rarity("rice-aroma-baijiu"), "no proven drink pours it")
}

// Every class of spirits has something for a guest who drinks no alcohol, and none of it
// holds any.
func TestDryHoldsNoAlcohol(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	customs, err := c.Customs()
	require.NoError(t, err)
	for _, of := range []flavor.Class{flavor.ClassGin, flavor.ClassVodka, flavor.ClassWhiskey, flavor.ClassRum, flavor.ClassAgaveSpirit, flavor.ClassBrandy, flavor.ClassFruitSpirit, flavor.ClassOtherSpirit} {
		dry := customs.Dry(of)
		require.NotEmpty(t, dry, of)
		for _, id := range dry {
			p, found := c.ByID(id)
			require.True(t, found, id)
			assert.LessOrEqual(t, p.ABV.Value, flavor.NoAlcoholABV, "%s for %s", id, of)
		}
	}
}
