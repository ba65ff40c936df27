package visit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/admission"
	"counterpour/api/service/servicetest"
	"counterpour/api/service/visit"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/useup"
	"counterpour/flavor/riff/walk"
)

// Every search of a page goes through the pool; what is fast does not.
func TestSearchesOfPagesAreAdmitted(t *testing.T) {
	pool := admission.New(1)
	r := visit.Of(servicetest.OpenDemo(t, pool))
	servicetest.FillPool(t, pool)
	spec, err := r.Read("2 oz gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up")
	require.NoError(t, err)
	ctx := t.Context()
	stock, err := r.Stock(ctx)
	require.NoError(t, err)
	for name, search := range map[string]func() error{
		"cover": func() error {
			_, err := r.Cover(ctx, visit.CoverRequest{Spec: &spec, Missing: []string{"gin"}, Parts: 1, Limit: 1})
			return err
		},
		"the board": func() error {
			_, err := r.Outs(ctx, outs.Request{Out: stock[:1], Stock: stock, Parts: 1})
			return err
		},
		"riffs": func() error {
			_, err := r.Riff(ctx, riff.Request{Spec: &spec, Stock: stock})
			return err
		},
		"use up": func() error {
			_, err := r.UseUp(ctx, useup.Request{Bottles: stock[:1], Stock: stock})
			return err
		},
		"walk": func() error {
			_, err := r.Walk(ctx, walk.Request{From: &spec, To: &spec})
			return err
		},
	} {
		assert.ErrorIs(t, search(), admission.ErrFull, name)
	}
	_, _, err = r.Score(&spec)
	assert.NoError(t, err, "a score waits for nobody")
}
