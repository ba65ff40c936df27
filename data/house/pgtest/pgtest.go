// Package pgtest finds or starts a PostgreSQL server for tests.
package pgtest

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// cluster is the server that tests start if the environment names none.
var cluster struct {
	once sync.Once
	dsn  string
	why  string // why there is no server
	stop func()
}

// DSN returns the connection string of a PostgreSQL server: the one that the environment
// names or a private one. Without PostgreSQL the test is skipped; in CI it fails.
func DSN(t testing.TB) string {
	t.Helper()
	if dsn := os.Getenv("COUNTERPOUR_TEST_POSTGRES"); dsn != "" {
		return dsn
	}
	cluster.once.Do(startServer)
	if cluster.dsn == "" {
		if os.Getenv("CI") != "" {
			t.Fatal("no PostgreSQL to test on: " + cluster.why)
		}
		t.Skip("no PostgreSQL to test on: " + cluster.why)
	}
	return cluster.dsn
}

// Stop stops the private server. Call it from TestMain.
func Stop() {
	if cluster.stop != nil {
		cluster.stop()
	}
}

// startServer starts a private server on loopback, in a temporary folder.
func startServer() {
	c, err := newServer()
	if err != nil {
		cluster.why = err.Error()
		return
	}
	cluster.dsn, cluster.stop = c.dsn, c.remove
}

// Server is a PostgreSQL server for one test, which may stop and start it.
type Server struct {
	bin, dir, dsn, settings string
	as                      []string // prefix of commands, to run as another user: the server refuses root
}

// NewServer starts a server for a test and removes it when the test ends. Without
// PostgreSQL the test is skipped; in CI it fails.
func NewServer(t testing.TB) *Server {
	t.Helper()
	c, err := newServer()
	switch {
	case err != nil && os.Getenv("CI") != "":
		t.Fatal("no PostgreSQL to test on: " + err.Error())
	case err != nil:
		t.Skip("no PostgreSQL to test on: " + err.Error())
	}
	t.Cleanup(c.remove)
	return c
}

func newServer() (*Server, error) {
	bins, _ := filepath.Glob("/usr/lib/postgresql/*/bin")
	if len(bins) == 0 {
		return nil, errors.New("set COUNTERPOUR_TEST_POSTGRES, or install Debian's package postgresql")
	}
	dir, err := os.MkdirTemp("", "house-postgres")
	if err != nil {
		return nil, err
	}
	c := &Server{bin: bins[len(bins)-1], dir: dir}
	if err := c.make(); err != nil {
		os.RemoveAll(dir)
		return nil, err
	}
	return c, nil
}

// DSN returns the server's connection string, whether it runs or not.
func (c *Server) DSN() string { return c.dsn }

// Stop stops the server at once, as a power cut would.
func (c *Server) Stop() error { return c.run("pg_ctl", "-D", c.data(), "-m", "immediate", "stop") }

// Start starts the server on its former port, and returns once it answers.
func (c *Server) Start() error {
	return c.run("pg_ctl", "-D", c.data(), "-l", filepath.Join(c.dir, "log"), "-o", c.settings, "-w", "-t", "240", "start")
}

func (c *Server) remove() {
	_ = c.Stop() // in case it still runs
	os.RemoveAll(c.dir)
}

func (c *Server) data() string { return filepath.Join(c.dir, "data") }

// make initialises a database cluster and starts the server.
func (c *Server) make() error {
	if os.Geteuid() == 0 {
		u, err := user.Lookup("postgres")
		if err != nil {
			return err
		}
		uid, _ := strconv.Atoi(u.Uid)
		gid, _ := strconv.Atoi(u.Gid)
		c.as = []string{"runuser", "-u", "postgres", "--"}
		if err := os.Chown(c.dir, uid, gid); err != nil {
			return err
		}
	}
	if err := c.run("initdb", "-D", c.data(), "-U", "house", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"); err != nil {
		return err
	}
	var err error
	for range 5 { // another process may take the free port first
		var port int
		if port, err = FreePort(); err != nil {
			return err
		}
		c.settings = fmt.Sprintf("-p %d -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c max_connections=200", port)
		c.dsn = fmt.Sprintf("postgres://house@127.0.0.1:%d/postgres?sslmode=disable", port)
		if err = c.Start(); err == nil {
			return nil
		}
	}
	return err
}

func (c *Server) run(name string, args ...string) error {
	ctx, stop := context.WithTimeout(context.Background(), 5*time.Minute)
	defer stop()
	line := append(append(slices.Clone(c.as), filepath.Join(c.bin, name)), args...)
	cmd := exec.CommandContext(ctx, line[0], line[1:]...)
	cmd.Dir = c.dir
	// A file, because the server would keep a pipe open.
	file, err := os.CreateTemp("", "house-postgres-out")
	if err != nil {
		return err
	}
	defer os.Remove(file.Name())
	defer file.Close()
	cmd.Stdout, cmd.Stderr = file, file
	if err := cmd.Run(); err != nil {
		text, _ := os.ReadFile(file.Name())
		return fmt.Errorf("%s: %w: %s", name, err, text)
	}
	return nil
}

// FreePort returns an unused TCP port of loopback. It is below the range for outgoing
// connections (32768 and up on Linux), so that none of those takes it before it is used.
func FreePort() (int, error) {
	const lowest, highest, tries = 20000, 32767, 100
	var l net.Listener
	var err error
	for range tries {
		port := lowest + rand.IntN(highest-lowest+1)
		if l, err = net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port)); err == nil {
			return port, l.Close()
		}
	}
	return 0, err
}

var venues atomic.Int64

// Venue returns a venue name that no other test uses, in this or another run.
func Venue() string {
	return fmt.Sprintf("test-%d-%d-%d", time.Now().Unix(), os.Getpid(), venues.Add(1))
}
