package kitchen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/sense"
)

// What the bar says when one pour of a sour changes: common practice, no source.
func TestContrast(t *testing.T) {
	k := testKitchen(t)
	plain := readDraft(t, k, "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	for _, x := range []struct {
		name, text string
		sense      sense.Sense
		word       string
		note       string // among the first three notes; empty for none at all
	}{
		{"less syrup", "2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up", sense.Sweet, "drier", ""},
		{"more juice", "2 oz gin\n1 1/2 oz lemon juice\n3/4 oz simple syrup\nshake, up", sense.Sour, "sharper", "lemon"},
		{"more gin", "3 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", sense.Ethanol, "stronger", "pine"},
		{"cinnamon syrup", "2 oz gin\n3/4 oz lemon juice\n3/4 oz cinnamon syrup\nshake, up", sense.Aroma, "", "cinnamon"},
	} {
		spec := readDraft(t, k, x.text)
		c, err := k.Contrast(&plain, &spec)
		require.NoError(t, err, x.name)
		assert.Contains(t, c.Steps.Largest(sense.MayFrom), x.sense, x.name)
		assert.Equal(t, x.word, x.sense.Direction(c.Steps[x.sense]), x.name)
		var notes []string
		for _, n := range c.Notes[:min(3, len(c.Notes))] {
			notes = append(notes, n.Note.ID)
		}
		if x.note == "" {
			assert.NotContains(t, notes, "cinnamon", x.name)
			continue
		}
		assert.Contains(t, notes, x.note, x.name)
	}
	same, err := k.Contrast(&plain, &plain)
	require.NoError(t, err)
	assert.Equal(t, &Contrast{}, same, "nothing moves between a drink and itself")
}

// The glass that a service calls for holds the drink, if any of its glasses does:
// common practice, no source.
func TestLook(t *testing.T) {
	k := testKitchen(t)
	for _, x := range []struct{ text, glass, colour string }{
		{"2 oz gin\n1/2 oz dry vermouth\nstir, up", "coupe", "clear"},
		{"2 oz gin\n1 oz lemon juice\n1 oz simple syrup\nshake, up", "large coupe", ""},
		{"2 oz gin\n1 oz lemon juice\n1 oz simple syrup\n1 egg white\nshake, up", "wine glass", "white"},
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "rocks glass", ""},
		{"2 oz gin\n1/2 oz dry vermouth\nstir, up\nglass: Nick and Nora", "Nick-and-Nora glass", ""},
		{"2 oz gin\ntop with tonic water\nbuild, long", "highball glass", "clear"},
	} {
		spec := readDraft(t, k, x.text)
		look, err := k.Look(&spec)
		require.NoError(t, err)
		assert.Equal(t, x.glass, look.Filling.Glass.Name, x.text)
		assert.Zero(t, look.Filling.SpillML, x.text)
		if x.colour != "" {
			assert.Equal(t, x.colour, look.Swatch.Words(), x.text)
		}
	}
}
