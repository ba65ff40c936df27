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

// A house in a file is written by way of a log beside it. Who closes it in order
// writes the log back and notes in the head of the file that it needs none. So a file
// that says it has a log, and lies without one, is a copy of a house in use, or has
// lost what lay beside it: either way the last changes may be missing.

// What a file says of its log stands among what passes, so that it needs no table of
// its own. A file without it was closed by a program that noted nothing.
const (
	logKind  = "log"
	logNoted = "noted"
)

// noteLog writes into a file that its head tells whether it was closed in order.
func noteLog(ctx context.Context, c conn) error {
	return c.exec(ctx, `INSERT INTO ephemeral (venue, kind, id, until, body) SELECT name, $1, $2, $3, '' FROM venue WHERE true ON CONFLICT DO NOTHING`,
		logKind, logNoted, never.UnixMilli())
}

// logsAreNoted reports whether the head of a file tells how it was closed.
func logsAreNoted(ctx context.Context, c conn, schema int) (noted bool, err error) {
	if schema < ephemeralSchema {
		return false, nil
	}
	_, err = one(ctx, c, []any{&noted}, `SELECT EXISTS (SELECT 1 FROM ephemeral WHERE kind = $1 AND id = $2)`, logKind, logNoted)
	return noted, err
}

// NeedsLog is the fault of a file that lies without its log; nil if it needs none.
func (r Report) NeedsLog(path string) error {
	if !r.NoLog {
		return nil
	}
	return fail(house.ErrDamaged, "open", path, "it was not closed in order and its log (%s-wal) is not beside it, so that the last changes may be missing; "+
		"only house backup copies a house in use: put the log back, or restore a backup, or this file under another name if it is all there is", filepath.Base(path))
}

// startLog makes the engine write by way of a log. What a log holds already is written
// back, so that the file itself notes what [noteLog] wrote.
func (s *sqlite) startLog(ctx context.Context) error {
	var mode string
	if _, err := one(ctx, sqliteConn{s.writer}, []any{&mode}, `PRAGMA journal_mode = WAL`); err != nil {
		return err
	}
	if mode != "wal" && !s.memory {
		return fail(house.ErrInternal, "open", s.path, "the disk does not allow a write-ahead log (journal mode %q); keep the house on a local disk", mode)
	}
	return sqliteConn{s.writer}.exec(ctx, `PRAGMA wal_checkpoint(PASSIVE)`) // and makes the file of the log
}

// endLog writes the log back and notes that the file needs none. While somebody else
// reads the house that cannot be, and once the file was moved it must not be: then the
// log stays.
func (s *sqlite) endLog() {
	if s.memory || (file.InPlace(s.kept) == nil && endLog(context.Background(), s.writer) == nil) {
		return
	}
	_ = s.writer.Raw(keepLog) // whoever opens the house next has the log, or is told
}

func endLog(ctx context.Context, c interface {
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

// keepLog tells a connection not to remove the log, should it be the last to close.
func keepLog(c any) error {
	control, ok := c.(modernc.FileControl)
	if !ok {
		return errors.New("the engine takes no orders about its log")
	}
	_, err := control.FileControlPersistWAL("main", 1)
	return err
}

// guest opens connections of those who only read a house that somebody else may write
// to: they leave its log where it is.
type guest struct {
	engine driver.Driver
	dsn    string
}

// openGuest returns a pool of such connections.
func openGuest(dsn string) (*sql.DB, error) {
	plain, err := sql.Open("sqlite", dsn) // connects to nothing yet; it is asked for its driver
	if err != nil {
		return nil, err
	}
	defer plain.Close()
	return sql.OpenDB(guest{plain.Driver(), dsn}), nil
}

// Connect opens one connection.
func (g guest) Connect(context.Context) (driver.Conn, error) {
	c, err := g.engine.Open(g.dsn)
	if err != nil {
		return nil, err
	}
	if err := keepLog(c); err != nil {
		_ = c.Close() // the error at hand says more
		return nil, err
	}
	return c, nil
}

// Driver is the engine's.
func (g guest) Driver() driver.Driver { return g.engine }
