package store

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"path/filepath"

	"counterpour/data/house"
	"counterpour/data/house/store/file"

	modernc "modernc.org/sqlite"
)

// A house in a file is written through a write-ahead log (WAL) beside it. When the
// program closes the house, it checkpoints the WAL and notes in the header of the file
// that there is none. A file whose header says that it has a WAL, but that lies without
// one, is a copy of a house in use, or its WAL was lost. Either way the latest changes
// may be missing.

// The note is stored as an ephemeral without expiry, so that it needs no table of its
// own. A file without the note was written by a program that did not make any.
const (
	logKind  = "log"
	logNoted = "noted"
)

// noteWAL notes in a file that its header states whether it was closed properly.
func noteWAL(ctx context.Context, c conn) error {
	return c.exec(ctx, `INSERT INTO ephemeral (venue, kind, id, until, body) SELECT name, $1, $2, $3, '' FROM venue WHERE true ON CONFLICT DO NOTHING`,
		logKind, logNoted, never.UnixMilli())
}

// walIsNoted reports whether the header of a file states how it was closed.
func walIsNoted(ctx context.Context, c conn, schema int) (noted bool, err error) {
	if schema < ephemeralSchema {
		return false, nil
	}
	_, err = one(ctx, c, []any{&noted}, `SELECT EXISTS (SELECT 1 FROM ephemeral WHERE kind = $1 AND id = $2)`, logKind, logNoted)
	return noted, err
}

// NeedsWAL returns an error if a file lacks its WAL; nil if it needs none.
func (r Report) NeedsWAL(path string) error {
	if !r.NoWAL {
		return nil
	}
	return fail(house.ErrDamaged, "open", path, "it was not closed in order and its log (%s-wal) is not beside it, so that the last changes may be missing; "+
		"only house backup copies a house in use: put the log back, or restore a backup, or this file under another name if it is all there is", filepath.Base(path))
}

// startWAL switches the engine to WAL mode. It checkpoints an existing WAL, so that the
// file itself contains the note of [noteWAL].
func (s *sqlite) startWAL(ctx context.Context) error {
	var mode string
	if _, err := one(ctx, sqliteConn{s.writer}, []any{&mode}, `PRAGMA journal_mode = WAL`); err != nil {
		return err
	}
	if mode != "wal" && !s.memory {
		return fail(house.ErrInternal, "open", s.path, "the disk does not allow a write-ahead log (journal mode %q); keep the house on a local disk", mode)
	}
	return sqliteConn{s.writer}.exec(ctx, `PRAGMA wal_checkpoint(PASSIVE)`) // also creates the WAL file
}

// endWAL checkpoints the WAL and switches WAL mode off. If somebody else reads the house
// that is impossible, and if the file was moved it would do harm: then the WAL stays.
func (s *sqlite) endWAL() {
	if s.memory || (file.InPlace(s.kept) == nil && endWAL(context.Background(), s.writer) == nil) {
		return
	}
	_ = s.writer.Raw(keepWAL) // the next one to open the house finds the WAL, or gets an error
}

func endWAL(ctx context.Context, c interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}) error {
	var mode string
	if err := c.QueryRowContext(ctx, `PRAGMA journal_mode = DELETE`).Scan(&mode); err != nil {
		return err
	}
	if mode != "delete" {
		return fmt.Errorf("the journal mode stays %s", mode)
	}
	return nil
}

// keepWAL tells a connection not to delete the WAL, even if it is the last one to close.
func keepWAL(c any) error {
	control, ok := c.(modernc.FileControl)
	if !ok {
		return errors.New("the engine takes no orders about its log")
	}
	_, err := control.FileControlPersistWAL("main", 1)
	return err
}

// readerConnector opens connections that read. They leave the WAL in place, whoever writes
// to it, even if they are the last to close.
type readerConnector struct {
	engine driver.Driver
	dsn    string
}

// openReaders returns a pool of such connections.
func openReaders(dsn string) (*sql.DB, error) {
	plain, err := sql.Open("sqlite", dsn) // does not connect; only its driver is needed
	if err != nil {
		return nil, err
	}
	defer plain.Close()
	return sql.OpenDB(readerConnector{plain.Driver(), dsn}), nil
}

// Connect implements driver.Connector.
func (g readerConnector) Connect(context.Context) (driver.Conn, error) {
	c, err := g.engine.Open(g.dsn)
	if err != nil {
		return nil, err
	}
	if err := keepWAL(c); err != nil {
		_ = c.Close() // the first error matters more
		return nil, err
	}
	return c, nil
}

// Driver implements driver.Connector.
func (g readerConnector) Driver() driver.Driver { return g.engine }
