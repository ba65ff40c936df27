package admission

import (
	"context"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One search at once: one is in, perCore wait, one more is refused, all by a clock
// of the test's own.
func TestFullQueueRefuses(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(1)
		_, leave, err := p.Enter(t.Context())
		require.NoError(t, err)
		entered := make(chan func(), perCore)
		for range perCore {
			go func() {
				_, leave, err := p.Enter(t.Context())
				assert.NoError(t, err)
				entered <- leave
			}()
		}
		synctest.Wait()
		assert.Equal(t, int64(1), p.Running())
		assert.Equal(t, int64(perCore), p.Waiting())

		asked := time.Now()
		_, _, err = p.Enter(t.Context())
		assert.ErrorIs(t, err, ErrFull)
		assert.Less(t, time.Since(asked), 100*time.Millisecond, "who is refused is told so soon")
		assert.Equal(t, int64(1), p.Refused())

		leave()
		for range perCore {
			next := <-entered
			assert.Equal(t, int64(1), p.Running(), "one after another")
			next()
		}
		assert.Zero(t, p.Running())
		assert.Zero(t, p.Waiting())
		_, leave, err = p.Enter(t.Context())
		require.NoError(t, err, "there is room again")
		leave()
	})
}

func TestSlowQueueRefuses(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(1)
		_, leave, err := p.Enter(t.Context())
		require.NoError(t, err)
		asked := time.Now()
		_, _, err = p.Enter(t.Context())
		assert.ErrorIs(t, err, ErrFull)
		assert.Equal(t, longestWait, time.Since(asked))
		leave()
		assert.True(t, p.places.TryAcquire(1+perCore), "who was refused left no place taken")
	})
}

// Whose time is over in the queue was refused by it, and took no place along.
func TestDeadlineInQueueRefuses(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(1)
		_, leave, err := p.Enter(t.Context())
		require.NoError(t, err)
		ctx, cancel := context.WithTimeout(t.Context(), longestWait/2)
		defer cancel()
		_, _, err = p.Enter(ctx)
		assert.ErrorIs(t, err, ErrFull)
		assert.Equal(t, int64(1), p.Refused())
		leave()
		assert.True(t, p.places.TryAcquire(1+perCore))
	})
}

func TestCancelledWaitReleasesThePlace(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(1)
		_, leave, err := p.Enter(t.Context())
		require.NoError(t, err)
		ctx, gone := context.WithCancel(t.Context())
		failed := make(chan error)
		go func() {
			_, _, err := p.Enter(ctx)
			failed <- err
		}()
		synctest.Wait()
		gone()
		assert.ErrorIs(t, <-failed, context.Canceled)
		assert.Zero(t, p.Waiting())
		assert.Zero(t, p.Refused(), "nobody refused them")
		leave()
	})
}

// A search ends before its caller does, whether there is a pool or not.
func TestSearchDeadlineLeavesTimeToAnswer(t *testing.T) {
	for name, p := range map[string]*Pool{"a pool": New(2), "no pool": nil} {
		for _, all := range []time.Duration{10 * time.Second, 50 * time.Millisecond} {
			synctest.Test(t, func(t *testing.T) {
				ctx, cancel := context.WithTimeout(t.Context(), all)
				defer cancel()
				inside, leave, err := p.Enter(ctx)
				require.NoError(t, err)
				<-inside.Done()
				assert.ErrorIs(t, inside.Err(), context.DeadlineExceeded)
				end, _ := ctx.Deadline()
				assert.Equal(t, min(reserve, all/reserveShare), time.Until(end), name)
				leave()
			})
		}
	}
	inside, leave, err := New(1).Enter(context.Background())
	require.NoError(t, err)
	_, limited := inside.Deadline()
	assert.False(t, limited)
	leave()
	assert.ErrorIs(t, inside.Err(), context.Canceled, "what was let in ends with its leave")
}

func TestNilPoolAdmitsEverybody(t *testing.T) {
	var p *Pool
	_, leave, err := p.Enter(t.Context())
	require.NoError(t, err)
	assert.Zero(t, p.Running()+p.Waiting()+p.Refused())
	leave()
	_, leave, err = p.Reserve(t.Context())
	require.NoError(t, err)
	leave()
}

// A place that is reserved is the one that the search then stands in: it is counted
// once, and a search that waits for its turn keeps it.
func TestAReservedPlaceIsUsed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := New(1)
		var leaves []func()
		for range 1 + perCore {
			ctx, leave, err := p.Reserve(t.Context())
			require.NoError(t, err)
			leaves = append(leaves, leave)
			inside, out, err := p.Enter(ctx)
			require.NoError(t, err, "the place is there already")
			assert.NoError(t, inside.Err())
			out()
		}
		_, _, err := p.Reserve(t.Context())
		require.ErrorIs(t, err, ErrFull, "who is done with a search holds the place until the answer is sent")
		_, _, err = p.Enter(t.Context())
		require.ErrorIs(t, err, ErrFull)
		assert.Equal(t, int64(2), p.Refused())
		for _, leave := range leaves {
			leave()
		}
		assert.True(t, p.places.TryAcquire(1+perCore), "every place is free again")

		other := New(1)
		p.places.Release(1 + perCore)
		ctx, leave, err := p.Reserve(t.Context())
		require.NoError(t, err)
		defer leave()
		_, out, err := other.Enter(ctx)
		require.NoError(t, err)
		assert.False(t, other.places.TryAcquire(1+perCore), "a place in one pool is none in another")
		out()
	})
}
