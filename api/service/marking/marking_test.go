package marking_test

import (
	"context"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
)

var someone = house.By{Actor: "Wren", At: time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)}

// bar is an invented house, which keeps two ingredients and calls them by their ids.
type bar struct{}

func (bar) Keeps(id string) bool { return slices.Contains([]string{"mint", "lemon-juice"}, id) }
func (bar) Knows(id string) bool { return id != "moonshine" }
func (bar) Named(name string) (*flavor.Profile, error) {
	return &flavor.Profile{ID: name, Name: name}, nil
}
func (bar) NameOf(id string) string { return id }
func (bar) Bottles() []house.Bottle { return nil }

func penOf(s house.Store) *marking.Pen {
	return marking.NewPen(s, func() marking.House { return bar{} })
}

// contested is a store in which another write always comes first.
type contested struct{ house.Store }

func (contested) Write(context.Context, house.By, ...house.Edit) ([]house.Change, error) {
	return nil, &house.Error{Kind: house.ErrNotFound, Op: "remove", Message: "there is no such record"}
}

// A mark that conflicts at every try is a conflict, whatever error the store returned.
func TestMarkThatAlwaysConflicts(t *testing.T) {
	_, err := penOf(contested{storetest.Memory(t)}).Mark(t.Context(), someone, marking.Request{Out: []string{"mint"}})
	require.ErrorIs(t, err, house.ErrConflict)
	assert.ErrorContains(t, err, "mark again")
}

// A mark that notes nothing is a fault; one reception of a cover is enough of a note.
func TestMarkOfNothing(t *testing.T) {
	_, err := penOf(storetest.Memory(t)).Mark(t.Context(), someone, marking.Request{})
	require.ErrorIs(t, err, flavor.ErrInvalid)
	assert.ErrorContains(t, err, "name what ran out or what is back")
	assert.False(t, (&marking.Request{Received: make([]marking.Received, 1)}).Empty())
}

// A mark that is sent late keeps its time, does not undo what somebody marked since, and is
// refused after more than a day.
func TestMarkThatIsSentLate(t *testing.T) {
	s := storetest.Memory(t)
	pen := penOf(s)
	at := func(hours float64) house.By {
		return house.By{Actor: "Ana", At: someone.At.Add(time.Duration(hours * float64(time.Hour)))}
	}
	mark := func(now, tapped float64, r marking.Request) error {
		r.Tapped = at(tapped).At
		_, err := pen.Mark(t.Context(), at(now), r)
		return err
	}
	require.NoError(t, mark(3, 2, marking.Request{Out: []string{"mint"}}))
	out, err := house.Get[house.Out](t.Context(), s, "mint")
	require.NoError(t, err)
	assert.True(t, out.Item.Since.Equal(at(2).At), "%v", out.Item.Since)

	_, err = pen.Mark(t.Context(), at(5), marking.Request{Back: []string{"mint"}})
	require.NoError(t, err)
	err = mark(6, 4, marking.Request{Out: []string{"mint"}})
	require.Len(t, flavor.DataFaultsOf(err), 1)
	assert.Equal(t, marking.TappedField, flavor.DataFaultsOf(err)[0].Location)
	assert.ErrorContains(t, err, "Ana marked mint after this was tapped")
	require.NoError(t, mark(7, 6, marking.Request{Out: []string{"mint"}}), "tapped after the last mark")
	require.NoError(t, mark(8, 5.5, marking.Request{Out: []string{"mint"}}), "what is out already stays so")

	require.ErrorContains(t, mark(40, 10, marking.Request{Out: []string{"lemon-juice"}}), "more than a day ago")
	require.ErrorContains(t, mark(40, 41, marking.Request{Out: []string{"lemon-juice"}}), "more than a day ago", "in the future")
}

// What a house does not keep, and what is out and back at once, is a fault at its place, and
// nothing is written.
func TestMarksThatCannotBe(t *testing.T) {
	for name, c := range map[string]struct {
		mark marking.Request
		at   string
		says string
	}{
		"not kept":           {marking.Request{Out: []string{"mint", "moonshine"}}, "out[1]", "the house does not keep moonshine"},
		"out and back":       {marking.Request{Out: []string{"mint"}, Back: []string{"lemon-juice", "mint"}}, "back[1]", "mint cannot be out and back at once"},
		"no such bottle":     {marking.Request{BottlesBack: []string{"the other gin"}}, "bottles_back[0]", "the house has no bottle"},
		"no such drink":      {marking.Request{Out: []string{"mint"}, Received: []marking.Received{{Drink: "gone", Missing: "mint"}}}, "drink", "the house has no drink"},
		"back, and not kept": {marking.Request{Back: []string{"moonshine"}, Out: []string{"mint"}}, "back[0]", "the house does not keep moonshine"},
	} {
		s := storetest.Memory(t)
		_, err := penOf(s).Mark(t.Context(), someone, c.mark)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, name)
		assert.Equal(t, c.at, faults[0].Location, name)
		assert.Contains(t, faults[0].Message, c.says, name)
		changes, err := s.Changes(t.Context(), 0, 10)
		require.NoError(t, err)
		assert.Empty(t, changes, name)
	}
}
