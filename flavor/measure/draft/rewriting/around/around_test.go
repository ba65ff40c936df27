package around_test

import (
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/around"
	"counterpour/index"
)

// drink is what the texts of the tests hold.
const drink = "Halyard\ngin 50\nlemon 25\nhoney syrup 20\nshake, coupe"

// loadIndex opens the index over all ingredients once: nothing that reads a draft changes it.
var loadIndex = sync.OnceValues(func() (*index.Index, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return index.New(c.Profiles())
})

// told returns what a text tells before and behind its drink.
func told(t *testing.T, text string) []string {
	t.Helper()
	x, err := loadIndex()
	require.NoError(t, err)
	var out []string
	for _, c := range around.Of(text, naming.NewResolver(x)) {
		out = append(out, strings.TrimSpace(text[c.At.Start:c.At.End]))
	}
	return out
}

// Before and behind a drink stands what pours nothing, though somebody's name or a clipped word is in
// it: common practice, no source.
func TestWhatIsToldAroundADrink(t *testing.T) {
	for _, said := range []string{"notebook, p. 12", "Ticket 0817 21:42 BAR 2", "Feedback form, Sat. 22nd", "Tavi says the corridor light is broken again", "86: mint, blue curaçao"} {
		assert.Equal(t, []string{said}, told(t, said+"\n\n“"+strings.Replace(drink, "\n", "”\n", 1)), said)
		assert.Empty(t, told(t, said+"\n"+drink), "the next line would be the name: %s", said)
	}
	for _, said := range []string{"tried w/ lime 2/10", "lemon 8/10", "previous version had 25 lime", "Tavi says the corridor light is broken again"} {
		assert.Equal(t, []string{said}, told(t, drink+"\n"+said), said)
	}
	assert.Equal(t, []string{"1 x"}, told(t, "1 x "+drink), "one is ordered")
}

// What may be a pour, may change one or may harm a guest stays: common practice, no source.
func TestWhatMayPourStays(t *testing.T) {
	for _, said := range []string{"umeboshi", "umeboshi 20", "20 umeboshi", "umeboshi of Tavi", "tinkerbell and moonlight", "top with kvass", "2 measures of moonlight", "double the lot",
		"leave the honey out", "soy", "contains sesame", "the dairy of Tavi is in the corridor", "vodka", "20 vodka", "a glug of kvass for the table", "without the last one", "zero proof", "make it 15"} {
		assert.Empty(t, told(t, drink+"\n"+said), said)
		assert.Empty(t, told(t, "Sour\n"+said+"\n"+drink), said)
	}
	assert.Empty(t, told(t, "the corridor light is broken"), "no drink")
	assert.Empty(t, told(t, strings.Replace(drink, "\nlemon", "\nthe corridor light is broken\nlemon", 1)), "it stands amid the drink")
}
