package station_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
)

func TestRelatives(t *testing.T) {
	b := bartest.New(t)
	for i := range b.Proven {
		if i%23 != 0 {
			continue
		}
		got, err := b.Station.Relatives(&b.Proven[i].Spec, 3, guest.Guest{})
		require.NoError(t, err)
		require.Len(t, got, 3)
		assert.Zero(t, got[0].Distance, "a proven drink is its own nearest")
		assert.LessOrEqual(t, got[1].Distance, got[2].Distance)
	}
	got, err := b.Station.Relatives(b.Spec(t, bartest.GinSour), 1, guest.Guest{})
	require.NoError(t, err)
	assert.Equal(t, "sour", got[0].Proven.Family)
	_, err = b.Station.Relatives(b.Spec(t, bartest.GinSour), 0, guest.Guest{})
	assert.Error(t, err)

	nuts := []flavor.Allergen{flavor.TreeNuts}
	for _, c := range []struct {
		text  string
		guest guest.Guest
	}{{bartest.Tropical, guest.Guest{Avoid: nuts}}, {bartest.Tropical, guest.Guest{NoAlcohol: true}}, {bartest.GinSour, guest.Guest{NoAnimal: []string{"honey", "egg"}, MaxCost: 1}}} {
		got, err := b.Station.Relatives(b.Spec(t, c.text), 5, c.guest)
		require.NoError(t, err)
		require.NotEmpty(t, got)
		for _, x := range got {
			for _, p := range x.Proven.Spec.Pours {
				assert.True(t, p.Profile.Avoids(c.guest.Avoid), "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				assert.False(t, c.guest.NoAlcohol && p.Profile.ABV.Value > flavor.NoAlcoholABV, "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				for _, a := range c.guest.NoAnimal {
					assert.NotContains(t, p.Profile.Animal, a, "%s: %s", x.Proven.Spec.Name, p.Profile.Name)
				}
			}
		}
	}

	got, err = b.Station.Relatives(b.Spec(t, "2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up"), 5, guest.Guest{Avoid: nuts})
	require.NoError(t, err)
	for _, x := range got {
		for _, p := range x.Proven.Spec.Pours {
			assert.NotEqual(t, flavor.KinMilk, p.Profile.Class.Kin(), "%s is no relative of what is stirred", x.Proven.Spec.Name)
		}
	}
}
