package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSituations(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	situations, err := c.Situations()
	require.NoError(t, err)
	assert.GreaterOrEqual(t, len(situations), 200)
	for _, s := range situations {
		assert.NotEmpty(t, s.Good, s.Out.Name)
		assert.NotEmpty(t, s.Bad, s.Out.Name)
	}
}
