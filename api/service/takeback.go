package service

import (
	"context"
	"fmt"
	"slices"

	"counterpour/data/house"
)

// Written identifies a write by one of its changes. A write is all the changes with the
// same time and actor.
type Written struct {
	Ref     house.Ref
	Version int64
}

// mostTaken is how many changes before and after that change are searched for the rest of
// its write.
const mostTaken = 2000

// TakeBack undoes a write: it restores every record of it to the version before, all in
// one transaction. The error is [house.ErrConflict] if one of the records has changed
// since, and [house.ErrNotFound] if there was no such write.
func TakeBack(ctx context.Context, store house.Store, by house.By, w Written) ([]house.Change, error) {
	history, err := store.History(ctx, w.Ref)
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(history, func(c house.Change) bool { return c.Version == w.Version })
	if at < 0 {
		return nil, &house.Error{Kind: house.ErrNotFound, Op: "undo", Message: fmt.Sprintf("there is no version %d of %s", w.Version, w.Ref)}
	}
	one := &history[at]
	around, err := store.Changes(ctx, max(0, one.Seq-mostTaken), 2*mostTaken)
	if err != nil {
		return nil, err
	}
	var edits []house.Edit
	for i := len(around) - 1; i >= 0; i-- { // newest first, so that several changes of one record can be undone
		c := &around[i]
		if !c.At.Equal(one.At) || c.Actor != one.Actor {
			continue
		}
		before, err := store.History(ctx, c.Ref)
		if err != nil {
			return nil, err
		}
		was := slices.IndexFunc(before, func(o house.Change) bool { return o.Version == c.Version })
		switch {
		case was > 0 && before[was-1].Item != nil && c.Item != nil:
			edits = append(edits, house.Put(before[was-1].Item, c.Version))
		case was > 0 && before[was-1].Item != nil:
			edits = append(edits, house.Put(before[was-1].Item, 0)) // the record was removed: add it again
		case c.Item != nil:
			edits = append(edits, house.Remove(c.Ref, c.Version))
		}
	}
	return store.Write(ctx, by, edits...)
}
