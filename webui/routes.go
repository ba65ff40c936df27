package webui

import "net/http"

// The methods of pages that only show something, and of those that take forms
// too. What a form changes is a lead's where the route says so; the rest is for
// everybody who is let in.
var (
	look = []string{http.MethodGet, http.MethodHead}
	form = []string{http.MethodGet, http.MethodHead, http.MethodPost}
	act  = []string{http.MethodPost}
)

// routes lists every route.
func (p *pages) routes() http.Handler {
	mux := http.NewServeMux()
	p.benchRoutes(mux)
	p.boardRoutes(mux)
	p.specRoutes(mux)
	p.stockRoutes(mux)
	p.trainingRoutes(mux)
	mux.Handle("/login", p.route(p.login, form...))
	mux.Handle("/offline.js", p.route(p.statics.offline, look...))
	mux.Handle("/static/{name...}", p.route(p.statics.serve, look...))
	mux.Handle("/", p.route(func(http.ResponseWriter, *http.Request) error { return errNotFound }))
	return mux
}

// benchRoutes are for developing a drink. Scoring and riffing write nothing.
func (p *pages) benchRoutes(mux *http.ServeMux) {
	mux.Handle("/{$}", p.route(p.bench, form...))
	mux.Handle("/names", p.route(p.names, look...))
	mux.Handle("/card", p.route(p.draftCard, look...))
	mux.Handle("/riffs", p.route(p.riffs, form...))
	mux.Handle("/riffs/use-up", p.route(p.useUp, form...))
	mux.Handle("/riffs/walk", p.route(p.walk, form...))
	mux.Handle("/tools", p.route(p.tools, look...))
}

func (p *pages) boardRoutes(mux *http.ServeMux) {
	mux.Handle("/board", p.route(p.board, form...))
	mux.Handle("/board/events", p.open(p.boardEvents, http.MethodGet))
}

func (p *pages) specRoutes(mux *http.ServeMux) {
	mux.Handle("/specs", p.route(p.specs, look...))
	mux.Handle("/specs/print", p.route(p.collection, look...))
	mux.Handle("/specs/export", p.route(p.export, look...))
	mux.Handle("/specs/import", p.route(lead(p.takeIn), form...))
	mux.Handle("/specs/{slug}", p.route(lead(p.specPage), form...))
	mux.Handle("/specs/{slug}/batch", p.route(p.batch, look...))
	mux.Handle("/specs/{slug}/card", p.route(p.card, look...))
}

func (p *pages) stockRoutes(mux *http.ServeMux) {
	mux.Handle("/stock", p.route(p.stock, look...))
	mux.Handle("/stock/bottle", p.route(lead(p.bottlePage), form...))
	mux.Handle("/stock/made", p.route(lead(p.madePage), form...))
	mux.Handle("/stock/undo", p.route(lead(p.undoStock), act...))
	mux.Handle("/stock/import", p.route(lead(p.importStock), form...))
	mux.Handle("/stock/stock.csv", p.route(p.exportStock, look...))
	mux.Handle("/map", p.route(p.stockMap, look...))
}

func (p *pages) trainingRoutes(mux *http.ServeMux) {
	mux.Handle(trainingPath, p.route(p.training, form...))
	mux.Handle(progressPath, p.route(p.progress, form...))
	mux.Handle(flightPath, p.route(p.flight, look...))
	mux.Handle(trianglePath, p.route(p.triangle, form...))
	mux.Handle(starterPath, p.route(p.starter, look...))
}
