package service

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/admission"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/shared"
	"counterpour/data"
	"counterpour/flavor/cover"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
)

// fill takes every place of a pool, one after another, until it refuses.
func fill(t *testing.T, p *admission.Pool) {
	t.Helper()
	ctx, cancel := context.WithCancel(t.Context())
	t.Cleanup(cancel)
	_, leave, err := p.Enter(ctx)
	require.NoError(t, err)
	t.Cleanup(leave)
	for p.Refused() == 0 {
		go func() {
			if _, leave, err := p.Enter(ctx); err == nil {
				leave()
			}
		}()
	}
}

// Every search of the service goes through the pool; what is fast does not.
func TestSearchesAreAdmitted(t *testing.T) {
	k := testKitchen(t).Admitting(admission.New(1))
	s := AtRest(k, &data.House{})
	text := honeySour
	draft := Draft{Text: &text}
	spec := readDraft(t, s, honeySour)
	stock := k.Catalogue.Profiles()[:50]
	menus, err := shared.New()
	require.NoError(t, err)
	visit := &Visit{venue: &Venue{menus: menus}}
	visit.now.Store(s)
	fill(t, k.Searches)
	ctx := t.Context()
	for name, search := range map[string]func() error{
		"cover": func() error {
			_, err := s.Cover(ctx, CoverRequest{Draft: draft, Missing: []string{"gin"}, Parts: 1, Limit: 1})
			return err
		},
		"outs": func() error {
			_, err := s.Outs(ctx, OutsRequest{Out: []string{"gin"}, Parts: 1})
			return err
		},
		"coverage": func() error {
			_, err := s.Coverage(ctx, CoverageRequest{})
			return err
		},
		"riff": func() error {
			_, err := s.Riff(ctx, RiffRequest{Draft: draft, Limit: 1})
			return err
		},
		"use up": func() error {
			_, err := s.UseUp(ctx, UseUpRequest{Bottles: []string{"fino sherry"}, Limit: 1})
			return err
		},
		"walk": func() error {
			_, err := s.Walk(ctx, WalkRequest{From: draft, To: draft, Steps: 1, PourML: 60})
			return err
		},
		"cover on a page": func() error {
			_, err := visit.Cover(ctx, PageCover{Spec: &spec, Missing: "gin", Parts: 1, Limit: 1})
			return err
		},
		"the board": func() error {
			_, err := visit.Outs(ctx, cover.MenuRequest{Out: stock[:1], Stock: stock, Parts: 1})
			return err
		},
		"riffs on a page": func() error {
			_, err := visit.Riff(ctx, riff.Request{Spec: &spec, Stock: stock})
			return err
		},
		"use up on a page": func() error {
			_, err := visit.UseUp(ctx, useup.Request{Bottles: stock[:1], Stock: stock})
			return err
		},
		"walk on a page": func() error {
			_, err := visit.Walk(ctx, walk.Request{From: &spec, To: &spec})
			return err
		},
	} {
		assert.ErrorIs(t, search(), admission.ErrFull, name)
	}
	_, err = s.Score(ctx, ScoreRequest{Draft: draft})
	assert.NoError(t, err, "a score waits for nobody")
	_, err = s.Find(ctx, kitchen.FindRequest{Text: "gin", Limit: 3})
	assert.NoError(t, err)
}
