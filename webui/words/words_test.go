package words

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/sense"
	"counterpour/flavor/template"
)

func TestFigures(t *testing.T) {
	assert.Equal(t, "−6", Figure(-6.4, 0))
	assert.Equal(t, "0", Figure(-0.4, 0))
	assert.Equal(t, "0.9", Figure(0.94, 1))
	assert.Equal(t, "+1", Signed(1.2, 0))
	assert.Equal(t, "0", Signed(0.2, 0))
	assert.Equal(t, "−2", Signed(-2.2, 0))
	assert.Equal(t, "69", Points(69.9))
	assert.Equal(t, "± 0.5", PlusMinus(0.52, 1))
	assert.Equal(t, "± under 0.1", PlusMinus(0.01, 1))
	assert.Empty(t, PlusMinus(0, 1))
	assert.Empty(t, PlusMinus(math.NaN(), 1))
	assert.Empty(t, PlusMinus(math.Inf(1), 1))
	assert.Equal(t, "8.1", Millilitres(8.12))
	assert.Equal(t, "10", Millilitres(9.97))
}

func TestSentences(t *testing.T) {
	assert.Equal(t, "About ½ oz.", Sentence("about ½ oz"))
	assert.Equal(t, "Did you mean oz?", Sentence("did you mean oz?"))
	assert.Empty(t, Sentence(" "))
	assert.Equal(t, "a, b and c", List([]string{"a", "b", "c"}))
	assert.Equal(t, "1 cover", Count(1, "cover", "covers"))
	assert.Equal(t, "0 covers", Count(0, "cover", "covers"))
	assert.Equal(t, "over 99\u00a0%", Percent(0.999))
}

func TestVerdictsCoverEveryTail(t *testing.T) {
	for _, v := range []template.Verdict{template.Balanced, template.Near, template.Off} {
		assert.NotEmpty(t, Verdict(v))
		for tail := 0.0; tail <= 1; tail += 0.05 {
			assert.NotContains(t, VerdictSentence(v, tail), "About 0 ")
			assert.NotContains(t, VerdictSentence(v, tail), "About 10 in 10")
		}
	}
	assert.Equal(t, "A guest won't notice", Notice(sense.WontNotice))
	for a, w := range Axes {
		assert.NotEmpty(t, w.Name, "axis %d", a)
		assert.NotEmpty(t, w.As)
		assert.NotEmpty(t, w.Sentence)
	}
}

// A moment reads the same wherever the program runs.
func TestMoments(t *testing.T) {
	late := time.Date(2027, 1, 3, 0, 4, 0, 0, time.FixedZone("", 3600))
	assert.Equal(t, "2 Jan 2027, 23:04 UTC", Moment(late))
	assert.Equal(t, "2 Jan 2027", Day(late))
}

func TestAmountsAreNotBroken(t *testing.T) {
	for text, want := range map[string]string{
		"pour ¾ oz lime juice instead of ¼ oz":   "Pour ¾\u00a0oz lime juice instead of ¼\u00a0oz.",
		"14 % vol in 90 mL, at -6 °C":            "14\u00a0% vol in 90\u00a0mL, at -6\u00a0°C.",
		"2 dashes of bitters, and 2 ozone lamps": "2\u00a0dashes of bitters, and 2 ozone lamps.",
		"1 dash":                                 "1\u00a0dash.",
	} {
		assert.Equal(t, want, Sentence(Bound(text)))
	}
}
