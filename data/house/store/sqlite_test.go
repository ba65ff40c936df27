package store

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"counterpour/data/house"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// run executes text on a file, past all guards.
func run(t *testing.T, path, text string) {
	t.Helper()
	db, err := sql.Open("sqlite", location(path))
	require.NoError(t, err)
	defer db.Close()
	_, err = db.Exec(text)
	require.NoError(t, err)
}

func TestEngineSettings(t *testing.T) {
	store := openFile(t)
	s := store.(*keeper).db.(*sqlite)
	for pragma, want := range map[string]string{"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1"} {
		var got string
		_, err := one(t.Context(), sqliteConn{s.writer}, []any{&got}, "PRAGMA "+pragma)
		require.NoError(t, err)
		assert.Equal(t, want, got, pragma)
	}
	write(t, store, house.Put(gin(), 0))
	for _, text := range []string{`UPDATE change SET actor = 'x'`, `DELETE FROM change`, `DELETE FROM record`,
		`INSERT INTO change (venue, seq, at, actor, kind, id, version, action, body, seal) VALUES ('house', 9, '', '', 'spec', 'none', 1, 'added', '', '')`} {
		err := s.write(t.Context(), func(c conn) error { return c.exec(t.Context(), text) })
		assert.ErrorIs(t, wrap(err, classifySQLite, "write", ""), house.ErrInvalid, text)
	}
}

func TestPathsWithOddCharacters(t *testing.T) {
	path := filepath.Join(t.TempDir(), "what? 100% #1 bar's.db")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	require.NoError(t, s.Backup(t.Context(), path+" 'backup'"))
	_, err := Verify(t.Context(), path+" 'backup'")
	require.NoError(t, err)
	assert.FileExists(t, path)
}

func TestSecondProcessGetsErrBusy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	s := openAt(t, path, Options{})
	_, err := Open(t.Context(), path, Options{})
	require.ErrorIs(t, err, house.ErrBusy, "the same process")

	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childEnv+"="+path)
	out, err := cmd.Output()
	require.Error(t, err)
	assert.Contains(t, string(out), path)
	assert.Contains(t, string(out), "is using this house")

	_, err = Restore(t.Context(), path, path, RestoreOptions{})
	assert.Error(t, err, "a house in use is not restored over")
	require.NoError(t, s.Close())
	require.NoError(t, openAt(t, path, Options{}).Close())
}

func TestFullDiskKeepsTheHouse(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	s := openAt(t, path, Options{pragmas: []string{"PRAGMA max_page_count = 40"}})
	fill(t, s, house.ErrFull)
	require.NoError(t, s.Close())
	require.NoError(t, openAt(t, path, Options{}).Check(t.Context()))
}

// fill writes until it fails, then checks that all that was acknowledged is
// there, and nothing else.
func fill(t *testing.T, s house.Store, want error) {
	t.Helper()
	big := sour()
	big.Note = strings.Repeat("x", 5000)
	var last int64
	for {
		done, err := s.Write(t.Context(), who, house.Put(big, last))
		if err != nil {
			require.ErrorIs(t, err, want)
			assert.Contains(t, err.Error(), "is unharmed")
			break
		}
		last = done[0].Version
		require.Less(t, last, int64(100000), "it never filled")
	}
	require.Positive(t, last)
	got, err := house.Get[house.Spec](t.Context(), s, big.ID)
	require.NoError(t, err)
	assert.Equal(t, last, got.Version)
	assert.NoError(t, s.Check(t.Context()))
}

func TestReadOnlyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	s := openAt(t, path, Options{pragmas: []string{"PRAGMA query_only = 1"}})
	_, err := s.Write(t.Context(), who, house.Put(gin(), 0))
	assert.ErrorIs(t, err, house.ErrReadOnly)
}

func TestFilesThatAreNoHouse(t *testing.T) {
	dir := t.TempDir()
	text := filepath.Join(dir, "notes.txt")
	require.NoError(t, os.WriteFile(text, []byte(strings.Repeat("not a house. ", 100)), 0o600))
	other := filepath.Join(dir, "other.db")
	run(t, other, `CREATE TABLE t (x)`)
	newer := filepath.Join(dir, "newer.db")
	require.NoError(t, openAt(t, newer, Options{}).Close())
	run(t, newer, `PRAGMA user_version = 99`)
	for path, want := range map[string]error{
		text: house.ErrDamaged, other: house.ErrDamaged, newer: house.ErrNewer, dir: house.ErrInvalid, filepath.Join(dir, "no", "house.db"): house.ErrNotFound,
	} {
		_, err := Open(t.Context(), path, Options{})
		require.ErrorIs(t, err, want, path)
		assert.Contains(t, err.Error(), path)
	}
	_, err := Verify(t.Context(), filepath.Join(dir, "nothing.db"))
	assert.ErrorIs(t, err, house.ErrNotFound)
	_, err = Open(t.Context(), filepath.Join(dir, "x.db"), Options{Venue: "Not A Venue"})
	assert.ErrorIs(t, err, house.ErrInvalid)
}

func TestMigration(t *testing.T) {
	text, err := os.ReadFile("testdata/schema-1.sqlite.sql")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "house.db")
	run(t, path, string(text))
	r, err := Verify(t.Context(), path)
	require.NoError(t, err, "an old backup is sound as it is")
	assert.Equal(t, 1, r.Schema)
	restored := filepath.Join(t.TempDir(), "house.db")
	_, err = Restore(t.Context(), path, restored, RestoreOptions{})
	require.NoError(t, err)
	for _, p := range []string{path, restored} {
		assertOldHouse(t, openAt(t, p, Options{}))
	}
}

// assertOldHouse compares a house with what testdata says of it.
func assertOldHouse(t *testing.T, s house.Store) {
	t.Helper()
	require.NoError(t, s.Check(t.Context()))
	list, err := s.List(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, len(every())-1)
	b, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
	require.NoError(t, err)
	assert.Equal(t, 1.0, b.Item.Stock)
	_, err = s.Undo(t.Context(), who, house.Ref{Kind: house.KindOut, ID: "lime-juice"}, 2)
	assert.NoError(t, err)
	write(t, s, house.Put(cover(), 0))
}

// Whatever byte of a backup is changed, restoring it is refused with a place,
// or gives the house that was backed up.
func TestADamagedBackupIsRefused(t *testing.T) {
	dir := t.TempDir()
	path, backup := filepath.Join(dir, "house.db"), filepath.Join(dir, "backup.db")
	s := openAt(t, path, Options{})
	write(t, s, putAll(every())...)
	require.NoError(t, s.Backup(t.Context(), backup))
	whole, err := os.ReadFile(backup)
	require.NoError(t, err)
	stride, refused := 211, 0
	if testing.Short() {
		stride = 449
	}
	for at := 0; at < len(whole); at += stride {
		bad := bytes.Clone(whole)
		bad[at] ^= 0x21
		if restoreDamaged(t, s, dir, bad) {
			refused++
		}
	}
	assert.Greater(t, refused, 10)
	for _, n := range []int{0, 50, 100, 4096, len(whole) / 2, len(whole) - 1} {
		assert.True(t, restoreDamaged(t, s, dir, whole[:n]), "cut at %d", n)
	}
	text := bytes.Replace(bytes.Clone(whole), []byte("Halyard Sour"), []byte("Halyard Soup"), 1)
	require.True(t, restoreDamaged(t, s, dir, text))
}

func restoreDamaged(t *testing.T, want house.Store, dir string, bad []byte) (refused bool) {
	t.Helper()
	from, to := filepath.Join(dir, "bad.db"), filepath.Join(dir, "to.db")
	require.NoError(t, os.WriteFile(from, bad, 0o600))
	_, err := Restore(t.Context(), from, to, RestoreOptions{At: noon})
	if err != nil {
		var e *house.Error
		require.ErrorAs(t, err, &e)
		if !errors.Is(err, house.ErrNewer) { // a byte of the schema's number
			require.ErrorIs(t, err, house.ErrDamaged)
			require.True(t, len(e.Places) > 0 || strings.Contains(err.Error(), "not a house") || strings.Contains(err.Error(), "no house"), err.Error())
		}
		require.NoFileExists(t, to)
		return true
	}
	s, err := Open(t.Context(), to, Options{})
	require.NoError(t, err)
	assertSameHouse(t, want, s)
	require.NoError(t, s.Close())
	require.NoError(t, os.Remove(to))
	return false
}

func TestDamageNamesItsPlace(t *testing.T) {
	for text, want := range map[string]string{
		`DROP INDEX link_to`:    "index link_to is not defined as it was",
		`CREATE TABLE ours (x)`: "table ours is no part of a house",
		`DROP TRIGGER change_stays; UPDATE change SET actor = 'eve' WHERE seq = 2`:                                 "change 2 (spec halyard-sour, version 1) is not as it was written",
		`DROP TRIGGER change_remains; DELETE FROM change WHERE seq = 3`:                                            "those between are missing",
		`UPDATE record SET body = replace(body, 'Sour', 'Soup')`:                                                   "record spec halyard-sour is not what change 2 made it",
		`UPDATE venue SET seq = 99`:                                                                                "the log ends at change 7, the venue says 99",
		`DROP TRIGGER record_remains; DELETE FROM link; DELETE FROM record WHERE kind = 'out'`:                     "points to a row of record that is not there",
		`DELETE FROM link WHERE kind = 'right'`:                                                                    "the link from right halyard-sour to spec halyard-sour is missing",
		`INSERT INTO link VALUES ('house', 'bottle', 'navy-gin-1', 'spec', 'halyard-sour')`:                        "a link from bottle navy-gin-1 to spec halyard-sour is in no record",
		`INSERT INTO record SELECT venue, kind, 'ghost', version, seq, gone, body FROM record WHERE kind = 'spec'`: "record spec ghost is not in the log",
	} {
		path := filepath.Join(t.TempDir(), "house.db")
		s, err := Open(t.Context(), path, Options{})
		require.NoError(t, err)
		write(t, s, putAll(every())...)
		require.NoError(t, s.Close())
		run(t, path, text)
		_, err = Verify(t.Context(), path)
		require.ErrorIs(t, err, house.ErrDamaged, text)
		assert.Contains(t, err.Error(), want)
		s, err = Open(t.Context(), path, Options{})
		require.NoError(t, err)
		assert.ErrorIs(t, s.Check(t.Context()), house.ErrDamaged)
		require.NoError(t, s.Close())
	}
}

func TestRestoreMovesTheFormerHouseAside(t *testing.T) {
	dir := t.TempDir()
	path, backup := filepath.Join(dir, "house.db"), filepath.Join(dir, "backup.db")
	s := openAt(t, path, Options{})
	write(t, s, house.Put(gin(), 0))
	require.NoError(t, s.Backup(t.Context(), backup))
	write(t, s, house.Put(sour(), 0))
	require.NoError(t, s.Close())
	_, err := Restore(t.Context(), backup, path, RestoreOptions{At: noon})
	require.ErrorIs(t, err, house.ErrConflict)
	aside, err := Restore(t.Context(), backup, path, RestoreOptions{At: noon, Replace: true})
	require.NoError(t, err)
	assert.Equal(t, path+".before-20240506T120000Z", aside)
	_, err = openAt(t, path, Options{}).Get(t.Context(), sour().Ref())
	assert.ErrorIs(t, err, house.ErrNotFound)
	_, err = openAt(t, aside, Options{}).Get(t.Context(), sour().Ref())
	assert.NoError(t, err)
}

func TestBackupWhileWriting(t *testing.T) {
	dir := t.TempDir()
	s := openAt(t, filepath.Join(dir, "house.db"), Options{})
	write(t, s, house.Put(gin(), 0))
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() {
		defer close(done)
		for v := int64(1); ctx.Err() == nil; v++ {
			if _, err := s.Write(context.Background(), who, house.Put(gin(), v)); !assert.NoError(t, err) {
				return
			}
		}
	}()
	var last int
	for _, name := range []string{"a", "b", "c"} {
		path := filepath.Join(dir, name)
		require.NoError(t, s.Backup(t.Context(), path))
		r, err := Verify(t.Context(), path)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, r.Changes, last)
		last = r.Changes
	}
	stop()
	<-done
}

func TestEveryKindOfFailureHasAMessage(t *testing.T) {
	for _, k := range house.Kinds() {
		require.NotEmpty(t, messages[k], k)
		err := wrap(errors.New("cause"), func(error) error { return k }, "open", "x.db")
		assert.ErrorIs(t, err, k)
		if k != house.ErrDamaged { // of which it says where
			assert.NotContains(t, err.Error(), "cause", "the cause is for the log")
		}
	}
	assert.ErrorIs(t, wrap(errors.New("?"), func(error) error { return nil }, "open", ""), house.ErrInternal)
}

func TestItemsReadBackAsStored(t *testing.T) {
	for _, it := range every() {
		body, err := house.Encode(it)
		require.NoError(t, err)
		got, err := house.Decode(it.Ref().Kind, body)
		require.NoError(t, err)
		assert.Equal(t, it, got)
		var m map[string]any
		require.NoError(t, json.Unmarshal(body, &m))
		m["unheard_of"] = 1
		body, err = json.Marshal(m)
		require.NoError(t, err)
		_, err = house.Decode(it.Ref().Kind, body)
		assert.ErrorIs(t, err, house.ErrInvalid, "a field nobody knows")
	}
}

func BenchmarkDurableWrite(b *testing.B) {
	s, err := Open(b.Context(), filepath.Join(b.TempDir(), "house.db"), Options{})
	require.NoError(b, err)
	defer s.Close()
	bottle, version := gin(), int64(0)
	for b.Loop() {
		done, err := s.Write(b.Context(), who, house.Put(bottle, version))
		if err != nil {
			b.Fatal(err)
		}
		version = done[0].Version
	}
}
