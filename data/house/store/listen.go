package store

import (
	"context"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
)

// How long a silent connection is trusted before it is pinged, and the timeout of the
// ping.
const (
	pingEvery   = 3 * time.Second
	pingTimeout = 3 * time.Second
)

// listener receives notifications of the changes that any server makes to a venue. After
// a lost connection it wakes all subscribers, since it may have missed some.
type listener struct {
	stop context.CancelFunc
	done sync.WaitGroup
}

func (p *postgres) listen(ctx context.Context, venue string, f *feed) (*listener, error) {
	c, err := p.listenConn(ctx)
	if err != nil {
		return nil, err
	}
	ctx, stop := context.WithCancel(context.WithoutCancel(ctx))
	l := &listener{stop: stop}
	l.done.Add(1)
	go func() {
		defer l.done.Done()
		for ctx.Err() == nil {
			c = p.awaitNotice(ctx, c, venue, f)
		}
		if c != nil {
			closeConn(c)
		}
	}()
	return l, nil
}

func (l *listener) close() {
	l.stop()
	l.done.Wait()
}

// listenConn opens a connection that listens for notifications.
func (p *postgres) listenConn(ctx context.Context) (*pgx.Conn, error) {
	c, err := pgx.ConnectConfig(ctx, p.pool.Config().ConnConfig)
	if err != nil {
		return nil, err
	}
	if _, err := c.Exec(ctx, `LISTEN `+noticeChannel); err != nil {
		closeConn(c)
		return nil, err
	}
	return c, nil
}

// awaitNotice waits for one notification. If it has no connection, it opens one.
func (p *postgres) awaitNotice(ctx context.Context, c *pgx.Conn, venue string, f *feed) (next *pgx.Conn) {
	defer func() {
		if recover() != nil { // keep the program running, but not the connection
			next = nil
		}
	}()
	if c == nil {
		c, err := p.listenConn(ctx)
		if err != nil {
			select {
			case <-time.After(feedRetry):
			case <-ctx.Done():
			}
			return nil
		}
		f.wake()
		return c
	}
	heard, err := p.wait(ctx, c, venue)
	if err != nil {
		closeConn(c)
		if ctx.Err() == nil {
			p.pool.Reset() // the other connections of the pool may be dead too, without an error
		}
		return nil
	}
	if heard {
		f.wake()
	}
	return c
}

// wait waits for a notification, and reports whether it is for the venue. If none arrives
// for a while it pings the server, since a dead connection cannot be told from a silent
// one.
func (p *postgres) wait(ctx context.Context, c *pgx.Conn, venue string) (heard bool, err error) {
	quiet, stop := context.WithTimeout(ctx, pingEvery)
	defer stop()
	n, err := c.WaitForNotification(quiet)
	if err == nil {
		return n.Payload == venue, nil
	}
	if ctx.Err() != nil || quiet.Err() == nil {
		return false, err
	}
	ping, done := context.WithTimeout(ctx, pingTimeout)
	defer done()
	return false, c.Ping(ping)
}

// closeConn closes a connection, with a short timeout in case the server is gone.
func closeConn(c *pgx.Conn) {
	ctx, stop := context.WithTimeout(context.Background(), shutTimeout)
	defer stop()
	_ = c.Close(ctx)
}
