package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"fmt"
	"net/url"
	"os"
	"path/filepath"

	"counterpour/data/house"
	"counterpour/data/house/store/file"

	_ "modernc.org/sqlite" // the engine
)

// Options of [Open] and [OpenPostgres]; the zero value is fine.
type Options struct {
	// Venue is the bar; empty means "house". An SQLite file made by Open holds
	// one, a PostgreSQL database any number.
	Venue string
	// Existing makes no house: where there is none, opening fails with
	// [house.ErrNotFound].
	Existing bool
	// ReadOnly opens an existing house beside whoever has it open for writing. It
	// takes no writes, and its subscribers hear nothing of the others' in a file. A
	// house with the schema of a later program is opened so as well, if what is
	// read of it is still where it was.
	ReadOnly bool

	pragmas []string // for tests that run out of room
}

const (
	defaultVenue  = "house"
	applicationID = 0x43504853 // marks an SQLite file as a house
	readers       = 4
)

func (o Options) venue() (string, error) {
	if o.Venue == "" {
		return defaultVenue, nil
	}
	if err := house.CheckID(o.Venue); err != nil {
		return "", fail(house.ErrInvalid, "open", o.Venue, "venue: %s", err)
	}
	return o.Venue, nil
}

func (o Options) mayMake() bool { return !o.Existing && !o.ReadOnly }

// Open opens the house in a file, and makes it if there is none and o allows it. An older
// schema is migrated. It fails with [ErrBusy] if another process, or this one,
// has it open; [ErrReadOnly], [ErrFull], [ErrNotFound] if the disk or folder
// does not serve; [ErrDamaged] if the file is no house; [ErrNewer] if a later
// program wrote it.
func Open(ctx context.Context, path string, o Options) (house.Store, error) {
	venue, err := o.venue()
	if err != nil {
		return nil, err
	}
	path = file.RealPath(path)
	if err := inspect(path, o.mayMake()); err != nil { // before a lock file is made beside a stranger's file
		return nil, wrap(err, classifySQLite, "open", path)
	}
	if err := file.OneName(path); err != nil {
		return nil, err
	}
	if o.ReadOnly {
		db, err := lookInto(ctx, path)
		if err != nil {
			return nil, wrap(err, classifySQLite, "open", path)
		}
		return newKeeper(db, venue, path), nil
	}
	l, err := file.Take("open", path)
	if err != nil {
		return nil, wrap(err, classifySQLite, "open", path)
	}
	db, err := openSQLite(ctx, path, venue, o.pragmas)
	if err != nil {
		l.Release()
		return nil, wrap(err, classifySQLite, "open", path)
	}
	db.lock = l
	return newKeeper(db, venue, path), nil
}

// OpenMemory makes an empty house that is gone once it is closed. It does all
// that a house in a file does, but outlive the program.
func OpenMemory(ctx context.Context) (house.Store, error) {
	s := &sqlite{path: "memory", base: "file:/" + rand.Text() + "?vfs=memdb&", memory: true}
	if err := s.open(ctx, defaultVenue, nil); err != nil {
		return nil, wrap(err, classifySQLite, "open", s.path)
	}
	return newKeeper(s, defaultVenue, s.path), nil
}

// sqlite is a house in a file, or in memory: one connection that writes, some
// that read.
type sqlite struct {
	path   string
	base   string // the URI of the database, up to its parameters
	memory bool
	newer  bool // a later program made its schema; it is only read
	lock   *file.Lock
	file   *os.File // holds the lock of the file itself; nil where there is none
	db     *sql.DB  // nil, as is writer, in a house that is only read
	writer *sql.Conn
	kept   []file.Kept
	turn   chan struct{} // holds one token: the turn to write
	reads  *sql.DB
}

// location is the URI of a file, whatever characters its path holds.
func location(path string) string {
	return "file:" + (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath() + "?"
}

const common = "_pragma=busy_timeout(5000)&_pragma=foreign_keys(1)&_pragma=synchronous(FULL)"

func openSQLite(ctx context.Context, path, venue string, pragmas []string) (*sqlite, error) {
	if err := inspect(path, true); err != nil {
		return nil, err
	}
	made := !file.Exists(path)
	if made {
		if err := file.MakePrivate(path); err != nil {
			return nil, err
		}
	}
	s := &sqlite{path: path, base: location(path)}
	var err error
	if s.file, err = file.LockItself(path); err != nil {
		return nil, err
	}
	err = s.open(ctx, venue, pragmas)
	if err != nil && made {
		for _, suffix := range []string{"", "-wal", "-shm", "-journal"} {
			_ = os.Remove(path + suffix) // nothing was kept in it
		}
	}
	return s, err
}

// lookInto opens a file that is there for reading. It takes part in the
// engine's own locking, which lets readers in beside one writer, and so may not
// open the file as unwritable; query_only keeps its statements from writing.
func lookInto(ctx context.Context, path string) (s *sqlite, err error) {
	s = &sqlite{path: path, base: location(path) + "mode=rw&"}
	if s.reads, err = openGuest(s.base + common + "&_pragma=query_only(1)"); err != nil {
		return nil, err
	}
	s.reads.SetMaxOpenConns(readers)
	s.reads.SetMaxIdleConns(readers)
	err = s.read(ctx, func(c conn) error {
		version, err := s.identify(ctx, c)
		if err != nil {
			return err
		}
		s.newer, err = mayRead(ctx, c, path, version)
		return err
	})
	if err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

// open connects, and closes again if anything fails.
func (s *sqlite) open(ctx context.Context, venue string, pragmas []string) (err error) {
	s.turn = make(chan struct{}, 1)
	if s.db, err = sql.Open("sqlite", s.base+common); err != nil {
		return err
	}
	if s.reads, err = sql.Open("sqlite", s.base+common+"&_pragma=query_only(1)"); err != nil {
		s.close()
		return err
	}
	s.reads.SetMaxOpenConns(readers)
	s.reads.SetMaxIdleConns(readers)
	if s.writer, err = s.db.Conn(ctx); err == nil {
		err = s.prepare(ctx, venue, pragmas)
	}
	if err != nil {
		s.close()
		return err
	}
	s.turn <- struct{}{}
	return nil
}

// prepare brings the file to the newest schema and makes it safe to write to.
func (s *sqlite) prepare(ctx context.Context, venue string, pragmas []string) error {
	c := sqliteConn{s.writer}
	version, err := s.identify(ctx, c)
	if err != nil {
		return err
	}
	err = s.transaction(ctx, func(c conn) error {
		to, err := migrate(ctx, c, "sqlite", s.path, version)
		if err != nil {
			return err
		}
		for _, q := range []string{fmt.Sprintf("PRAGMA application_id = %d", applicationID), fmt.Sprintf("PRAGMA user_version = %d", to)} {
			if err := c.exec(ctx, q); err != nil {
				return err
			}
		}
		if err := ensureVenue(ctx, c, venue); err != nil {
			return err
		}
		return noteLog(ctx, c)
	})
	if err != nil {
		return err
	}
	if err := s.startLog(ctx); err != nil { // after the note, which must not be in the log alone
		return err
	}
	for _, q := range pragmas {
		if err := c.exec(ctx, q); err != nil {
			return err
		}
	}
	if s.memory {
		return nil
	}
	if s.kept, err = file.KeptFiles(s.path); err != nil {
		return err
	}
	return file.SyncDir(filepath.Dir(s.path))
}

// identify returns the schema of the file, 0 if it is new, or says that it is
// no house.
func (s *sqlite) identify(ctx context.Context, c conn) (version int, err error) {
	var app, tables int
	for _, q := range []struct {
		text string
		into *int
	}{
		{`PRAGMA application_id`, &app}, {`PRAGMA user_version`, &version}, {`SELECT count(*) FROM sqlite_schema`, &tables},
	} {
		if _, err := one(ctx, c, []any{q.into}, q.text); err != nil {
			return 0, err
		}
	}
	if app != applicationID && (tables > 0 || app != 0) {
		return 0, fail(house.ErrDamaged, "open", s.path, "this is a database, but not a house; choose another file")
	}
	return version, nil
}

func (s *sqlite) write(ctx context.Context, f func(conn) error) error {
	if s.writer == nil {
		return readOnly(s.path, s.newer)
	}
	select {
	case <-s.turn:
	case <-ctx.Done():
		return ctx.Err()
	}
	defer func() { s.turn <- struct{}{} }()
	if err := file.InPlace(s.kept); err != nil {
		return err
	}
	if err := s.transaction(ctx, f); err != nil {
		return err
	}
	return file.InPlace(s.kept) // what went to a file that is gone is not acknowledged
}

// transaction commits what f did, or rolls it back. The caller's context counts
// between statements and not within one: an engine that is interrupted may have begun
// what it says it did not, or leave undone what is to undo it. Once f is done the
// context no longer counts at all: the commit is seen through.
func (s *sqlite) transaction(ctx context.Context, f func(conn) error) (err error) {
	c := wholeStatements{sqliteConn{s.writer}}
	firmly := context.WithoutCancel(ctx)
	if err := c.exec(ctx, `BEGIN IMMEDIATE`); err != nil {
		return err
	}
	done := false
	defer func() {
		if !done { // also when f panics
			_ = c.exec(firmly, `ROLLBACK`) // fails only if the engine has rolled back by itself
		}
	}()
	if err := f(c); err != nil {
		return err
	}
	if err := c.exec(firmly, `COMMIT`); err != nil {
		return err
	}
	done = true
	return nil
}

func (s *sqlite) read(ctx context.Context, f func(conn) error) error {
	if err := file.InPlace(s.kept); err != nil {
		return err // what is read from a file that is gone is nobody's any more
	}
	tx, err := s.reads.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // nothing was written
	return f(sqliteConn{tx})
}

func (s *sqlite) check(ctx context.Context) ([]string, error) {
	var places []string
	err := s.read(ctx, func(c conn) error {
		version, err := s.identify(ctx, c)
		if err != nil {
			return err
		}
		defined, err := schemaDamage(ctx, c, version)
		if err != nil {
			return err
		}
		places, err = integrity(ctx, c)
		places = append(defined, places...)
		return err
	})
	return places, err
}

// announce has nobody to tell: the file has one process.
func (s *sqlite) announce(context.Context, conn, string) error { return nil }

func (s *sqlite) classify(err error) error { return classifySQLite(err) }

func (s *sqlite) close() error {
	var first error
	keep := func(err error) {
		if first == nil {
			first = err
		}
	}
	if s.reads != nil {
		keep(s.reads.Close())
	}
	if s.writer != nil {
		s.endLog()
		keep(s.writer.Close())
	}
	if s.db != nil {
		keep(s.db.Close()) // the last one out writes the log back into the file
	}
	if s.file != nil {
		keep(s.file.Close()) // not before the engine: to close a file drops the engine's locks on it
	}
	if s.lock != nil {
		s.lock.Release()
	}
	return first
}

// sqliteConn lets both a connection and a transaction of database/sql be a conn.
type sqliteConn struct {
	c interface {
		ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
		QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	}
}

func (c sqliteConn) exec(ctx context.Context, query string, args ...any) error {
	_, err := c.c.ExecContext(ctx, query, args...)
	return cancelled(ctx, err)
}

func (c sqliteConn) query(ctx context.Context, query string, args ...any) (rows, error) {
	rs, err := c.c.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, cancelled(ctx, err)
	}
	return sqliteRows{rs}, nil
}

// wholeStatements is a conn whose context stops it before a statement, never within.
type wholeStatements struct{ sqliteConn }

func (c wholeStatements) exec(ctx context.Context, query string, args ...any) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return c.sqliteConn.exec(context.WithoutCancel(ctx), query, args...)
}

func (c wholeStatements) query(ctx context.Context, query string, args ...any) (rows, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return c.sqliteConn.query(context.WithoutCancel(ctx), query, args...)
}

// cancelled prefers the context's own error to the engine's word for it.
func cancelled(ctx context.Context, err error) error {
	if err != nil && ctx.Err() != nil {
		return ctx.Err()
	}
	return err
}

type sqliteRows struct{ *sql.Rows }

func (r sqliteRows) Close() { _ = r.Rows.Close() } // Err has told

// exists reports whether there is something at path.
