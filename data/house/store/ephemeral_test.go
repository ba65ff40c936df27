package store

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/stamp"
)

func session(id, body string, until time.Time) house.Ephemeral {
	return house.Ephemeral{Kind: "session", ID: id, Body: body, Until: until}
}

// Ephemerals are visible to all servers of the venue until they expire.
func TestEphemeralsExpire(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		ctx, s := t.Context(), e.open(t)
		other := s
		if e.again != nil {
			other = e.again(t, s)
		}
		first, second := session("a1", "ana", noon.Add(time.Hour)), session("b2", "bo", noon.Add(2*time.Hour))
		require.NoError(t, s.Share(ctx, noon, second, first))
		list, err := other.AllShared(ctx, noon, "session")
		require.NoError(t, err)
		assert.Equal(t, []house.Ephemeral{first, second}, list)
		first.Until = noon.Add(90 * time.Minute)
		require.NoError(t, other.Share(ctx, noon, first))
		got, found, err := s.Shared(ctx, noon.Add(89*time.Minute), "session", "a1")
		require.NoError(t, err)
		assert.True(t, found)
		assert.Equal(t, first, got)

		list, err = s.AllShared(ctx, noon.Add(90*time.Minute), "session")
		require.NoError(t, err)
		assert.Equal(t, []house.Ephemeral{second}, list, "over at its time")
		require.NoError(t, s.Unshare(ctx, "session", "b2", "never-there"))
		_, found, err = other.Shared(ctx, noon, "session", "b2")
		require.NoError(t, err)
		assert.False(t, found)
		_, found, err = s.Shared(ctx, noon, "key", "a1")
		require.NoError(t, err)
		assert.False(t, found, "kinds are apart")
		require.NoError(t, s.Renew(ctx, noon, session("b2", "bo", noon.Add(3*time.Hour)), session("a1", "ana again", noon.Add(3*time.Hour))))
		list, err = s.AllShared(ctx, noon.Add(2*time.Hour), "session")
		require.NoError(t, err)
		assert.Equal(t, []house.Ephemeral{session("a1", "ana again", noon.Add(3*time.Hour))}, list, "what was dropped is not brought back")

		changes, err := s.Changes(ctx, 0, 10)
		require.NoError(t, err)
		assert.Empty(t, changes, "no log tells of it")
		require.NoError(t, s.Check(ctx))
		assert.ErrorIs(t, s.Share(ctx, noon, session("A", "", noon)), house.ErrInvalid)
		assert.ErrorIs(t, s.Share(ctx, noon, session("a", strings.Repeat("x", house.MaxEphemeral+1), noon)), house.ErrInvalid)
	})
}

// The first one to store an ephemeral decides, until it expires.
func TestAgree(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		ctx, s := t.Context(), e.open(t)
		const many = 8
		got := make(chan house.Ephemeral, many)
		for i := range many {
			go func() {
				e, err := s.Agree(context.WithoutCancel(ctx), noon, house.Ephemeral{Kind: "key", ID: "rounds", Body: string(rune('a' + i)), Until: noon.Add(time.Hour)})
				assert.NoError(t, err)
				got <- e
			}()
		}
		agreed := <-got
		for range many - 1 {
			assert.Equal(t, agreed, <-got)
		}
		late := noon.Add(time.Hour)
		next, err := s.Agree(ctx, late, house.Ephemeral{Kind: "key", ID: "rounds", Body: "z", Until: late.Add(time.Hour)})
		require.NoError(t, err)
		assert.Equal(t, "z", next.Body)
	})
}

// A backup contains no ephemerals, not even in its free pages.
func TestBackupHoldsNoSessions(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		write(t, s, house.Put(gin(), 0))
		require.NoError(t, s.Share(t.Context(), noon, session("a1", "whoever held this cookie", noon.Add(time.Hour))))
		path := filepath.Join(t.TempDir(), "backup.db")
		require.NoError(t, s.Backup(t.Context(), path))
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.NotContains(t, string(text), "whoever held this cookie")
		report, err := Verify(t.Context(), path)
		require.NoError(t, err)
		assert.Equal(t, stamp.Read().String(), report.Program, "it says which build made it")
		_, found, err := openAt(t, path, Options{}).Shared(t.Context(), noon, "session", "a1")
		require.NoError(t, err)
		assert.False(t, found)
	})
}

// Ephemerals survive a restart.
func TestEphemeralsSurviveARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	s := openAt(t, path, Options{})
	want := session("a1", "ana", noon.Add(time.Hour))
	require.NoError(t, s.Share(t.Context(), noon, want))
	require.NoError(t, s.Close())
	got, found, err := openAt(t, path, Options{}).Shared(t.Context(), noon, "session", "a1")
	require.NoError(t, err)
	assert.True(t, found)
	assert.Equal(t, want, got)
}
