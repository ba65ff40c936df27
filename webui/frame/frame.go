package frame

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"log/slog"
	"net/http"
	"strconv"
	"time"

	"counterpour/api/accesslog"
	"counterpour/api/admission"
	"counterpour/webui/access"
)

// Limits of a request.
const (
	MaxBody  = 1 << 20 // of a form
	pageTime = 10 * time.Second
)

// ContentPolicy allows pages to load files of this server only.
const ContentPolicy = "default-src 'self'; style-src 'self'; script-src 'self'; img-src 'self' data:; " +
	"base-uri 'none'; form-action 'self'; frame-ancestors 'none'"

// Frame holds what all pages share: layout, parts, static files and the error page. It is
// safe for concurrent use.
type Frame struct {
	Log     *slog.Logger
	House   func() string   // returns the name of the house; nil or "" for none
	Comma   func() bool     // reports whether the house writes decimal commas; nil if it does not
	Names   func() []string // what the house named, which keeps its points in a house that writes commas; nil if nothing
	statics *Statics
	leads   *views // templates of users who may change everything
	floors  *views // templates of all other users
	packer  packer
}

// New reads the folder templates, whose pages link to the static files. With login, pages link
// to the login page. stale reports whether what a page shows may be out of date.
func New(files fs.FS, statics *Statics, login bool, stale func() bool, log *slog.Logger) (*Frame, error) {
	f := &Frame{Log: log, statics: statics}
	var err error
	if f.leads, err = loadViews(files, f, login, true, stale); err != nil {
		return nil, err
	}
	f.floors, err = loadViews(files, f, login, false, stale)
	return f, err
}

// house returns the name of the house; "" if it has none.
func (f *Frame) house() string {
	if f.House == nil {
		return ""
	}
	return f.House()
}

// Guard sets the security headers of every answer and refuses forms from other sites
// (CSRF).
func (f *Frame) Guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(f.Route(func(http.ResponseWriter, *http.Request) error { return errElsewhere }))
	next = cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", ContentPolicy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cache-Control", AskFirst)
		r.Body = http.MaxBytesReader(w, r.Body, MaxBody)
		defer func() { accesslog.SetRoute(r.Context(), r.Pattern) }() // the mux has set it
		next.ServeHTTP(w, r)
	})
}

// Mount adds the static files and the handler for unknown paths to a mux.
func (f *Frame) Mount(mux *http.ServeMux) {
	mux.Handle("/offline.js", f.Route(f.statics.offline, Showing...))
	mux.Handle("/static/{name...}", f.Route(f.statics.serve, Showing...))
	mux.Handle("/", f.Route(func(http.ResponseWriter, *http.Request) error { return ErrNotFound }))
}

// Action is a handler that returns an error.
type Action func(w http.ResponseWriter, r *http.Request) error

// Route returns a handler that runs an action for the given methods, or for all if none
// is given. It sets the deadline of a page and turns the error into an answer.
func (f *Frame) Route(do Action, methods ...string) http.Handler {
	return f.Open(func(w http.ResponseWriter, r *http.Request) error {
		ctx, cancel := context.WithTimeout(r.Context(), pageTime)
		defer cancel()
		return do(w, r.WithContext(ctx))
	}, methods...)
}

// Open is a route without a deadline, for server-sent events.
func (f *Frame) Open(do Action, methods ...string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		err := allow(w, r, methods)
		if err == nil {
			err = do(w, r)
		}
		if err != nil {
			f.fail(w, r, err)
		}
	})
}

// Lead lets everybody read, and only a lead send forms.
func Lead(do Action) Action {
	return func(w http.ResponseWriter, r *http.Request) error {
		if r.Method != http.MethodGet && r.Method != http.MethodHead && !access.May(r.Context(), access.Lead) {
			return ErrNotTheirs
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

// IsFragment reports whether htmx requests part of a page.
func IsFragment(r *http.Request) bool { return r.Header.Get("HX-Request") == "true" }

// Write renders a template and sends it. If rendering fails, it sends nothing.
func (f *Frame) Write(w http.ResponseWriter, r *http.Request, status int, page, part string, data any) error {
	var b bytes.Buffer
	views := f.floors
	if access.May(r.Context(), access.Lead) {
		views = f.leads
	}
	if err := views.render(&b, page, part, data); err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Add("Vary", "HX-Request")
	h.Add("Vary", "Accept-Encoding")
	body := b.Bytes()
	if f.Comma != nil && f.Comma() {
		body = f.commasOf(r).write(body)
	}
	if len(body) >= leastPacked && takesGzip(r.Header.Get("Accept-Encoding")) {
		h.Set("Content-Encoding", "gzip")
		body = f.packer.pack(body)
	}
	w.WriteHeader(status)
	if r.Method == http.MethodHead {
		return nil
	}
	if _, err := w.Write(body); err != nil {
		f.Log.DebugContext(r.Context(), "page not sent", "path", r.URL.Path, "err", err)
	}
	return nil
}

// commasOf returns the commas of an answer to a request.
func (f *Frame) commasOf(r *http.Request) commas {
	if f.Names == nil {
		return newCommas(nil, r.Form)
	}
	return newCommas(f.Names(), r.Form)
}

// fail sends the error page. It sends nothing if the client has gone.
func (f *Frame) fail(w http.ResponseWriter, r *http.Request, err error) {
	if errors.Is(err, context.Canceled) && r.Context().Err() != nil {
		return
	}
	t := TroubleOf(err)
	t.RequestID = accesslog.ID(r.Context())
	if t.Status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", strconv.Itoa(admission.RetryAfter))
	}
	if t.Status >= http.StatusInternalServerError && !errors.Is(err, admission.ErrFull) {
		f.Log.ErrorContext(r.Context(), "page failed", "method", r.Method, "path", r.URL.Path, "err", err)
	}
	part := "layout"
	if IsFragment(r) {
		part = "trouble"
		w.Header().Set("HX-Retarget", "#trouble")
	}
	if err := f.Write(w, r, t.Status, "problem", part, t); err != nil {
		f.Log.ErrorContext(r.Context(), "problem page failed", "err", err)
		http.Error(w, t.Title+". "+t.Text, t.Status)
	}
}
