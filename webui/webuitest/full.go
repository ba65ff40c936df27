package webuitest

import (
	"context"

	"counterpour/data/house"
)

// fullStore is a house without room for more.
type fullStore struct{ house.Store }

func (fullStore) Write(context.Context, house.By, ...house.Edit) ([]house.Change, error) {
	return nil, &house.Error{Kind: house.ErrFull, Op: "write", Message: "there is no room left on the disk"}
}

// Full is a house that can be read and not written to.
func Full(h *House) *House {
	h.Records = fullStore{h.Store()}
	return h
}
