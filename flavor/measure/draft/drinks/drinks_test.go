package drinks_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/drinks"
)

// Names as bars write them above a drink: common practice, no source.
func TestCalled(t *testing.T) {
	for _, name := range []string{"MANHATTAN", "Rob Roy", "adonis", "Piña Colada", "pina colada", "caipi", "frozen marg", "Garden Spritz", "mezcal negroni", "Tuesday fizz", "sherry cobbler", "our house daiquiri"} {
		assert.True(t, drinks.Called(name), name)
	}
	for _, name := range []string{"", "campfire", "verjus", "red bitter", "cucumber", "mar", "so she wants it", "one two three four five six negroni"} {
		assert.False(t, drinks.Called(name), name)
	}
	assert.True(t, drinks.Known("Floradora"))
	assert.False(t, drinks.Known("frozen marg"))
}
