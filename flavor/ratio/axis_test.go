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

func TestAxesAreNounsAndHaveAMeasure(t *testing.T) {
	assert.Equal(t, "bitterness", ratio.Bitter.Noun())
	assert.Equal(t, "lemon juice", ratio.Sour.Measure())
	for _, a := range ratio.Axes() {
		assert.NotEmpty(t, a.Measure(), a)
	}
	assert.Equal(t, "salty", ratio.Salty.Noun(), "what is no axis of a ratio has its own name")
	assert.Empty(t, ratio.Salty.Measure())
}
