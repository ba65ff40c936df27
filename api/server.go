package api

import (
	"context"
	"log/slog"
	"maps"
	"net/http"
	"time"

	"counterpour/api/journal"
	"counterpour/api/metrics"
	"counterpour/api/problem"
	"counterpour/api/service"
	"counterpour/api/wire"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humagin"
	"github.com/gin-gonic/gin"
	"github.com/prometheus/client_golang/prometheus"
)

// Both libraries keep these switches in variables of their own: set once,
// before anything is served.
func init() {
	gin.SetMode(gin.ReleaseMode)
	huma.ValidateStrictCasing = true // "Text" is not "text"
}

// Limits of a request.
const (
	MaxBody        = 1 << 20 // bytes
	RequestTimeout = 10 * time.Second
)

// Options set up a server. The zero value is legal.
type Options struct {
	// Pages answers everything that is no endpoint, such as the web pages;
	// nil answers 404.
	Pages http.Handler
	// Ready says why the house cannot be relied on; nil is always ready.
	Ready func() error
	// Opening is how far the search by words has come; nil tells nothing of it.
	Opening *Progress
	// Keeper takes what is written to the house; nil takes nothing.
	Keeper Keeper
	// Editor says who makes a change, and what they may do; nil lets nobody.
	Editor func(ctx context.Context) Editor
	// Log gets what goes wrong here; nil is slog.Default.
	Log *slog.Logger
	// Timeout is how long a request may take; 0 is RequestTimeout.
	Timeout time.Duration
	// Meters are measured beside the server's own.
	Meters []prometheus.Collector
	// Version is shown in the OpenAPI document; empty is "dev".
	Version string
}

// Server carries a house over HTTP. It is safe for concurrent use, and owns
// nothing that must be closed; the house is its owner's. Every request asks for
// the house once, and keeps to it.
type Server struct {
	house   func() *service.Snapshot
	opts    Options
	engine  *gin.Engine
	api     huma.API
	meters  *metrics.Meters
	scored  scoredBodies
	openAPI []byte
}

// NewServer returns a server over the house as it stands when it is asked.
// It fails only if the routes cannot be described, which is a fault of the
// program.
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
	s.engine.Use(s.meters.Measure, s.recover, s.harden, s.limitTime, s.checkQuery, s.readBody, s.reserve)
	s.engine.NoRoute(s.noRoute)
	s.engine.NoMethod(s.noMethod)
	s.api = humagin.New(s.engine, newConfig(opts.Version))
	s.routes()
	return s, s.document()
}

// Handler returns the server's handler. HEAD is answered as GET without a body.
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

// bodiless drops the body of an answer.
type bodiless struct{ http.ResponseWriter }

func (bodiless) Write(p []byte) (int, error) { return len(p), nil }

// Flush is there for handlers that stream; there is nothing to flush.
func (bodiless) Flush() {}

// Unwrap lets a ResponseController reach the connection.
func (b bodiless) Unwrap() http.ResponseWriter { return b.ResponseWriter }

// routes lists every endpoint.
func (s *Server) routes() {
	s.scoring()
	s.covering()
	s.outs()
	s.coverage()
	s.riffing()
	s.usingUp()
	s.walking()
	s.costing()
	s.batching()
	s.palate()
	s.marking()
	s.naming()
	s.tasting()
	s.likening()
	s.ingredients()
	s.families()
	s.health()
	s.engine.GET(metrics.Path, gin.WrapH(s.meters.Handler()))
	s.engine.GET(openAPIPath, s.serveOpenAPI)
}

// How long an answer may be kept by whoever asked for it.
const (
	noStore     = "no-store"
	aMinute     = "public, max-age=60"
	openAPIPath = "/openapi.json"
)

// handle registers an endpoint: parse, call, answer. Errors become problems in
// one place, and the answer is encoded before its status is written.
func handle[I, T any](s *Server, op huma.Operation, cache string, call func(context.Context, *I) (*T, error)) {
	handleEncoded[I, T](s, op, cache, func(ctx context.Context, in *I) ([]byte, error) {
		out, err := call(ctx, in)
		if err != nil {
			return nil, err
		}
		return wire.Encode(out)
	})
}

// handleEncoded is handle for an answer of type T that comes as JSON.
func handleEncoded[I, T any](s *Server, op huma.Operation, cache string, call func(context.Context, *I) ([]byte, error)) {
	op.MaxBodyBytes, op.BodyReadTimeout = -1, -1 // readBody has seen to both
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

// problem turns an error into a problem, and logs it if it is a fault of the
// program.
func (s *Server) problem(ctx context.Context, err error, origin, route string) *problem.Problem {
	if _, _, known := problem.StatusOf(err); !known {
		s.opts.Log.ErrorContext(ctx, "request failed", "route", route, "error", err)
	}
	p := problem.Of(err, origin)
	p.RequestID = journal.ID(ctx)
	return p
}

// refuse ends a request with a problem.
func refuse(c *gin.Context, p *problem.Problem) {
	c.Abort()
	writeProblem(c.Writer, p)
}

func writeProblem(w http.ResponseWriter, p *problem.Problem) {
	p.RequestID = w.Header().Get(journal.Header)
	text, err := wire.Encode(p)
	if err != nil { // a value that JSON has no words for
		p = problem.New(http.StatusInternalServerError, problem.InternalDetail)
		p.RequestID = w.Header().Get(journal.Header)
		text, _ = wire.Encode(p)
	}
	maps.Copy(w.Header(), p.GetHeaders())
	w.Header().Set("Content-Type", problem.MediaType)
	w.Header().Set("Cache-Control", noStore)
	w.WriteHeader(p.Status)
	_, _ = w.Write(text)
}
