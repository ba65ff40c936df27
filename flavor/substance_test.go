package flavor_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestWhatAGuestAvoidsBesideAllergens(t *testing.T) {
	for word, want := range map[string][]flavor.Allergen{
		"Grapefruit": {flavor.Grapefruit}, "quinine": {flavor.Quinine}, "licorice": {flavor.Liquorice}, "caffeine": {flavor.Caffeine},
		"nuts": {flavor.TreeNuts, flavor.Peanuts}, "dairy": {flavor.Milk}, "coconut": {flavor.Coconut},
	} {
		got, err := flavor.AvoidanceMeant(word)
		require.NoError(t, err, word)
		assert.Equal(t, want, got, word)
	}
	for _, word := range []string{"", "mango", "quinines and more", "alcohol"} {
		_, err := flavor.AvoidanceMeant(word)
		require.Error(t, err, word)
		assert.Contains(t, err.Error(), "tree nuts", "it lists what is known")
		assert.Contains(t, err.Error(), "quinine")
	}
	for _, s := range flavor.Substances() {
		_, err := flavor.ParseAllergen(string(s))
		assert.Error(t, err, "no label lists %s among its allergens", s)
	}
}

// What bears the caution holds the substance; what keeps its recipe, or is not on record, counts as
// holding it; what is known without counts as free.
func TestAnUnknownRecipeCountsAsHoldingASubstance(t *testing.T) {
	for _, c := range []struct {
		what flavor.Profile
		want flavor.Clearance
	}{
		{flavor.Profile{AllergensKnown: true, Cautions: []string{"quinine"}}, flavor.Present},
		{flavor.Profile{AllergensKnown: true, Cautions: []string{"caffeine"}}, flavor.Free},
		{flavor.Profile{AllergensKnown: true, Undisclosed: true}, flavor.NotStated},
		{flavor.Profile{AllergensKnown: true, Unread: true}, flavor.NotStated},
		{flavor.Profile{AllergensKnown: false}, flavor.Free},
	} {
		assert.Equal(t, c.want, c.what.Clear([]flavor.Allergen{flavor.Quinine}), "%+v", c.what.Cautions)
	}
}
