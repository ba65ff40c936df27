package file

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// Taking a lock that is held fails with the name of its holder, until it is released.
func TestLockIsExclusive(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	held, err := Take("open", path)
	require.NoError(t, err)
	_, err = Take("restore", path)
	require.ErrorIs(t, err, house.ErrBusy)
	assert.ErrorContains(t, err, "another process")
	held.Release()
	held, err = Take("restore", path)
	require.NoError(t, err)
	held.Release()
}

// A copy has the same content. A file that was replaced is no longer in its place, even
// if the content is the same.
func TestCopyAndInPlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	for _, p := range []string{path, path + "-wal"} {
		require.NoError(t, MakePrivate(p))
		require.NoError(t, os.WriteFile(p, []byte("what it holds"), private))
	}
	kept, err := KeptFiles(path)
	require.NoError(t, err)
	require.NoError(t, InPlace(kept))
	require.NoError(t, WithCopy(path, func(copied string) error {
		text, err := os.ReadFile(copied)
		assert.Equal(t, "what it holds", string(text))
		return err
	}))
	require.NoError(t, Copy(path, path+".new"))
	require.NoError(t, os.Rename(path+".new", path))
	assert.ErrorIs(t, InPlace(kept), house.ErrUnavailable)
	require.NoError(t, MoveAside(path, path+".before"))
	assert.False(t, Exists(path) || Exists(path+"-wal"))
	assert.True(t, Exists(path+".before") && Exists(path+".before-wal"))
}
