package gauge_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/token"
)

// How much bars measure by such words: common practice, no source.
func TestMeasuresOfABar(t *testing.T) {
	lex := func(text string) []token.Token { return token.Lex(nil, text, 0, len(text)) }
	m, ok := gauge.At(lex("wineglass of sherry"))
	assert.True(t, ok)
	assert.Equal(t, flavor.Ounce, m.Unit)
	assert.Equal(t, 2.0, m.Stated)
	_, ok = gauge.At(lex("touch too dry"))
	assert.False(t, ok, "a touch is measured of something")
	assert.True(t, gauge.Alone(lex("jigger rye")))
	assert.False(t, gauge.Alone(lex("jigger")))
	assert.True(t, gauge.Behind(lex("stout 1 pint")))
	assert.False(t, gauge.Behind(lex("stout 25 pint")))
	assert.Equal(t, "measure", gauge.Own("measures"))
	assert.Empty(t, gauge.Own("handful"))
	assert.True(t, gauge.Holds("shot", 25))
	assert.False(t, gauge.Holds("shot", 60))
}
