package store

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"counterpour/data/house"
	"counterpour/data/house/pgtest"
	"counterpour/data/house/store/file"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A house is read, checked and backed up while another process writes to it.
func TestReadOnlyBesideAWriter(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "house.db")
	s := openAt(t, path, Options{})
	a, b := gin(), sour()
	a.Stock, b.Note = 0, "0"
	write(t, s, house.Put(a, 0), house.Put(b, 0))
	require.NoError(t, s.Close())

	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childEnv+"="+path)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	defer func() { _ = cmd.Process.Kill(); _ = cmd.Wait() }()
	lines := bufio.NewScanner(out)
	require.True(t, lines.Scan())
	require.True(t, strings.HasPrefix(lines.Text(), "kept"), lines.Text())
	go func() {
		for lines.Scan() { // so that the writer is not held up
		}
	}()

	last := 0.0
	for round := range 3 {
		reader := openAt(t, path, Options{ReadOnly: true})
		x, err := house.Get[house.Bottle](t.Context(), reader, gin().ID)
		require.NoError(t, err)
		assert.Greater(t, x.Item.Stock, last)
		last = x.Item.Stock
		require.NoError(t, reader.Check(t.Context()))
		_, err = reader.Write(t.Context(), who, house.Put(gin(), x.Version))
		require.ErrorIs(t, err, house.ErrReadOnly)
		backup := filepath.Join(dir, "backup"+string(rune('a'+round)))
		require.NoError(t, reader.Backup(t.Context(), backup))
		require.NoError(t, reader.Close())
		report, err := Verify(t.Context(), backup)
		require.NoError(t, err)
		assert.Equal(t, 2, report.Records)
		assert.False(t, report.NoWAL, "a backup is whole by itself")
		assert.Greater(t, report.Changes, int(last)*2)
		report, err = Verify(t.Context(), path)
		require.NoError(t, err, "the house in use is checked as well")
		assert.False(t, report.NoWAL)
	}
	copied := filepath.Join(t.TempDir(), "copied.db")
	require.NoError(t, file.Copy(path, copied))
	if report, err := Verify(t.Context(), copied); err == nil { // it may be torn, too
		assert.True(t, report.NoWAL, "a copy without its log may lack changes")
	}
	_, err = Open(t.Context(), path, Options{})
	require.ErrorIs(t, err, house.ErrBusy, "the writer is there still, and the only one")
}

// Where there is no house, opening one that should exist makes nothing.
func TestExistingCreatesNoHouse(t *testing.T) {
	dir := t.TempDir()
	for _, o := range []Options{{Existing: true}, {ReadOnly: true}} {
		_, err := Open(t.Context(), filepath.Join(dir, "house.db"), o)
		require.ErrorIs(t, err, house.ErrNotFound)
	}
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Empty(t, left)

	dsn, venue := pgtest.DSN(t), pgtest.Venue()
	for range 2 {
		for _, o := range []Options{{Venue: venue, Existing: true}, {Venue: venue, ReadOnly: true}} {
			_, err := OpenPostgres(t.Context(), dsn, o)
			require.ErrorIs(t, err, house.ErrNotFound)
		}
	}
	write(t, openVenue(t, dsn, venue), house.Put(gin(), 0))
	s, err := OpenPostgres(t.Context(), dsn, Options{Venue: venue, ReadOnly: true})
	require.NoError(t, err)
	_, err = house.Get[house.Bottle](t.Context(), s, gin().ID)
	assert.NoError(t, err)
	_, err = s.Write(t.Context(), who, house.Put(sour(), 0))
	assert.ErrorIs(t, err, house.ErrReadOnly)
	require.NoError(t, s.Close())
}
