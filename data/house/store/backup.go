package store

import (
	"context"
	"database/sql"
	"os"
	"path/filepath"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/store/file"
	"counterpour/data/stamp"
)

// backup copies the file in a consistent state while it is in use. A database in memory
// has no file, so it is copied row by row.
func (s *sqlite) backup(ctx context.Context, venue, path string) error {
	if s.memory {
		return copyOut(ctx, s, venue, path)
	}
	return intoPlace(ctx, path, func(draft string) error {
		db, err := sql.Open("sqlite", s.base+common)
		if err != nil {
			return err
		}
		defer db.Close()
		if err := file.MakePrivate(draft); err != nil {
			return err
		}
		if err := (sqliteConn{db}).exec(ctx, `VACUUM INTO $1`, draft); err != nil {
			return err
		}
		return noteBuild(ctx, draft)
	})
}

// A backup stores which build made it as an ephemeral without expiry, so that this needs
// no table of its own.
const (
	backupKind    = "backup"
	backupProgram = "program" // its body is the build that made the backup
)

var never = time.Date(9000, 1, 1, 0, 0, 0, 0, time.UTC)

// noteBuild writes the build into a backup and deletes all other ephemerals: a restored house
// must not accept sessions that have ended since.
func noteBuild(ctx context.Context, draft string) (err error) {
	db, err := sql.Open("sqlite", location(draft)+common+"&_pragma=secure_delete(1)")
	if err != nil {
		return err
	}
	defer func() {
		if shut := db.Close(); err == nil {
			err = shut
		}
	}()
	c := sqliteConn{db}
	version, err := (&sqlite{path: draft}).identify(ctx, c)
	if err != nil || version < ephemeralSchema {
		return err
	}
	if err := c.exec(ctx, `DELETE FROM ephemeral`); err != nil {
		return err
	}
	return c.exec(ctx, `INSERT INTO ephemeral (venue, kind, id, until, body) SELECT name, $1, $2, $3, $4 FROM venue`,
		backupKind, backupProgram, never.UnixMilli(), stamp.Read().String())
}

// intoPlace lets fill write a house under a temporary name, verifies it and renames it to
// path. It never overwrites a file at path.
func intoPlace(ctx context.Context, path string, fill func(draft string) error) error {
	if file.Exists(path) {
		return fail(house.ErrConflict, "write", path, "there is something there already; choose another name")
	}
	draft := path + ".part"
	if err := os.Remove(draft); err != nil && !os.IsNotExist(err) {
		return err
	}
	err := fill(draft)
	if err == nil {
		err = file.Sync(draft)
	}
	if err == nil {
		_, err = Verify(ctx, draft)
	}
	if err == nil {
		err = os.Rename(draft, path)
	}
	if err != nil {
		_ = os.Remove(draft)
		return err
	}
	return file.SyncDir(filepath.Dir(path))
}

// RestoreOptions are options of [Restore].
type RestoreOptions struct {
	// Replace moves an existing house aside, to PATH.before-20060102T150405Z and the
	// like. Without it, an existing house is a conflict.
	Replace bool
	At      time.Time // part of the name of the house that is moved aside
}

// Restore replaces a house by a backup. No process may have the house open. A damaged
// backup is refused with [ErrDamaged] and the places, and nothing changes. aside is the
// path to which the former house was moved, if there was one.
func Restore(ctx context.Context, backup, path string, o RestoreOptions) (aside string, err error) {
	if _, err := Verify(ctx, backup); err != nil {
		return "", err
	}
	path = file.RealPath(path)
	l, err := file.Take("restore", path)
	if err != nil {
		return "", wrap(err, classifySQLite, "restore", path)
	}
	defer l.Release()
	aside, err = restore(ctx, backup, path, o)
	return aside, wrap(err, classifySQLite, "restore", path)
}

func restore(ctx context.Context, backup, path string, o RestoreOptions) (aside string, err error) {
	if info, err := os.Stat(backup + "-wal"); err == nil && info.Size() > 0 {
		return "", fail(house.ErrInvalid, "restore", backup, "part of it is still in the log beside it; it is a house in use, not a backup: back it up first")
	}
	there := file.Exists(path) || file.Exists(path+"-wal")
	if there && !o.Replace {
		return "", fail(house.ErrConflict, "restore", path, "there is a house there already; ask to replace it, or choose another name")
	}
	draft := path + ".restoring"
	defer func() {
		if err != nil {
			_ = os.Remove(draft)
		}
	}()
	if err := file.Copy(backup, draft); err != nil {
		return "", err
	}
	if err := dropWAL(ctx, draft); err != nil {
		return "", err
	}
	if _, err := Verify(ctx, draft); err != nil {
		return "", err
	}
	if there {
		aside = path + ".before-" + o.At.UTC().Format("20060102T150405Z")
		if file.Exists(aside) {
			return "", fail(house.ErrConflict, "restore", aside, "an earlier house was moved there already; wait a second")
		}
		if err := file.MoveAside(path, aside); err != nil {
			return "", err
		}
	}
	if err := os.Rename(draft, path); err != nil {
		return aside, err
	}
	return aside, file.SyncDir(filepath.Dir(path))
}

// dropWAL switches a file from WAL to a journal mode that needs no second file.
func dropWAL(ctx context.Context, draft string) (err error) {
	db, err := sql.Open("sqlite", location(draft)+common)
	if err != nil {
		return err
	}
	defer func() {
		if shut := db.Close(); err == nil {
			err = shut
		}
	}()
	return endWAL(ctx, db)
}
