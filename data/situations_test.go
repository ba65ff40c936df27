package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSituations(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	for _, set := range []struct {
		file  string
		least int
	}{{TunedSituations, 200}, {HeldSituations, 60}, {FreshSituations, 90}, {WideSituations, 100}, {SecondBarSituations, 60}} {
		situations, bar, err := c.Situations(set.file)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, len(situations), set.least)
		assert.Greater(t, len(bar), 100)
		for _, s := range situations {
			assert.NotEmpty(t, s.Good, s.Out.Name)
			assert.NotEmpty(t, s.Bad, s.Out.Name)
		}
	}
}
