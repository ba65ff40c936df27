// Package servicetest opens the demo house at rest, for tests.
package servicetest

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/index"
)

// demo is the demo house over the embedded catalogue, built once.
var demo = sync.OnceValues(func() (*service.Snapshot, error) {
	c, err := data.Embedded()
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
