package naming_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
)

// A word is another ingredient by the dash and by the ounce, and a slip is forgiven only
// for what the place allows: common practice, no source.
func TestAWordInItsPlace(t *testing.T) {
	b := naming.NewResolver(drafttest.Bar())
	for _, c := range []struct {
		name string
		unit flavor.Unit
		want string // name of the ingredient; empty where it is asked
	}{
		{"lemon", flavor.Ounce, "Lemon juice"},
		{"fresh lemon juice", flavor.Ounce, "Lemon juice"},
		{"lemon juice (fresh, strained)", flavor.Ounce, "Lemon juice"},
		{"aromatic", flavor.Dash, "Aromatic bitters"},
		{"London dry gn", flavor.Ounce, "London dry gin"},
		{"nothing of the kind", flavor.Ounce, ""},
	} {
		f := b.Find(c.name, naming.PlaceOf(c.unit, 1, false))
		if c.want == "" {
			require.NotNil(t, f.Fault, c.name)
			assert.Nil(t, f.Profile, c.name)
			continue
		}
		if assert.Nil(t, f.Fault, c.name) {
			assert.Equal(t, c.want, f.Profile.Name, c.name)
		}
	}
	require.NoError(t, b.Err())
}

// A finder that does not answer is no unknown name.
func TestABookKeepsTheFailureOfItsFinder(t *testing.T) {
	b := naming.NewResolver(drafttest.Bar())
	b.Find("broken", naming.Place{Unit: flavor.Ounce})
	require.ErrorContains(t, b.Err(), "closed")
}
