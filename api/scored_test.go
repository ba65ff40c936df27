package api

import (
	"testing"

	"counterpour/api/service/servicetest"
	"counterpour/api/shape"
	"counterpour/api/wire"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// written is a draft as text.
func written(text string) shape.Draft { return shape.Draft{Text: &text} }

// A repeated request is answered from the cache while the house does not change, and only
// for exactly the same body.
func TestScoresAreCached(t *testing.T) {
	house := servicetest.Demo(t)
	var s scoredBodies
	body := shape.ScoreBody{Draft: written(goodText)}
	first, err := s.answer(t.Context(), house, body)
	require.NoError(t, err)
	fresh, err := shape.AnswerScore(t.Context(), house, body)
	require.NoError(t, err)
	plain, err := wire.Encode(fresh)
	require.NoError(t, err)
	assert.JSONEq(t, string(plain), string(first))

	known, err := s.of(house)
	require.NoError(t, err)
	key, err := wire.Encode(body)
	require.NoError(t, err)
	known.kept.Add(string(key), []byte("kept"))
	again, err := s.answer(t.Context(), house, body)
	require.NoError(t, err)
	assert.Equal(t, "kept", string(again))

	explained := body
	explained.Explain = true
	other, err := s.answer(t.Context(), house, explained)
	require.NoError(t, err)
	assert.Contains(t, string(other), `"explanation"`)

	changed := *house
	anew, err := s.answer(t.Context(), &changed, body)
	require.NoError(t, err)
	assert.Equal(t, string(first), string(anew), "another state of the house is asked itself")
}

// Errors are not cached, nor are answers to very long bodies.
func TestFaultsAreNotCached(t *testing.T) {
	house := servicetest.Demo(t)
	var s scoredBodies
	for range 2 {
		_, err := s.answer(t.Context(), house, shape.ScoreBody{Draft: written("2 oz unobtainium")})
		assert.Error(t, err)
	}
	long := make([]byte, mostScoredLength)
	for i := range long {
		long[i] = '\n'
	}
	_, err := s.answer(t.Context(), house, shape.ScoreBody{Draft: written(goodText + string(long))})
	require.NoError(t, err)
	known, err := s.of(house)
	require.NoError(t, err)
	assert.Zero(t, known.kept.Len())
}
