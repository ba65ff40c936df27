package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// A file that was renamed under a program is in use, whatever it is called now, and
// what was acknowledged is in the log that it left behind.
func TestRenamedHouseStaysLocked(t *testing.T) {
	dir := t.TempDir()
	path, moved := filepath.Join(dir, "house.db"), filepath.Join(dir, "moved.db")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	require.NoError(t, os.Rename(path, moved))
	_, err := Open(t.Context(), moved, Options{})
	require.ErrorIs(t, err, house.ErrBusy)
	assert.ErrorContains(t, err, "under another name")
	require.NoFileExists(t, moved+"-wal")
	require.NoError(t, s.Close())
	require.NoError(t, os.Rename(path+"-wal", moved+"-wal"))
	_, err = openAt(t, moved, Options{}).Get(t.Context(), gin().Ref())
	assert.NoError(t, err)
}
