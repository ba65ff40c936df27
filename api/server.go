package api

import (
	"context"
	"log/slog"
	"maps"
	"net/http"
	"time"

	"counterpour/api/accesslog"
	"counterpour/api/metrics"
	"counterpour/api/problem"
	"counterpour/api/service"
	"counterpour/api/wire"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humagin"
	"github.com/gin-gonic/gin"
	"github.com/prometheus/client_golang/prometheus"
)

// Both libraries hold these switches in package variables. They are set once, before
// anything is served.
func init() {
	gin.SetMode(gin.ReleaseMode)
	huma.ValidateStrictCasing = true // "Text" is not "text"
}

// Limits of a request.
const (
	MaxBody        = 1 << 20 // bytes
	RequestTimeout = 10 * time.Second
)

// Options configure a server. The zero value is valid.
type Options struct {
	// Pages handles every path that is no endpoint, such as the web pages; nil answers
	// 404.
	Pages http.Handler
	// Ready returns why the house is not ready, or nil; a nil Ready is always ready.
	Ready func() error
	// Opening is the progress of building the full-text index; nil reports none.
	Opening *Progress
	// Keeper writes to the house; with nil, nothing can be written.
	Keeper Keeper
	// Editor returns who makes a request and what they may change; with nil, nobody may
	// change anything.
	Editor func(ctx context.Context) Editor
	// Log receives internal errors; nil is slog.Default.
	Log *slog.Logger
	// Timeout is how long a request may take; 0 is RequestTimeout.
	Timeout time.Duration
	// Meters are further collectors, served with the server's own.
	Meters []prometheus.Collector
	// Version is the version in the OpenAPI document; empty is "dev".
	Version string
}

// Server serves a house over HTTP. It is safe for concurrent use and holds nothing that
// must be closed; the caller closes the house. Each request takes one snapshot and uses
// it to its end.
type Server struct {
	house   func() *service.Snapshot
	opts    Options
	engine  *gin.Engine
	api     huma.API
	meters  *metrics.Meters
	scored  scoredBodies
	openAPI []byte
}

// NewServer returns a server; house returns the current snapshot and is called once for
// each request. An error means that the OpenAPI document cannot be generated, which is a
// bug.
func NewServer(house func() *service.Snapshot, opts Options) (*Server, error) {
	if opts.Log == nil {
		opts.Log = slog.Default()
	}
	if opts.Timeout <= 0 {
		opts.Timeout = RequestTimeout
	}
	if opts.Version == "" {
		opts.Version = "dev"
	}
	s := &Server{house: house, opts: opts, meters: metrics.New(house, opts.Meters), engine: gin.New()}
	s.engine.HandleMethodNotAllowed = true
	s.engine.RedirectTrailingSlash = false
	s.engine.Use(s.meters.Measure, s.recover, s.setSecurityHeaders, s.setDeadline, s.checkQuery, s.readBody, s.reserve)
	s.engine.NoRoute(s.noRoute)
	s.engine.NoMethod(s.noMethod)
	s.api = humagin.New(s.engine, newConfig(opts.Version))
	s.routes()
	return s, s.document()
}

// Handler returns the server's HTTP handler. HEAD is answered like GET, without the body.
func (s *Server) Handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodHead {
			get := *r
			get.Method = http.MethodGet
			s.engine.ServeHTTP(bodiless{w}, &get)
			return
		}
		s.engine.ServeHTTP(w, r)
	})
}

// bodiless is a ResponseWriter that drops the body.
type bodiless struct{ http.ResponseWriter }

func (bodiless) Write(p []byte) (int, error) { return len(p), nil }

// Flush implements http.Flusher; there is nothing to flush.
func (bodiless) Flush() {}

// Unwrap lets http.ResponseController reach the underlying writer.
func (b bodiless) Unwrap() http.ResponseWriter { return b.ResponseWriter }

// routes registers every endpoint.
func (s *Server) routes() {
	s.registerScore()
	s.registerCover()
	s.registerOuts()
	s.registerCoverage()
	s.registerTonight()
	s.registerRiff()
	s.registerUseUp()
	s.registerWalk()
	s.registerCost()
	s.registerBatch()
	s.registerPalate()
	s.registerMarks()
	s.registerNames()
	s.registerTastings()
	s.registerTraining()
	s.registerLikeness()
	s.registerIngredients()
	s.registerTemplates()
	s.registerHealth()
	s.engine.GET(metrics.Path, gin.WrapH(s.meters.Handler()))
	s.engine.GET(openAPIPath, s.serveOpenAPI)
}

// Values of Cache-Control.
const (
	noStore     = "no-store"
	aMinute     = "public, max-age=60"
	openAPIPath = "/openapi.json"
)

// handle registers an endpoint whose handler returns a value or an error. Errors become
// problems in one place, and the value is encoded before the status is written.
func handle[I, T any](s *Server, op huma.Operation, cache string, call func(context.Context, *I) (*T, error)) {
	handleEncoded[I, T](s, op, cache, func(ctx context.Context, in *I) ([]byte, error) {
		out, err := call(ctx, in)
		if err != nil {
			return nil, err
		}
		return wire.Encode(out)
	})
}

// handleEncoded is [handle] for handlers whose answer of type T is already encoded as
// JSON.
func handleEncoded[I, T any](s *Server, op huma.Operation, cache string, call func(context.Context, *I) ([]byte, error)) {
	op.MaxBodyBytes, op.BodyReadTimeout = -1, -1 // readBody enforces both limits
	origin := "query"
	if op.Method == http.MethodPost {
		origin = "body"
	}
	huma.Register(s.api, op, func(ctx context.Context, in *I) (*wire.Answer[T], error) {
		text, err := call(ctx, in)
		if err != nil {
			return nil, s.problem(ctx, err, origin, op.Method+" "+op.Path)
		}
		return &wire.Answer[T]{CacheControl: cache, ContentLength: len(text), Body: wire.Encoded[T]{Text: text}}, nil
	})
}

// problem turns an error into a problem, and logs it if it is an internal error.
func (s *Server) problem(ctx context.Context, err error, origin, route string) *problem.Problem {
	if _, _, known := problem.StatusOf(err); !known {
		s.opts.Log.ErrorContext(ctx, "request failed", "route", route, "error", err)
	}
	p := problem.Of(err, origin)
	p.RequestID = accesslog.ID(ctx)
	return p
}

// refuse ends a request with a problem.
func refuse(c *gin.Context, p *problem.Problem) {
	c.Abort()
	writeProblem(c.Writer, p)
}

func writeProblem(w http.ResponseWriter, p *problem.Problem) {
	p.RequestID = w.Header().Get(accesslog.Header)
	text, err := wire.Encode(p)
	if err != nil { // the problem holds a value that JSON cannot express
		p = problem.New(http.StatusInternalServerError, problem.InternalDetail)
		p.RequestID = w.Header().Get(accesslog.Header)
		text, _ = wire.Encode(p)
	}
	maps.Copy(w.Header(), p.GetHeaders())
	w.Header().Set("Content-Type", problem.MediaType)
	w.Header().Set("Cache-Control", noStore)
	w.WriteHeader(p.Status)
	_, _ = w.Write(text)
}
