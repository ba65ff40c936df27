package board

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
)

func TestMemoSharesOneSearch(t *testing.T) {
	var m memo
	var searched atomic.Int32
	begin := make(chan struct{})
	search := func(context.Context, cover.MenuRequest) (*cover.MenuResult, error) {
		searched.Add(1)
		<-begin
		return &cover.MenuResult{}, nil
	}
	request := cover.MenuRequest{Out: []*flavor.Profile{{ID: "gin"}}}
	results := make(chan *cover.MenuResult, 4)
	for range 4 {
		go func() {
			r, err := m.outs(t.Context(), request, search)
			assert.NoError(t, err)
			results <- r
		}()
	}
	assert.Eventually(t, func() bool { return searched.Load() == 1 }, time.Second, time.Millisecond)
	close(begin)
	first := <-results
	for range 3 {
		assert.Same(t, first, <-results)
	}
	request.Guest.Avoid = []flavor.Allergen{flavor.Milk}
	_, err := m.outs(t.Context(), request, search)
	require.NoError(t, err)
	assert.Equal(t, int32(2), searched.Load(), "another guest is another question")
}

var errBroken = errors.New("the pump is broken")

func TestMemoForgetsFailures(t *testing.T) {
	var m memo
	request := cover.MenuRequest{Out: []*flavor.Profile{{ID: "gin"}}}
	_, err := m.outs(t.Context(), request, func(context.Context, cover.MenuRequest) (*cover.MenuResult, error) { return nil, errBroken })
	assert.ErrorIs(t, err, errBroken)
	assert.Panics(t, func() {
		_, _ = m.outs(t.Context(), request, func(context.Context, cover.MenuRequest) (*cover.MenuResult, error) { panic("spilled") })
	})
	r, err := m.outs(t.Context(), request, func(context.Context, cover.MenuRequest) (*cover.MenuResult, error) { return &cover.MenuResult{}, nil })
	assert.NoError(t, err)
	assert.NotNil(t, r)
	for i := range 3 * memoSize {
		request.Parts = i + 10
		_, err := m.outs(t.Context(), request, func(context.Context, cover.MenuRequest) (*cover.MenuResult, error) {
			return nil, errors.Join(nil)
		})
		require.NoError(t, err)
	}
	assert.LessOrEqual(t, len(m.boxes), memoSize)
}
