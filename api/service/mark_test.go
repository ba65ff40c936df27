package service

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
)

// contested is a store in which another write always comes first.
type contested struct{ house.Store }

func (contested) Write(context.Context, house.By, ...house.Edit) ([]house.Change, error) {
	return nil, &house.Error{Kind: house.ErrNotFound, Op: "remove", Message: "there is no such record"}
}

// A mark that conflicts at every try is a conflict, whatever error the store returned.
func TestMarkThatAlwaysConflicts(t *testing.T) {
	s := storetest.Memory(t)
	h, err := testKitchen(t).Catalogue.Demo()
	require.NoError(t, err)
	require.NoError(t, Fill(t.Context(), s, h, someone.At))
	err = open(t, contested{s}).Mark(t.Context(), someone, MarkRequest{Out: []string{"mint"}})
	require.ErrorIs(t, err, house.ErrConflict)
	assert.ErrorContains(t, err, "mark again")
}

// A mark that notes nothing is a fault; one verdict on a cover is enough of a note.
func TestMarkOfNothing(t *testing.T) {
	s := storetest.Memory(t)
	h, err := testKitchen(t).Catalogue.Demo()
	require.NoError(t, err)
	require.NoError(t, Fill(t.Context(), s, h, someone.At))
	err = open(t, s).Mark(t.Context(), someone, MarkRequest{})
	require.ErrorIs(t, err, flavor.ErrInvalid)
	assert.ErrorContains(t, err, "name what ran out or what is back")
	assert.False(t, (&MarkRequest{Received: make([]Received, 1)}).Empty())
}
