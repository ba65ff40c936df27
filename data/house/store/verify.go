package store

import (
	"context"
	"database/sql"
	"encoding/binary"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"counterpour/data/house"
	"counterpour/data/house/store/file"
)

// Report is the result of verifying a house file.
type Report struct {
	Schema  int
	Venues  []string // sorted by name
	Records int      // without removed ones
	Changes int
	Program string // the build that made the backup, if the file is one or was restored from one
	// NoWAL means that the file was not closed properly and its WAL is missing: it is a
	// copy of a house in use, and may lack the latest changes.
	NoWAL bool
}

// Verify reads a closed house file, such as a backup, completely, and changes nothing. It
// returns [ErrDamaged] with the places if the file is corrupt.
func Verify(ctx context.Context, path string) (Report, error) {
	path = file.RealPath(path) // the WAL lies beside the file, not beside a link to it
	r, places, err := verify(ctx, path)
	err = wrap(err, classifySQLite, "check", path)
	if err == nil {
		err = damaged("check", path, places)
	}
	return r, err
}

func verify(ctx context.Context, path string) (r Report, places []string, err error) {
	if err := inspect(path, false); err != nil {
		return r, nil, err
	}
	query := common + "&mode=ro"
	alone := !file.Exists(path + "-wal")
	if alone {
		query += "&immutable=1" // creates no files beside it, not even for a moment
	}
	db, err := sql.Open("sqlite", location(path)+query)
	if err != nil {
		return r, nil, err
	}
	defer db.Close()
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return r, nil, err
	}
	defer tx.Rollback() // read only
	c := sqliteConn{tx}
	if r.Schema, err = (&sqlite{path: path}).identify(ctx, c); err != nil {
		return r, nil, err
	}
	isNewer, known, err := compareSchema(path, r.Schema)
	if err == nil && isNewer {
		err = newer("check", path, r.Schema, known)
	}
	if err != nil {
		return r, nil, err
	}
	places, err = schemaDamage(ctx, c, r.Schema)
	if err != nil {
		return r, places, err
	}
	if alone && len(places) == 0 {
		if r.NoWAL, err = lacksWAL(ctx, c, path, r.Schema); err != nil {
			return r, nil, err
		}
	}
	more, err := integrity(ctx, c)
	if places = append(places, more...); err != nil || len(more) > 0 {
		return r, places, worst(err, places)
	}
	more, err = r.read(ctx, c)
	places = append(places, more...)
	return r, places, worst(err, places)
}

// worst drops an error if the places of the damage are known.
func worst(err error, places []string) error {
	if len(places) > 0 {
		return nil
	}
	return err
}

// read audits every venue and counts records.
func (r *Report) read(ctx context.Context, c conn) (places []string, err error) {
	err = each(ctx, c, func(rs rows) error {
		var name string
		err := rs.Scan(&name)
		r.Venues = append(r.Venues, name)
		return err
	}, `SELECT name FROM venue ORDER BY name`)
	if err != nil {
		return nil, err
	}
	for _, v := range r.Venues {
		found, err := audit(ctx, c, v, r.Schema >= linkedSchema)
		if err != nil {
			return nil, err
		}
		for _, p := range found {
			places = append(places, "venue "+v+": "+p)
		}
	}
	if r.Schema >= ephemeralSchema {
		if _, err := one(ctx, c, []any{&r.Program}, `SELECT body FROM ephemeral WHERE kind = $1 AND id = $2 ORDER BY venue LIMIT 1`, backupKind, backupProgram); err != nil {
			return places, err
		}
	}
	_, err = one(ctx, c, []any{&r.Records, &r.Changes}, `SELECT (SELECT count(*) FROM record WHERE gone = 0), (SELECT count(*) FROM change)`)
	return places, err
}

// compareSchema reports whether a later program made a schema, and the newest version
// that this program knows.
func compareSchema(key string, version int) (isNewer bool, known int, err error) {
	steps, err := migrationsOf("sqlite") // every engine has the same number of steps
	if err == nil && version < 1 {
		err = fail(house.ErrDamaged, "check", key, "it has no schema; it is no house")
	}
	return version > len(steps), len(steps), err
}

// integrity runs the engine's checks of pages, indexes and foreign keys.
func integrity(ctx context.Context, c conn) (places []string, err error) {
	err = each(ctx, c, func(rs rows) error {
		var text string
		if err := rs.Scan(&text); err != nil {
			return err
		}
		if text != "ok" {
			places = append(places, text)
		}
		return nil
	}, fmt.Sprintf(`PRAGMA integrity_check(%d)`, maxPlaces))
	if err != nil {
		return places, err
	}
	err = each(ctx, c, func(rs rows) error {
		var table, parent string
		var row, key sql.NullInt64
		if err := rs.Scan(&table, &row, &parent, &key); err != nil {
			return err
		}
		places = append(places, fmt.Sprintf("table %s, row %d points to a row of %s that is not there", table, row.Int64, parent))
		return nil
	}, `PRAGMA foreign_key_check`)
	return places, err
}

// lacksWAL reports whether a file needs a WAL that is missing.
func lacksWAL(ctx context.Context, c conn, path string, schema int) (bool, error) {
	keeps, err := usesWAL(path)
	if err != nil || !keeps {
		return false, err
	}
	return walIsNoted(ctx, c, schema)
}

// usesWAL reports whether a file is in WAL mode: byte 18 of its header is 2
// (https://sqlite.org/fileformat2.html, section 1.3.3).
func usesWAL(path string) (bool, error) {
	f, err := os.Open(path)
	if err != nil {
		return false, err
	}
	defer f.Close()
	var version [1]byte
	_, err = f.ReadAt(version[:], 18)
	return version[0] == 2, err
}

const sqliteMagic = "SQLite format 3\x00"

// inspect checks the header and the length of a file before the engine does, whose errors
// are vague here. If mayBeNew is true, the file need not exist.
func inspect(path string, mayBeNew bool) error {
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		switch {
		case mayBeNew && file.Exists(path+"-wal"): // the engine would delete it
			return fail(house.ErrDamaged, "open", path, "the file is not there, but its log is (%s-wal); put the file back beside it, or move the log away", filepath.Base(path))
		case mayBeNew:
			return nil
		}
		return noHouse(path, "place")
	}
	if err != nil {
		return err
	}
	defer f.Close()
	info, err := f.Stat()
	switch {
	case err != nil:
		return err
	case info.IsDir():
		return fail(house.ErrInvalid, "open", path, "it is a folder; name a file in it")
	case info.Size() == 0:
		return fail(house.ErrDamaged, "open", path, "the file is empty, which is not a house; restore a backup, or remove it if a new house is to be made here")
	}
	head := make([]byte, 100)
	if _, err := io.ReadFull(f, head); err != nil {
		return torn(path, fmt.Sprintf("the file ends at byte %d, before the end of its head", info.Size()))
	}
	if string(head[:16]) != sqliteMagic {
		return torn(path, "bytes 0 to 15 are not those of a house file")
	}
	page := int64(binary.BigEndian.Uint16(head[16:]))
	if page == 1 {
		page = 1 << 16
	}
	said := page * int64(binary.BigEndian.Uint32(head[28:]))
	counted := binary.BigEndian.Uint32(head[24:]) == binary.BigEndian.Uint32(head[92:])
	if wal, err := os.Stat(path + "-wal"); err == nil && wal.Size() > 0 {
		return nil // the rest may be in the WAL
	}
	if counted && info.Size() != said {
		return torn(path, fmt.Sprintf("the file is %d bytes long, its head says %d", info.Size(), said))
	}
	return nil
}

func torn(path, place string) error {
	err := fail(house.ErrDamaged, "open", path, "%s", messages[house.ErrDamaged])
	err.Places = []string{place}
	return err
}
