package shape

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/servicetest"
	"counterpour/flavor/mix"
)

// Every readout of a drink is served under its key, with value and spread, and nothing
// else has a spread.
func TestEveryReadoutIsServed(t *testing.T) {
	k := servicetest.Demo(t)
	text := "1 oz gin\n1 oz red bitter aperitif\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"
	spec, err := k.Read(Draft{Text: &text}.ToCentre())
	require.NoError(t, err)
	scored, err := k.Judge.Score(&spec)
	require.NoError(t, err)
	d := scored.Drink
	answer, err := AnswerScore(t.Context(), k, ScoreBody{Draft: Draft{Text: &text}})
	require.NoError(t, err)
	const rounding = 0.051 // the coarsest is served with one decimal
	served := map[string]bool{}
	for _, r := range mix.Readouts() {
		value, spread, ok := answer.Finished.Read(r.Key)
		require.True(t, ok, "%s is not served", r.Key)
		assert.InDelta(t, r.Value(d), value, rounding, r.Key)
		assert.Greater(t, math.Abs(value), 5*rounding, "%s is too small here to tell a tenth of it", r.Key)
		if r.Spread != nil {
			assert.InDelta(t, r.Spread(&d.PlusMinus), spread, rounding, "the spread of %s", r.Key)
			served[r.Key] = true
		}
	}
	var spreads map[string]float64
	body, err := json.Marshal(answer.Finished.PlusMinus)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(body, &spreads))
	for key := range spreads {
		assert.True(t, served[key], "%s is served as a spread, and nothing is read off under it", key)
	}
	assert.Len(t, spreads, len(served))
	_, _, ok := answer.Finished.Read("mass_g")
	assert.False(t, ok)
}
