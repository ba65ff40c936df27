package cover

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

func TestDiets(t *testing.T) {
	b := newBench(t)
	forbidden := map[string][]string{"vegan": {"milk", "egg", "honey", "fish", "insect", "meat"}, "vegetarian": {"fish", "insect", "meat"},
		"no egg": {"egg"}, "no dairy": {"milk"}, "no honey": {"honey"}, "alcohol-free": nil, "0.0 % alcohol": nil}
	require.Len(t, flavor.DietNames(), len(forbidden))
	const creamy = "1 oz cognac\n1 oz creme de cacao\n1 oz heavy cream\nshake, up"
	for _, diet := range flavor.DietNames() {
		var g guest.Guest
		require.NoError(t, g.Keep(diet))
		require.NoError(t, g.Keep(diet), "twice is once")
		r := b.request(t, creamy, "heavy cream", 2, 5)
		r.Guest = g
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err, diet)
		for _, c := range got.Covers {
			for _, p := range c.Spec.Pours {
				for _, a := range forbidden[diet] {
					assert.NotContains(t, p.Profile.Animal, a, "%s: %s", diet, p.Profile.Name)
				}
				if diet == "0.0 % alcohol" {
					assert.Zero(t, p.Profile.ABV.Value, p.Profile.Name)
				}
				if diet == "alcohol-free" {
					assert.LessOrEqual(t, p.Profile.ABV.Value, flavor.NoAlcoholABV, p.Profile.Name)
				}
			}
		}
	}
	var g guest.Guest
	assert.ErrorIs(t, g.Keep("moonlight"), flavor.ErrInvalid)
}

// A sour on an amaro, an aperitif or a sherry has covers for a guest who drinks no alcohol:
// what is made after the bottle, or what lengthens; and none of them holds alcohol. Common
// practice, no source.
func TestDryOnABitterOrAWine(t *testing.T) {
	b := newBench(t)
	for _, missing := range []string{"medium amaro", "red bitter aperitif", "fino sherry"} {
		r := b.request(t, "1 1/2 oz "+missing+"\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, rocks", missing, 1, 5)
		r.Guest = guest.Guest{NoAlcohol: true}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, missing)
		for _, c := range got.Covers {
			for _, p := range c.Spec.Pours {
				assert.LessOrEqual(t, p.Profile.ABV.Value, flavor.NoAlcoholABV, p.Profile.Name)
			}
		}
	}
}
