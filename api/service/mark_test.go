package service

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
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
