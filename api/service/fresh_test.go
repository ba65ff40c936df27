package service

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
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

// A change that the feed kept to itself is taken up all the same; a store that
// does not answer makes the house old, and what was missed meanwhile is there once
// it answers again.
func TestAHouseKeepsUpWithADeafFeed(t *testing.T) {
	const soon, tick = 10 * time.Second, 5 * time.Millisecond
	d := &deaf{Store: memory(t)}
	v, err := openAt(t.Context(), pace{every: 20 * time.Millisecond, answer: 50 * time.Millisecond, age: 400 * time.Millisecond}, kitchen(t), d, About{}, nil)
	require.NoError(t, err)
	defer v.Close()
	require.NoError(t, v.Ready())
	told := v.Changes(t.Context())
	put(t, d.Store, 0, house.Bottle{ID: "gin-1", Name: "Gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1})
	assert.Eventually(t, func() bool { return len(v.Now().Stock) == 1 }, soon, tick)
	select {
	case <-told:
	case <-time.After(soon):
		assert.Fail(t, "who listens was not told")
	}

	d.silent.Store(true)
	// Once the house is old, no question that was asked before is still open.
	assert.Eventually(t, func() bool { return errors.Is(v.Visit().Fresh(), ErrStale) }, soon, tick)
	put(t, d.Store, 0, house.Out{Ingredient: "london-dry-gin", Since: time.Now()})
	assert.ErrorIs(t, v.Ready(), ErrStale)
	assert.Empty(t, v.Now().Out)

	d.silent.Store(false)
	assert.Eventually(t, func() bool { return len(v.Now().Out) == 1 && v.Ready() == nil }, soon, tick)
}
