package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What may be said of an ingredient: the unstated is told apart from the
// possible, and neither may be served.
func TestClear(t *testing.T) {
	cream := &Profile{ID: "cream", AllergensKnown: true, AllergenMarks: []AllergenMark{{Milk, Contains}}}
	wine := &Profile{ID: "wine", AllergensKnown: true, AllergenMarks: []AllergenMark{{Eggs, MayContain}, {Milk, MayContain}, {Sulphites, Contains}}}
	amaro := &Profile{ID: "amaro", AllergenMarks: []AllergenMark{{TreeNuts, Contains}}, FreeOf: []Allergen{Fish}}
	juice := &Profile{ID: "juice", AllergensKnown: true}
	for _, c := range []struct {
		profile *Profile
		avoid   []Allergen
		want    Clearance
	}{
		{cream, nil, Free},
		{cream, []Allergen{Milk}, Present},
		{cream, []Allergen{Eggs}, Free},
		{wine, []Allergen{Milk}, MayBePresent},
		{wine, []Allergen{Milk, Sulphites}, Present},
		{amaro, []Allergen{Milk}, NotStated},
		{amaro, []Allergen{Milk, TreeNuts}, Present},
		{amaro, []Allergen{Fish}, Free},
		{juice, Allergens(), Free},
	} {
		assert.Equal(t, c.want, c.profile.Clear(c.avoid), "%s for %v", c.profile.ID, c.avoid)
		assert.Equal(t, c.want == Free, c.profile.Avoids(c.avoid), "%s for %v", c.profile.ID, c.avoid)
	}
	drink := &Spec{Pours: []Pour{{Profile: wine}, {Profile: amaro}, {Profile: juice}}}
	assert.Equal(t, NotStated, drink.Clear([]Allergen{Mustard}))
	assert.Equal(t, MayBePresent, drink.Clear([]Allergen{Mustard, Eggs}))
	assert.Equal(t, Free, drink.Clear([]Allergen{Fish}))

	marks := map[Allergen]Certainty{}
	for _, m := range drink.Allergens() {
		marks[m.Allergen] = m.Certainty
	}
	require.Len(t, marks, len(Allergens())-1, "all but fish")
	assert.Equal(t, MayContain, marks[Milk], "the wine's word outweighs the amaro's silence")
	assert.Equal(t, Contains, marks[TreeNuts])
	assert.Equal(t, Unstated, marks[Celery])

	before := &Spec{Pours: []Pour{{Profile: amaro}}}
	after := &Spec{Pours: []Pour{{Profile: amaro}, {Profile: cream}}}
	assert.Equal(t, []Allergen{Milk}, after.NewAllergens(before), "what was unstated and now is known is news")
	assert.Empty(t, before.NewAllergens(after))
}

// A diet rules out the allergens that come from what it leaves out, so that
// wine fined with egg reaches no vegan.
func TestDietsRuleOutTheirAllergens(t *testing.T) {
	for _, c := range []struct {
		diet  string
		avoid []Allergen
	}{
		{"vegan", []Allergen{Crustaceans, Eggs, Fish, Milk, Molluscs}},
		{"Vegetarian", []Allergen{Crustaceans, Fish, Molluscs}},
		{"no  egg", []Allergen{Eggs}},
		{"no dairy", []Allergen{Milk}},
		{"no honey", nil},
		{"alcohol-free", nil},
		{"0.0 % alcohol", nil},
	} {
		d, err := ParseDiet(c.diet)
		require.NoError(t, err, c.diet)
		assert.ElementsMatch(t, c.avoid, d.Avoid, c.diet)
		assert.Equal(t, d.Name == "alcohol-free" || d.Name == "0.0 % alcohol", d.NoAlcohol, c.diet)
		assert.Equal(t, d.Name == "0.0 % alcohol", d.NoTrace, c.diet)
	}
	assert.Len(t, DietNames(), 7)
	_, err := ParseDiet("moonlight")
	require.ErrorIs(t, err, ErrInvalid)
	assert.Contains(t, err.Error(), "vegetarian")
}

func TestWhatAGuestMeansByAWord(t *testing.T) {
	for word, want := range map[string][]Allergen{
		"nuts":      {TreeNuts, Peanuts},
		"Nut":       {TreeNuts, Peanuts},
		"tree-nuts": {TreeNuts},
		"peanut":    {Peanuts},
		"shellfish": {Crustaceans, Molluscs},
		"coeliac":   {Gluten}, "Celiac disease": {Gluten}, "seafood": {Crustaceans, Fish, Molluscs},
		"dairy": {Milk},
	} {
		got, err := AllergensMeant(word)
		require.NoError(t, err, word)
		assert.Equal(t, want, got, word)
		label, err := ParseAllergen(word)
		if word != "seafood" && word != "coeliac" && word != "Celiac disease" { // which no label says
			require.NoError(t, err, word)
			assert.Contains(t, got, label, "a guest means at least what a label does by %q", word)
		}
	}
	_, err := AllergensMeant("gluton")
	require.ErrorContains(t, err, "gluten", "an unknown word is answered with the known ones")
}
