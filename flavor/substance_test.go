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

// Spirits drawn on anise may hold liquorice, and what smells of cacao some caffeine: nobody states
// either, so that both count as holding it. A gin with a little anise and a syrup of it do not.
func TestWhatMayHoldASubstanceUnsaid(t *testing.T) {
	spirit := func(anise, juniper float64) *flavor.Profile {
		p := &flavor.Profile{AllergensKnown: true}
		p.ABV.Value, p.Aroma[flavor.Anise], p.Aroma[flavor.Juniper] = 45, anise, juniper
		return p
	}
	syrup := spirit(10, 0)
	syrup.ABV.Value = 0
	cacao := spirit(0, 0)
	cacao.Materials = []flavor.MaterialShare{{Material: "cacao", Intensity: 4}}
	for _, c := range []struct {
		name  string
		what  *flavor.Profile
		avoid flavor.Allergen
		want  flavor.Clearance
	}{
		{"an anise spirit", spirit(10, 2), flavor.Liquorice, flavor.NotStated},
		{"a gin", spirit(1, 6), flavor.Liquorice, flavor.Free},
		{"an anise spirit, of caffeine", spirit(10, 2), flavor.Caffeine, flavor.Free},
		{"a syrup", syrup, flavor.Liquorice, flavor.Free},
		{"a vodka", spirit(0, 0), flavor.Liquorice, flavor.Free},
		{"a cacao liqueur", cacao, flavor.Caffeine, flavor.NotStated},
		{"a cacao liqueur, of liquorice", cacao, flavor.Liquorice, flavor.Free},
	} {
		assert.Equal(t, c.want, c.what.Clear([]flavor.Allergen{c.avoid}), c.name)
	}
}
