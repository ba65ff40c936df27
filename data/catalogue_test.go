package data

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestEmbeddedCatalogueLoads(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(c.Profiles()), 180)
}
