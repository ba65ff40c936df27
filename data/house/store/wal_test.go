package store

import (
	"path/filepath"
	"testing"

	"counterpour/data/house"
	"counterpour/data/house/store/file"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file that was closed properly needs no WAL; a copy of a house in use is recognised,
// whoever has read the house meanwhile.
func TestCopyWithoutItsLogIsRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		before func(t *testing.T, path string, s house.Store) // is done once something is written
		needs  bool                                           // what then lies at path needs a log
	}{
		{"closed in order", func(t *testing.T, _ string, s house.Store) { require.NoError(t, s.Close()) }, false},
		{"in use", func(*testing.T, string, house.Store) {}, true},
		{"in use, and read", func(t *testing.T, path string, _ house.Store) {
			require.NoError(t, openAt(t, path, Options{ReadOnly: true}).Close())
		}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			path, copied := filepath.Join(t.TempDir(), "bar.house"), filepath.Join(t.TempDir(), "copied.house")
			s := openAt(t, path, Options{})
			write(t, s, house.Put(gin(), 0))
			c.before(t, path, s)
			here, err := Verify(t.Context(), path)
			require.NoError(t, err)
			require.NoError(t, here.NeedsWAL(path), "it lies where it belongs")
			require.NoError(t, file.Copy(path, copied))
			there, err := Verify(t.Context(), copied)
			require.NoError(t, err, "whether it lacks changes or not, it is no damaged file")
			if !c.needs {
				assert.NoError(t, there.NeedsWAL(copied))
				return
			}
			require.ErrorIs(t, there.NeedsWAL(copied), house.ErrDamaged)
			assert.ErrorContains(t, there.NeedsWAL(copied), "copied.house-wal")

			// Whoever has nothing else takes it as it is, and has a whole house again.
			taken := filepath.Join(t.TempDir(), "taken.house")
			_, err = Restore(t.Context(), copied, taken, RestoreOptions{})
			require.NoError(t, err)
			again, err := Verify(t.Context(), taken)
			require.NoError(t, err)
			assert.NoError(t, again.NeedsWAL(taken))
			require.NoError(t, openAt(t, taken, Options{Existing: true}).Close())
		})
	}
}

// A house that is closed while somebody reads it keeps its WAL, so that the file is not
// mistaken for a copy of a house in use.
func TestHouseClosedWhileItIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bar.house")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	reader := openAt(t, path, Options{ReadOnly: true})
	_, err := house.Get[house.Bottle](t.Context(), reader, gin().ID)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	sound := func() {
		t.Helper()
		report, err := Verify(t.Context(), path)
		require.NoError(t, err)
		require.NoError(t, report.NeedsWAL(path))
		assert.Equal(t, 1, report.Records)
	}
	sound()
	require.NoError(t, reader.Close())
	sound()
	require.NoError(t, openAt(t, path, Options{Existing: true}).Close())
	sound()
}
