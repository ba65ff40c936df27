package webui

import (
	"net/http"

	"counterpour/webui/frame"
)

// routes lists every route.
func (p *pages) routes() http.Handler {
	mux := http.NewServeMux()
	p.benchRoutes(mux)
	p.boardRoutes(mux)
	p.specRoutes(mux)
	p.stockRoutes(mux)
	p.trainingRoutes(mux)
	mux.Handle("/login", p.Route(p.login, frame.Taking...))
	p.Mount(mux)
	return mux
}

// benchRoutes are for developing a drink. Scoring and riffing write nothing.
func (p *pages) benchRoutes(mux *http.ServeMux) {
	mux.Handle("/{$}", p.Route(p.bench, frame.Taking...))
	mux.Handle("/names", p.Route(p.names, frame.Showing...))
	mux.Handle("/card", p.Route(p.draftCard, frame.Showing...))
	mux.Handle("/riffs", p.Route(p.riffs, frame.Taking...))
	mux.Handle("/riffs/use-up", p.Route(p.useUp, frame.Taking...))
	mux.Handle("/riffs/walk", p.Route(p.walk, frame.Taking...))
	mux.Handle("/tools", p.Route(p.tools, frame.Showing...))
}

func (p *pages) boardRoutes(mux *http.ServeMux) {
	mux.Handle("/board", p.Route(p.board, frame.Taking...))
	mux.Handle("/board/events", p.Open(p.boardEvents, http.MethodGet))
}

func (p *pages) specRoutes(mux *http.ServeMux) {
	mux.Handle("/specs", p.Route(p.specs, frame.Showing...))
	mux.Handle("/specs/print", p.Route(p.collection, frame.Showing...))
	mux.Handle("/specs/export", p.Route(p.export, frame.Showing...))
	mux.Handle("/specs/import", p.Route(frame.Lead(p.takeIn), frame.Taking...))
	mux.Handle("/specs/{slug}", p.Route(frame.Lead(p.specPage), frame.Taking...))
	mux.Handle("/specs/{slug}/batch", p.Route(p.batch, frame.Showing...))
	mux.Handle("/specs/{slug}/card", p.Route(p.card, frame.Showing...))
}

func (p *pages) stockRoutes(mux *http.ServeMux) {
	mux.Handle("/stock", p.Route(p.stock, frame.Showing...))
	mux.Handle("/stock/bottle", p.Route(frame.Lead(p.bottlePage), frame.Taking...))
	mux.Handle("/stock/made", p.Route(frame.Lead(p.madePage), frame.Taking...))
	mux.Handle("/stock/undo", p.Route(frame.Lead(p.undoStock), frame.Posting...))
	mux.Handle("/stock/import", p.Route(frame.Lead(p.importStock), frame.Taking...))
	mux.Handle("/stock/stock.csv", p.Route(p.exportStock, frame.Showing...))
	mux.Handle("/map", p.Route(p.stockMap, frame.Showing...))
}

func (p *pages) trainingRoutes(mux *http.ServeMux) {
	mux.Handle(trainingPath, p.Route(p.training, frame.Taking...))
	mux.Handle(progressPath, p.Route(p.progress, frame.Taking...))
	mux.Handle(flightPath, p.Route(p.flight, frame.Showing...))
	mux.Handle(trianglePath, p.Route(p.triangle, frame.Taking...))
	mux.Handle(starterPath, p.Route(p.starter, frame.Showing...))
}
