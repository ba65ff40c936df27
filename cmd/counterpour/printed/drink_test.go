package printed_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// What is known comes before what may be, and what nobody has stated is told by its pours, or
// the page says that the labels must be read.
func TestDrink(t *testing.T) {
	spec := &shape.Spec{Pours: []shape.Pour{{Ingredient: "orgeat", Amount: 0.75, Unit: "oz"}}}
	for name, c := range map[string]struct {
		marks []shape.Allergen
		says  []string
	}{
		"none":  {nil, []string{"¾ oz", "orgeat", "no allergen is recorded; read the labels"}},
		"known": {[]shape.Allergen{{Allergen: "tree nuts", Certainty: string(flavor.Contains), From: []string{"orgeat"}}}, []string{"contains: tree nuts (orgeat)"}},
		"both": {[]shape.Allergen{
			{Allergen: "milk", Certainty: string(flavor.Unstated), From: []string{"amaro"}},
			{Allergen: "tree nuts", Certainty: string(flavor.Contains), From: []string{"orgeat"}},
		}, []string{"contains: tree nuts (orgeat)\n     not stated: ", "(amaro); read the label"}},
	} {
		var b strings.Builder
		p := terminal.NewPage(&b)
		printed.Drink(p, spec, c.marks)
		require.NoError(t, p.Close())
		for _, want := range c.says {
			assert.Contains(t, b.String(), want, name)
		}
	}
}

// A caution of several drinks stands once, with their labels; the most serious comes first, and
// what is left out is counted.
func TestCautions(t *testing.T) {
	egg := shape.Caution{Key: "egg", Text: "Raw egg can harm", Source: "a source", Status: string(flavor.OriginPublished)}
	cream := shape.Caution{Key: "cream", Text: "Keep it cold", Source: "a source", Status: string(flavor.OriginPractice)}
	oil := shape.Caution{Key: "oil", Text: "Use little", Source: "a source", Status: string(flavor.OriginPractice)}
	var l printed.Cautions
	l.Add("1", []shape.Caution{cream, egg})
	l.Add("2", []shape.Caution{egg, oil})
	say := func(all bool) string {
		var b strings.Builder
		p := terminal.NewPage(&b)
		l.Show(p, all)
		require.NoError(t, p.Close())
		return b.String()
	}
	assert.Equal(t, "\nCautions (1 more with --cautions)\n  Raw egg can harm (a source)\n  1: Keep it cold (a source)\n", say(false))
	assert.Equal(t, "\nCautions\n  Raw egg can harm (a source)\n  1: Keep it cold (a source)\n  2: Use little (a source)\n", say(true))
}
