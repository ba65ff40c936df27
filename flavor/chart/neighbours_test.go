package chart

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
)

func TestNeighboursOfABottle(t *testing.T) {
	make := func(id string, abv, sugar, juniper float64) *flavor.Profile {
		p := &flavor.Profile{ID: id, Name: id}
		p.ABV.Value, p.Sugar.Value = abv, sugar
		p.Aroma[flavor.Juniper] = juniper
		return p
	}
	gin, strong, vodka, syrup := make("gin", 40, 0, 10), make("strong-gin", 57, 0, 10), make("vodka", 40, 0, 0), make("syrup", 0, 615, 0)
	list := []*flavor.Profile{syrup, vodka, gin, strong}
	got := Neighbours(list, gin, 2)
	require.Len(t, got, 2)
	assert.Equal(t, "strong-gin", got[0].Profile.ID, "a gin is like a gin")
	assert.Equal(t, []string{"stronger"}, got[0].Differs)
	assert.Equal(t, "vodka", got[1].Profile.ID)
	assert.Equal(t, []string{"less juniper"}, got[1].Differs)
	assert.Contains(t, Neighbours(list, gin, 3)[2].Differs, "weaker")
	assert.Nil(t, Neighbours(list, make("rum", 40, 0, 0), 2), "not of the list")
	assert.Nil(t, Neighbours(list[:1], syrup, 2))
}

// The distance of two is the same either way, and no nearer one is passed over.
func TestNeighboursAreTheNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []*flavor.Profile
		for i := range rapid.IntRange(2, 8).Draw(t, "bottles") {
			p := &flavor.Profile{ID: fmt.Sprint(i)}
			p.ABV.Value, p.Acid.Value = rapid.Float64Range(0, 60).Draw(t, "abv"), rapid.Float64Range(0, 60).Draw(t, "acid")
			p.Aroma[flavor.Citrus] = rapid.Float64Range(0, 10).Draw(t, "citrus")
			list = append(list, p)
		}
		distance := func(a, b *flavor.Profile) float64 {
			for _, n := range Neighbours(list, a, len(list)) {
				if n.Profile == b {
					return n.Distance
				}
			}
			t.Fatalf("%s is no neighbour of %s", b.ID, a.ID)
			return 0
		}
		assert.InDelta(t, distance(list[0], list[1]), distance(list[1], list[0]), 1e-9)
		first := Neighbours(list, list[0], 1)[0]
		for _, p := range list[1:] {
			assert.LessOrEqual(t, first.Distance, distance(list[0], p)+1e-12)
		}
	})
}
