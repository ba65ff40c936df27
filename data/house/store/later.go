package store

import (
	"context"

	"counterpour/data/house"
)

// mayRead reports whether a later program made the schema of a house that is to be
// read, and fails if what this one reads of it is no longer where it was.
func mayRead(ctx context.Context, c conn, key string, version int) (isNewer bool, err error) {
	isNewer, known, err := compareSchema(key, version)
	if err != nil || !isNewer {
		return isNewer, err
	}
	for _, text := range []string{
		`SELECT venue, ` + recordColumns + ` FROM record LIMIT 1`, `SELECT venue, ` + changeColumns + ` FROM change LIMIT 1`, `SELECT name, seq FROM venue LIMIT 1`,
	} {
		if err := each(ctx, c, func(rows) error { return nil }, text); err != nil {
			e := newer("open", key, version, known)
			e.Cause = err
			return true, e
		}
	}
	return true, nil
}

// ofLater reports whether a later version of the program wrote a kind of record that
// this one does not know. It is kept, and shown to nobody.
func ofLater(kind house.Kind) bool { return !house.Known(kind) }
