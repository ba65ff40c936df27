package webui

import "net/http"

// The methods of pages that only show something, and of those that take forms
// too. What a form changes is a lead's where the route says so; the rest is for
// everybody who is let in.
var (
	showing = []string{http.MethodGet, http.MethodHead}
	taking  = []string{http.MethodGet, http.MethodHead, http.MethodPost}
	posting = []string{http.MethodPost}
)

// routes lists every route.
func (p *pages) routes() http.Handler {
	mux := http.NewServeMux()
	p.benchRoutes(mux)
	p.boardRoutes(mux)
	p.specRoutes(mux)
	p.stockRoutes(mux)
	p.trainingRoutes(mux)
	mux.Handle("/login", p.route(p.login, taking...))
	mux.Handle("/offline.js", p.route(p.statics.offline, showing...))
	mux.Handle("/static/{name...}", p.route(p.statics.serve, showing...))
	mux.Handle("/", p.route(func(http.ResponseWriter, *http.Request) error { return errNotFound }))
	return mux
}

// benchRoutes are for developing a drink. Scoring and riffing write nothing.
func (p *pages) benchRoutes(mux *http.ServeMux) {
	mux.Handle("/{$}", p.route(p.bench, taking...))
	mux.Handle("/names", p.route(p.names, showing...))
	mux.Handle("/card", p.route(p.draftCard, showing...))
	mux.Handle("/riffs", p.route(p.riffs, taking...))
	mux.Handle("/riffs/use-up", p.route(p.useUp, taking...))
	mux.Handle("/riffs/walk", p.route(p.walk, taking...))
	mux.Handle("/tools", p.route(p.tools, showing...))
}

func (p *pages) boardRoutes(mux *http.ServeMux) {
	mux.Handle("/board", p.route(p.board, taking...))
	mux.Handle("/board/events", p.open(p.boardEvents, http.MethodGet))
}

func (p *pages) specRoutes(mux *http.ServeMux) {
	mux.Handle("/specs", p.route(p.specs, showing...))
	mux.Handle("/specs/print", p.route(p.collection, showing...))
	mux.Handle("/specs/export", p.route(p.export, showing...))
	mux.Handle("/specs/import", p.route(lead(p.takeIn), taking...))
	mux.Handle("/specs/{slug}", p.route(lead(p.specPage), taking...))
	mux.Handle("/specs/{slug}/batch", p.route(p.batch, showing...))
	mux.Handle("/specs/{slug}/card", p.route(p.card, showing...))
}

func (p *pages) stockRoutes(mux *http.ServeMux) {
	mux.Handle("/stock", p.route(p.stock, showing...))
	mux.Handle("/stock/bottle", p.route(lead(p.bottlePage), taking...))
	mux.Handle("/stock/made", p.route(lead(p.madePage), taking...))
	mux.Handle("/stock/undo", p.route(lead(p.undoStock), posting...))
	mux.Handle("/stock/import", p.route(lead(p.importStock), taking...))
	mux.Handle("/stock/stock.csv", p.route(p.exportStock, showing...))
	mux.Handle("/map", p.route(p.stockMap, showing...))
}

func (p *pages) trainingRoutes(mux *http.ServeMux) {
	mux.Handle(trainingPath, p.route(p.training, taking...))
	mux.Handle(progressPath, p.route(p.progress, taking...))
	mux.Handle(flightPath, p.route(p.flight, showing...))
	mux.Handle(trianglePath, p.route(p.triangle, taking...))
	mux.Handle(starterPath, p.route(p.starter, showing...))
}
