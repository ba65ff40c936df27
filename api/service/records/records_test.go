package records

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// Reading after a change gives the same as reading everything, and only the changed kind
// is read again.
func TestReadReusesUnchangedKinds(t *testing.T) {
	s := storetest.Memory(t)
	by := house.By{Actor: "Wren", At: time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)}
	before, err := Read(t.Context(), s, nil)
	require.NoError(t, err)
	version := before.Version()
	for _, step := range []struct {
		edit  house.Edit
		anew  []house.Kind
		shelf bool // the shelf depends on it
	}{
		{house.Put(house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, 0), []house.Kind{house.KindBottle}, true},
		{house.Put(house.Out{Ingredient: "london-dry-gin", Since: by.At}, 0), []house.Kind{house.KindOut}, false},
		{house.Put(house.Name{ID: "dockside", Written: "dockside", Ingredient: "london-dry-gin"}, 0), []house.Kind{house.KindName}, true},
		{house.Remove(house.Ref{Kind: house.KindBottle, ID: "dock-gin"}, 1), []house.Kind{house.KindBottle}, true},
	} {
		_, err := s.Write(t.Context(), by, step.edit)
		require.NoError(t, err)
		got, err := Read(t.Context(), s, before)
		require.NoError(t, err)
		assert.Equal(t, step.anew, got.Anew)
		assert.Equal(t, step.shelf, got.Version() != version)
		whole, err := Read(t.Context(), s, nil)
		require.NoError(t, err)
		assert.Equal(t, kinds, whole.Anew)
		assert.GreaterOrEqual(t, got.UpTo, whole.UpTo)
		before, version = got, got.Version()
		same := *got
		same.Anew, same.UpTo = whole.Anew, whole.UpTo
		assert.Equal(t, *whole, same)
	}
	again, err := Read(t.Context(), s, before)
	require.NoError(t, err)
	assert.Empty(t, again.Anew, "nothing was written")
}
