package store

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strconv"
	"time"

	"counterpour/data/house"
)

// database is an engine. Statements number their parameters $1, $2 …
type database interface {
	// read calls f within one consistent read transaction.
	read(ctx context.Context, f func(conn) error) error
	// write calls f within one transaction, which is durable when write returns.
	write(ctx context.Context, f func(conn) error) error
	// check returns damage that only the engine can detect.
	check(ctx context.Context) ([]string, error)
	backup(ctx context.Context, venue, path string) error
	// announce notifies other servers of a change when its transaction commits.
	announce(ctx context.Context, c conn, venue string) error
	classify(err error) error
	close() error
}

// conn is a connection within a transaction.
type conn interface {
	exec(ctx context.Context, query string, args ...any) error
	query(ctx context.Context, query string, args ...any) (rows, error)
}

type rows interface {
	Next() bool
	Scan(into ...any) error
	Err() error
	Close()
}

// each calls f for every row of a query.
func each(ctx context.Context, c conn, f func(rows) error, query string, args ...any) error {
	rs, err := c.query(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rs.Close()
	for rs.Next() {
		if err := f(rs); err != nil {
			return err
		}
	}
	return rs.Err()
}

// one scans the only row of a query into the pointers; found is false if there is none.
func one(ctx context.Context, c conn, into []any, query string, args ...any) (found bool, err error) {
	err = each(ctx, c, func(rs rows) error {
		found = true
		return rs.Scan(into...)
	}, query, args...)
	return found, err
}

// recordRow and changeRow are rows of the tables, without the venue.
type recordRow struct {
	ref          house.Ref
	version, seq int64
	gone         bool
	body         string
}

type changeRow struct {
	seq     int64
	at      string
	actor   string
	ref     house.Ref
	version int64
	action  house.Action
	body    string
	seal    string
}

const (
	recordColumns = "kind, id, version, seq, gone, body"
	changeColumns = "seq, at, actor, kind, id, version, action, body, seal"
)

func (r *recordRow) scan(rs rows) error {
	var gone int64
	err := rs.Scan(&r.ref.Kind, &r.ref.ID, &r.version, &r.seq, &gone, &r.body)
	r.gone = gone != 0
	return err
}

func (r *changeRow) scan(rs rows) error {
	return rs.Scan(&r.seq, &r.at, &r.actor, &r.ref.Kind, &r.ref.ID, &r.version, &r.action, &r.body, &r.seal)
}

// sealed returns the checksum of a row. It changes if any byte of the row does.
func (r *changeRow) sealed() string {
	h := sha256.New()
	for _, s := range []string{strconv.FormatInt(r.seq, 10), r.at, r.actor, string(r.ref.Kind), r.ref.ID,
		strconv.FormatInt(r.version, 10), string(r.action), r.body} {
		fmt.Fprintf(h, "%d:%s", len(s), s)
	}
	return hex.EncodeToString(h.Sum(nil)[:16])
}

func (r *recordRow) entry() (house.Entry, error) {
	item, err := house.DecodeKept(r.ref.Kind, []byte(r.body))
	if err != nil {
		return house.Entry{}, unreadable(r.ref, err)
	}
	return house.Entry{Item: item, Version: r.version, Seq: r.seq}, nil
}

func (r *changeRow) change() (house.Change, error) {
	at, err := time.Parse(time.RFC3339Nano, r.at)
	if err != nil {
		return house.Change{}, unreadable(r.ref, err)
	}
	c := house.Change{Seq: r.seq, At: at, Actor: r.actor, Ref: r.ref, Version: r.version, Action: r.action}
	if r.body == "" || ofLater(r.ref.Kind) {
		return c, nil
	}
	if c.Item, err = house.DecodeKept(r.ref.Kind, []byte(r.body)); err != nil {
		return house.Change{}, unreadable(r.ref, err)
	}
	return c, nil
}

func unreadable(ref house.Ref, err error) error {
	return &house.Error{Kind: house.ErrDamaged, Op: "read", Key: ref.String(), Message: messages[house.ErrDamaged],
		Places: []string{ref.String() + ": " + err.Error()}, Cause: err}
}

// insertChange and putRecord write complete rows.
func insertChange(ctx context.Context, c conn, venue string, r *changeRow) error {
	return c.exec(ctx, `INSERT INTO change (venue, `+changeColumns+`) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)`,
		venue, r.seq, r.at, r.actor, string(r.ref.Kind), r.ref.ID, r.version, string(r.action), r.body, r.seal)
}

func putRecord(ctx context.Context, c conn, venue string, r *recordRow) error {
	gone := int64(0)
	if r.gone {
		gone = 1
	}
	return c.exec(ctx, `INSERT INTO record (venue, `+recordColumns+`) VALUES ($1, $2, $3, $4, $5, $6, $7)
		ON CONFLICT (venue, kind, id) DO UPDATE SET version = excluded.version, seq = excluded.seq, gone = excluded.gone, body = excluded.body`,
		venue, string(r.ref.Kind), r.ref.ID, r.version, r.seq, gone, r.body)
}

func insertLink(ctx context.Context, c conn, venue string, from, to house.Ref) error {
	return c.exec(ctx, `INSERT INTO link (venue, kind, id, to_kind, to_id) VALUES ($1, $2, $3, $4, $5) ON CONFLICT DO NOTHING`,
		venue, string(from.Kind), from.ID, string(to.Kind), to.ID)
}

// ensureVenue creates the row on which the venue's writers queue.
func ensureVenue(ctx context.Context, c conn, venue string) error {
	var there int
	if found, err := one(ctx, c, []any{&there}, `SELECT 1 FROM venue WHERE name = $1`, venue); err != nil || found {
		return err // the role may lack the right to create venues
	}
	return c.exec(ctx, `INSERT INTO venue (name, seq) VALUES ($1, 0) ON CONFLICT DO NOTHING`, venue)
}

// record returns the row of a record, removed or not.
func record(ctx context.Context, c conn, venue string, ref house.Ref) (r recordRow, found bool, err error) {
	err = each(ctx, c, func(rs rows) error { found = true; return r.scan(rs) },
		`SELECT `+recordColumns+` FROM record WHERE venue = $1 AND kind = $2 AND id = $3`, venue, string(ref.Kind), ref.ID)
	return r, found, err
}

// records calls f for every record of some kinds, or of all kinds if none is given,
// removed or not, sorted by kind and id.
func records(ctx context.Context, c conn, venue string, f func(*recordRow) error, kinds ...house.Kind) error {
	scan := func(rs rows) error {
		var r recordRow
		if err := r.scan(rs); err != nil {
			return err
		}
		return f(&r)
	}
	if len(kinds) == 0 {
		return each(ctx, c, scan, `SELECT `+recordColumns+` FROM record WHERE venue = $1 ORDER BY kind, id`, venue)
	}
	for _, k := range slices.Compact(slices.Sorted(slices.Values(kinds))) {
		if err := each(ctx, c, scan, `SELECT `+recordColumns+` FROM record WHERE venue = $1 AND kind = $2 ORDER BY id`, venue, string(k)); err != nil {
			return err
		}
	}
	return nil
}

// changes calls f for up to limit changes after a sequence number.
func changes(ctx context.Context, c conn, venue string, after int64, limit int, f func(*changeRow) error) error {
	return eachChange(ctx, c, f, `SELECT `+changeColumns+` FROM change WHERE venue = $1 AND seq > $2 ORDER BY seq LIMIT $3`,
		venue, after, int64(limit))
}

func eachChange(ctx context.Context, c conn, f func(*changeRow) error, query string, args ...any) error {
	return each(ctx, c, func(rs rows) error {
		var r changeRow
		if err := r.scan(rs); err != nil {
			return err
		}
		return f(&r)
	}, query, args...)
}
