package store

import (
	"context"
	"fmt"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/pgtest"
)

func TestWrittenRecordsAreRead(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		done := write(t, s, putAll(every())...)
		for i, it := range every() {
			assert.Equal(t, house.Change{Seq: int64(i + 1), At: noon, Actor: "ana", Ref: it.Ref(), Version: 1, Action: house.Added, Item: it}, done[i])
			got, err := s.Get(t.Context(), it.Ref())
			require.NoError(t, err)
			assert.Equal(t, house.Entry{Item: it, Version: 1, Seq: int64(i + 1)}, got)
		}
		all, err := s.List(t.Context())
		require.NoError(t, err)
		assert.Len(t, all, len(every()))
		for i := 1; i < len(all); i++ {
			a, b := all[i-1].Item.Ref(), all[i].Item.Ref()
			assert.Less(t, a.String(), b.String(), "by kind and id")
		}
		specs, err := house.All[house.Spec](t.Context(), s)
		require.NoError(t, err)
		assert.Equal(t, []house.Spec{sour()}, house.Items(specs))
	})
}

func TestValuesAreNotShared(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		b, d := gin(), sour()
		done := write(t, s, house.Put(b, 0), house.Put(d, 0))
		*b.ABVPct, d.Pours[0].Amount = 1, 99
		*done[0].Item.(house.Bottle).Price = 1
		got, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
		require.NoError(t, err)
		assert.Equal(t, gin(), got.Item)
		*got.Item.ABVPct = 2
		again, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
		require.NoError(t, err)
		assert.Equal(t, gin(), again.Item)
		spec, err := house.Get[house.Spec](t.Context(), s, d.ID)
		require.NoError(t, err)
		assert.Equal(t, sour(), spec.Item)
	})
}

func TestVersionConflicts(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, house.Put(gin(), 0))
		b := gin()
		b.Stock = 1
		for _, c := range []struct {
			about string
			edit  house.Edit
			want  error
		}{
			{"adding what is there", house.Put(b, 0), house.ErrConflict},
			{"a version that is not yet", house.Put(b, 2), house.ErrConflict},
			{"removing another version", house.Remove(b.Ref(), 7), house.ErrConflict},
			{"editing what is not there", house.Put(sour(), 1), house.ErrConflict},
			{"removing what is not there", house.Remove(sour().Ref(), 1), house.ErrNotFound},
		} {
			_, err := s.Write(t.Context(), who, c.edit)
			assert.ErrorIs(t, err, c.want, c.about)
		}
		assert.Equal(t, int64(2), write(t, s, house.Put(b, 1))[0].Version)
		_, err := s.Write(t.Context(), who, house.Put(b, 1))
		assert.ErrorIs(t, err, house.ErrConflict, "the second editor of version 1")
	})
}

func TestWriteIsAtomic(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, house.Put(gin(), 0))
		b := gin()
		b.Stock = 0
		_, err := s.Write(t.Context(), who, house.Put(b, 1), house.Put(sour(), 0), house.Put(gin(), 5))
		require.ErrorIs(t, err, house.ErrConflict)
		_, err = s.Get(t.Context(), sour().Ref())
		assert.ErrorIs(t, err, house.ErrNotFound)
		got, err := house.Get[house.Bottle](t.Context(), s, b.ID)
		require.NoError(t, err)
		assert.Equal(t, gin(), got.Item)
		assert.Equal(t, int64(2), write(t, s, house.Put(sour(), 0))[0].Seq, "the number was not used up")
	})
}

func TestRulesAreEnforced(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		bad := gin()
		bad.SizeML = 0
		unknown := cover()
		unknown.Spec = "nowhere"
		for about, edit := range map[string]house.Edit{
			"a bottle without size":      house.Put(bad, 0),
			"a cover of no spec":         house.Put(unknown, 0),
			"a palate of no spec":        house.Put(house.Right{Spec: "nowhere", SpecVersion: 1}, 0),
			"an id that is none":         house.Put(house.WithID(sour(), "Not An ID"), 0),
			"a bottle without id":        house.Put(house.WithID(gin(), ""), 0),
			"a spec without pours":       house.Put(house.Spec{ID: "x", Name: "x", Method: "shake", Service: "up"}, 0),
			"text that no engine stores": house.Put(house.Out{Ingredient: "x", Since: noon, Note: "a\x00b"}, 0),
		} {
			_, err := s.Write(t.Context(), who, edit)
			assert.ErrorIs(t, err, house.ErrInvalid, about)
		}
		_, err := s.Write(t.Context(), house.By{}, house.Put(gin(), 0))
		assert.ErrorIs(t, err, house.ErrInvalid, "nobody, at no time")
		_, err = s.Write(t.Context(), who)
		assert.ErrorIs(t, err, house.ErrInvalid, "no edits")
		// In one write, what points may come before what it points to.
		write(t, s, house.Put(cover(), 0), house.Put(sour(), 0))
	})
}

func TestDiaryRecordsAreNumbered(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, house.Put(sour(), 0))
		done := write(t, s, house.Put(cover(), 0), house.Put(cover(), 0))
		assert.Equal(t, "cover-000002", done[0].Ref.ID)
		assert.Equal(t, "cover-000003", done[1].Ref.ID)
	})
}

func TestUndo(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		ref := sour().Ref()
		stronger := sour()
		stronger.Pours[0].Amount = 3
		undo := func(version int64) house.Change {
			c, err := s.Undo(t.Context(), who, ref, version)
			require.NoError(t, err)
			return c
		}
		write(t, s, house.Put(sour(), 0))
		write(t, s, house.Put(stronger, 1))
		_, err := s.Undo(t.Context(), who, ref, 1)
		require.ErrorIs(t, err, house.ErrConflict, "not the last change")
		assert.Equal(t, sour(), undo(2).Item, "an edit")
		assert.Equal(t, stronger, undo(3).Item, "the undoing itself")
		write(t, s, house.Remove(ref, 4))
		_, err = s.Get(t.Context(), ref)
		require.ErrorIs(t, err, house.ErrNotFound)
		removed, err := s.Removed(t.Context(), ref.Kind)
		require.NoError(t, err)
		if assert.Len(t, removed, 1) {
			assert.Equal(t, ref, removed[0].Ref)
			assert.Equal(t, int64(5), removed[0].Version, "what undoes it")
			assert.Nil(t, removed[0].Item)
		}
		removed, err = s.Removed(t.Context(), house.KindMade)
		require.NoError(t, err)
		assert.Empty(t, removed, "another kind")
		assert.Equal(t, stronger, undo(5).Item, "a removal")
		write(t, s, house.Put(gin(), 0))
		c, err := s.Undo(t.Context(), who, gin().Ref(), 1)
		require.NoError(t, err)
		assert.Nil(t, c.Item, "an addition")
		_, err = s.Undo(t.Context(), who, house.Ref{Kind: house.KindSpec, ID: "nowhere"}, 1)
		require.ErrorIs(t, err, house.ErrNotFound)

		history, err := s.History(t.Context(), ref)
		require.NoError(t, err)
		var did []house.Action
		for i, c := range history {
			did = append(did, c.Action)
			assert.Equal(t, int64(i+1), c.Version)
		}
		assert.Equal(t, []house.Action{house.Added, house.Changed, house.Undone, house.Undone, house.Removed, house.Undone}, did)
		write(t, s, house.Put(gin(), 0)) // what is gone can come back, with its history
		kept, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
		require.NoError(t, err)
		assert.Equal(t, int64(3), kept.Version)
	})
}

func TestLogNamesActorAndTime(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		evening := time.Date(2024, 5, 6, 23, 59, 59, 123456789, time.FixedZone("", 7200))
		_, err := s.Write(t.Context(), house.By{Actor: "Bo, the late shift", At: evening}, house.Put(gin(), 0))
		require.NoError(t, err)
		write(t, s, house.Remove(gin().Ref(), 1))
		list, err := s.Changes(t.Context(), 0, 10)
		require.NoError(t, err)
		require.Len(t, list, 2)
		assert.Equal(t, "Bo, the late shift", list[0].Actor)
		assert.True(t, evening.Equal(list[0].At))
		assert.Nil(t, list[1].Item)
		after, err := s.Changes(t.Context(), 1, 10)
		require.NoError(t, err)
		assert.Equal(t, list[1:], after)
	})
}

func TestSubscribersHearEveryChangeInOrder(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		other := s
		if e.again != nil { // another server
			other = e.again(t, s)
		}
		write(t, s, house.Put(gin(), 0))
		near, err := s.Subscribe(t.Context())
		require.NoError(t, err)
		far, err := other.Subscribe(t.Context())
		require.NoError(t, err)
		const n = 300 // more than one reading
		go func() {
			for v := int64(1); v <= n; v++ {
				_, err := s.Write(context.Background(), who, house.Put(gin(), v))
				assert.NoError(t, err)
			}
		}()
		for name, c := range map[string]<-chan house.Change{"near": near, "far": far} {
			for v := int64(2); v <= n+1; v++ {
				select {
				case got := <-c:
					require.Equal(t, v, got.Seq, name)
				case <-time.After(patience):
					require.Fail(t, "a change did not arrive", "%s: %d", name, v)
				}
			}
		}
		require.NoError(t, s.Close())
		_, open := <-near
		assert.False(t, open, "closing ends the subscription")
		_, err = s.Subscribe(t.Context())
		assert.ErrorIs(t, err, house.ErrClosed)
	})
}

// Fifty clients each count a bottle up; edits made on a stale version fail and
// are made again, so that at the end none is lost.
func TestFiftyConcurrentClients(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		empty := gin()
		empty.Stock = 0
		write(t, s, house.Put(empty, 0))
		const clients = 50 // each conflicts with all who have not counted yet
		var all sync.WaitGroup
		for i := range clients {
			all.Go(func() {
				countUp(t, s)
				own := house.WithID(sour(), fmt.Sprintf("sour-%d", i))
				_, err := s.Write(context.Background(), who, house.Put(own, 0))
				assert.NoError(t, err)
				_, err = s.List(context.Background())
				assert.NoError(t, err)
			})
		}
		all.Wait()
		got, err := house.Get[house.Bottle](t.Context(), s, empty.ID)
		require.NoError(t, err)
		assert.Equal(t, float64(clients), got.Item.Stock)
		assert.Equal(t, int64(clients+1), got.Version)
		require.NoError(t, s.Check(t.Context()))
	})
}

func countUp(t *testing.T, s house.Store) {
	for {
		k, err := house.Get[house.Bottle](context.Background(), s, gin().ID)
		if !assert.NoError(t, err) {
			return
		}
		k.Item.Stock++
		_, err = s.Write(context.Background(), who, house.Put(k.Item, k.Version))
		if err == nil {
			return
		}
		if !assert.ErrorIs(t, err, house.ErrConflict) {
			return
		}
	}
}

func TestVenuesAreSeparate(t *testing.T) {
	dsn := pgtest.DSN(t)
	a, b := openVenue(t, dsn, pgtest.Venue()), openVenue(t, dsn, pgtest.Venue())
	write(t, a, house.Put(gin(), 0))
	assert.Equal(t, int64(1), write(t, b, house.Put(gin(), 0))[0].Seq)
	list, err := b.List(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, 1)
}

func TestBackupAndRestore(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, putAll(every())...)
		write(t, s, house.Remove(house.Ref{Kind: house.KindOut, ID: "lime-juice"}, 1))
		backup := filepath.Join(t.TempDir(), "backup.db")
		require.NoError(t, s.Backup(t.Context(), backup))
		assert.ErrorIs(t, s.Backup(t.Context(), backup), house.ErrConflict, "a backup is never written over")
		r, err := Verify(t.Context(), backup)
		require.NoError(t, err)
		assert.Equal(t, len(every())+1, r.Changes)
		assert.Equal(t, len(every())-1, r.Records)

		path := filepath.Join(t.TempDir(), "restored.db")
		_, err = Restore(t.Context(), backup, path, RestoreOptions{At: noon})
		require.NoError(t, err)
		assertSameHouse(t, s, openAt(t, path, Options{}))
		if e.again != nil {
			fresh := openVenue(t, pgtest.DSN(t), pgtest.Venue())
			require.NoError(t, RestoreVenue(t.Context(), backup, fresh))
			assertSameHouse(t, s, fresh)
			assert.ErrorIs(t, RestoreVenue(t.Context(), backup, fresh), house.ErrConflict)
		}
	})
}

// assertSameHouse compares records, versions and the whole log.
func assertSameHouse(t *testing.T, a, b house.Store) {
	t.Helper()
	listA, err := a.List(t.Context())
	require.NoError(t, err)
	listB, err := b.List(t.Context())
	require.NoError(t, err)
	assert.Equal(t, listA, listB)
	logA, err := a.Changes(t.Context(), 0, 1<<20)
	require.NoError(t, err)
	logB, err := b.Changes(t.Context(), 0, 1<<20)
	require.NoError(t, err)
	assert.Equal(t, logA, logB)
}

func TestCancelledWritesLeaveNoTrace(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		ctx, stop := context.WithCancel(t.Context())
		stop()
		_, err := s.Write(ctx, who, house.Put(gin(), 0))
		require.ErrorIs(t, err, context.Canceled)
		_, err = s.Get(t.Context(), gin().Ref())
		require.ErrorIs(t, err, house.ErrNotFound)
		write(t, s, house.Put(gin(), 0))
	})
}
