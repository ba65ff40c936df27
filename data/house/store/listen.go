package store

import (
	"context"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
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
	n, err := c.WaitForNotification(ctx)
	if err != nil {
		shut(c)
		return nil
	}
	if n.Payload == venue {
		f.wake()
	}
	return c
}

// shut closes a connection without waiting long for a server that is gone.
func shut(c *pgx.Conn) {
	ctx, stop := context.WithTimeout(context.Background(), shutTimeout)
	defer stop()
	_ = c.Close(ctx)
}
