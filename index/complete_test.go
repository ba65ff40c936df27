package index

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// What a typed text begins is found among all names in order just as by a look at each.
func TestCompleteAsALookAtEachName(t *testing.T) {
	x := build(t, catalogue(t))
	begun := func(p *flavor.Profile, words []string) bool {
		return slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(name string) bool { return goesOn(fold(name), words) })
	}
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(x.profiles).Draw(t, "profile")
		name := fold(rapid.SampledFrom(append([]string{p.Name}, p.Aliases...)).Draw(t, "name"))
		typed := name[:rapid.IntRange(1, len(name)).Draw(t, "typed")]
		words := strings.Fields(typed)
		want := 0
		for _, q := range x.profiles {
			if begun(q, words) {
				want++
			}
		}
		found, err := x.Complete(t.Context(), typed, lookup.MaxLimit)
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(found), min(want, lookup.MaxLimit), typed)
		for i, q := range found {
			assert.Equal(t, i < want, begun(q, words), "%q: %s is offer %d of %d whose name it begins", typed, q.ID, i+1, want)
			assert.NotContains(t, found[:i], q, typed)
		}
		few, err := x.Complete(t.Context(), typed, 3)
		require.NoError(t, err)
		assert.Equal(t, found[:min(3, len(found))], few, "fewer are the first of more")
	})
}

// A whole name comes before what only begins so, a whole word before a longer one, and what
// is favoured before all of them.
func TestCompleteOrder(t *testing.T) {
	x := build(t, catalogue(t))
	first := func(x *Index, typed string) string {
		found, err := x.Complete(t.Context(), typed, 1)
		require.NoError(t, err)
		require.NotEmpty(t, found, typed)
		return found[0].ID
	}
	for typed, want := range map[string]string{
		"honey": "honey", "rum": "white-rum", "triple sec": "triple-sec", "sec tri": "triple-sec", "crème de cass": "creme-de-cassis",
		"gin": "london-dry-gin", "alls": "allspice", "limes": "lime", "cinammon sy": "cinnamon-syrup",
	} {
		assert.Equal(t, want, first(x, typed), typed)
	}
	favouring := x.Favouring(func(id string) float64 { return map[string]float64{"honey-syrup": 1}[id] })
	assert.Equal(t, "honey-syrup", first(favouring, "honey"))
	for _, typed := range []string{"", "  ", "?!"} {
		found, err := x.Complete(t.Context(), typed, 2)
		require.NoError(t, err)
		if strings.TrimSpace(typed) == "" {
			assert.Len(t, found, 2, "everything may be meant")
		} else {
			assert.Empty(t, found)
		}
	}
	require.NoError(t, x.Close())
	_, err := x.Complete(t.Context(), "gin", 1)
	assert.ErrorIs(t, err, lookup.ErrClosed)
}
