package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// Wide figures are read as plain ones, and the name of the drink stays as it is written.
func TestWideFigures(t *testing.T) {
	s, err := reading.Read("夜 Ｎｏ１\nジン　４５ｍｌ\nレモン　２０ｍｌ\nshake, up", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, "夜 Ｎｏ１", s.Name)
	require.Len(t, s.Pours, 2)
	assert.InDelta(t, 45, s.Pours[0].ML, 1e-9)
}
