package vocabulary

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestSet(t *testing.T) {
	s := Words("cl ml  oz\tbarspoon cuillère jiggers-of-the-longest-kind")
	for _, w := range []string{"cl", "ml", "oz", "barspoon", "cuillère", "jiggers-of-the-longest-kind"} {
		assert.True(t, s.Has(w), w)
	}
	for _, w := range []string{"", "c", "cll", "mo", "OZ", "jiggers-of-the-longest-sort"} {
		assert.False(t, s.Has(w), w)
	}
	assert.False(t, (*Set)(nil).Has("oz"), "nil is the empty set")
	assert.False(t, SetOf("").Has(""))
}

// TestTableIsItsMap finds in a table what is in its map and nothing else.
func TestTableIsItsMap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.OneOf(rapid.StringN(1, 4, -1), rapid.StringMatching(`[a-c]{1,3}`), rapid.StringN(14, 20, -1))
		of := rapid.MapOf(word, rapid.Int()).Draw(t, "map")
		table := TableOf(of)
		for w, v := range of {
			got, ok := table.Find(w)
			assert.True(t, ok, w)
			assert.Equal(t, v, got, w)
		}
		other := word.Draw(t, "word")
		want, known := of[other]
		got, ok := table.Find(other)
		assert.Equal(t, known, ok)
		assert.Equal(t, want, got)
		assert.Equal(t, want, table.Get(other))
	})
}
