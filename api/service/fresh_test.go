package service

import (
	"context"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// deaf is a store whose feed never says anything, and which may not answer.
type deaf struct {
	house.Store
	silent atomic.Bool
}

func (d *deaf) Subscribe(ctx context.Context) (<-chan house.Change, error) {
	c := make(chan house.Change)
	context.AfterFunc(ctx, func() { close(c) })
	return c, nil
}

// Changes of a server that has gone silent come when its time is up: never.
func (d *deaf) Changes(ctx context.Context, after int64, limit int) ([]house.Change, error) {
	if d.silent.Load() {
		<-ctx.Done()
		return nil, ctx.Err()
	}
	return d.Store.Changes(ctx, after, limit)
}

// Polling takes up a change that the feed did not report. A store that does not answer
// makes the house stale; once it answers, the missed changes are taken up. The clock is
// synthetic.
func TestPollingMakesUpForASilentFeed(t *testing.T) {
	k := testKitchen(t)
	synctest.Test(t, func(t *testing.T) {
		d := &deaf{Store: storetest.Memory(t)}
		v, err := openAt(t.Context(), usualPace, k, d, About{}, nil)
		require.NoError(t, err)
		defer v.Close()
		told := v.Changes(t.Context())
		put(t, d.Store, 0, house.Bottle{ID: "gin-1", Name: "Gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1})
		assert.Empty(t, v.Now().Stock, "nobody has said so yet")
		<-told
		assert.Len(t, v.Now().Stock, 1)
		time.Sleep(MaxAge + time.Second)
		require.NoError(t, v.Ready(), "it was looked at in between")

		d.silent.Store(true)
		put(t, d.Store, 0, house.Out{Ingredient: "london-dry-gin", Since: time.Now()})
		time.Sleep(MaxAge - usualPace.every)
		assert.NoError(t, v.Ready())
		time.Sleep(usualPace.every + time.Second)
		assert.ErrorIs(t, v.Ready(), ErrStale)
		assert.Empty(t, v.Now().Out)

		d.silent.Store(false)
		<-told
		synctest.Wait()
		assert.Len(t, v.Now().Out, 1)
		time.Sleep(usualPace.every)
		assert.NoError(t, v.Ready())
	})
}
