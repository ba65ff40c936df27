package service_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/service/servicetest"
	"counterpour/data"
)

// Every search of the service goes through the pool; what is fast does not.
func TestSearchesAreAdmitted(t *testing.T) {
	k := servicetest.Demo(t).Admitting(admission.New(1))
	s := service.AtRest(k, &data.House{})
	text := "2 oz gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up"
	draft := service.Draft{Text: &text}
	servicetest.FillPool(t, k.Searches)
	ctx := t.Context()
	for name, search := range map[string]func() error{
		"cover": func() error {
			_, err := s.Cover(ctx, service.CoverRequest{Draft: draft, Missing: []string{"gin"}, Parts: 1, Limit: 1})
			return err
		},
		"outs": func() error {
			_, err := s.Outs(ctx, service.OutsRequest{Out: []string{"gin"}, Parts: 1})
			return err
		},
		"coverage": func() error {
			_, err := s.Coverage(ctx, service.CoverageRequest{})
			return err
		},
		"riff": func() error {
			_, err := s.Riff(ctx, service.RiffRequest{Draft: draft, Limit: 1})
			return err
		},
		"use up": func() error {
			_, err := s.UseUp(ctx, service.UseUpRequest{Bottles: []string{"fino sherry"}, Limit: 1})
			return err
		},
		"walk": func() error {
			_, err := s.Walk(ctx, service.WalkRequest{From: draft, To: draft, Steps: 1, PourML: 60})
			return err
		},
	} {
		assert.ErrorIs(t, search(), admission.ErrFull, name)
	}
	_, err := s.Score(ctx, service.ScoreRequest{Draft: draft})
	assert.NoError(t, err, "a score waits for nobody")
	_, err = s.Find(ctx, kitchen.FindRequest{Text: "gin", Limit: 3})
	assert.NoError(t, err)
}
