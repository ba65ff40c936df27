package store

import (
	"context"

	"counterpour/data/house"
)

// mayRead reports whether a later version of the program made a house's schema. It fails
// if the tables and columns that this version reads are not all there.
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

// ofLater reports whether only a later version of the program knows a kind of record.
// Such a record is kept, and hidden from callers.
func ofLater(kind house.Kind) bool { return !house.Known(kind) }
