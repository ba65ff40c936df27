package store

import (
	"context"
	"fmt"
	"time"

	"counterpour/data/house"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

const (
	postgresSchema = "counterpour_house"
	noticeChannel  = "counterpour_house_change"
	migrationLock  = 0x43504853 // advisory lock: any number, the same for all servers
	connectTimeout = 10 * time.Second
	beginTimeout   = 5 * time.Second
	shutTimeout    = time.Second // timeout of closing a connection
	connections    = 8
)

// OpenPostgres opens a venue in a PostgreSQL database. It creates schema and venue if
// they do not exist and o allows it. Any number of servers may have the venue open. dsn
// is a connection string of PostgreSQL: a URL or key=value pairs. The first time, its
// role needs the right to create a schema; later the rights that one-venue.sql grants are
// enough.
func OpenPostgres(ctx context.Context, dsn string, o Options) (house.Store, error) {
	venue, err := o.venue()
	if err != nil {
		return nil, err
	}
	config, err := pgxpool.ParseConfig(dsn)
	if err != nil {
		return nil, fail(house.ErrInvalid, "open", "", "the connection string cannot be read; write postgres://user@host:5432/database")
	}
	if config.ConnConfig.ConnectTimeout == 0 {
		config.ConnConfig.ConnectTimeout = connectTimeout
	}
	config.ConnConfig.RuntimeParams["search_path"] = postgresSchema
	config.ConnConfig.RuntimeParams["synchronous_commit"] = "on" // whatever the role's default is
	config.MaxConns = connections
	config.ShouldPing = func(context.Context, pgxpool.ShouldPingParams) bool { return true } // a write must not get a connection that the server has dropped
	config.BeforeClose = func(c *pgx.Conn) { _ = c.PgConn().Conn().SetDeadline(time.Now().Add(shutTimeout)) }
	key := fmt.Sprintf("%s at %s/%s", venue, config.ConnConfig.Host, config.ConnConfig.Database)
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, wrap(err, classifyPostgres, "open", key)
	}
	p := &postgres{pool: pool, readOnly: o.ReadOnly, key: key}
	if !o.mayMake() {
		err = p.find(ctx, venue)
	}
	if err == nil && !o.ReadOnly {
		err = p.prepare(ctx, key, venue)
	}
	if err != nil {
		p.close()
		return nil, wrap(err, classifyPostgres, "open", key)
	}
	k := newKeeper(p, venue, key)
	l, err := p.listen(ctx, venue, k.feed)
	if err != nil {
		p.close()
		return nil, wrap(err, classifyPostgres, "open", key)
	}
	p.listener = l
	return k, nil
}

// postgres is a PostgreSQL database.
type postgres struct {
	pool     *pgxpool.Pool
	listener *listener
	readOnly bool
	newer    bool // a later program made the schema; read only
	key      string
}

// find looks a venue up and creates nothing.
func (p *postgres) find(ctx context.Context, venue string) error {
	return p.read(ctx, func(c conn) error {
		var there bool
		if _, err := one(ctx, c, []any{&there}, `SELECT to_regclass($1) IS NOT NULL`, postgresSchema+".venue"); err != nil {
			return err
		}
		if !there {
			return noHouse(p.key, "database")
		}
		var name string
		found, err := one(ctx, c, []any{&name}, `SELECT name FROM venue WHERE name = $1`, venue)
		if err != nil {
			return err
		}
		if !found {
			return noHouse(p.key, "venue")
		}
		var version int
		if _, err := one(ctx, c, []any{&version}, `SELECT version FROM schema_version`); err != nil {
			return err
		}
		isNewer, known, err := compareSchema(p.key, version)
		if err == nil && isNewer {
			if !p.readOnly {
				return newer("open", p.key, version, known)
			}
			p.newer, err = mayRead(ctx, c, p.key, version)
		}
		return err
	})
}

// prepare brings the schema to its newest version, one server at a time. If it is up to
// date, no right to create anything is needed.
func (p *postgres) prepare(ctx context.Context, key, venue string) error {
	return p.write(ctx, func(c conn) error {
		if err := c.exec(ctx, `SELECT pg_advisory_xact_lock($1)`, int64(migrationLock)); err != nil {
			return err
		}
		if err := makeSchema(ctx, c); err != nil {
			return err
		}
		version := 0
		found, err := one(ctx, c, []any{&version}, `SELECT version FROM schema_version`)
		if err != nil {
			return err
		}
		to, err := migrate(ctx, c, "postgres", key, version)
		if err != nil {
			return err
		}
		switch {
		case !found:
			err = c.exec(ctx, `INSERT INTO schema_version (version) VALUES ($1)`, to)
		case to != version:
			err = c.exec(ctx, `UPDATE schema_version SET version = $1`, to)
		}
		if err != nil {
			return err
		}
		return ensureVenue(ctx, c, venue)
	})
}

// makeSchema creates the schema that holds the tables, if it does not exist.
func makeSchema(ctx context.Context, c conn) error {
	var there bool
	if _, err := one(ctx, c, []any{&there}, `SELECT to_regclass($1) IS NOT NULL`, postgresSchema+".schema_version"); err != nil || there {
		return err
	}
	if err := c.exec(ctx, `CREATE SCHEMA IF NOT EXISTS `+postgresSchema); err != nil {
		return err
	}
	return c.exec(ctx, `CREATE TABLE IF NOT EXISTS schema_version (version INTEGER NOT NULL)`)
}

// read runs f in a transaction that keeps nothing, so that whatever fails once its context
// has ended failed by that: a connection that is cut off says so in many ways.
func (p *postgres) read(ctx context.Context, f func(conn) error) error {
	return cancelled(ctx, p.transaction(ctx, pgx.TxOptions{IsoLevel: pgx.RepeatableRead, AccessMode: pgx.ReadOnly}, f))
}

// write runs f in a transaction. f first locks the row of the venue, so that writers
// queue and each reads what the one before it committed.
func (p *postgres) write(ctx context.Context, f func(conn) error) error {
	if p.readOnly {
		return readOnly(p.key, p.newer)
	}
	return p.transaction(ctx, pgx.TxOptions{IsoLevel: pgx.ReadCommitted}, f)
}

func (p *postgres) transaction(ctx context.Context, o pgx.TxOptions, f func(conn) error) error {
	tx, err := p.begin(ctx, o)
	if err != nil {
		return err
	}
	firmly := context.WithoutCancel(ctx)
	defer func() { _ = tx.Rollback(firmly) }() // does nothing after a commit
	if err := f(postgresConn{tx}); err != nil {
		return cancelled(ctx, err)
	}
	return tx.Commit(firmly)
}

// begin begins a transaction. A timeout limits the wait for a server that does not
// answer, so that callers get an error before their own deadline.
func (p *postgres) begin(ctx context.Context, o pgx.TxOptions) (pgx.Tx, error) {
	soon, stop := context.WithTimeout(ctx, beginTimeout)
	defer stop()
	tx, err := p.pool.BeginTx(soon, o)
	if err != nil && soon.Err() != nil && ctx.Err() == nil {
		e := fail(house.ErrUnavailable, "begin", p.key, "the database server does not answer; nothing was kept of this")
		e.Cause = err
		return nil, e
	}
	return tx, cancelled(ctx, err)
}

func (p *postgres) close() error {
	if p.listener != nil {
		p.listener.close()
	}
	p.pool.Close()
	return nil
}

// check returns nothing: the server has its own tools to check its pages.
func (p *postgres) check(context.Context) ([]string, error) { return nil, nil }

func (p *postgres) announce(ctx context.Context, c conn, venue string) error {
	return c.exec(ctx, `SELECT pg_notify($1, $2)`, noticeChannel, venue)
}

func (p *postgres) classify(err error) error { return classifyPostgres(err) }

// postgresConn implements conn on a transaction. Without arguments, a text may hold
// several statements.
type postgresConn struct{ tx pgx.Tx }

func (c postgresConn) exec(ctx context.Context, query string, args ...any) error {
	if len(args) == 0 {
		_, err := c.tx.Conn().PgConn().Exec(ctx, query).ReadAll()
		return err
	}
	_, err := c.tx.Exec(ctx, query, args...)
	return err
}

func (c postgresConn) query(ctx context.Context, query string, args ...any) (rows, error) {
	return c.tx.Query(ctx, query, args...)
}
