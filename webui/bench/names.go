package bench

import (
	"context"
	"net/http"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/webui/form"
)

// How names are offered while a line is typed.
const (
	leastTyped = 2 // letters before anything is offered
	maxNames   = 6
)

// nameOffer is an ingredient and the line that it would make.
type nameOffer struct{ Name, Line string }

// names offers ingredients for the line, or for the name in a row, that is
// being typed. A line that cannot be read yet gets none.
func (p *pages) names(w http.ResponseWriter, r *http.Request) error {
	q, part := r.URL.Query(), "names"
	var offers []nameOffer
	var err error
	if q.Has("name") {
		part = "options"
		offers, err = p.namesLike(r.Context(), strings.TrimSpace(q.Get("name")), "")
	} else {
		offers, err = p.offers(r.Context(), q.Get("line"))
	}
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "bench", part, offers)
}

func (p *pages) offers(ctx context.Context, line string) ([]nameOffer, error) {
	line = strings.TrimSpace(form.Lines(line))
	read := draft.ParsePours(line)
	if len(read.Lines) != 1 || len(read.Faults) > 0 {
		return nil, nil
	}
	typed := read.Lines[0].Name
	head, ok := strings.CutSuffix(line, typed)
	if !ok {
		return nil, nil
	}
	return p.namesLike(ctx, typed, head)
}

// namesLike offers ingredients whose name goes on from what was typed, after the
// head of its line. A name that is whole gets none.
func (p *pages) namesLike(ctx context.Context, typed, head string) ([]nameOffer, error) {
	if len([]rune(typed)) < leastTyped {
		return nil, nil
	}
	found, err := p.bar.Suggest(ctx, typed, maxNames)
	if err != nil {
		return nil, err
	}
	var out []nameOffer
	for _, f := range found {
		if flavor.NormaliseName(f.Name) == flavor.NormaliseName(typed) {
			return nil, nil
		}
		out = append(out, nameOffer{Name: f.Name, Line: head + f.Name})
	}
	return out, nil
}
