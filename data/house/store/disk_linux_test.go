package store

import (
	"path/filepath"
	"syscall"
	"testing"

	"counterpour/data/house"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// smallDisk mounts a disk of its own, where the tests may.
func smallDisk(t *testing.T, size string) string {
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skip("no disk of one's own to fill: ", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

func TestRealDiskFillsUp(t *testing.T) {
	dir := smallDisk(t, "1m")
	s, err := Open(t.Context(), filepath.Join(dir, "house.db"), Options{})
	require.NoError(t, err)
	defer s.Close()
	fill(t, s, house.ErrFull)
	err = s.Backup(t.Context(), filepath.Join(dir, "backup.db"))
	assert.ErrorIs(t, err, house.ErrFull)
	left, err := filepath.Glob(filepath.Join(dir, "backup*"))
	require.NoError(t, err)
	assert.Empty(t, left, "half a backup is no backup")
}

func TestDiskTurnsReadOnly(t *testing.T) {
	dir := smallDisk(t, "4m")
	path := filepath.Join(dir, "house.db")
	s, err := Open(t.Context(), path, Options{})
	require.NoError(t, err)
	write(t, s, house.Put(gin(), 0))
	require.NoError(t, s.Close())
	require.NoError(t, syscall.Mount("tmpfs", dir, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, "size=4m"))
	_, err = Open(t.Context(), path, Options{})
	require.ErrorIs(t, err, house.ErrReadOnly)
	assert.Contains(t, err.Error(), path)
	_, err = Verify(t.Context(), path)
	assert.NoError(t, err, "it can still be read")
}
