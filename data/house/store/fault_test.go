package store

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// A clock that is set back, and another time zone, change neither the order of the
// log nor the moment of a change.
func TestClockSetBack(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		later := gin()
		for i, at := range []time.Time{noon, noon.Add(-48 * time.Hour), noon.In(time.FixedZone("UTC-11", -11*60*60))} {
			later.Stock = float64(i)
			_, err := s.Write(t.Context(), house.By{Actor: "ana", At: at}, house.Put(later, int64(i)))
			require.NoError(t, err)
		}
		_, err := s.Undo(t.Context(), house.By{Actor: "ana", At: noon.Add(-time.Hour)}, later.Ref(), 3)
		require.NoError(t, err)
		log, err := s.History(t.Context(), later.Ref())
		require.NoError(t, err)
		require.Len(t, log, 4)
		for i, want := range []time.Time{noon, noon.Add(-48 * time.Hour), noon, noon.Add(-time.Hour)} {
			assert.Equal(t, int64(i+1), log[i].Seq)
			assert.Equal(t, want, log[i].At, "in UTC, whatever the zone")
		}
		got, err := house.Get[house.Bottle](t.Context(), s, later.ID)
		require.NoError(t, err)
		assert.Equal(t, 1.0, got.Item.Stock, "the last change counts, not the latest time")
		require.NoError(t, s.Check(t.Context()))
	})
}

// spilling is a database that breaks once it is told to.
type spilling struct {
	database
	now atomic.Bool
}

func (d *spilling) read(ctx context.Context, f func(conn) error) error {
	if d.now.Load() {
		panic("spilt")
	}
	return d.database.read(ctx, f)
}

// A panic in a feed closes its channel; program and store go on.
func TestFeedEndsOnPanic(t *testing.T) {
	s := openMemory(t)
	k := s.(*keeper)
	d := &spilling{database: k.db}
	k.db = d
	feed, err := s.Subscribe(t.Context())
	require.NoError(t, err)
	d.now.Store(true)
	k.feed.wake()
	select {
	case _, open := <-feed:
		assert.False(t, open)
	case <-time.After(patience):
		require.Fail(t, "nobody says that the feed has ended")
	}
	d.now.Store(false)
	write(t, s, house.Put(gin(), 0))
}

// A panic in a listener drops its connection, and it gets another.
func TestListenerRecoversFromPanics(t *testing.T) {
	var next *pgx.Conn
	assert.NotPanics(t, func() { next = (&postgres{}).awaitNotice(t.Context(), &pgx.Conn{}, "bar", newFeed()) })
	assert.Nil(t, next)
}

// After a write that was cancelled at any of its steps, the next one succeeds.
func TestWritesSucceedAfterCancelledOnes(t *testing.T) {
	t.Parallel() // it waits more than it works
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		rounds := 500 // each delay five times: what goes wrong by one of them stays wrong
		if testing.Short() {
			rounds = 300
		}
		var version int64
		for i := range rounds {
			ctx, stop := context.WithTimeout(t.Context(), time.Duration(i%100)*20*time.Microsecond)
			done, err := s.Write(ctx, who, house.Put(gin(), version))
			stop()
			if err == nil {
				version = done[0].Version
				continue
			}
			require.True(t, errors.Is(err, context.DeadlineExceeded) || errors.Is(err, house.ErrUnavailable), "%v", err)
			if got, err := s.Get(t.Context(), gin().Ref()); err == nil {
				version = got.Version // a database may have kept what it could not say in time
			}
		}
		_, err := s.Write(t.Context(), who, house.Put(gin(), version))
		require.NoError(t, err)
	})
}

// After cancelled reads, the next ones succeed.
func TestReadsSucceedAfterCancelledOnes(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, putAll(every())...)
		for i := range 300 {
			ctx, stop := context.WithTimeout(t.Context(), time.Duration(i%100)*10*time.Microsecond)
			_, err := s.List(ctx)
			stop()
			require.True(t, err == nil || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, house.ErrUnavailable), "%v", err)
		}
		for range 2 * readers {
			_, err := s.List(t.Context())
			require.NoError(t, err)
		}
	})
}
