package main

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"runtime"
	"sync/atomic"
	"time"

	"github.com/spf13/cobra"

	"counterpour/api"
	"counterpour/api/accesslog"
	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/visit"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
	"counterpour/data/stamp"
	"counterpour/flavor/beside"
	"counterpour/webui"
	"counterpour/webui/access"
	"counterpour/webui/behind"
)

// Limits of the server. A request has more time than its body, so that a slow body is
// reported as such.
const (
	headerTimeout   = 5 * time.Second
	readTimeout     = api.RequestTimeout + 5*time.Second
	writeTimeout    = api.RequestTimeout + 10*time.Second
	idleTimeout     = 2 * time.Minute
	shutdownTimeout = api.RequestTimeout + 5*time.Second
	maxHeader       = 32 << 10
)

// newServe serves the API and the web pages.
//
//	counterpour serve --listen 127.0.0.1:0
func newServe(open premises.Kitchens) *cobra.Command {
	s := &program{open: open, at: premises.Place{Why: premises.ToServe}}
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "Serve the API and the web pages",
		Long: `Serves the API and the web pages until it is told to stop (SIGTERM, SIGHUP or ctrl-C),
then finishes the requests that are under way. Prints one line with its address
once it answers.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			s.out = cmd.OutOrStdout()
			s.log = slog.New(accesslog.Handler(slog.NewTextHandler(cmd.ErrOrStderr(), nil)))
			return s.Run(cmd.Context())
		},
	}
	cmd.Flags().StringVar(&s.at.Where, "house", "", "file that the house is kept in, made if it is not there, or a postgres:// address; the invented demo house if empty")
	cmd.Flags().StringVar(&s.listen, "listen", "127.0.0.1:8086", "address and port to listen on; port 0 picks a free one")
	s.door.flags(cmd)
	return cmd
}

// spareThreads is how many more threads there are than cores. Searches may occupy all
// cores; with spare threads the operating system schedules a light request at once, and
// Go need not preempt a search first.
const spareThreads = 2

// program is a server. Run may be called once.
type program struct {
	open    premises.Kitchens
	listen  string
	cores   int // cores that searches may use
	at      premises.Place
	door    door
	opening api.Progress // progress of building the full-text index
	out     io.Writer    // receives the line with the address
	log     *slog.Logger
}

// Run listens first, so that an occupied port is reported at once. Then it opens the
// kitchen and the house, serves until ctx ends, and finishes the requests in progress.
// The full-text index is built while the server already answers.
func (s *program) Run(ctx context.Context) error {
	if _, _, err := net.SplitHostPort(s.listen); err != nil {
		return terminal.Usagef("--listen %s: %w; write an address and a port, such as 127.0.0.1:8086", s.listen, err)
	}
	roll, err := s.door.roll(s.listen, s.log)
	if err != nil {
		return err
	}
	encryption, err := s.door.encryption()
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", s.listen)
	if err != nil {
		return fmt.Errorf("%w; --listen takes another address or port, and port 0 a free one", err)
	}
	var entrance entrance
	entrance.open(api.Starting())
	server := s.newServer(&entrance, encryption)
	ended := serveBeside(server, listener)
	s.cores = runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(s.cores + spareThreads))
	k, done, err := s.open(ctx)
	if err == nil {
		defer done()
		var handler http.Handler
		var leave func()
		if handler, leave, err = s.handler(ctx, k, server, roll); err == nil {
			defer leave()
			entrance.open(handler)
			_, err = fmt.Fprintf(s.out, "counterpour is serving on %s://%s (%s)\n", s.door.scheme(), listener.Addr(), s.what())
		}
	}
	if err != nil {
		_ = server.Close() // the first error matters more
		if ctx.Err() != nil {
			return nil // stopped while starting
		}
		return err
	}
	select {
	case err := <-ended:
		return fmt.Errorf("serving on %s: %w", listener.Addr(), err)
	case <-ctx.Done():
	}
	return finish(server)
}

// newServer returns an HTTP server with the limits above, whose requests are logged.
func (s *program) newServer(h http.Handler, encryption *tls.Config) *http.Server {
	return &http.Server{Handler: s.door.withHSTS(accesslog.Keep(s.log, h)), ReadHeaderTimeout: headerTimeout, ReadTimeout: readTimeout, WriteTimeout: writeTimeout,
		IdleTimeout: idleTimeout, MaxHeaderBytes: maxHeader, TLSConfig: encryption, ErrorLog: slog.NewLogLogger(s.log.Handler(), slog.LevelWarn)}
}

// serveBeside serves in a goroutine. The channel receives the error with which that ends.
func serveBeside(server *http.Server, l net.Listener) <-chan error {
	ended := make(chan error, 1)
	go func() {
		defer func() {
			if r := recover(); r != nil {
				ended <- fmt.Errorf("the server failed: %v", r)
			}
		}()
		ended <- serve(server, l)
	}()
	return ended
}

// what describes what is served and where it is stored.
func (s *program) what() string {
	switch {
	case s.at.Later:
		return "a later version wrote the house, so it is open for reading only"
	case s.at.Where == premises.Demo:
		return "embedded catalogue and demo house, in memory; nothing is saved"
	case premises.IsDatabase(s.at.Where) && s.at.Made:
		return "the house is kept in a PostgreSQL database, in a venue made just now"
	case premises.IsDatabase(s.at.Where):
		return "the house is kept in a PostgreSQL database"
	case s.at.Made:
		return "the house is kept in " + s.at.Where + ", which was made just now"
	}
	return "the house is kept in " + s.at.Where
}

// handler returns the handler for everything that is served over a kitchen and its house;
// leave closes the house. With an access list it stands behind a guard.
func (s *program) handler(ctx context.Context, k *kitchen.Kitchen, server *http.Server, a *roll) (h http.Handler, leave func(), err error) {
	k = k.Admitting(admission.New(s.cores))
	watch := newStopwatch()
	s.at.Over = watch.over
	v, leave, err := premises.Enter(ctx, k, &s.at, s.log)
	if err != nil {
		return nil, nil, err
	}
	var guard *access.Guard
	if a != nil {
		shut := leave
		var stop func()
		guard, stop = s.door.guard(ctx, a, v.Store(), s.at.Later)
		leave = func() { stop(); shut() }
	}
	server.RegisterOnShutdown(v.HangUp)
	// The web pages handle all paths that are not endpoints. They are made while the
	// endpoints are.
	var pages entrance
	paged := beside.Run(func() error {
		h, err := s.pages(v, guard)
		pages.open(h)
		return err
	})
	answers, err := api.NewServer(v.Now, api.Options{Pages: &pages, Ready: v.Ready, Opening: &s.opening, Keeper: v, Editor: editor, Log: s.log, Meters: append(metersOf(v, guard), watch.seconds), Version: stamp.Read().Version})
	if err = errors.Join(paged(), err); err != nil {
		leave()
		return nil, nil, err
	}
	h = answers.Handler()
	go s.openSearch(ctx, v)
	if guard != nil {
		return guard.Wrap(h), leave, nil
	}
	return onlyLoopbackHosts(access.Unguarded(h)), leave, nil
}

// headStart is how long the first answers have the cores to themselves before the
// search by words is made. A search that comes earlier makes it at once.
const headStart = 300 * time.Millisecond

// openSearch builds the full-text index. If that fails, the first search tries again.
func (s *program) openSearch(ctx context.Context, v *service.Venue) {
	defer func() {
		if r := recover(); r != nil {
			s.log.Error("the search by words broke while it was opened", "cause", fmt.Sprint(r))
		}
	}()
	select {
	case <-ctx.Done():
		return
	case <-time.After(headStart):
	}
	if err := v.Now().Index.Open(ctx, s.opening.Set); err != nil && ctx.Err() == nil {
		s.log.Error("the search by words could not be opened", "error", err)
	}
	settle()
}

func (s *program) pages(v *service.Venue, guard *access.Guard) (http.Handler, error) {
	if guard == nil {
		return webui.New(func() behind.Visit { return visit.Of(v) }, s.log)
	}
	return webui.NewWithLogin(func() behind.Visit { return visit.Of(v) }, guard, s.log)
}

// editor returns who makes a request over the API, and what their role allows.
func editor(ctx context.Context) api.Editor {
	e := api.Editor{By: house.By{Actor: "api", At: time.Now()}, MayNote: access.May(ctx, access.Floor), MayEdit: access.May(ctx, access.Lead)}
	if p, ok := access.PersonOf(ctx); ok {
		e.By.Actor = p.Name
	}
	return e
}

// finish shuts the server down and waits for requests in progress, up to the longest time
// of one.
func finish(server *http.Server) error {
	ctx, cancel := context.WithTimeout(context.Background(), shutdownTimeout)
	defer cancel()
	err := server.Shutdown(ctx)
	if errors.Is(err, context.DeadlineExceeded) {
		_ = server.Close()
		return errors.New("some requests did not end in time and were cut off")
	}
	return err
}

// entrance is a handler that can be replaced while it serves.
type entrance struct{ handler atomic.Pointer[http.Handler] }

func (e *entrance) open(h http.Handler) { e.handler.Store(&h) }

func (e *entrance) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	(*e.handler.Load()).ServeHTTP(w, r)
}
