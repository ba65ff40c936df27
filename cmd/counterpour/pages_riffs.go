package main

import (
	"context"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/riff"
	"counterpour/webui"
)

func (b bar) Resolve(name string) (*flavor.Profile, flavor.Match, error) {
	return b.kitchen().Index.Resolve(name)
}

func (b bar) Riff(ctx context.Context, r riff.Request) (*riff.Result, error) {
	return b.kitchen().Riffer.Riff(ctx, r)
}

func (b bar) Relatives(s *flavor.Spec, n int, guest cover.Guest) ([]riff.Relative, error) {
	return b.kitchen().Riffer.Relatives(s, n, guest)
}

func (b bar) UseUp(ctx context.Context, r riff.UseRequest) (*riff.UseResult, error) {
	return b.kitchen().Riffer.UseUp(ctx, r)
}

func (b bar) Walk(ctx context.Context, r riff.WalkRequest) ([]riff.Stop, error) {
	return b.kitchen().Riffer.Walk(ctx, r)
}

func (b bar) AlcoholCautions() []webui.Caution {
	var out []webui.Caution
	for _, c := range b.kitchen().AlcoholCautions() {
		out = append(out, webui.Caution{Text: c.Text, Source: c.Source})
	}
	return out
}
