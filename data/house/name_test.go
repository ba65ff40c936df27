package house_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
)

func TestNameProfiles(t *testing.T) {
	gin, rye := &flavor.Profile{ID: "gin", Name: "gin"}, &flavor.Profile{ID: "rye", Name: "rye", Aliases: []string{"rye whiskey"}}
	list := []*flavor.Profile{gin, rye}

	out, faults := house.NameProfiles(list, []house.Name{
		{ID: "old-harbour", Written: "Old Harbour", Ingredient: "gin"},
		{ID: "harbour-dry", Written: "Harbour Dry", Ingredient: "gin"},
	})
	require.Empty(t, faults)
	assert.Equal(t, []string{"Old Harbour", "Harbour Dry"}, out[0].Aliases)
	assert.Same(t, rye, out[1], "what has no word is shared")
	assert.Empty(t, gin.Aliases, "no argument is changed")

	out, faults = house.NameProfiles(list, []house.Name{
		{ID: "rye-whiskey", Written: "Rye Whiskey", Ingredient: "gin"},
		{ID: "lost", Written: "lost", Ingredient: "nowhere"},
	})
	require.Len(t, faults, 2)
	assert.ErrorContains(t, faults[0], "means rye already")
	assert.ErrorContains(t, faults[1], "no ingredient \"nowhere\"")
	assert.Equal(t, list, out)
}

func TestNameIsChecked(t *testing.T) {
	assert.NoError(t, house.Check(house.Name{ID: "x", Written: " Old  Harbour ", Ingredient: "gin"}))
	for _, n := range []house.Name{
		{ID: "x", Written: "", Ingredient: "gin"},
		{ID: "x", Written: "…", Ingredient: "gin"},
		{ID: "x", Written: "a", Ingredient: "London dry gin"},
	} {
		assert.ErrorIs(t, house.Check(n), house.ErrInvalid, n)
	}
}
