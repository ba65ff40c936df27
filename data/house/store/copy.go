package store

import (
	"context"

	"counterpour/data/house"
	"counterpour/data/house/store/file"
)

// backup copies a venue, with its whole log, into an SQLite file.
func (p *postgres) backup(ctx context.Context, venue, path string) error {
	return copyOut(ctx, p, venue, path)
}

// copyOut writes a venue of any database to a new SQLite file.
func copyOut(ctx context.Context, db database, venue, path string) error {
	return db.read(ctx, func(from conn) error {
		return intoPlace(ctx, path, func(draft string) error {
			file, err := openSQLite(ctx, draft, defaultVenue, nil)
			if err != nil {
				return err
			}
			err = file.write(ctx, func(to conn) error {
				return copyVenue(ctx, from, venue, to, defaultVenue)
			})
			if err == nil { // one file, without a WAL
				err = sqliteConn{file.writer}.exec(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`)
			}
			if shut := file.close(); err == nil {
				err = shut
			}
			if err == nil {
				err = noteBuild(ctx, draft)
			}
			return err
		})
	})
}

// RestoreVenue restores a backup into an empty venue of a PostgreSQL database. It refuses
// a damaged backup as [Restore] does, and a venue with changes in its log with
// [ErrConflict].
func RestoreVenue(ctx context.Context, backup string, into house.Store) error {
	k, ok := into.(*keeper)
	if !ok {
		return fail(house.ErrInvalid, "restore", backup, "this store takes no backups")
	}
	r, err := Verify(ctx, backup)
	if err != nil {
		return err
	}
	if len(r.Venues) != 1 {
		return fail(house.ErrInvalid, "restore", backup, "it holds %d venues; a backup holds one", len(r.Venues))
	}
	err = k.during("restore", k.key, func() error { return k.fill(ctx, backup, r.Venues[0]) })
	if err == nil {
		k.feed.wake()
	}
	return err
}

// fill migrates a copy of the backup if needed, and copies the venue from it.
func (k *keeper) fill(ctx context.Context, backup, venue string) error {
	return file.WithCopy(backup, func(path string) error {
		file, err := openSQLite(ctx, path, venue, nil)
		if err != nil {
			return err
		}
		defer file.close()
		return file.read(ctx, func(from conn) error {
			return k.db.write(ctx, func(to conn) error {
				var seq int64
				if _, err := one(ctx, to, []any{&seq}, `UPDATE venue SET seq = seq WHERE name = $1 RETURNING seq`, k.venue); err != nil {
					return err
				}
				if seq != 0 {
					return fail(house.ErrConflict, "restore", k.key, "the venue has %d changes; restore into a new one", seq)
				}
				if err := copyVenue(ctx, from, venue, to, k.venue); err != nil {
					return err
				}
				return k.db.announce(ctx, to, k.venue)
			})
		})
	})
}

// copyVenue copies log, records and links unchanged. The seals stay valid, since they do
// not cover the venue's name.
func copyVenue(ctx context.Context, from conn, venue string, to conn, as string) error {
	var seq int64
	if _, err := one(ctx, from, []any{&seq}, `SELECT seq FROM venue WHERE name = $1`, venue); err != nil {
		return err
	}
	if err := to.exec(ctx, `UPDATE venue SET seq = $1 WHERE name = $2`, seq, as); err != nil {
		return err
	}
	err := records(ctx, from, venue, func(r *recordRow) error { return putRecord(ctx, to, as, r) })
	if err != nil {
		return err
	}
	err = changes(ctx, from, venue, 0, everything, func(r *changeRow) error { return insertChange(ctx, to, as, r) })
	if err != nil {
		return err
	}
	return each(ctx, from, func(rs rows) error {
		var a, b house.Ref
		if err := rs.Scan(&a.Kind, &a.ID, &b.Kind, &b.ID); err != nil {
			return err
		}
		return insertLink(ctx, to, as, a, b)
	}, `SELECT kind, id, to_kind, to_id FROM link WHERE venue = $1`, venue)
}
