package reading_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/index"
)

// wholeCatalogue finds names among all ingredients.
func wholeCatalogue(t *testing.T) *index.Index {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	return x
}
