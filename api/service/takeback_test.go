package service

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// A write of several records is undone completely: what was new is removed, what was
// changed or removed is restored, and the changes of others stay. Once one of the records
// has changed again, nothing is undone.
func TestTakeBackUndoesTheWholeWrite(t *testing.T) {
	ctx := t.Context()
	s := storetest.Memory(t)
	at := time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)
	by := func(actor string, minutes int) house.By {
		return house.By{Actor: actor, At: at.Add(time.Duration(minutes) * time.Minute)}
	}
	bottle := func(id string, stock float64) house.Bottle {
		return house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 700, Stock: stock}
	}
	write := func(by house.By, edits ...house.Edit) {
		t.Helper()
		_, err := s.Write(ctx, by, edits...)
		require.NoError(t, err)
	}
	write(by("Ada", 0), house.Put(bottle("gin", 1), 0), house.Put(bottle("rum", 1), 0), house.Put(bottle("rye", 1), 0))
	before, err := s.List(ctx, house.KindBottle)
	require.NoError(t, err)

	write(by("Ada", 1), house.Put(bottle("gin", 4), 1), house.Put(bottle("aquavit", 2), 0), house.Remove(house.Ref{Kind: house.KindBottle, ID: "rye"}, 1))
	write(by("Bo", 1), house.Put(bottle("rum", 9), 1)) // at the same moment

	w := Written{house.Ref{Kind: house.KindBottle, ID: "aquavit"}, 1}
	done, err := TakeBack(ctx, s, by("Ada", 3), w)
	require.NoError(t, err)
	assert.Len(t, done, 3)
	after, err := s.List(ctx, house.KindBottle)
	require.NoError(t, err)
	require.Len(t, after, len(before))
	for i := range after {
		want := before[i].Item
		if want.Ref().ID == "rum" {
			want = bottle("rum", 9)
		}
		assert.Equal(t, want, after[i].Item)
	}

	_, err = TakeBack(ctx, s, by("Ada", 4), w)
	assert.ErrorIs(t, err, house.ErrConflict, "it was taken back already")
	w.Version = 99
	_, err = TakeBack(ctx, s, by("Ada", 5), w)
	assert.ErrorIs(t, err, house.ErrNotFound)
}
