package index

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/lookup"
)

// Names and candidates need no documents; the first search makes them.
func TestDocumentsAreBuiltOnDemand(t *testing.T) {
	x, err := New(shelf())
	require.NoError(t, err)
	defer x.Close()
	p, _, err := x.Resolve("dry gin")
	require.NoError(t, err)
	assert.Equal(t, "london-dry-gin", p.ID)
	some, _, err := x.Candidates(t.Context(), lookup.Need{NoAlcohol: true})
	require.NoError(t, err)
	assert.NotEmpty(t, some)
	assert.False(t, x.Opened())
	r, err := x.Search(t.Context(), lookup.Query{Text: "gin"})
	require.NoError(t, err)
	assert.NotEmpty(t, r.Hits)
	assert.True(t, x.Opened())
}

// An opening that was called off leaves the index as it was.
func TestOpenIsRetried(t *testing.T) {
	x, err := New(shelf())
	require.NoError(t, err)
	defer x.Close()
	gone, leave := context.WithCancel(t.Context())
	leave()
	assert.ErrorIs(t, x.Open(gone, nil), context.Canceled)
	assert.False(t, x.Opened())
	var seen []int
	require.NoError(t, x.Open(t.Context(), func(done, total int) { seen = append(seen, done, total) }))
	assert.Equal(t, []int{x.Len(), x.Len()}, seen)
	require.NoError(t, x.Open(t.Context(), func(int, int) { assert.Fail(t, "it is open already") }))
}

func TestClosedIndexDoesNotOpen(t *testing.T) {
	x, err := New(shelf())
	require.NoError(t, err)
	require.NoError(t, x.Close())
	require.NoError(t, x.Close())
	assert.ErrorIs(t, x.Open(t.Context(), nil), lookup.ErrClosed)
}
