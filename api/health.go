package api

import (
	"context"
	"errors"
	"fmt"
	"html"
	"net/http"
	"strconv"
	"strings"
	"sync/atomic"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/api/admission"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

const (
	healthPath = "/healthz"
	readyPath  = "/readyz"
)

// HealthAnswer says that the program runs.
type HealthAnswer struct {
	Status string `json:"status" enum:"ok"`
}

// ReadyAnswer says that the program can do its work.
type ReadyAnswer struct {
	Status      string `json:"status" enum:"ready"`
	Ingredients int    `json:"ingredients" doc:"How many are indexed"`
}

// health registers /healthz, which needs nothing, and /readyz, which needs the
// index and a house that is kept up with.
func (s *Server) health() {
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
			// Any name will do: a closed index knows none.
			if _, _, err := x.Resolve("water"); errors.Is(err, lookup.ErrClosed) {
				return nil, err
			}
			return &ReadyAnswer{"ready", x.Len()}, nil
		})
}

// Progress is how far the index has come; the zero value is at the beginning.
type Progress struct{ done, total atomic.Int64 }

// Set notes how many ingredients are done, of how many.
func (p *Progress) Set(done, total int) {
	p.total.Store(int64(total))
	p.done.Store(int64(done))
}

// String says how far it is.
func (p *Progress) String() string {
	if total := p.total.Load(); total > 0 {
		return fmt.Sprintf("the index is being built, %d of %d ingredients so far; ask again in a second", p.done.Load(), total)
	}
	return "the index is being built; ask again in a second"
}

// startingPage is what a person sees meanwhile; it asks again by itself.
const startingPage = `<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta http-equiv="refresh" content="1">
<title>Starting</title></head><body><main><h1>The bar is being set up</h1><p>%s</p></main></body></html>
`

// Starting answers in place of a server while its kitchen is being built: the
// program runs, and is not ready.
func Starting(p *Progress) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("X-Content-Type-Options", "nosniff")
		if r.URL.Path == healthPath && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
			w.Header().Set("Content-Type", mediaJSON)
			w.Header().Set("Cache-Control", noStore)
			_ = WriteJSON(w, HealthAnswer{"ok"}) // the client may have gone
			return
		}
		w.Header().Set("Retry-After", strconv.Itoa(admission.RetryAfter))
		if strings.Contains(r.Header.Get("Accept"), "text/html") {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			w.Header().Set("Cache-Control", noStore)
			w.WriteHeader(http.StatusServiceUnavailable)
			_, _ = fmt.Fprintf(w, startingPage, html.EscapeString(p.String())) // the client may have gone
			return
		}
		writeProblem(w, problemOf(&flavor.Fault{Kind: ErrNotReady, Message: p.String()}, ""))
	})
}
