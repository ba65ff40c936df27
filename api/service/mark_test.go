package service

import (
	"context"
	"testing"
	"time"

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

// A mark that is sent late keeps its time, does not undo what somebody marked since, and is
// refused after more than a day.
func TestMarkThatIsSentLate(t *testing.T) {
	s := storetest.Memory(t)
	h, err := testKitchen(t).Catalogue.Demo()
	require.NoError(t, err)
	require.NoError(t, Fill(t.Context(), s, h, someone.At))
	v := open(t, s)
	at := func(hours float64) house.By {
		return house.By{Actor: "Ana", At: someone.At.Add(time.Duration(hours * float64(time.Hour)))}
	}
	mark := func(now, tapped float64, r MarkRequest) error {
		r.Tapped = at(tapped).At
		return v.Mark(t.Context(), at(now), r)
	}
	require.NoError(t, mark(3, 2, MarkRequest{Out: []string{"mint"}}))
	out, err := house.Get[house.Out](t.Context(), s, "mint")
	require.NoError(t, err)
	assert.True(t, out.Item.Since.Equal(at(2).At), "%v", out.Item.Since)

	require.NoError(t, v.Mark(t.Context(), at(5), MarkRequest{Back: []string{"mint"}}))
	err = mark(6, 4, MarkRequest{Out: []string{"mint"}})
	require.Len(t, flavor.FaultsOf(err), 1)
	assert.Equal(t, TappedField, flavor.FaultsOf(err)[0].Location)
	assert.ErrorContains(t, err, "Ana marked mint after this was tapped")
	require.NoError(t, mark(7, 6, MarkRequest{Out: []string{"mint"}}), "tapped after the last mark")
	require.NoError(t, mark(8, 5.5, MarkRequest{Out: []string{"mint"}}), "what is out already stays so")

	require.ErrorContains(t, mark(40, 10, MarkRequest{Out: []string{"lemon-juice"}}), "more than a day ago")
	require.ErrorContains(t, mark(40, 41, MarkRequest{Out: []string{"lemon-juice"}}), "more than a day ago", "in the future")
}
