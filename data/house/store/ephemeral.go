package store

import (
	"context"
	"time"

	"counterpour/data/house"
)

func (k *keeper) Share(ctx context.Context, now time.Time, list ...house.Ephemeral) error {
	return k.putAll(ctx, now, `INSERT INTO ephemeral (venue, kind, id, until, body) VALUES ($1, $2, $3, $4, $5)
		ON CONFLICT (venue, kind, id) DO UPDATE SET until = excluded.until, body = excluded.body`, list)
}

func (k *keeper) Renew(ctx context.Context, now time.Time, list ...house.Ephemeral) error {
	return k.putAll(ctx, now, `UPDATE ephemeral SET until = $4, body = $5 WHERE venue = $1 AND kind = $2 AND id = $3`, list)
}

// putAll deletes expired ephemerals and then executes a statement for each one in list.
func (k *keeper) putAll(ctx context.Context, now time.Time, statement string, list []house.Ephemeral) error {
	for i := range list {
		if err := list[i].Check(); err != nil {
			return err
		}
	}
	if len(list) == 0 {
		return nil
	}
	return k.during("share", k.key, func() error {
		return k.db.write(ctx, func(c conn) error {
			if err := k.clear(ctx, c, now); err != nil {
				return err
			}
			for _, e := range list {
				if err := c.exec(ctx, statement, k.venue, e.Kind, e.ID, e.Until.UnixMilli(), e.Body); err != nil {
					return err
				}
			}
			return nil
		})
	})
}

func (k *keeper) Agree(ctx context.Context, now time.Time, e house.Ephemeral) (agreed house.Ephemeral, err error) {
	if err := e.Check(); err != nil {
		return agreed, err
	}
	if there, found, err := k.Shared(ctx, now, e.Kind, e.ID); err != nil || found {
		return there, err
	}
	err = k.during("share", k.key, func() error {
		return k.db.write(ctx, func(c conn) error {
			if err := k.clear(ctx, c, now); err != nil {
				return err
			}
			err := c.exec(ctx, `INSERT INTO ephemeral (venue, kind, id, until, body) VALUES ($1, $2, $3, $4, $5) ON CONFLICT DO NOTHING`,
				k.venue, e.Kind, e.ID, e.Until.UnixMilli(), e.Body)
			if err != nil {
				return err
			}
			agreed, _, err = shared(ctx, c, k.venue, now, e.Kind, e.ID)
			return err
		})
	})
	return agreed, err
}

func (k *keeper) Shared(ctx context.Context, now time.Time, kind, id string) (e house.Ephemeral, found bool, err error) {
	err = k.during("read what is shared of", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			e, found, err = shared(ctx, c, k.venue, now, kind, id)
			return err
		})
	})
	return e, found, err
}

func (k *keeper) AllShared(ctx context.Context, now time.Time, kind string) (list []house.Ephemeral, err error) {
	err = k.during("read what is shared of", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			return each(ctx, c, func(rs rows) error {
				e := house.Ephemeral{Kind: kind}
				err := scanEphemeral(rs, &e)
				list = append(list, e)
				return err
			}, `SELECT id, until, body FROM ephemeral WHERE venue = $1 AND kind = $2 AND until > $3 ORDER BY id`, k.venue, kind, now.UnixMilli())
		})
	})
	return list, err
}

func (k *keeper) Unshare(ctx context.Context, kind string, ids ...string) error {
	if len(ids) == 0 {
		return nil
	}
	return k.during("share", k.key, func() error {
		return k.db.write(ctx, func(c conn) error {
			for _, id := range ids {
				if err := c.exec(ctx, `DELETE FROM ephemeral WHERE venue = $1 AND kind = $2 AND id = $3`, k.venue, kind, id); err != nil {
					return err
				}
			}
			return nil
		})
	})
}

// clear deletes expired ephemerals.
func (k *keeper) clear(ctx context.Context, c conn, now time.Time) error {
	return c.exec(ctx, `DELETE FROM ephemeral WHERE venue = $1 AND until <= $2`, k.venue, now.UnixMilli())
}

func shared(ctx context.Context, c conn, venue string, now time.Time, kind, id string) (e house.Ephemeral, found bool, err error) {
	e.Kind = kind
	err = each(ctx, c, func(rs rows) error {
		found = true
		return scanEphemeral(rs, &e)
	}, `SELECT id, until, body FROM ephemeral WHERE venue = $1 AND kind = $2 AND id = $3 AND until > $4`, venue, kind, id, now.UnixMilli())
	return e, found, err
}

func scanEphemeral(rs rows, e *house.Ephemeral) error {
	var until int64
	err := rs.Scan(&e.ID, &until, &e.Body)
	e.Until = time.UnixMilli(until).UTC()
	return err
}
