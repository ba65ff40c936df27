package reading

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What a first line says of ice and of mixing counts, and is told where it stands in the name; what the draft says
// elsewhere comes before it, and one word at the end of a name is of the name.
func TestIceOfAFirstLine(t *testing.T) {
	const list = "\n2 oz gin\n1 oz lemon juice\n1 oz simple"
	for _, c := range []struct {
		text    string
		method  flavor.Method
		service flavor.Service
		told    string
	}{
		{"Low Tide big rock" + list, flavor.Shake, flavor.Rocks, "since the name says “big rock”"},
		{"Low Tide on crushed ice" + list, flavor.Shake, flavor.Crushed, "since the name says “on crushed ice”"},
		{"crushed ice." + list, flavor.Shake, flavor.Crushed, "since the name says “crushed ice”"},
		{"blend" + list, flavor.Blend, flavor.Up, "since the name says “blend”"},
		{"Whirl in blender w/ 1 cup crushed ice: 2 oz gin, 1 oz lemon juice, 1 oz simple", flavor.Blend, flavor.Crushed, ""},
		{"Low Tide" + list + "\nCube.", flavor.Shake, flavor.Rocks, "“cube” is read as one of ice"},
		{"cube" + list, flavor.Shake, flavor.Up, ""},
		{"Low Tide big rock" + list + "\nshake, up", flavor.Shake, flavor.Up, ""},
		{"Low Tide Cube" + list, flavor.Shake, flavor.Up, ""},
		{"Ice house" + list, flavor.Shake, flavor.Up, ""},
	} {
		s, err := resolveText(t, c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.method, s.Method, c.text)
		assert.Equal(t, c.service, s.Service, c.text)
		assert.Len(t, s.Pours, 3, c.text)
		assert.Contains(t, strings.Join(s.Notes, "\n"), c.told, c.text)
	}
}
