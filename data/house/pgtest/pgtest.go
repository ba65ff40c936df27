// Package pgtest finds or starts a PostgreSQL server for tests.
package pgtest

import (
	"context"
	"fmt"
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

// cluster is the server that the tests start when none is given.
var cluster struct {
	once sync.Once
	dsn  string
	why  string // there is none
	stop func()
}

// DSN leads to a PostgreSQL server: the one that the environment names,
// or a private one, or none, in which case the test is skipped, but not in CI.
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

// Stop stops the server that the tests of this process started, if they did; for
// TestMain.
func Stop() {
	if cluster.stop != nil {
		cluster.stop()
	}
}

// startServer starts a server of its own in a temporary folder, on loopback.
func startServer() {
	bins, _ := filepath.Glob("/usr/lib/postgresql/*/bin")
	if len(bins) == 0 {
		cluster.why = "set COUNTERPOUR_TEST_POSTGRES, or install Debian's package postgresql"
		return
	}
	dir, err := os.MkdirTemp("", "house-postgres")
	if err != nil {
		cluster.why = err.Error()
		return
	}
	c := &server{bin: bins[len(bins)-1], dir: dir}
	if err := c.start(); err != nil {
		os.RemoveAll(dir)
		cluster.why = err.Error()
		return
	}
	cluster.dsn, cluster.stop = c.dsn, func() { _ = c.run("pg_ctl", "-D", c.data(), "-m", "immediate", "stop"); os.RemoveAll(dir) }
}

type server struct {
	bin, dir, dsn string
	as            []string // what runs it as somebody else: the server refuses root
}

func (c *server) data() string { return filepath.Join(c.dir, "data") }

func (c *server) start() error {
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
	port, err := FreePort()
	if err != nil {
		return err
	}
	if err := c.run("initdb", "-D", c.data(), "-U", "house", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"); err != nil {
		return err
	}
	settings := fmt.Sprintf("-p %d -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c max_connections=200", port)
	if err := c.run("pg_ctl", "-D", c.data(), "-l", filepath.Join(c.dir, "log"), "-o", settings, "-w", "start"); err != nil {
		return err
	}
	c.dsn = fmt.Sprintf("postgres://house@127.0.0.1:%d/postgres?sslmode=disable", port)
	return nil
}

func (c *server) run(name string, args ...string) error {
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	line := append(append(slices.Clone(c.as), filepath.Join(c.bin, name)), args...)
	cmd := exec.CommandContext(ctx, line[0], line[1:]...)
	cmd.Dir = c.dir
	// A file, not a pipe, which the server would keep open.
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

// FreePort returns a port of loopback that nobody listens on.
func FreePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}

var venues atomic.Int64

// Venue names a venue that no other test, or run of the tests, uses.
func Venue() string {
	return fmt.Sprintf("test-%d-%d-%d", time.Now().Unix(), os.Getpid(), venues.Add(1))
}
