package overlooked_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/index"
)

// What words of making, of serving or of the rim name that is not poured is asked for, and what
// they only speak of is not: common practice, no source.
func TestFaults(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	gin, _, ok := x.Named("London dry gin")
	require.True(t, ok)
	for _, c := range []struct{ text, faulted string }{
		{"2 oz gin\nst nn cherry ang bit", "ang bit"},
		{"2 oz gin\nshk up orange bitters", "orange bitters"},
		{"2 oz gin\nshake hard cognac up", "cognac"},
		{"2 oz gin\nadd mezcal and stir", "mezcal"},
		{"2 oz gin\nstrain over champagne", "champagne"},
		{"1.5 gin .75 trip sec .75 lem shk coupe sugr rim", ".75 lem"},
		{"name: lager bottle\n2 oz gin", ""},
		{"Bottle Rocket\n2 oz gin", ""},
		{"gin can\n2 oz gin", ""},
		{"2 oz gin\nstir the gin down, up", ""},
		{"2 oz gin\nshake first bit, up", ""},
		{"2 oz gin\nstir, up, no bitters", ""},
		{"2 oz gin\nshake and strain into a sherry glass", ""},
		{"2 oz gin\nstir with orange, up", ""},
		{"2 oz gin\n1/2 salt rim, up", ""},
	} {
		d := draft.Parse(c.text)
		faults := overlooked.Faults(&d, []flavor.Pour{{Profile: gin}}, naming.NewResolver(x))
		if c.faulted == "" {
			assert.Empty(t, faults, c.text)
			continue
		}
		if assert.Len(t, faults, 1, c.text) {
			assert.Equal(t, c.faulted, faults[0].Value, c.text)
			assert.Equal(t, 1+strings.Count(c.text, "\n"), faults[0].Place().Line, c.text)
		}
	}
}

// A name above the pours that is a bottle of something is asked for, at its own line.
func TestABottleIsNoNameOfADrink(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	for _, name := range []string{"lager bottle", "Ginger Beer can", "bottled pilsner"} {
		d := draft.Parse(name + "\n1 oz lime juice\n2 oz gin")
		faults := overlooked.Faults(&d, nil, naming.NewResolver(x))
		require.Len(t, faults, 1, name)
		assert.Equal(t, name, faults[0].Value)
		assert.Equal(t, 1, faults[0].Place().Line, name)
	}
}
