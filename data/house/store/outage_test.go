package store

import (
	"context"
	"fmt"
	"io"
	"net"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/pgtest"
)

// patience is how long what is waited for may take on a busy machine before a test
// gives it up; no test passes or fails by less.
const patience = time.Minute

// heardOf waits for one change.
func heardOf(t *testing.T, changes <-chan house.Change, seq int64) {
	t.Helper()
	select {
	case c, open := <-changes:
		require.True(t, open, "the feed ended")
		assert.Equal(t, seq, c.Seq)
	case <-time.After(patience):
		require.Fail(t, "a change was not heard of")
	}
}

// After a restart of the server no change is lost.
func TestServerRestart(t *testing.T) {
	server := pgtest.NewServer(t)
	a, b := openVenue(t, server.DSN(), "bar"), openVenue(t, server.DSN(), "bar")
	heard, err := b.Subscribe(t.Context())
	require.NoError(t, err)
	write(t, a, house.Put(gin(), 0))
	heardOf(t, heard, 1)

	require.NoError(t, server.Stop())
	_, err = a.Write(t.Context(), who, house.Put(sour(), 0))
	assert.ErrorIs(t, err, house.ErrUnavailable)
	require.NoError(t, server.Start())
	write(t, a, house.Put(sour(), 0))
	heardOf(t, heard, 2)
}

// mute stands between a store and its server. It can fall silent: connections
// that it carries stay open and carry nothing any more, as when a cable is pulled
// or a firewall forgets them.
type mute struct {
	net.Listener
	mu      sync.Mutex
	carried []net.Conn
	silent  map[net.Conn]bool
	deaf    bool // new ones carry nothing either
}

func muteBefore(t *testing.T, server string) *mute {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	m := &mute{Listener: l, silent: map[net.Conn]bool{}}
	t.Cleanup(func() { l.Close(); m.each(func(c net.Conn) { c.Close() }) })
	go func() {
		for {
			near, err := l.Accept()
			if err != nil {
				return
			}
			far, err := net.Dial("tcp", server)
			if err != nil {
				near.Close()
				continue
			}
			m.mu.Lock()
			m.carried = append(m.carried, near, far)
			m.silent[near], m.silent[far] = m.deaf, m.deaf
			m.mu.Unlock()
			go m.carry(near, far)
			go m.carry(far, near)
		}
	}()
	return m
}

func (m *mute) each(f func(net.Conn)) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, c := range m.carried {
		f(c)
	}
}

// fallSilent stops what is carried now; connections made later are carried.
func (m *mute) fallSilent() { m.each(func(c net.Conn) { m.silent[c] = true }) }

func (m *mute) carry(from, to net.Conn) {
	buffer := make([]byte, 32<<10)
	for {
		n, err := from.Read(buffer)
		m.mu.Lock()
		silent := m.silent[from]
		m.mu.Unlock()
		if silent {
			_, _ = io.Copy(io.Discard, from) // until the test ends, or the store gives up
			return
		}
		if err == nil {
			_, err = to.Write(buffer[:n])
		}
		if err != nil {
			to.Close()
			return
		}
	}
}

// A half-open connection, on which nothing arrives and nothing fails, is detected, and
// the changes made meanwhile are received.
func TestHalfOpenConnection(t *testing.T) {
	t.Parallel() // it waits more than it works
	dsn := freshDatabase(t)
	config, err := pgx.ParseConfig(dsn)
	require.NoError(t, err)
	m := muteBefore(t, net.JoinHostPort(config.Host, fmt.Sprint(config.Port)))
	port := m.Addr().(*net.TCPAddr).Port
	a := openVenue(t, dsn, "bar")
	b := openVenue(t, fmt.Sprintf("host=127.0.0.1 port=%d user='%s' password='%s' dbname=%s sslmode=disable", port, config.User, config.Password, config.Database), "bar")
	heard, err := b.Subscribe(t.Context())
	require.NoError(t, err)
	write(t, a, house.Put(gin(), 0))
	heardOf(t, heard, 1)
	m.fallSilent()
	write(t, a, house.Put(sour(), 0))
	heardOf(t, heard, 2)

	entries, err := b.List(context.Background())
	require.NoError(t, err, "the store has connections again")
	assert.Len(t, entries, 2)
}

// A server that stops answering, on old and new connections, makes the store return an
// error before the caller's deadline.
func TestSilentServerTimesOut(t *testing.T) {
	t.Parallel() // it waits more than it works
	server := pgtest.NewServer(t)
	config, err := pgx.ParseConfig(server.DSN())
	require.NoError(t, err)
	m := muteBefore(t, fmt.Sprintf("%s:%d", config.Host, config.Port))
	s := openVenue(t, fmt.Sprintf("postgres://%s@%s/%s?sslmode=disable", config.User, m.Addr(), config.Database), "bar")
	write(t, s, house.Put(gin(), 0))
	deaf := func(is bool) {
		m.mu.Lock()
		defer m.mu.Unlock()
		m.deaf = is
	}
	deaf(true)
	defer deaf(false) // it is checked once the test is done
	m.fallSilent()
	ctx, stop := context.WithTimeout(t.Context(), patience)
	defer stop()
	_, err = s.Write(ctx, who, house.Put(sour(), 0))
	require.ErrorIs(t, err, house.ErrUnavailable)
	assert.ErrorContains(t, err, "the database server does not answer; nothing was kept")
	_, err = s.List(ctx)
	assert.Error(t, err)
}
