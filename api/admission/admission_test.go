package admission

import (
	"context"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One search runs, perCore wait, and one more is refused. The clock is synthetic.
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

// A search whose deadline passes in the queue is refused and leaves no place taken.
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

// A search's deadline is before its caller's, with a pool and without.
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

// A reserved place is the one that the search uses: it is counted once, and kept while
// the search waits.
func TestReservedPlaceIsUsed(t *testing.T) {
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
