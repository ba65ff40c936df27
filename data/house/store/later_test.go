package store

import (
	"context"
	"path/filepath"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// Fields that a later version wrote survive when an older version changes, restores or
// checks the record.
func TestFieldsOfALaterVersionStay(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		k := s.(*keeper)
		write(t, s, house.Put(gin(), 0))
		later := func() string {
			var body string
			require.NoError(t, k.db.read(t.Context(), func(c conn) error {
				r, _, err := record(t.Context(), c, k.venue, gin().Ref())
				body = r.body
				return err
			}))
			return body
		}
		// As a later version would write it: another field, sealed as everything is.
		require.NoError(t, k.db.write(t.Context(), func(c conn) error {
			w, err := k.begin(t.Context(), c, who, 1)
			if err != nil {
				return err
			}
			return w.put(t.Context(), gin().Ref(), gin(), `{"zest":{"of":["lime"]},"Name":"not this one"}`, 2, house.Changed)
		}))
		const want = `"zest":{"of":["lime"]}}`
		require.Contains(t, later(), want)
		assert.NotContains(t, later(), "not this one")

		renamed := gin()
		renamed.Name = "Navy gin"
		write(t, s, house.Put(renamed, 2))
		assert.Contains(t, later(), want)
		assert.Contains(t, later(), `"Navy gin"`)
		_, err := s.Undo(t.Context(), who, gin().Ref(), 3)
		require.NoError(t, err)
		assert.Contains(t, later(), want)
		got, err := house.Get[house.Bottle](t.Context(), s, gin().ID)
		require.NoError(t, err)
		assert.Equal(t, gin(), got.Item)
		require.NoError(t, s.Check(t.Context()))
	})
}

// A house whose tables a later version has changed is read only; what only that version
// knows is skipped.
func TestNewerHouseIsReadOnly(t *testing.T) {
	const later = `ALTER TABLE record ADD COLUMN shelf TEXT NOT NULL DEFAULT ''; CREATE TABLE later (x TEXT);
		INSERT INTO record (venue, kind, id, version, seq, gone, body) SELECT venue, 'playlist', 'opening', 1, 99, 0, '{}' FROM record WHERE kind = 'bottle';`
	const gone = `ALTER TABLE record RENAME COLUMN body TO text`
	ctx := context.Background()
	path := filepath.Join(t.TempDir(), "house.db")
	alterFile := func(text string) { run(t, path, text) }
	file := func(o Options) (house.Store, error) { return Open(ctx, path, o) }
	check := func(t *testing.T, open func(Options) (house.Store, error), alter func(string), number string) {
		s, err := open(Options{})
		require.NoError(t, err)
		write(t, s, house.Put(gin(), 0))
		require.NoError(t, s.Close())
		alter(later + number)

		_, err = open(Options{})
		require.ErrorIs(t, err, house.ErrNewer)
		s, err = open(Options{ReadOnly: true})
		require.NoError(t, err)
		defer func() { require.NoError(t, s.Close()) }()
		list, err := s.List(ctx)
		require.NoError(t, err)
		require.Len(t, list, 1, "and nothing of a kind that is not known")
		assert.Equal(t, gin(), list[0].Item)
		_, err = s.Get(ctx, house.Ref{Kind: "playlist", ID: "opening"})
		assert.ErrorIs(t, err, house.ErrNotFound)
		_, err = s.Write(ctx, who, house.Put(sour(), 0))
		require.ErrorIs(t, err, house.ErrNewer)
		assert.ErrorContains(t, err, "only reads it")
		require.ErrorIs(t, s.Share(ctx, noon, session("a", "", noon)), house.ErrNewer)

		alter(gone)
		_, err = open(Options{ReadOnly: true})
		assert.ErrorIs(t, err, house.ErrNewer, "what it reads is not where it was")
	}
	t.Run("sqlite", func(t *testing.T) { check(t, file, alterFile, `PRAGMA user_version = 99`) })
	t.Run("postgres", func(t *testing.T) {
		dsn := freshDatabase(t)
		check(t, func(o Options) (house.Store, error) { return OpenPostgres(ctx, dsn, o) }, func(text string) {
			c, err := pgx.Connect(ctx, dsn)
			require.NoError(t, err)
			_, err = c.PgConn().Exec(ctx, "SET search_path = "+postgresSchema+"; "+text).ReadAll()
			require.NoError(t, err)
			require.NoError(t, c.Close(ctx))
		}, `UPDATE schema_version SET version = 99`)
	})
}

// A kind of record that only a later version knows stays unchanged, and cannot be undone
// by a program that cannot read it.
func TestKindOfALaterVersionStays(t *testing.T) {
	onEveryEngine(t, func(t *testing.T, e engine) {
		s := e.open(t)
		k := s.(*keeper)
		list := house.Ref{Kind: "playlist", ID: "opening"}
		require.NoError(t, k.db.write(t.Context(), func(c conn) error {
			row := changeRow{seq: 1, at: dated(noon), actor: "ana", ref: list, version: 1, action: house.Added, body: `{"id":"opening"}`}
			row.seal = row.sealed()
			if err := putRecord(t.Context(), c, k.venue, &recordRow{list, 1, 1, false, row.body}); err != nil {
				return err
			}
			if err := insertChange(t.Context(), c, k.venue, &row); err != nil {
				return err
			}
			return c.exec(t.Context(), `UPDATE venue SET seq = 1 WHERE name = $1`, k.venue)
		}))
		write(t, s, house.Put(gin(), 0))
		entries, err := s.List(t.Context())
		require.NoError(t, err)
		assert.Len(t, entries, 1)
		changes, err := s.Changes(t.Context(), 0, 10)
		require.NoError(t, err)
		require.Len(t, changes, 2)
		assert.Equal(t, list, changes[0].Ref)
		_, err = s.Undo(t.Context(), who, list, 1)
		assert.ErrorIs(t, err, house.ErrNewer)
		require.NoError(t, s.Check(t.Context()))
		backup := filepath.Join(t.TempDir(), "backup.db")
		require.NoError(t, s.Backup(t.Context(), backup))
		report, err := Verify(t.Context(), backup)
		require.NoError(t, err)
		assert.Equal(t, 2, report.Records, "it is in the backup")
	})
}
