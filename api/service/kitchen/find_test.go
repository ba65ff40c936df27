package kitchen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is nearest to a bottle, tasted neat; common practice, no source.
func TestNearestBottles(t *testing.T) {
	k := testKitchen(t)
	for _, x := range []struct {
		like    string
		among   string // one of the first three
		nowhere string // none of the first twenty
	}{
		{"bourbon", "high-rye-bourbon", "london-dry-gin"},
		{"lemon-juice", "bottled-lemon-juice", "orange-juice"},
		{"triple-sec", "orange-curacao", "amaretto"},
		{"red-bitter-aperitif", "plant-red-bitter-aperitif", "fernet"},
		{"fino-sherry", "manzanilla-sherry", "ruby-port"},
		{"blanco-tequila", "gold-tequila", "fish-sauce"},
	} {
		r, err := k.Find(t.Context(), FindRequest{Like: x.like, Limit: 20})
		require.NoError(t, err)
		var first, all []string
		for i, h := range r.Hits {
			if all = append(all, h.Profile.ID); i < 3 {
				first = append(first, h.Profile.ID)
			}
		}
		assert.Contains(t, first, x.among, "like %s", x.like)
		assert.NotContains(t, all, x.nowhere, "like %s", x.like)
	}
}
