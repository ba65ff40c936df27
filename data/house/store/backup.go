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

// backup copies the file as it is at one moment, while it is in use. Memory has
// no file to attach another to.
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
		return mark(ctx, draft)
	})
}

// What a backup says of itself stands among what passes, so that it needs no table
// of its own, and stays there.
const (
	backupKind    = "backup"
	backupProgram = "program" // its body is the build that made the backup
)

var never = time.Date(9000, 1, 1, 0, 0, 0, 0, time.UTC)

// mark notes in a backup which build made it, and takes out what was shared for a
// while: a restored house must not let in who has signed out since.
func mark(ctx context.Context, draft string) (err error) {
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

// intoPlace lets fill write a house under another name, verifies it, and then
// gives it its own. What is at path already is never touched.
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

// RestoreOptions of [Restore].
type RestoreOptions struct {
	// Replace moves a house that is there already aside, to
	// PATH.before-20060102T150405Z and the like; without it, that is a conflict.
	Replace bool
	At      time.Time // names what is moved aside
}

// Restore puts a backup in the place of a house, which nobody may have open. A
// damaged backup is refused with [ErrDamaged] and the places, and nothing is
// touched. It returns the name that the former house was moved to, if any.
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
	if err := settle(ctx, draft); err != nil {
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

// settle makes of a file that may be written by way of a log one that needs none.
func settle(ctx context.Context, draft string) (err error) {
	db, err := sql.Open("sqlite", location(draft)+common)
	if err != nil {
		return err
	}
	defer func() {
		if shut := db.Close(); err == nil {
			err = shut
		}
	}()
	return endLog(ctx, db)
}
