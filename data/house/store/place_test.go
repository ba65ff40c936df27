package store

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"counterpour/data/house"
	"counterpour/data/house/store/file"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A write to a file that is gone from under its name is refused, and one is
// told when the file goes.
func TestRemovedFileRefusesWrites(t *testing.T) {
	for name, take := range map[string]func(t *testing.T, path string){
		"removed":    func(t *testing.T, path string) { require.NoError(t, os.Remove(path)) },
		"moved":      func(t *testing.T, path string) { require.NoError(t, os.Rename(path, path+".old")) },
		"its log":    func(t *testing.T, path string) { require.NoError(t, os.Remove(path+"-wal")) },
		"its folder": func(t *testing.T, path string) { require.NoError(t, os.RemoveAll(filepath.Dir(path))) },
		"replaced": func(t *testing.T, path string) {
			require.NoError(t, file.Copy(path, path+".new"))
			require.NoError(t, os.Rename(path+".new", path))
		},
	} {
		t.Run(name, func(t *testing.T) {
			if runtime.GOOS == "windows" {
				t.Skip("an open file cannot be taken away there")
			}
			path := filepath.Join(t.TempDir(), "bar", "house.db")
			require.NoError(t, os.Mkdir(filepath.Dir(path), 0o700))
			s, err := Open(t.Context(), path, Options{})
			require.NoError(t, err)
			defer s.Close()
			v := write(t, s, house.Put(gin(), 0))[0].Version
			take(t, path)
			for range 2 {
				_, err = s.Write(t.Context(), who, house.Put(gin(), v))
				require.ErrorIs(t, err, house.ErrUnavailable)
				assert.Contains(t, err.Error(), "removed or replaced")
			}
			_, err = s.Undo(t.Context(), who, gin().Ref(), v)
			require.ErrorIs(t, err, house.ErrUnavailable)
			_, err = s.Changes(t.Context(), 0, 1)
			require.ErrorIs(t, err, house.ErrUnavailable, "who asks again and again hears of it before anybody writes")
		})
	}
}

// A file has one writer, whatever name leads to it.
func TestLinksShareOneLock(t *testing.T) {
	dir := t.TempDir()
	path, soft, hard := filepath.Join(dir, "house.db"), filepath.Join(dir, "soft.db"), filepath.Join(dir, "hard.db")
	if err := os.Symlink(path, soft); err != nil {
		t.Skip("no links here: " + err.Error())
	}
	_, err := Open(t.Context(), soft, Options{})
	require.Error(t, err, "a link to nothing makes no house elsewhere")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	_, err = Open(t.Context(), soft, Options{})
	require.ErrorIs(t, err, house.ErrBusy)
	_, err = Restore(t.Context(), path, soft, RestoreOptions{Replace: true, At: noon})
	require.Error(t, err)
	require.NoError(t, os.Link(path, hard))
	for _, o := range []Options{{}, {ReadOnly: true}} {
		_, err = Open(t.Context(), hard, o)
		require.ErrorIs(t, err, house.ErrInvalid)
		assert.Contains(t, err.Error(), "2 names")
	}
	require.NoFileExists(t, hard+"-wal")
	require.NoError(t, os.Remove(hard))
	write(t, s, house.Put(sour(), 0))
	require.NoError(t, s.Close())
	_, err = openAt(t, soft, Options{}).Get(t.Context(), sour().Ref())
	assert.NoError(t, err, "by the link, once the other is closed")
}

// An empty file, and a WAL without its file, are refused and not taken for a new house.
func TestRemainsOfAHouseAreRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	_, err := Open(t.Context(), path, Options{})
	require.ErrorIs(t, err, house.ErrDamaged)
	assert.Contains(t, err.Error(), "empty")
	require.NoError(t, os.Rename(path, path+"-wal"))
	_, err = Open(t.Context(), path, Options{})
	require.ErrorIs(t, err, house.ErrDamaged)
	assert.Contains(t, err.Error(), "its log is")
	require.NoFileExists(t, path)
}

// Only the owner can read the files of a house.
func TestOnlyTheOwnerReadsAHouse(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes are not kept there")
	}
	dir := t.TempDir()
	path := filepath.Join(dir, "house.db")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	require.NoError(t, s.Backup(t.Context(), filepath.Join(dir, "backup.db")))
	require.NoError(t, openMemory(t).Backup(t.Context(), filepath.Join(dir, "copied.db")))
	_, err := Restore(t.Context(), filepath.Join(dir, "backup.db"), filepath.Join(dir, "restored.db"), RestoreOptions{At: noon})
	require.NoError(t, err)
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	for _, f := range files {
		info, err := f.Info()
		require.NoError(t, err)
		assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), f.Name())
	}
}
