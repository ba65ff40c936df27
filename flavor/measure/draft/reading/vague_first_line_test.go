package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// A first line that tells of much or little of what no line pours is asked about, and is no name: common practice,
// no source.
func TestVagueFirstLine(t *testing.T) {
	const rest = "\n.75 oz lemon juice\n.75 oz simple syrup\nshake"
	for _, text := range []string{"a healthy pour of gin", "a good glug of gin", "plenty of gin", "A bit of gin", "a slosh of gin", "enough gin to cover", "gin - big", "gin (a lot)"} {
		_, err := reading.Read(text+rest, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	for _, text := range []string{"Kiss of Gin", "Plenty of Lemon", "plenty of lemon", "loads of sunshine"} {
		s, err := reading.Read(text+"\n2 oz gin"+rest, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
		assert.Equal(t, text, s.Name, text)
	}
}
