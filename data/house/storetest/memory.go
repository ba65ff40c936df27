// Package storetest provides an empty in-memory house for tests.
package storetest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/store"
)

// Memory opens an empty house in memory and closes it when the test ends.
func Memory(t testing.TB) house.Store {
	t.Helper()
	s, err := store.OpenMemory(t.Context())
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, s.Close()) })
	return s
}
