// Package accesslog writes the access log: one line for each request, with its route, the
// role of the user, the status and the time it took. It gives each request an id, which
// is shown to the user with a fault, so that the user and the reader of the log can refer
// to the same request.
//
// [Keep] is the outermost middleware. Handlers further in report what only they know with
// [SetRoute] and [SetRole]. [Handler] adds the request id to every other line that is
// logged with the context of the request.
package accesslog

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"log/slog"
	"net/http"
	"sync"
	"time"
)

// Header is the response header that carries the request id.
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

// ID returns the request id of a context, or "" if [Keep] did not handle the request.
func ID(ctx context.Context) string {
	if e := entryOf(ctx); e != nil {
		return e.id
	}
	return ""
}

// SetRoute notes the pattern of the route that answers a request, such as
// /v1/ingredients/{id}. Never pass the path itself: clients can invent any number of
// them. An empty pattern changes nothing.
func SetRoute(ctx context.Context, pattern string) {
	if e := entryOf(ctx); e != nil && pattern != "" {
		e.mu.Lock()
		defer e.mu.Unlock()
		e.route = pattern
	}
}

// RouteOf returns what [SetRoute] noted last, or "".
func RouteOf(ctx context.Context) string {
	e := entryOf(ctx)
	if e == nil {
		return ""
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	return e.route
}

// SetRole notes the role of the user who makes a request.
func SetRole(ctx context.Context, role string) {
	if e := entryOf(ctx); e != nil {
		e.mu.Lock()
		defer e.mu.Unlock()
		e.role = role
	}
}

// unset stands in the log for a value that nobody set.
const unset = "none"

// Keep logs every request to next once it is answered: at warning level if the server was
// at fault, and at debug level for health checks and metrics.
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
		c.begin(http.StatusOK) // net/http sends 200 if the handler writes nothing
	})
}

func level(path string, status int) slog.Level {
	switch {
	case status == 0 || status >= http.StatusInternalServerError:
		return slog.LevelWarn // status 0: a panic ended the request
	case path == "/healthz" || path == "/readyz" || path == "/metrics":
		return slog.LevelDebug
	}
	return slog.LevelInfo
}

// methodOf returns the request's method if it is a standard one, and a fixed word
// otherwise, since clients can invent any number of methods.
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

// newID returns 64 random bits. Among a million requests, two share an id with a
// probability of 3 in 10^8.
func newID() string {
	var raw [8]byte
	rand.Read(raw[:]) // never fails
	return hex.EncodeToString(raw[:])
}

// counted is a ResponseWriter that notes the status and size of the answer.
type counted struct {
	http.ResponseWriter
	status int // 0 until the header is written
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

// Flush implements http.Flusher, for handlers that stream.
func (c *counted) Flush() {
	c.begin(http.StatusOK)
	_ = http.NewResponseController(c.ResponseWriter).Flush() // if flushing is not supported, everything is sent at the end
}

// Unwrap lets http.ResponseController reach the underlying writer.
func (c *counted) Unwrap() http.ResponseWriter { return c.ResponseWriter }

// handler adds the request id to every record.
type handler struct{ slog.Handler }

// Handler wraps h so that each record logged with the context of a request carries the
// request id.
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
