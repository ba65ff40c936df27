package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
)

func TestHouseNames(t *testing.T) {
	s := storetest.Memory(t)
	v := open(t, s)
	text := "2 oz Old Harbour\n1 oz lemon\n3/4 oz simple\nshake, up"
	_, err := v.Now().ReadText(text)
	require.ErrorIs(t, err, flavor.ErrUnknown)

	require.NoError(t, v.Name(t.Context(), someone, NameRequest{Words: "Old Harbour", Kind: "London dry gin"}))
	spec, err := v.Now().ReadText(text)
	require.NoError(t, err)
	assert.Equal(t, "london-dry-gin", spec.Pours[0].Profile.ID)
	typed, err := v.Now().Index.Complete(t.Context(), "old har", 1)
	require.NoError(t, err)
	require.Len(t, typed, 1)
	assert.Equal(t, "london-dry-gin", typed[0].ID)
	require.Len(t, v.Now().Names(), 1)
	assert.Equal(t, "Old Harbour", v.Now().Names()[0].Words)

	require.NoError(t, v.Name(t.Context(), someone, NameRequest{Words: "old harbour", Kind: "vodka"}), "what a word means may change")
	spec, err = v.Now().ReadText(text)
	require.NoError(t, err)
	assert.Equal(t, "vodka", spec.Pours[0].Profile.ID)

	_, err = v.Store().Undo(t.Context(), someone, house.Ref{Kind: house.KindName, ID: "old-harbour"}, 2)
	require.NoError(t, err)
	assert.Equal(t, "london-dry-gin", v.Now().Names()[0].Profile.ID)

	assert.ErrorContains(t, v.Name(t.Context(), someone, NameRequest{Words: "rye", Kind: "London dry gin"}), "means rye whiskey already")
	assert.ErrorIs(t, v.Name(t.Context(), someone, NameRequest{Words: "Quay Dry", Kind: "no such thing"}), flavor.ErrUnknown)
	assert.ErrorIs(t, v.Name(t.Context(), someone, NameRequest{Words: "…", Kind: "vodka"}), flavor.ErrInvalid)
	assert.ErrorIs(t, v.Name(t.Context(), someone, NameRequest{Words: "Quay Dry", Undo: true}), flavor.ErrInvalid)

	require.NoError(t, v.Name(t.Context(), someone, NameRequest{Words: "OLD HARBOUR", Undo: true}))
	assert.Empty(t, v.Now().Names())
	_, err = v.Now().ReadText(text)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}
