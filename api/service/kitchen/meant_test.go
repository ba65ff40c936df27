package kitchen

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What else a name may mean: its kin first; common practice, no source.
func TestOthers(t *testing.T) {
	k := testKitchen(t)
	for _, c := range []struct {
		written, among string // one of the first four
		never          string // none of the first four
	}{
		{"rum", "aged rum", "rum punch cordial"},
		{"gin", "old tom gin", "ginger syrup"},
		{"tequila", "reposado tequila", "tequila cream liqueur"},
		{"bitters", "orange bitters", "aromatic bitters"},
		{"simple", "rich simple syrup (2:1)", "simple syrup (1:1)"},
		{"egg", "egg white", "eggnog"},
	} {
		p, _, err := k.Index.Resolve(c.written)
		require.NoError(t, err, c.written)
		first := namesOf(k.Others(c.written, p, 4))
		assert.Contains(t, first, c.among, c.written)
		assert.NotContains(t, first, c.never, c.written)
		assert.NotContains(t, first, p.Name, c.written)
	}
	assert.Empty(t, k.Others("gin", &flavor.Profile{Class: "none"}, 0))
}

// A part of a well-known mix lacks what everybody pours into it; common practice, no
// source.
func TestBeside(t *testing.T) {
	k := testKitchen(t)
	for _, c := range []struct {
		part  string
		ml    float64
		among string // one of the first four
	}{
		{"2 oz London dry gin\n1 oz sweet vermouth\nstir", 30, "red bitter aperitif"},
		{"1½ oz blanco tequila\n1 oz lime juice\nshake", 22, "triple sec"},
		{"2 oz rye whiskey\n1 oz sweet vermouth\nstir", 1.5, "aromatic bitters"},
		{"1 oz vodka\n1 oz single cream\nshake", 30, "coffee liqueur"},
		{"2 oz bourbon\n¾ oz lemon juice\nshake", 22, "simple syrup (1:1)"},
	} {
		r, err := k.ReadPart(c.part)
		require.NoError(t, err)
		require.Empty(t, r.Faults, c.part)
		found, err := k.Beside(&r.Spec, c.ml, 4)
		require.NoError(t, err)
		assert.Contains(t, namesOf(found), c.among, c.part)
		for _, p := range found {
			assert.False(t, slices.ContainsFunc(r.Spec.Pours, func(x flavor.Pour) bool { return x.Profile == p }), "%s stands there already", p.Name)
		}
	}
}

// What is meant without alcohol is not asked for any; common practice, no source.
func TestBesideWithoutAlcohol(t *testing.T) {
	k := testKitchen(t)
	for _, part := range []string{"2 oz alcohol-free gin\n¾ oz lemon juice\nshake", "5 oz soda water\n5 dashes aromatic bitters\nbuild, long", "2 oz pineapple juice\n1 oz lime juice\nshake"} {
		r, err := k.ReadPart(part)
		require.NoError(t, err)
		require.Empty(t, r.Faults, part)
		found, err := k.Beside(&r.Spec, 0, 8)
		require.NoError(t, err)
		assert.NotEmpty(t, found, part)
		for _, p := range found {
			assert.LessOrEqual(t, p.ABV.Value, flavor.NoAlcoholABV, "%s: %s", part, p.Name)
		}
	}
}

// How much of it a hand pours; common practice, no source.
func TestUsualML(t *testing.T) {
	k := testKitchen(t)
	for id, span := range map[string][2]float64{"london-dry-gin": {40, 60}, "aromatic-bitters": {0.5, 3}, "lime-juice": {15, 30}} {
		p, err := k.Ingredient(id)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, k.UsualML(p), span[0], id)
		assert.LessOrEqual(t, k.UsualML(p), span[1], id)
	}
	assert.Zero(t, k.UsualML(&flavor.Profile{ID: "nobody-pours-it"}))
}

func namesOf(ps []*flavor.Profile) (out []string) {
	for _, p := range ps {
		out = append(out, p.Name)
	}
	return out
}
