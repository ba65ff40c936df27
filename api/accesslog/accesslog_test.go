package accesslog

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOneLinePerRequest(t *testing.T) {
	for _, c := range []struct {
		name, method, path string
		do                 http.HandlerFunc
		status             int
		bytes              int
		level              string
		route, role        string
	}{
		{"an answer", "GET", "/v1/ingredients/gin", func(w http.ResponseWriter, r *http.Request) {
			SetRoute(r.Context(), "/v1/ingredients/:id")
			SetRole(r.Context(), "floor")
			_, _ = io.WriteString(w, "gin")
		}, 200, 3, "INFO", "/v1/ingredients/:id", "floor"},
		{"nothing said", "POST", "/x", func(http.ResponseWriter, *http.Request) {}, 200, 0, "INFO", "none", "none"},
		{"a refusal", "GET", "/x", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(401); w.WriteHeader(200) }, 401, 0, "INFO", "none", "none"},
		{"a fault of ours", "GET", "/x", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(503) }, 503, 0, "WARN", "none", "none"},
		{"a method made up", "BREW", "/x", func(http.ResponseWriter, *http.Request) {}, 200, 0, "INFO", "none", "none"},
		{"whether it runs", "GET", "/readyz", func(http.ResponseWriter, *http.Request) {}, 200, 0, "DEBUG", "none", "none"},
		{"that it does not", "GET", "/readyz", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(503) }, 503, 0, "WARN", "none", "none"},
		{"a stream", "GET", "/board/events", func(w http.ResponseWriter, _ *http.Request) {
			rc := http.NewResponseController(w)
			_, _ = io.WriteString(w, "one")
			if err := errors.Join(rc.SetWriteDeadline(time.Now().Add(time.Minute)), rc.Flush()); err != nil {
				panic(err)
			}
			_, _ = io.WriteString(w, "two")
		}, 200, 6, "INFO", "none", "none"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			log := slog.New(Handler(slog.NewJSONHandler(&out, &slog.HandlerOptions{Level: slog.LevelDebug})))
			answered := make(chan struct{})
			h := Keep(log, c.do)
			server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				defer close(answered)
				h.ServeHTTP(w, r)
			}))
			defer server.Close()
			r, err := http.NewRequest(c.method, server.URL+c.path+"?secret=1", nil)
			require.NoError(t, err)
			a, err := http.DefaultClient.Do(r)
			require.NoError(t, err)
			require.NoError(t, a.Body.Close())
			<-answered
			var line struct {
				Level, Msg, Method, Route, Role string
				Status, Bytes                   int
				Ms                              float64
				ID                              string `json:"request_id"`
			}
			require.NoError(t, json.Unmarshal(out.Bytes(), &line), out.String())
			assert.Equal(t, []any{c.level, "request", c.route, c.role, c.status, c.bytes}, []any{line.Level, line.Msg, line.Route, line.Role, line.Status, line.Bytes})
			assert.GreaterOrEqual(t, line.Ms, 0.0)
			assert.Regexp(t, `^[0-9a-f]{16}$`, line.ID)
			assert.Equal(t, line.ID, a.Header.Get(Header), "who was answered can name the line")
			assert.NotContains(t, out.String(), "secret")
			if c.method == "BREW" {
				assert.Equal(t, "other", line.Method)
			}
		})
	}
}

// A panic is logged as a request that had no answer, and goes on.
func TestPanicIsLogged(t *testing.T) {
	var out bytes.Buffer
	h := Keep(slog.New(slog.NewTextHandler(&out, nil)), http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) }))
	assert.PanicsWithValue(t, http.ErrAbortHandler, func() {
		h.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil))
	})
	assert.Contains(t, out.String(), "level=WARN msg=request")
	assert.Contains(t, out.String(), "status=0")
}

// Without an access log nothing is noted and nothing fails.
func TestWithoutKeep(t *testing.T) {
	SetRoute(t.Context(), "/x")
	SetRole(t.Context(), "lead")
	assert.Empty(t, RouteOf(t.Context()))
	assert.Empty(t, ID(t.Context()))
}
