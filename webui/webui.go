package webui

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"time"

	"counterpour/webui/access"
)

// contentPolicy lets nothing into a page but our own files.
const contentPolicy = "default-src 'self'; style-src 'self'; script-src 'self'; img-src 'self' data:; " +
	"base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// Limits of a request.
const (
	maxBody  = 1 << 20 // bytes of a form
	pageTime = 10 * time.Second
)

// pages serves everything under /.
type pages struct {
	bar      Bar
	house    House
	trainer  Trainer
	learners *learners
	seal     sealer
	door     Doorkeeper // nil if there is no login
	covered  memo
	log      *slog.Logger
	statics  *statics
	views    *views
}

// New returns the handler of all pages and static files. It answers every path
// it is given, so mount other things before it. It fails only if the embedded
// files do not fit together.
func New(bar Bar, log *slog.Logger) (http.Handler, error) { return NewWithLogin(bar, nil, log) }

// NewWithLogin is [New] with a login page, for pages that a guard stands before.
func NewWithLogin(bar Bar, door Doorkeeper, log *slog.Logger) (http.Handler, error) {
	if bar == nil || log == nil {
		return nil, errors.New("webui: needs a bar and a log")
	}
	static, err := fs.Sub(embedded, "static")
	if err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	p := &pages{bar: bar, house: bar.House(), trainer: bar.Trainer(), door: door, log: log}
	p.learners = newLearners(p.house.Store())
	if p.seal, err = newSealer(); err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	if p.statics, err = loadStatics(static); err != nil {
		return nil, err
	}
	if p.views, err = loadViews(embedded, p.statics, door != nil); err != nil {
		return nil, err
	}
	return p.guard(p.routes()), nil
}

// guard sets the headers of every answer and refuses forms sent from other
// sites; later pages write to the house, and all go through here.
func (p *pages) guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(p.route(func(http.ResponseWriter, *http.Request) error { return errElsewhere }))
	next = cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", contentPolicy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cache-Control", askFirst)
		r.Body = http.MaxBytesReader(w, r.Body, maxBody)
		next.ServeHTTP(w, r)
	})
}

// action is a handler that may fail.
type action func(w http.ResponseWriter, r *http.Request) error

// route runs an action for the given methods, or for all if none is given, in
// the time that a page may take, and turns its error into an answer.
func (p *pages) route(do action, methods ...string) http.Handler {
	return p.open(func(w http.ResponseWriter, r *http.Request) error {
		ctx, cancel := context.WithTimeout(r.Context(), pageTime)
		defer cancel()
		return do(w, r.WithContext(ctx))
	}, methods...)
}

// open is a route that may stay open as long as somebody listens.
func (p *pages) open(do action, methods ...string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		err := allow(w, r, methods)
		if err == nil {
			err = do(w, r)
		}
		if err != nil {
			p.fail(w, r, err)
		}
	})
}

// lead lets everybody look, and only a lead change something.
func lead(do action) action {
	return func(w http.ResponseWriter, r *http.Request) error {
		if r.Method != http.MethodGet && r.Method != http.MethodHead && !access.May(r.Context(), access.Lead) {
			return errNotTheirs
		}
		return do(w, r)
	}
}

func allow(w http.ResponseWriter, r *http.Request, methods []string) error {
	if len(methods) == 0 {
		return nil
	}
	for _, m := range methods {
		if r.Method == m {
			return nil
		}
	}
	for _, m := range methods {
		w.Header().Add("Allow", m)
	}
	return errMethod
}

// isFragment reports whether a script asks for part of a page.
func isFragment(r *http.Request) bool { return r.Header.Get("HX-Request") == "true" }

// write sends a rendered template; nothing is sent if it fails.
func (p *pages) write(w http.ResponseWriter, r *http.Request, status int, page, part string, data any) error {
	var b bytes.Buffer
	if err := p.views.render(&b, page, part, data); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Add("Vary", "HX-Request")
	w.WriteHeader(status)
	if r.Method == http.MethodHead {
		return nil
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		p.log.DebugContext(r.Context(), "page not sent", "path", r.URL.Path, "err", err)
	}
	return nil
}

// fail answers with what went wrong. Someone who has left gets no answer.
func (p *pages) fail(w http.ResponseWriter, r *http.Request, err error) {
	if errors.Is(err, context.Canceled) && r.Context().Err() != nil {
		return
	}
	t := troubleOf(err)
	if t.Status >= http.StatusInternalServerError {
		p.log.ErrorContext(r.Context(), "page failed", "method", r.Method, "path", r.URL.Path, "err", err)
	}
	part := "layout"
	if isFragment(r) {
		part = "trouble"
		w.Header().Set("HX-Retarget", "#trouble")
	}
	if err := p.write(w, r, t.Status, "problem", part, t); err != nil {
		p.log.ErrorContext(r.Context(), "problem page failed", "err", err)
		http.Error(w, t.Title+". "+t.Text, t.Status)
	}
}
