package api

import (
	"context"
	"errors"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"counterpour/flavor"
	"counterpour/index"
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
// index.
func (s *Server) health() {
	handle(s, huma.Operation{OperationID: "health", Method: http.MethodGet, Path: healthPath, Tags: []string{"program"},
		Summary: "Whether the program runs"}, noStore,
		func(context.Context, *struct{}) (*HealthAnswer, error) { return &HealthAnswer{"ok"}, nil })
	handle(s, huma.Operation{OperationID: "ready", Method: http.MethodGet, Path: readyPath, Tags: []string{"program"},
		Summary: "Whether the program can do its work"}, noStore,
		func(context.Context, *struct{}) (*ReadyAnswer, error) {
			x := s.kitchen().Index
			// Any name will do: a closed index knows none.
			if _, _, err := x.Resolve("water"); errors.Is(err, index.ErrClosed) {
				return nil, err
			}
			return &ReadyAnswer{"ready", x.Len()}, nil
		})
}

// Starting answers in place of a server while its kitchen is being built: the
// program runs, and is not ready.
func Starting() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("X-Content-Type-Options", "nosniff")
		if r.URL.Path == healthPath && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
			w.Header().Set("Content-Type", mediaJSON)
			w.Header().Set("Cache-Control", noStore)
			_ = WriteJSON(w, HealthAnswer{"ok"}) // the client may have gone
			return
		}
		w.Header().Set("Retry-After", "1")
		writeProblem(w, problemOf(&flavor.Fault{Kind: ErrNotReady, Message: "the index is being built; ask again in a second"}, ""))
	})
}
