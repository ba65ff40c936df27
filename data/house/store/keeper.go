package store

import (
	"context"
	"math"
	"sync"
	"time"

	"counterpour/data/house"
)

// keeper implements [house.Store] over any engine.
type keeper struct {
	db    database
	venue string
	feed  *feed
	key   string // the path or the venue, for messages

	mu      sync.RWMutex // read-locked by each operation in progress
	closed  bool
	ending  context.Context // cancelled when Close begins
	end     context.CancelFunc
	closing sync.Once
	closeAs error
}

var _ house.Store = (*keeper)(nil)

func newKeeper(db database, venue, key string) *keeper {
	k := &keeper{db: db, venue: venue, key: key, feed: newFeed()}
	k.ending, k.end = context.WithCancel(context.Background())
	return k
}

// during calls f unless the store is closed, and wraps its error.
func (k *keeper) during(op, key string, f func() error) error {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if k.closed {
		return fail(house.ErrClosed, op, key, "%s", messages[house.ErrClosed])
	}
	return wrap(f(), k.db.classify, op, key)
}

func (k *keeper) Close() error {
	k.closing.Do(func() {
		k.end()
		k.feed.close()
		k.mu.Lock()
		defer k.mu.Unlock()
		k.closed = true
		k.closeAs = wrap(k.db.close(), k.db.classify, "close", k.key)
	})
	return k.closeAs
}

func (k *keeper) Get(ctx context.Context, ref house.Ref) (e house.Entry, err error) {
	err = k.during("read", ref.String(), func() error {
		return k.db.read(ctx, func(c conn) error {
			r, found, err := record(ctx, c, k.venue, ref)
			if err != nil {
				return err
			}
			if !found || r.gone || ofLater(ref.Kind) {
				return fail(house.ErrNotFound, "read", ref.String(), "there is no such record")
			}
			e, err = r.entry()
			return err
		})
	})
	return e, err
}

func (k *keeper) List(ctx context.Context, kinds ...house.Kind) (list []house.Entry, err error) {
	err = k.during("list", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			return records(ctx, c, k.venue, func(r *recordRow) error {
				if r.gone || ofLater(r.ref.Kind) {
					return nil
				}
				e, err := r.entry()
				list = append(list, e)
				return err
			}, kinds...)
		})
	})
	return list, err
}

func (k *keeper) History(ctx context.Context, ref house.Ref) (list []house.Change, err error) {
	err = k.during("read the history of", ref.String(), func() error {
		return k.db.read(ctx, func(c conn) error {
			return eachChange(ctx, c, into(&list), `SELECT `+changeColumns+
				` FROM change WHERE venue = $1 AND kind = $2 AND id = $3 ORDER BY version`, k.venue, string(ref.Kind), ref.ID)
		})
	})
	if err == nil && len(list) == 0 {
		err = fail(house.ErrNotFound, "read the history of", ref.String(), "there never was such a record")
	}
	return list, err
}

func (k *keeper) Removed(ctx context.Context, kind house.Kind) (list []house.Change, err error) {
	err = k.during("read what was removed from", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			return eachChange(ctx, c, into(&list), `SELECT `+changeColumns+` FROM change WHERE venue = $1 AND kind = $2
				AND seq IN (SELECT seq FROM record WHERE venue = $1 AND kind = $2 AND gone = 1) ORDER BY seq DESC`, k.venue, string(kind))
		})
	})
	return list, err
}

func (k *keeper) Changes(ctx context.Context, after int64, limit int) (list []house.Change, err error) {
	err = k.during("read the log of", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			return changes(ctx, c, k.venue, after, limit, into(&list))
		})
	})
	return list, err
}

// into returns a function that appends rows to a list of changes.
func into(list *[]house.Change) func(*changeRow) error {
	return func(r *changeRow) error {
		c, err := r.change()
		*list = append(*list, c)
		return err
	}
}

func (k *keeper) Check(ctx context.Context) error {
	return k.during("check", k.key, func() error {
		places, err := k.db.check(ctx)
		if err != nil {
			return err
		}
		err = k.db.read(ctx, func(c conn) error {
			more, err := audit(ctx, c, k.venue, true)
			places = append(places, more...)
			return err
		})
		if err != nil {
			return err
		}
		return damaged("check", k.key, places)
	})
}

func (k *keeper) Backup(ctx context.Context, path string) error {
	return k.during("back up to", path, func() error { return k.db.backup(ctx, k.venue, path) })
}

// head returns the sequence number of the last change.
func (k *keeper) head(ctx context.Context) (seq int64, err error) {
	err = k.during("read the log of", k.key, func() error {
		return k.db.read(ctx, func(c conn) error {
			_, err := one(ctx, c, []any{&seq}, `SELECT seq FROM venue WHERE name = $1`, k.venue)
			return err
		})
	})
	return seq, err
}

func dated(t time.Time) string { return t.UTC().Round(0).Format(time.RFC3339Nano) }

// everything is a limit that is larger than any log.
const everything = math.MaxInt32
