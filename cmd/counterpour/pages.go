package main

import (
	"context"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
	"counterpour/index"
	"counterpour/webui"
)

// bar is a venue as the pages see it.
type bar struct{ venue *service.Venue }

var _ webui.Bar = bar{}

func newBar(v *service.Venue) bar { return bar{v} }

func (b bar) kitchen() *service.Kitchen { return b.venue.Kitchen() }

func (b bar) Read(text string) (flavor.Spec, error) { return b.kitchen().Read(text) }

func (b bar) Score(s *flavor.Spec) (*balance.Result, []balance.Fix, error) {
	return b.kitchen().Score(s)
}

func (b bar) Cover(ctx context.Context, r webui.CoverRequest) (*flavor.Profile, *cover.Result, error) {
	k := b.kitchen()
	missing, result, _, err := k.Cover(ctx, service.CoverRequest{Spec: *r.Spec, Missing: r.Missing,
		Guest: cover.Guest{Avoid: r.Avoid}, Stock: r.Stock, Parts: r.Parts, Limit: r.Limit})
	return missing, result, err
}

func (b bar) Judge(s *flavor.Spec) (*balance.Result, error) { return b.kitchen().Judge.Score(s) }

func (b bar) Explain(s *flavor.Spec) ([]balance.Step, error) { return b.kitchen().Judge.Explain(s) }

func (b bar) Outs(ctx context.Context, r cover.MenuRequest) (*cover.MenuResult, error) {
	return b.kitchen().Finder.Outs(ctx, r, nil)
}

// The venue serves both.
func (b bar) House() webui.House { return room(b) }

func (b bar) Trainer() webui.Trainer { return newCoach(b.kitchen) }

func (b bar) Suggest(ctx context.Context, prefix string, limit int) ([]*flavor.Profile, error) {
	r, err := b.kitchen().Index.Search(ctx, index.Query{Text: prefix, Limit: limit})
	if err != nil {
		return nil, err
	}
	out := make([]*flavor.Profile, len(r.Hits))
	for i, h := range r.Hits {
		out[i] = h.Profile
	}
	return out, nil
}

func (b bar) Examples() []flavor.Spec {
	menu := b.venue.Now().Menu
	out := make([]flavor.Spec, len(menu))
	for i, d := range menu {
		out[i] = d.Spec
	}
	return out
}

func (b bar) Families() []template.Family {
	families, _ := b.kitchen().Set.Families()
	return families
}

func (b bar) Family(id string) (template.Family, bool) {
	for _, f := range b.Families() {
		if f.ID == id {
			return f, true
		}
	}
	return template.Family{}, false
}

func (b bar) Ranges(s *flavor.Spec, family string) (out [template.NumAxes]webui.Range, ok bool) {
	build, err := b.kitchen().Set.Prepare(s)
	if err != nil {
		return out, false
	}
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return out, false
	}
	spreads := balance.AxisSpreads(s)
	e := build.Equivalents(build.Amounts())
	for a, band := range bands {
		out[a] = webui.Range{Has: band.Has, Low: band.Low, Centre: band.Centre, High: band.High, PlusMinus: spreads[a] * e[a]}
	}
	return out, true
}

func (b bar) Cautions(s *flavor.Spec) []webui.Caution {
	var out []webui.Caution
	for _, c := range b.kitchen().CautionsOf(s) {
		out = append(out, webui.Caution{Text: c.Text, Source: c.Source})
	}
	return out
}
