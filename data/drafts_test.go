package data

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDrafts(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	_, proven, err := c.Set()
	require.NoError(t, err)
	one, err := c.Drafts(proven, 1)
	require.NoError(t, err)
	again, err := c.Drafts(proven, 1)
	require.NoError(t, err)
	assert.Equal(t, one, again, "a seed picks the same hands")
	other, err := c.Drafts(proven, 2)
	require.NoError(t, err)
	assert.NotEqual(t, one, other)
	hands := map[string]int{}
	for _, d := range one {
		hands[d.Hand]++
		assert.NotEmpty(t, strings.TrimSpace(d.Text))
	}
	assert.GreaterOrEqual(t, hands["written by hand"], 80)
	assert.GreaterOrEqual(t, len(proven), 250)

	for _, wrong := range []string{"no-such-thing 30", "lemon-juice", "lemon-juice x", "lemon-juice -3", "lemon-juice NaN"} {
		_, err := c.poured(wrong)
		assert.Equal(t, wrong == "lemon-juice", err == nil, wrong)
	}
}
