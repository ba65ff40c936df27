package visit_test

import (
	"context"
	"errors"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/api/service/servicetest"
	"counterpour/api/service/visit"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// patience is how long what is waited for may take on a busy machine before a test
// gives it up; no test passes or fails by less.
const patience = time.Minute

// testVisit is a visit to the demo house in a store in memory.
func testVisit(t *testing.T) *visit.Visit {
	t.Helper()
	return visit.Of(servicetest.OpenDemo(t, nil))
}

func testBy() house.By { return house.By{Actor: "Wren", At: time.Now()} }

func TestVisitMarks(t *testing.T) {
	r, ctx := testVisit(t), t.Context()
	menu, err := r.Menu(ctx)
	require.NoError(t, err)
	slugs := map[string]bool{}
	for _, s := range menu {
		assert.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)*$`, s.Slug)
		assert.False(t, slugs[s.Slug], "%s twice", s.Slug)
		slugs[s.Slug] = true
	}

	before, err := r.RunOut(ctx)
	require.NoError(t, err)
	assert.Contains(t, before, "falernum")
	require.NoError(t, r.Mark(ctx, testBy(), marking.Request{Out: []string{"mint"}}))
	require.NoError(t, r.Mark(ctx, testBy(), marking.Request{Back: []string{"falernum"}}))
	after, err := r.RunOut(ctx)
	require.NoError(t, err)
	assert.Contains(t, after, "mint")
	assert.NotContains(t, after, "falernum")

	err = r.Mark(ctx, testBy(), marking.Request{Out: []string{"moonshine"}})
	var fault *flavor.DataFault
	assert.True(t, errors.As(err, &fault))
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

// A bottle counted as empty is out; marked as back, one full one is there.
func TestVisitBringsBackAnEmptyBottle(t *testing.T) {
	r, ctx := testVisit(t), t.Context()
	mint, err := house.Get[house.Bottle](ctx, r.Store(), "mint")
	require.NoError(t, err)
	mint.Item.Stock = 0
	_, err = r.Store().Write(ctx, testBy(), house.Put(mint.Item, mint.Version))
	require.NoError(t, err)
	outs, err := r.RunOut(ctx)
	require.NoError(t, err)
	require.Contains(t, outs, "mint")
	require.NoError(t, r.Mark(ctx, testBy(), marking.Request{Back: []string{"mint"}}))
	outs, err = r.RunOut(ctx)
	require.NoError(t, err)
	assert.NotContains(t, outs, "mint")
	mint, err = house.Get[house.Bottle](ctx, r.Store(), "mint")
	require.NoError(t, err)
	assert.Equal(t, 1.0, mint.Item.Stock)
}

func TestVisitFinds(t *testing.T) {
	r, ctx := testVisit(t), t.Context()
	menu, err := r.Menu(ctx)
	require.NoError(t, err)
	names := func(q service.DrinkQuery) (out []string) {
		found, err := r.Find(ctx, q)
		require.NoError(t, err)
		for _, s := range found {
			out = append(out, s.Spec.Name)
		}
		return out
	}
	assert.Len(t, names(service.DrinkQuery{}), len(menu))
	assert.Contains(t, names(service.DrinkQuery{Text: "FALERNUM rum"}), "Copra Schooner")
	assert.Contains(t, names(service.DrinkQuery{Text: "falurnum"}), "Copra Schooner", "a slip of the pen")
	assert.Equal(t, []string{"Copra Schooner"}, names(service.DrinkQuery{Text: "copra"}))
	assert.Empty(t, names(service.DrinkQuery{Text: "copra aquavit"}))
	without := names(service.DrinkQuery{Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}})
	assert.NotEmpty(t, without)
	assert.NotContains(t, without, "Copra Schooner", "its falernum holds nuts")
	for _, s := range menu {
		assert.Contains(t, names(service.DrinkQuery{Family: s.Family}), s.Spec.Name)
	}
}

// Every listener is notified of a change, none delays a mark, and none is left behind.
func TestVisitChanges(t *testing.T) {
	v := servicetest.OpenDemo(t, nil)
	r := visit.Of(v)
	ctx, leave := context.WithCancel(t.Context())
	var heard []<-chan struct{}
	for range 3 {
		c, err := r.Changes(ctx)
		require.NoError(t, err)
		heard = append(heard, c)
	}
	for i := range 10 {
		require.NoError(t, r.Mark(ctx, testBy(), marked("mint", i%2 == 0)), "nobody reads yet")
	}
	for _, c := range heard {
		select {
		case <-c:
		case <-time.After(patience):
			require.Fail(t, "not told")
		}
	}
	leave()
	for _, c := range heard {
		closes(t, c)
	}
	late, err := r.Changes(t.Context())
	require.NoError(t, err)
	v.HangUp()
	closes(t, late)
}

func closes(t *testing.T, c <-chan struct{}) {
	t.Helper()
	assert.Eventually(t, func() bool {
		select {
		case _, open := <-c:
			return !open
		default:
			return false
		}
	}, patience, time.Millisecond)
}

func TestVisitConcurrently(t *testing.T) {
	r := testVisit(t)
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			for k := range 5 {
				assert.NoError(t, r.Mark(t.Context(), testBy(), marked("mint", (i+k)%2 == 0)))
				_, err := r.RunOut(t.Context())
				assert.NoError(t, err)
			}
		})
	}
	all.Wait()
}

// Any number of concurrent marks of one bottle succeed.
func TestConcurrentMarks(t *testing.T) {
	r := testVisit(t)
	var all sync.WaitGroup
	for i := range 64 {
		all.Go(func() {
			for k := range 4 {
				assert.NoError(t, r.Mark(t.Context(), testBy(), marked("mint", (i+k)%2 == 0)))
			}
		})
	}
	all.Wait()
}

// marked is a bottle that ran out, or is back.
func marked(id string, out bool) marking.Request {
	if out {
		return marking.Request{Out: []string{id}}
	}
	return marking.Request{Back: []string{id}}
}

// What a board notes is written whole or not at all.
func TestMarksAreAllOrNothing(t *testing.T) {
	r := testVisit(t)
	ctx := t.Context()
	before, err := r.RunOut(ctx)
	require.NoError(t, err)
	menu, err := r.Menu(ctx)
	require.NoError(t, err)
	drink := menu[0]
	served := marking.Received{Drink: drink.Slug, Missing: drink.Spec.Pours[0].Profile.ID, Served: &drink.Spec, Reception: house.ReceptionKept}
	for name, m := range map[string]marking.Request{
		"nothing":                   {},
		"a bottle that is not kept": {Out: []string{"mint", "moonshine"}, Received: []marking.Received{served}},
		"out and back at once":      {Out: []string{"mint"}, Back: []string{"mint"}},
		"a drink that is gone":      {Out: []string{"mint"}, Received: []marking.Received{served, {Drink: "gone", Missing: "mint", Served: &drink.Spec, Reception: house.ReceptionKept}}},
		"a verdict of nobody's":     {Out: []string{"mint"}, Received: []marking.Received{{Drink: drink.Slug, Missing: served.Missing, Served: &drink.Spec, Reception: "shrugged"}}},
	} {
		assert.Error(t, r.Mark(ctx, testBy(), m), name)
	}
	after, err := r.RunOut(ctx)
	require.NoError(t, err)
	assert.Equal(t, before, after)
	tastings, err := house.All[house.ServedCover](ctx, r.Store())
	require.NoError(t, err)
	held := len(tastings)

	require.NoError(t, r.Mark(ctx, testBy(), marking.Request{Out: []string{"mint", "mint"}, Received: []marking.Received{served}}))
	tastings, err = house.All[house.ServedCover](ctx, r.Store())
	require.NoError(t, err)
	assert.Len(t, tastings, held+1)
	after, err = r.RunOut(ctx)
	require.NoError(t, err)
	assert.Contains(t, after, "mint")
}

// A visit to a house whose store answers is up to date, and what cannot be weighed is
// refused on a page as anywhere.
func TestVisitReads(t *testing.T) {
	r := testVisit(t)
	require.NoError(t, r.Fresh())
	_, err := r.Read("1 oz soy lecithin foamer\nshake, up")
	require.ErrorIs(t, err, flavor.ErrInvalid)
	assert.ErrorContains(t, err, "to weigh")
}
