package cover

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// Common practice, no source: where nothing at hand passes for a spirit, what makes another drink
// with a name comes first, and the guest hears the name.
func TestWhatHasANameIsPouredFirst(t *testing.T) {
	b := newBench(t)
	negroni := "1 oz London dry gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks"
	got := b.found(t, negroni, "london-dry-gin", guest.Guest{}, "vodka", "mezcal", "bourbon", "prosecco")
	require.NotEmpty(t, got.Covers)
	assert.Equal(t, []string{"bourbon"}, poured(got.Covers[:1]))
	assert.Contains(t, got.Covers[0].Text, "that is a Boulevardier, so tell the guest")
	called := map[string]string{}
	for i := range got.Covers {
		c := &got.Covers[i]
		called[c.Parts[0].Profile.ID] = c.Called
		if c.Parts[0].Profile.ID == "prosecco" {
			assert.True(t, c.OnTop(&c.Parts[0]), "what sparkles is not stirred")
		}
	}
	assert.Equal(t, "Negroni Sbagliato", called["prosecco"])
	assert.Empty(t, called["vodka"])

	near := b.found(t, negroni, "london-dry-gin", guest.Guest{}, "old-tom-gin", "bourbon", "prosecco")
	require.NotEmpty(t, near.Covers)
	assert.Equal(t, []string{"old-tom-gin"}, poured(near.Covers[:1]), "another gin is the drink that was ordered")
	assert.Empty(t, near.Covers[0].Called)

	sulphites := guest.Guest{Avoid: []flavor.Allergen{flavor.Sulphites}}
	for _, c := range b.found(t, "1 oz London dry gin\n1 oz red bitter aperitif\n1 oz simple syrup\nstir, rocks", "london-dry-gin", sulphites, "bourbon", "prosecco").Covers {
		assert.NotContains(t, poured([]Cover{c}), "prosecco", "no name lets an allergen through")
	}
}
