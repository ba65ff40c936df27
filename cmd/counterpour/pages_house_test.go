package main

import (
	"context"
	"errors"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/webui"
)

func newTestTill(t *testing.T) *till {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	house, err := c.Demo()
	require.NoError(t, err)
	return newTill(house)
}

func TestTillMarks(t *testing.T) {
	till, ctx := newTestTill(t), t.Context()
	menu, err := till.Menu(ctx)
	require.NoError(t, err)
	slugs := map[string]bool{}
	for _, s := range menu {
		assert.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)*$`, s.Slug)
		assert.False(t, slugs[s.Slug], "%s twice", s.Slug)
		slugs[s.Slug] = true
	}

	before, err := till.Outs(ctx)
	require.NoError(t, err)
	assert.Contains(t, before, "falernum")
	require.NoError(t, till.Mark(ctx, "mint", true))
	require.NoError(t, till.Mark(ctx, "falernum", false))
	after, err := till.Outs(ctx)
	require.NoError(t, err)
	assert.Contains(t, after, "mint")
	assert.NotContains(t, after, "falernum")

	err = till.Mark(ctx, "moonshine", true)
	var fault *flavor.Fault
	assert.True(t, errors.As(err, &fault))
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

func TestTillFinds(t *testing.T) {
	till, ctx := newTestTill(t), t.Context()
	names := func(q webui.SpecQuery) (out []string) {
		found, err := till.Find(ctx, q)
		require.NoError(t, err)
		for _, s := range found {
			out = append(out, s.Spec.Name)
		}
		return out
	}
	assert.Len(t, names(webui.SpecQuery{}), len(till.menu))
	assert.Contains(t, names(webui.SpecQuery{Text: "FALERNUM rum"}), "Copra Schooner")
	assert.Equal(t, []string{"Copra Schooner"}, names(webui.SpecQuery{Text: "copra"}))
	assert.Empty(t, names(webui.SpecQuery{Text: "copra aquavit"}))
	without := names(webui.SpecQuery{Avoid: []flavor.Allergen{flavor.TreeNuts}})
	assert.NotEmpty(t, without)
	assert.NotContains(t, without, "Copra Schooner", "its falernum holds nuts")
	for _, s := range till.menu {
		assert.Contains(t, names(webui.SpecQuery{Family: s.Family}), s.Spec.Name)
	}
}

// Every listener hears of a change, none holds a mark up, and none stays behind.
func TestTillTells(t *testing.T) {
	till := newTestTill(t)
	ctx, leave := context.WithCancel(t.Context())
	var heard []<-chan struct{}
	for range 3 {
		c, err := till.Changes(ctx)
		require.NoError(t, err)
		heard = append(heard, c)
	}
	for i := range 50 {
		require.NoError(t, till.Mark(ctx, "mint", i%2 == 0), "nobody reads yet")
	}
	for _, c := range heard {
		select {
		case <-c:
		case <-time.After(time.Second):
			require.Fail(t, "not told")
		}
	}
	leave()
	for _, c := range heard {
		assert.Eventually(t, func() bool {
			select {
			case _, open := <-c:
				return !open
			default:
				return false
			}
		}, time.Second, time.Millisecond)
	}
	till.mu.Lock()
	defer till.mu.Unlock()
	assert.Empty(t, till.listeners)
}

func TestTillIsSafeForAll(t *testing.T) {
	till := newTestTill(t)
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			ctx, leave := context.WithCancel(t.Context())
			defer leave()
			_, err := till.Changes(ctx)
			assert.NoError(t, err)
			for k := range 50 {
				assert.NoError(t, till.Mark(ctx, "mint", (i+k)%2 == 0))
				_, err := till.Outs(ctx)
				assert.NoError(t, err)
			}
		})
	}
	all.Wait()
}
