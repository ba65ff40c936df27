package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/store/file"

	_ "modernc.org/sqlite" // the engine
)

// Options of [Open] and [OpenPostgres]; the zero value is valid.
type Options struct {
	// Venue is the name of the bar; empty means "house". An SQLite file made by Open
	// holds one venue, a PostgreSQL database any number.
	Venue string
	// Existing opens an existing house only. If there is none, opening fails with
	// [house.ErrNotFound].
	Existing bool
	// ReadOnly opens an existing house beside a process that may have it open for
	// writing. In a file, subscribers are not notified of that process's changes. A house
	// with the schema of a later program can be opened this way if the tables that are
	// read still have their columns.
	ReadOnly bool

	pragmas []string // for tests that fill the disk
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

// Open opens the house in a file. It creates one if there is none and o allows it, and
// migrates an older schema. It fails with [ErrBusy] if this or another process has it
// open; [ErrReadOnly], [ErrFull] or [ErrNotFound] if the disk or folder does not allow
// it; [ErrDamaged] if the file is no house; [ErrNewer] if a later program wrote it.
func Open(ctx context.Context, path string, o Options) (house.Store, error) {
	venue, err := o.venue()
	if err != nil {
		return nil, err
	}
	path = file.RealPath(path)
	if err := inspect(path, o.mayMake()); err != nil { // before a lock file is created beside a file that is no house
		return nil, wrap(err, classifySQLite, "open", path)
	}
	if err := file.OneName(path); err != nil {
		return nil, err
	}
	if o.ReadOnly {
		db, err := openReadOnly(ctx, path)
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

// OpenMemory creates an empty house in memory, which is gone when it is closed.
func OpenMemory(ctx context.Context) (house.Store, error) {
	s := &sqlite{path: "memory", base: "file:/" + rand.Text() + "?vfs=memdb&", memory: true}
	if err := s.open(ctx, defaultVenue, nil); err != nil {
		return nil, wrap(err, classifySQLite, "open", s.path)
	}
	return newKeeper(s, defaultVenue, s.path), nil
}

// sqlite is a house in a file or in memory, with one connection that writes and some that
// read.
type sqlite struct {
	path   string
	base   string // URI of the database, without its parameters
	memory bool
	newer  bool // a later program made the schema; read only
	lock   *file.Lock
	file   *os.File // lock on the file itself; nil if there is none
	db     *sql.DB  // nil if the house is read only, like writer
	writer *sql.Conn
	kept   []file.Kept
	turn   chan struct{} // semaphore of one: held while writing
	reads  *sql.DB
}

// location returns the URI of a file, with special characters escaped.
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
			_ = os.Remove(path + suffix) // nothing was stored in it
		}
	}
	return s, err
}

// openReadOnly opens an existing file for reading. It takes part in the engine's locking,
// which allows readers beside one writer; for that the engine must be able to write to
// the file. query_only keeps statements from writing.
func openReadOnly(ctx context.Context, path string) (s *sqlite, err error) {
	s = &sqlite{path: path, base: location(path) + "mode=rw&"}
	if s.reads, err = openReaders(s.base + common + "&_pragma=query_only(1)"); err != nil {
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

// open connects, and disconnects again if anything fails.
func (s *sqlite) open(ctx context.Context, venue string, pragmas []string) (err error) {
	s.turn = make(chan struct{}, 1)
	if s.db, err = sql.Open("sqlite", s.base+common); err != nil {
		return err
	}
	pool := openReaders
	if s.memory {
		pool = func(dsn string) (*sql.DB, error) { return sql.Open("sqlite", dsn) }
	}
	if s.reads, err = pool(s.base + common + "&_pragma=query_only(1)"); err != nil {
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

// prepare migrates the file to the newest schema and sets durable writing up.
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
		return noteWAL(ctx, c)
	})
	if err != nil {
		return err
	}
	if err := s.startWAL(ctx); err != nil { // after the note, so that the note is in the file and not only in the WAL
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

// identify returns the schema version of the file, 0 if it is new. It fails if the file
// is no house.
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
	return file.InPlace(s.kept) // do not acknowledge writes to a file that was removed
}

// transaction calls f and commits, or rolls back if f fails. ctx can stop it between
// statements but not within one: an interrupted engine may have begun a statement that it
// reports as not begun, or fail to roll back. Once f has returned, ctx is ignored and the
// commit is completed.
func (s *sqlite) transaction(ctx context.Context, f func(conn) error) (err error) {
	c := wholeStatements{sqliteConn{s.writer}}
	firmly := context.WithoutCancel(ctx)
	if err := c.exec(ctx, `BEGIN IMMEDIATE`); err != nil {
		return err
	}
	done := false
	defer func() {
		if !done { // also if f panics
			_ = c.exec(firmly, `ROLLBACK`) // fails only if the engine has rolled back already
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
		return err // the file was removed: its content no longer counts
	}
	tx, err := s.reads.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // read only
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

// announce does nothing: only one process has the file open.
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
		awaitClosed(s.reads)
	}
	if s.writer != nil {
		s.endWAL()
		keep(s.writer.Close())
	}
	if s.db != nil {
		keep(s.db.Close()) // the last connection checkpoints the WAL
	}
	if s.file != nil {
		keep(s.file.Close()) // after the engine: closing the file releases the engine's locks on it
	}
	if s.lock != nil {
		s.lock.Release()
	}
	return first
}

// closePatience is how long a connection of a closed pool may take to end. A statement that
// was cancelled ends within milliseconds.
const closePatience = 5 * time.Second

// awaitClosed waits until a closed pool has closed the connections that were in use too,
// which [sql.DB.Close] does not: the WAL can't be ended before.
func awaitClosed(pool *sql.DB) {
	for late := time.Now().Add(closePatience); pool.Stats().OpenConnections > 0 && time.Now().Before(late); {
		time.Sleep(time.Millisecond)
	}
}

// sqliteConn implements conn on a connection or a transaction of database/sql.
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

// wholeStatements is a conn that checks its context before each statement, but does not
// interrupt one.
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

// cancelled returns the context's error if it has one or its time is up, otherwise the
// engine's: a connection that was given the same time may end by it a moment before.
func cancelled(ctx context.Context, err error) error {
	if err == nil {
		return nil
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if end, limited := ctx.Deadline(); limited && !time.Now().Before(end) {
		return context.DeadlineExceeded
	}
	return err
}

type sqliteRows struct{ *sql.Rows }

func (r sqliteRows) Close() { _ = r.Rows.Close() } // Err has reported it

// exists reports whether there is something at path.
