package webui

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/template"
)

func TestFigures(t *testing.T) {
	assert.Equal(t, "−6", figure(-6.4, 0))
	assert.Equal(t, "0", figure(-0.4, 0))
	assert.Equal(t, "0.9", figure(0.94, 1))
	assert.Equal(t, "+1", signed(1.2, 0))
	assert.Equal(t, "0", signed(0.2, 0))
	assert.Equal(t, "−2", signed(-2.2, 0))
	assert.Equal(t, "69", points(69.9))
	assert.Equal(t, "± 0.5", plusMinus(0.52, 1))
	assert.Equal(t, "± under 0.1", plusMinus(0.01, 1))
	assert.Empty(t, plusMinus(0, 1))
	assert.Empty(t, plusMinus(math.NaN(), 1))
	assert.Empty(t, plusMinus(math.Inf(1), 1))
	assert.Equal(t, "8.1", millilitres(8.12))
	assert.Equal(t, "10", millilitres(9.97))
}

func TestSentences(t *testing.T) {
	assert.Equal(t, "About ½ oz.", sentence("about ½ oz"))
	assert.Equal(t, "Did you mean oz?", sentence("did you mean oz?"))
	assert.Empty(t, sentence(" "))
	assert.Equal(t, "a, b and c", list([]string{"a", "b", "c"}))
	assert.Equal(t, "1 cover", count(1, "cover", "covers"))
	assert.Equal(t, "0 covers", count(0, "cover", "covers"))
	assert.Equal(t, "over 99\u00a0%", percent(0.999))
}

func TestVerdictsCoverEveryTail(t *testing.T) {
	for _, v := range []template.Verdict{template.Balanced, template.Near, template.Off} {
		assert.NotEmpty(t, verdictWord(v))
		for tail := 0.0; tail <= 1; tail += 0.05 {
			assert.NotContains(t, verdictSentence(v, tail), "About 0 ")
			assert.NotContains(t, verdictSentence(v, tail), "About 10 in 10")
		}
	}
	for _, steps := range []float64{0, 1.5, 3, 9} {
		assert.NotEmpty(t, nearness(steps))
	}
	for a, w := range axisWords {
		assert.NotEmpty(t, w.Name, "axis %d", a)
		assert.NotEmpty(t, w.As)
		assert.NotEmpty(t, w.Sentence)
	}
}
