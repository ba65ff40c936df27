package part_test

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/part"
)

// A slip is told from a word that is known, and what is offered finds something.
func TestWhatMayHaveBeenMeant(t *testing.T) {
	in := []string{"quay wall prosecco artichoke amaro soda water", "ropewalk bonded rye whiskey honey syrup", "tide table gold rum lime juice", "tide mill aged rum"}
	for text, want := range map[string][]string{
		"qauy":          {"quay"},
		"quaywall":      {"quay wall"},
		"gold rumm":     {"gold rum"},
		"tide tabel":    {"tide table"},
		"whisky":        {"whiskey"},
		"honey whiskye": {"honey whiskey"},
		"zorble":        nil,
		"zorble rum":    nil,
		"gold whiskey":  nil, // no drink has both
		"sold":          nil, // nobody mistypes the first letter of a short word unnoticed
		"":              nil,
	} {
		var got []string
		for _, m := range part.MeantBy(text, in, "/specs", "q", url.Values{"q": {text}, "avoid": {"milk"}}) {
			got = append(got, m.Text)
			at, err := url.Parse(m.Address)
			if assert.NoError(t, err) {
				assert.Equal(t, url.Values{"q": {m.Text}, "avoid": {"milk"}}, at.Query(), "the rest of what was asked stays")
			}
		}
		assert.Equal(t, want, got, "%q", text)
	}
}

// A text is a slip of a name if each of its words is one, or is right.
func TestASlipOfAName(t *testing.T) {
	for text, want := range map[string]bool{"bourbn": true, "buorbon": true, "bourbon": true, "bourbon whiskey": false, "Bourbom": true, "zorble": false, "": false} {
		assert.Equal(t, want, part.SlipOf(text, "bourbon"), "%q", text)
	}
	assert.False(t, part.SlipOf("campri", "tamari"))
	assert.True(t, part.SlipOf("blond dry gin", "blonde dry gin"))
}
