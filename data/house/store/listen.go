package store

import (
	"context"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
)

// How long a quiet connection is trusted, and how long a server may take to give
// a sign of life.
const (
	pingEvery   = 3 * time.Second
	pingTimeout = 3 * time.Second
)

// listener hears of changes that any server makes to a venue. What it misses
// while its connection is down it makes up for by waking all when it is back.
type listener struct {
	stop context.CancelFunc
	done sync.WaitGroup
}

func (p *postgres) listen(ctx context.Context, venue string, f *feed) (*listener, error) {
	c, err := p.ear(ctx)
	if err != nil {
		return nil, err
	}
	ctx, stop := context.WithCancel(context.WithoutCancel(ctx))
	l := &listener{stop: stop}
	l.done.Add(1)
	go func() {
		defer l.done.Done()
		for ctx.Err() == nil {
			c = p.hear(ctx, c, venue, f)
		}
		if c != nil {
			shut(c)
		}
	}()
	return l, nil
}

func (l *listener) close() {
	l.stop()
	l.done.Wait()
}

// ear is a connection that is told of changes.
func (p *postgres) ear(ctx context.Context) (*pgx.Conn, error) {
	c, err := pgx.ConnectConfig(ctx, p.pool.Config().ConnConfig)
	if err != nil {
		return nil, err
	}
	if _, err := c.Exec(ctx, `LISTEN `+noticeChannel); err != nil {
		shut(c)
		return nil, err
	}
	return c, nil
}

// hear waits for one notice, or for a new connection when it has none.
func (p *postgres) hear(ctx context.Context, c *pgx.Conn, venue string, f *feed) (next *pgx.Conn) {
	defer func() {
		if recover() != nil { // the program goes on; the connection is not to be trusted
			next = nil
		}
	}()
	if c == nil {
		c, err := p.ear(ctx)
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
		shut(c)
		if ctx.Err() == nil {
			p.pool.Reset() // what ended this connection may have ended the others, and they would not say so
		}
		return nil
	}
	if heard {
		f.wake()
	}
	return c
}

// wait waits for one notice, and reports whether it is of the venue. When none
// comes for a while it asks the server for a sign of life: a connection whose
// other end has gone says nothing by itself, and neither does a quiet one.
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

// shut closes a connection without waiting long for a server that is gone.
func shut(c *pgx.Conn) {
	ctx, stop := context.WithTimeout(context.Background(), shutTimeout)
	defer stop()
	_ = c.Close(ctx)
}
