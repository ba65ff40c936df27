package api

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

// What a drink looks like and how salty it is, common practice: red bitter
// aperitif and sweet vermouth on gin are red and clear, a sour with egg white is
// cloudy, a dash of saline is less than a gram in a litre.
func TestFinishedIsSensed(t *testing.T) {
	s, _ := serverFor(t, Options{})
	ask := func(text string) shape.Finished {
		quoted, err := json.Marshal(map[string]string{"text": text})
		require.NoError(t, err)
		var a shape.ScoreAnswer
		require.NoError(t, json.Unmarshal([]byte(sent(t, s, "/v1/score", string(quoted))), &a))
		return a.Finished
	}
	bands := func(f shape.Finished) (r, g, b int64) {
		v, err := strconv.ParseInt(f.Colour.RGB[1:], 16, 32)
		require.NoError(t, err, f.Colour.RGB)
		return v >> 16, v >> 8 & 255, v & 255
	}
	red := ask("1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks")
	r, g, b := bands(red)
	assert.Greater(t, r, g+60, red.Colour.RGB)
	assert.Greater(t, r, b+60, red.Colour.RGB)
	assert.Zero(t, red.Colour.Cloudy)

	clear := ask("2 1/2 oz gin\n1/2 oz extra dry vermouth\nstir, up")
	r, _, b = bands(clear)
	assert.Less(t, r-b, int64(50), clear.Colour.RGB)
	assert.Less(t, clear.SaltGPerL, 0.1, "wine holds a little sodium: USDA SR 26, NDB 14057, 9 mg in 100 g")

	sour := ask("2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n1 egg white\n5 drops saline\nshake, up")
	assert.Greater(t, sour.Colour.Cloudy, 0.5)
	assert.Greater(t, sour.FoamGPerL, 5.0)
	assert.Greater(t, sour.SaltGPerL, 0.05)
	assert.Less(t, sour.SaltGPerL, 1.5)

	long := ask("2 oz vodka\n4 oz soda water\nbuild, long")
	assert.Greater(t, long.Carbonation, 3.0)
}
