package specbook

import (
	"context"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/storetest"
	"counterpour/flavor"
)

var by = house.By{Actor: "Wren", At: time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)}

const (
	quay      = "Quay Sour\n" + bartest.GinSour
	quayTart  = "Quay Sour\n2 oz London dry gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	quaySweet = "Quay Sour\n2 oz London dry gin\n3/4 oz lemon juice\n1 oz simple syrup\nshake, up"
)

// shelved is the specs of a house of which nothing is written, over the catalogue.
func shelved(t *testing.T) (c *Editor, read func(text string) *flavor.Spec) {
	t.Helper()
	b := bartest.New(t)
	return &Editor{Store: storetest.Memory(t), Shelf: house.NewShelf(b.Catalogue.Profiles())}, func(text string) *flavor.Spec {
		s := b.Spec(t, text)
		if name, _, _ := strings.Cut(text, "\n"); !strings.Contains(name, "oz") {
			s.Name = name
		}
		return s
	}
}

func TestKeep(t *testing.T) {
	c, read := shelved(t)
	ctx := t.Context()
	keep := func(r KeepRequest) KeepAnswer {
		t.Helper()
		a, err := c.Keep(ctx, by, r)
		require.NoError(t, err)
		return a
	}
	assert.Equal(t, KeepAnswer{ID: "quay-sour", Version: 1}, keep(KeepRequest{Draft: read(quay)}))
	assert.Equal(t, KeepAnswer{ID: "quay-sour", Version: 1, Same: true}, keep(KeepRequest{Draft: read(quay)}), "nothing to write")

	a := keep(KeepRequest{Draft: read(quayTart)})
	require.NotNil(t, a.Rival, "another drink has the name")
	assert.Empty(t, a.ID)
	assert.Equal(t, int64(1), a.Rival.Version)
	assert.Equal(t, by.Actor, a.Rival.By)
	assert.False(t, a.Rival.Renamed)
	assert.Equal(t, 0.75, a.Rival.Is.Pours[1].Amount)
	assert.Equal(t, 1.0, a.Rival.Would.Pours[1].Amount)

	assert.Equal(t, KeepAnswer{ID: "quay-sour", Version: 2}, keep(KeepRequest{Draft: read(quayTart), Over: "quay-sour", Seen: 1}), "it was meant to be replaced")
	assert.Equal(t, KeepAnswer{ID: "quay-sour", Version: 3}, keep(KeepRequest{Draft: read(quay), From: "quay-sour", Version: 2}), "it was opened from it")

	renamed := read(strings.Replace(quay, "Quay", "Sand", 1))
	a = keep(KeepRequest{Draft: renamed, From: "quay-sour", Version: 3})
	require.NotNil(t, a.Rival, "is it the one that was opened, or another?")
	assert.True(t, a.Rival.Renamed)
	assert.Equal(t, "Quay Sour", a.Rival.Is.Name)
	assert.Equal(t, KeepAnswer{ID: "sand-sour", Version: 1}, keep(KeepRequest{Draft: renamed, From: "quay-sour", Version: 3, Named: true}))

	_, err := c.Keep(ctx, by, KeepRequest{Draft: read(bartest.GinSour)})
	require.Len(t, flavor.DataFaultsOf(err), 1, "it has no name")
	assert.Equal(t, "name", flavor.DataFaultsOf(err)[0].Location)
	assert.Equal(t, "print-spec", keep(KeepRequest{Draft: read("Print\n" + bartest.GinSour)}).ID, "an id that means something else")
}

// Two people open the same version; the second one is told what is stored now, and
// nothing is lost. The note belongs to the record and not to the draft.
func TestKeepConflict(t *testing.T) {
	c, read := shelved(t)
	ctx := t.Context()
	_, err := c.Keep(ctx, by, KeepRequest{Draft: read(quay)})
	require.NoError(t, err)
	require.NoError(t, c.Annotate(ctx, by, "quay-sour", 1, "with a dry shake"))
	_, err = c.Keep(ctx, by, KeepRequest{Draft: read(quayTart), From: "quay-sour", Version: 2})
	require.NoError(t, err)

	a, err := c.Keep(ctx, by, KeepRequest{Draft: read(quaySweet), From: "quay-sour", Version: 2})
	require.ErrorIs(t, err, house.ErrConflict)
	require.NotNil(t, a.Rival)
	assert.Equal(t, int64(2), a.Rival.Opened)
	assert.Equal(t, int64(3), a.Rival.Version)
	assert.Equal(t, "with a dry shake", a.Rival.Would.Note)
	kept, err := house.Get[house.Spec](ctx, c.Store, "quay-sour")
	require.NoError(t, err)
	assert.Equal(t, 1.0, kept.Item.Pours[1].Amount, "the first change stands")

	require.NoError(t, c.Remove(ctx, by, "quay-sour", 3))
	a, err = c.Keep(ctx, by, KeepRequest{Draft: read(quaySweet), From: "quay-sour", Version: 3})
	require.Error(t, err, "it is gone")
	assert.Nil(t, a.Rival)
	_, current, err := c.Version(ctx, "quay-sour", 0)
	require.NoError(t, err)
	assert.Zero(t, current)
	_, err = c.Keep(ctx, by, KeepRequest{Draft: read(quaySweet)})
	assert.NoError(t, err, "it can be kept anew")
}

func TestVersionsOfASpec(t *testing.T) {
	c, read := shelved(t)
	ctx := t.Context()
	for i, text := range []string{quay, quayTart} {
		_, err := c.Keep(ctx, by, KeepRequest{Draft: read(text), From: "quay-sour", Version: int64(i)})
		require.NoError(t, err)
	}
	for at, lemon := range map[int64]float64{0: 1, 1: 0.75, 2: 1} {
		s, current, err := c.Version(ctx, "quay-sour", at)
		require.NoError(t, err)
		assert.Equal(t, int64(2), current)
		assert.Equal(t, lemon, s.Pours[1].Amount, "version %d", at)
	}
	for id, at := range map[string]int64{"quay-sour": 7, "nowhere": 0} {
		_, _, err := c.Version(ctx, id, at)
		assert.ErrorIs(t, err, house.ErrNotFound, id)
	}
}

// The mark is for the version that was tasted, and is removed with its spec.
func TestMarksOfASpec(t *testing.T) {
	c, read := shelved(t)
	ctx := t.Context()
	for i, text := range []string{quay, quayTart} {
		_, err := c.Keep(ctx, by, KeepRequest{Draft: read(text), From: "quay-sour", Version: int64(i)})
		require.NoError(t, err)
	}
	assert.ErrorIs(t, c.Right(ctx, by, "quay-sour", 1), house.ErrConflict)
	assert.ErrorIs(t, c.Right(ctx, by, "nowhere", 1), house.ErrNotFound)
	there, err := c.NotRight(ctx, by, "quay-sour")
	require.NoError(t, err)
	assert.False(t, there)
	require.NoError(t, c.Right(ctx, by, "quay-sour", 2))
	require.NoError(t, c.Right(ctx, by, "quay-sour", 2), "it is marked already")
	mark, err := house.Get[house.Right](ctx, c.Store, "quay-sour")
	require.NoError(t, err)
	assert.Equal(t, int64(2), mark.Item.SpecVersion)
	require.NoError(t, c.Remove(ctx, by, "quay-sour", 2))
	_, err = house.Get[house.Right](ctx, c.Store, "quay-sour")
	assert.ErrorIs(t, err, house.ErrNotFound)
}

// An import is compared with the house before anything is written.
func TestIncoming(t *testing.T) {
	c, read := shelved(t)
	ctx := t.Context()
	for _, text := range []string{quay, strings.Replace(quay, "Quay", "Sand", 1)} {
		_, err := c.Keep(ctx, by, KeepRequest{Draft: read(text)})
		require.NoError(t, err)
	}
	names := OnShelf{Ctx: ctx, Shelf: c.Shelf, Names: named{read(quay).Pours[0].Profile}}
	text := quayTart + "\n\n" + strings.Replace(quay, "Quay", "Sand", 1) + "\n\nExport\n" + bartest.GinSour + "\n\nMoon\n2 oz moon dust\n1 oz lemon juice\nshake, up\n"
	reading, err := exchange.ReadText(strings.NewReader(text), names)
	require.NoError(t, err)
	require.Len(t, reading.Bad, 1)
	assert.Contains(t, reading.Bad[0].Message, "write its category")
	in, err := c.Incoming(ctx, reading)
	require.NoError(t, err)
	require.Len(t, in, 3)
	byID := map[string]Incoming{}
	for _, one := range in {
		byID[one.Spec.ID] = one
	}
	tart, same, fresh := byID["quay-sour"], byID["sand-sour"], byID["export-spec"]
	assert.Equal(t, int64(1), tart.Version)
	assert.False(t, tart.Same())
	assert.True(t, same.Same())
	assert.Nil(t, fresh.Was)
	assert.False(t, fresh.Same())

	_, err = c.TakeIn(ctx, by, reading, exchange.AllOrNone)
	assert.ErrorIs(t, err, house.ErrInvalid)
	done, err := c.TakeIn(ctx, by, reading, exchange.KeepGood)
	require.NoError(t, err)
	assert.Len(t, done.Changes, 2, "what can be undone")
	done.Changes = nil
	assert.Equal(t, exchange.Result{Added: 1, Changed: 1, Same: 1, Bad: reading.Bad}, done)
}

// named suggests one ingredient whatever is written.
type named struct{ one *flavor.Profile }

func (n named) Suggest(context.Context, string, int) ([]*flavor.Profile, error) {
	return []*flavor.Profile{n.one}, nil
}
