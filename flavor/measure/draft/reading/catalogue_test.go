package reading_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/index"
)

// loadIndex opens the index over all ingredients once: nothing that reads a draft changes
// it, and to fill it takes longer than most drafts.
var loadIndex = sync.OnceValues(func() (*index.Index, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return index.New(c.Profiles())
})

// wholeCatalogue finds names among all ingredients. Tests share it.
func wholeCatalogue(t *testing.T) *index.Index {
	t.Helper()
	x, err := loadIndex()
	require.NoError(t, err)
	return x
}
