// Package servicetest opens the demo house, and keeps its searches busy, for tests.
package servicetest

import (
	"context"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/data/house/storetest"
	"counterpour/index"
)

var catalogue = sync.OnceValues(data.Embedded)

// demo is the demo house over the embedded catalogue, built once.
var demo = sync.OnceValues(func() (*service.Snapshot, error) {
	c, err := catalogue()
	if err != nil {
		return nil, err
	}
	k, err := kitchen.New(c, index.New)
	if err != nil {
		return nil, err
	}
	h, err := c.Demo()
	if err != nil {
		return nil, err
	}
	return service.AtRest(k, h), nil
})

// Demo returns the demo house over the embedded catalogue, the same one for all tests of a
// package.
func Demo(t testing.TB) *service.Snapshot {
	t.Helper()
	s, err := demo()
	require.NoError(t, err)
	return s
}

// OpenDemo opens the demo house in a store in memory, over a kitchen of its own whose
// searches the pool limits; nil for no limit. It is closed when the test ends.
func OpenDemo(t testing.TB, searches *admission.Pool) *service.Venue {
	t.Helper()
	c, err := catalogue()
	require.NoError(t, err)
	k, err := kitchen.New(c, index.New)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, k.Close()) })
	h, err := c.Demo()
	require.NoError(t, err)
	s := storetest.Memory(t)
	require.NoError(t, service.Fill(t.Context(), s, h, time.Date(2026, 5, 1, 20, 0, 0, 0, time.UTC)))
	v, err := service.Open(t.Context(), k.Admitting(searches), s, service.About{Name: h.Name, Description: h.Description, Invented: h.Invented}, nil)
	require.NoError(t, err)
	t.Cleanup(v.Close)
	return v
}

// FillPool takes every place of a pool, one after another, until it refuses.
func FillPool(t testing.TB, p *admission.Pool) {
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
