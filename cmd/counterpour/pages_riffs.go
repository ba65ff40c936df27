package main

import (
	"context"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/station"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
	"counterpour/webui"
)

func (b bar) Resolve(name string) (*flavor.Profile, flavor.Match, error) {
	return b.kitchen().Index.Resolve(name)
}

func (b bar) Riff(ctx context.Context, r riff.Request) (*riff.Result, error) {
	return riff.Vary(ctx, b.kitchen().Station, r)
}

func (b bar) Relatives(s *flavor.Spec, n int, guest cover.Guest) ([]station.Relative, error) {
	return b.kitchen().Station.Relatives(s, n, guest)
}

func (b bar) UseUp(ctx context.Context, r useup.Request) (*useup.Result, error) {
	return useup.Find(ctx, b.kitchen().Station, r)
}

func (b bar) Walk(ctx context.Context, r walk.Request) ([]walk.Stop, error) {
	return walk.Find(ctx, b.kitchen().Station, r)
}

func (b bar) AlcoholCautions() []webui.Caution {
	var out []webui.Caution
	for _, c := range b.kitchen().AlcoholCautions() {
		out = append(out, webui.Caution{Text: c.Text, Source: c.Source})
	}
	return out
}
