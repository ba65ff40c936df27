package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/index"
)

// wholeCatalogue finds names among all ingredients.
func wholeCatalogue(t *testing.T) *index.Index {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	return x
}

// What is told behind a name is passed over aloud, unless it names an ingredient or is part
// of a name: common practice, no source.
func TestWhatIsToldBehindAName(t *testing.T) {
	x := wholeCatalogue(t)
	s, err := reading.Read("2 oz Irish whiskey\n4 oz cold brew off the nitro tap\n3 dashes aromatic bitters round the glass\n1 oz white wine aged under flor", x)
	require.NoError(t, err)
	assert.Equal(t, "cold-brew", s.Pours[1].Profile.ID)
	assert.Equal(t, "aromatic-bitters", s.Pours[2].Profile.ID)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "line 2: “off the nitro tap” is skipped")
	_, err = reading.Read("2 oz gin from the almond jar\n1 oz lime juice", x)
	assert.ErrorContains(t, err, "says more than")
}
