package ratio_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/ratio"
)

func TestAxisNamesReadBack(t *testing.T) {
	for _, a := range ratio.Axes() {
		got, ok := ratio.ParseAxis(a.String())
		assert.True(t, ok)
		assert.Equal(t, a, got)
	}
	_, ok := ratio.ParseAxis("salty")
	assert.False(t, ok)
	assert.Equal(t, "axis(99)", ratio.Axis(99).String())
}
