package webui

import (
	"context"
	"embed"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"sync"

	"counterpour/data/house"
	"counterpour/webui/access"
	"counterpour/webui/behind"
	"counterpour/webui/bench"
	"counterpour/webui/board"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/likeness"
	"counterpour/webui/part"
	"counterpour/webui/riffs"
	"counterpour/webui/specs"
	"counterpour/webui/stock"
	"counterpour/webui/stocksheet"
	"counterpour/webui/training"
)

//go:embed static templates
var embedded embed.FS

// statics are the same for whoever asks, and are made short only once.
var statics = sync.OnceValues(func() (*frame.Statics, error) { return frame.LoadStatics(embedded) })

// New returns the handler of all pages and static files. It answers every path
// it is given, so mount other things before it. Everybody may do everything, so
// the server must answer on a loopback address only. It fails only if the
// embedded files do not fit together.
func New(open behind.Open, log *slog.Logger) (http.Handler, error) {
	pages, err := NewWithLogin(open, nil, log)
	return access.Unguarded(pages), err
}

// NewWithLogin is [New] with a login page, for pages that a guard stands before.
func NewWithLogin(open behind.Open, door Doorkeeper, log *slog.Logger) (http.Handler, error) {
	if open == nil || log == nil {
		return nil, errors.New("webui: needs a house and a log")
	}
	files, err := statics()
	if err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	f, err := frame.New(embedded, files, door != nil, func() bool { return open().Fresh() != nil }, log)
	if err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	f.House = func() string { return open().Settings().Name }
	f.Comma = func() bool { return open().Settings().Decimal == house.DecimalComma }
	f.Names = func() []string { return namesOf(open()) }
	mux := http.NewServeMux()
	bench.Mount(mux, f, open)
	riffs.Mount(mux, f, open)
	board.Mount(mux, f, open)
	specs.Mount(mux, f, open)
	stock.Mount(mux, f, open)
	stocksheet.Mount(mux, f, open)
	likeness.Mount(mux, f, open)
	if err := training.Mount(mux, f, open); err != nil {
		return nil, fmt.Errorf("webui: %w", err)
	}
	mux.Handle("/login", f.Route((&loginPage{f, door}).serve, frame.Taking...))
	mux.Handle(part.UndoPath, f.Route(frame.Lead((&undoPage{f, open}).serve), frame.Posting...))
	mux.Handle("/{$}", first(mux, open))
	f.Mount(mux)
	return f.Guard(mux), nil
}

// namesOf lists what a house named, and wrote beside its drinks.
func namesOf(h behind.House) []string {
	names := []string{h.Settings().Name, h.About()}
	menu, err := h.Menu(context.Background())
	if err != nil {
		menu = nil // the page that asks for it says so
	}
	for i := range menu {
		s := &menu[i].Spec
		names = append(append(names, s.Name, s.Garnish, s.Glass, s.Rim), s.Steps...)
	}
	for _, b := range h.Inventory() {
		names = append(names, b.Name)
	}
	for _, p := range h.Shelf().Profiles() {
		names = append(names, p.Name)
	}
	return names
}

// first answers the first address: with what a house can pour tonight, or where
// there is no menu yet with the first day, or the bench for who may not begin it. A draft that comes with the address, or
// is sent to it, is for the bench, as links that were kept expect; a guest alone is no draft.
func first(mux *http.ServeMux, open behind.Open) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		at := bench.Path
		if r.Method != http.MethodPost && form.OnlyGuest(r.URL.Query()) {
			menu, err := open().Menu(r.Context())
			switch {
			case err != nil:
			case len(menu) > 0:
				at = board.TonightPath
			case access.May(r.Context(), access.Lead):
				at = stock.StartPath
			}
		}
		there := r.Clone(r.Context())
		there.URL.Path = at
		mux.ServeHTTP(w, there)
	})
}
