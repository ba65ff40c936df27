package unpoured

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/token"
)

// ofAll is what of a text pours nothing, were each of its lines at fault.
func ofAll(text string) (Aside, bool) {
	d := draft.Parse(text)
	var faults flavor.DataFaults
	for i := range strings.Split(text, "\n") {
		f := measure.Invalid("", "", "at fault")
		f.Location = measure.LineLocation(i + 1)
		faults = append(faults, f)
	}
	return Of(&d, faults, naming.NewResolver(drafttest.Bar()))
}

// What is set aside leaves a text as long as it was, and every other byte in its place.
func TestOfKeepsPlaces(t *testing.T) {
	for _, c := range []struct {
		text, left string
	}{
		{"CARD 22\nHalyard\n2 oz gin\n1 oz lime juice", "       \nHalyard\n2 oz gin\n1 oz lime juice"},
		{"Täble 9: Halyard (ea.)\n2 oz gin\n1 oz lime juice", "          Halyard      \n2 oz gin\n1 oz lime juice"},
		{"ticket 0231, halyard x1, 2 oz gin, 1 oz lime juice", "             halyard:    2 oz gin, 1 oz lime juice"},
	} {
		a, ok := ofAll(c.text)
		assert.True(t, ok, c.text)
		assert.Len(t, a.Text, len(c.text), c.text)
		assert.Equal(t, c.left, a.Text)
	}
}

// Nothing is set aside of a draft that states too few amounts to tell by, of a text without
// a name, and of one that is too long for a note of one drink.
func TestOfSetsNothingAside(t *testing.T) {
	for _, text := range []string{
		"CARD 22\nHalyard\ngin\nlime juice", "CARD 22\nHalyard\n2 oz gin", "CARD 22\nlime juice\n2 oz gin\n1 oz simple syrup",
		"CARD 22\nHalyard" + strings.Repeat("\n1 oz gin", 1+mostText/len("\n1 oz gin")),
	} {
		_, ok := ofAll(text)
		assert.False(t, ok, text)
	}
	d := draft.ParsePours("CARD 22\nHalyard\n2 oz gin\n1 oz lime juice")
	_, ok := Of(&d, flavor.DataFaults{measure.Invalid("", "", "at fault")}, naming.NewResolver(drafttest.Bar()))
	assert.False(t, ok)
}

// A number refers by its sign, by the word before it, or by what it counts: common practice,
// no source.
func TestRefers(t *testing.T) {
	ahead := &search{ahead: true, multiples: 1}
	metric := &search{bare: 3, most: 45, multiples: 1}
	inBrackets := &search{bare: 3, most: 45, bracketed: true}
	for _, c := range []struct {
		text string
		s    *search
		want bool
	}{
		{"entry no. 7", metric, true}, {"entry #7", metric, true}, {"p. 12", metric, true}, {"table 14", metric, true}, {"v2", metric, true},
		{"x10", metric, true}, {"2x", metric, true}, {"ticket 0231", metric, true}, {"after 11pm", metric, true}, {"the 2nd", metric, true},
		{"keeps 3 days", metric, true}, {"event 12 July", ahead, true}, {"the guest at 9 had", ahead, true}, {"heat 2", ahead, true}, {"heat 2", inBrackets, true},
		{"heat 2", metric, false}, {"wash x1", &search{multiples: 3}, false}, {"juice of 1 umeboshi", ahead, false}, {"umeboshi 2 d", metric, false},
		{"heat 20", metric, false}, {"2 umeboshi", ahead, false}, {"2x umeboshi", ahead, false}, {"maybe 2 umeboshi", ahead, false}, {"wash 20 ml", ahead, false},
		{"wash 0.5", ahead, false}, {"wash ½", ahead, false}, {"20 %", ahead, false}, {"wash 2:1", ahead, false},
	} {
		assert.Equal(t, c.want, c.s.countsOrRefers(token.Lex(nil, c.text, 0, len(c.text))), c.text)
	}
}
