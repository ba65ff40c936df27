// Package journal keeps one line of the log for each request: by which route and
// in which role it was made, and how it was answered; and the id by which a person
// who was shown a fault, and whoever reads the log, mean the same request.
//
// [Keep] stands in front of everything. Who answers a request tells it what only
// they know, with [SetRoute] and [SetRole]. [Handler] puts the id on every other
// line that is logged with the context of the request.
package journal

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"log/slog"
	"net/http"
	"sync"
	"time"
)

// Header carries the id of a request in its answer.
const Header = "X-Request-Id"

// entry is what is known of one request so far.
type entry struct {
	id string

	mu          sync.Mutex
	route, role string
}

type entryKey struct{}

func entryOf(ctx context.Context) *entry {
	e, _ := ctx.Value(entryKey{}).(*entry)
	return e
}

// ID names the request of a context; it is empty if none is kept.
func ID(ctx context.Context) string {
	if e := entryOf(ctx); e != nil {
		return e.id
	}
	return ""
}

// SetRoute notes the pattern that a request was answered by, such as
// /v1/ingredients/{id}: never its address, which strangers make up. An empty one
// changes nothing.
func SetRoute(ctx context.Context, pattern string) {
	if e := entryOf(ctx); e != nil && pattern != "" {
		e.mu.Lock()
		defer e.mu.Unlock()
		e.route = pattern
	}
}

// RouteOf is what [SetRoute] noted last, empty if nothing.
func RouteOf(ctx context.Context) string {
	e := entryOf(ctx)
	if e == nil {
		return ""
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.route
}

// SetRole notes in which role a request was made.
func SetRole(ctx context.Context, role string) {
	if e := entryOf(ctx); e != nil {
		e.mu.Lock()
		defer e.mu.Unlock()
		e.role = role
	}
}

// unset stands in the log for what nobody noted.
const unset = "none"

// Keep logs every request to a handler, once it is answered: at the level of
// warnings if the fault was ours. Requests that ask whether the program runs are
// below what is logged usually.
func Keep(log *slog.Logger, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		begun := time.Now()
		e := &entry{id: newID()}
		ctx := context.WithValue(r.Context(), entryKey{}, e)
		c := &counted{ResponseWriter: w}
		w.Header().Set(Header, e.id)
		defer func() {
			e.mu.Lock()
			defer e.mu.Unlock()
			log.LogAttrs(ctx, level(r.URL.Path, c.status), "request", slog.String("method", methodOf(r)), slog.String("route", or(e.route)), slog.String("role", or(e.role)),
				slog.Int("status", c.status), slog.Float64("ms", float64(time.Since(begun).Microseconds())/1000), slog.Int64("bytes", c.bytes))
		}()
		next.ServeHTTP(c, r.WithContext(ctx))
		c.begin(http.StatusOK) // what net/http answers for who says nothing
	})
}

func level(path string, status int) slog.Level {
	switch {
	case status == 0 || status >= http.StatusInternalServerError:
		return slog.LevelWarn // 0 was cut off by a panic
	case path == "/healthz" || path == "/readyz" || path == "/metrics":
		return slog.LevelDebug
	}
	return slog.LevelInfo
}

// methodOf is a method that HTTP knows; strangers make up others.
func methodOf(r *http.Request) string {
	switch r.Method {
	case http.MethodGet, http.MethodHead, http.MethodPost, http.MethodPut, http.MethodPatch, http.MethodDelete, http.MethodOptions:
		return r.Method
	}
	return "other"
}

func or(text string) string {
	if text == "" {
		return unset
	}
	return text
}

// newID is 64 random bits: two of a million requests share one with a probability
// of 3 in 10^8.
func newID() string {
	var raw [8]byte
	rand.Read(raw[:]) // never fails
	return hex.EncodeToString(raw[:])
}

// counted notes how a request was answered.
type counted struct {
	http.ResponseWriter
	status int // 0 until the answer begins
	bytes  int64
}

func (c *counted) begin(status int) {
	if c.status == 0 && (status >= http.StatusOK || status == http.StatusSwitchingProtocols) {
		c.status = status
	}
}

func (c *counted) WriteHeader(status int) {
	c.begin(status)
	c.ResponseWriter.WriteHeader(status)
}

func (c *counted) Write(p []byte) (int, error) {
	c.begin(http.StatusOK)
	n, err := c.ResponseWriter.Write(p)
	c.bytes += int64(n)
	return n, err
}

// Flush is there for handlers that stream.
func (c *counted) Flush() {
	c.begin(http.StatusOK)
	_ = http.NewResponseController(c.ResponseWriter).Flush() // what cannot be flushed is sent at the end
}

// Unwrap lets a ResponseController reach the connection.
func (c *counted) Unwrap() http.ResponseWriter { return c.ResponseWriter }

// handler puts the id of the request on every line.
type handler struct{ slog.Handler }

// Handler returns a handler of logs whose lines name the request that they are
// about, where they are logged with its context.
func Handler(h slog.Handler) slog.Handler { return handler{h} }

func (h handler) Handle(ctx context.Context, r slog.Record) error {
	if id := ID(ctx); id != "" {
		r.AddAttrs(slog.String("request_id", id))
	}
	return h.Handler.Handle(ctx, r)
}

func (h handler) WithAttrs(attrs []slog.Attr) slog.Handler {
	return handler{h.Handler.WithAttrs(attrs)}
}

func (h handler) WithGroup(name string) slog.Handler { return handler{h.Handler.WithGroup(name)} }
