package left_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/left"
)

// What is left of a bottle is parted from what it is; a name alone is left alone. Sizes of
// bottles are common practice, no source.
func TestCut(t *testing.T) {
	for text, want := range map[string]struct {
		ml   float64
		name string
	}{
		"300 mL fino sherry":            {300, "fino sherry"},
		"300ml of fino sherry":          {300, "fino sherry"},
		"fino sherry 300 mL":            {300, "fino sherry"},
		"fino sherry: 30 cl":            {300, "fino sherry"},
		"10 oz mezcal":                  {295.74, "mezcal"},
		"mezcal (10 oz)":                {295.74, "mezcal"},
		"half a bottle of mezcal":       {350, "mezcal"},
		"Half bottle mezcal":            {350, "mezcal"},
		"1/2 bottle of mezcal":          {350, "mezcal"},
		"mezcal half a bottle":          {350, "mezcal"},
		"a third of a bottle of fino":   {700.0 / 3, "fino"},
		"a bottle of mezcal":            {700, "mezcal"},
		"two bottles of blanc vermouth": {1400, "blanc vermouth"},
		"300 fino sherry":               {300, "fino sherry"},
	} {
		ml, name, ok := left.Cut(text)
		assert.True(t, ok, text)
		assert.InDelta(t, want.ml, ml, 0.5, text)
		assert.Equal(t, want.name, name, text)
	}
	for _, text := range []string{"mezcal", "fino sherry", "300 mL", "", "half a lime"} {
		_, name, ok := left.Cut(text)
		assert.False(t, ok, "%s: %s", text, name)
	}
}
