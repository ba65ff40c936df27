package api

import (
	"context"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"
	"sync/atomic"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/api/admission"
	"counterpour/api/problem"
	"counterpour/api/wire"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

const (
	healthPath = "/healthz"
	readyPath  = "/readyz"
)

// HealthAnswer says that the process is running.
type HealthAnswer struct {
	Status string `json:"status" enum:"ok"`
}

// ReadyAnswer says that the program can answer requests.
type ReadyAnswer struct {
	Status      string `json:"status" enum:"ready"`
	Ingredients int    `json:"ingredients" doc:"How many there are"`
	Search      string `json:"search" enum:"ready,opening" doc:"Whether the search by words is ready; until it is, the first search waits for it"`
	Indexed     int    `json:"indexed" doc:"How many of the ingredients it holds so far"`
}

// registerHealth registers /healthz, which always answers 200, and /readyz, which needs an open
// index and a house whose store answers.
func (s *Server) registerHealth() {
	handle(s, huma.Operation{OperationID: "health", Method: http.MethodGet, Path: healthPath, Tags: []string{"program"},
		Summary: "Whether the program runs"}, noStore,
		func(context.Context, *struct{}) (*HealthAnswer, error) { return &HealthAnswer{"ok"}, nil })
	handle(s, huma.Operation{OperationID: "ready", Method: http.MethodGet, Path: readyPath, Tags: []string{"program"},
		Summary: "Whether the program can do its work"}, noStore,
		func(context.Context, *struct{}) (*ReadyAnswer, error) {
			if s.opts.Ready != nil {
				if err := s.opts.Ready(); err != nil {
					return nil, err
				}
			}
			x := s.house().Index
			// Any name will do: a closed index resolves none.
			if _, _, err := x.Resolve("water"); errors.Is(err, lookup.ErrClosed) {
				return nil, err
			}
			if x.Opened() {
				return &ReadyAnswer{"ready", x.Len(), "ready", x.Len()}, nil
			}
			return &ReadyAnswer{"ready", x.Len(), "opening", s.opts.Opening.taken()}, nil
		})
}

// Progress is how many ingredients the full-text index holds so far. The zero value and
// nil stand for none.
type Progress struct{ done atomic.Int64 }

// Set notes how many ingredients are indexed.
func (p *Progress) Set(done, _ int) { p.done.Store(int64(done)) }

func (p *Progress) taken() int {
	if p == nil {
		return 0
	}
	return int(p.done.Load())
}

// startingPage is what a browser shows while the program starts; it reloads by itself.
const startingPage = `<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta http-equiv="refresh" content="1">
<title>Starting</title></head><body><main><h1>The bar is being set up</h1><p>This page asks again by itself.</p></main></body></html>
`

// Starting returns the handler that answers while the house is being opened: the process
// is healthy, but not ready.
func Starting() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("X-Content-Type-Options", "nosniff")
		if r.URL.Path == healthPath && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
			w.Header().Set("Content-Type", mediaJSON)
			w.Header().Set("Cache-Control", noStore)
			_ = wire.WriteJSON(w, HealthAnswer{"ok"}) // the client may have gone
			return
		}
		w.Header().Set("Retry-After", strconv.Itoa(admission.RetryAfter))
		if strings.Contains(r.Header.Get("Accept"), "text/html") {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			w.Header().Set("Cache-Control", noStore)
			w.WriteHeader(http.StatusServiceUnavailable)
			_, _ = io.WriteString(w, startingPage) // the client may have gone
			return
		}
		writeProblem(w, problem.Of(&flavor.DataFault{Kind: problem.ErrNotReady, Message: "the house is being opened; ask again in a second"}, ""))
	})
}
