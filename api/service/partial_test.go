package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
)

func TestScorePart(t *testing.T) {
	s := AtRest(testKitchen(t), &data.House{})
	text := "2 oz London dry gin\n1 oz lemn jus of nowhere\n3/4 oz simple syrup\n1 vermouth-ish thing\nshake, up"
	_, err := s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &text}})
	require.Error(t, err, "what cannot be read is an error unless a part will do")

	a, err := s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &text}, Partial: true})
	require.NoError(t, err)
	require.Len(t, a.Spec.Pours, 2)
	require.Len(t, a.Incomplete, 2)
	assert.Equal(t, "line 2", a.Incomplete[0].Location)
	assert.Equal(t, "line 4", a.Incomplete[1].Location)
	assert.Empty(t, a.Fixes, "nobody can mend a drink that is only half there")

	whole := "2 oz London dry gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up"
	a, err = s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &whole}, Partial: true})
	require.NoError(t, err)
	assert.Empty(t, a.Incomplete)
	b, err := s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &whole}})
	require.NoError(t, err)
	assert.Equal(t, b.Result.Judgement.Score, a.Result.Judgement.Score)

	none := "1 oz nothing known\n2 oz nor this"
	_, err = s.Score(t.Context(), ScoreRequest{Draft: Draft{Text: &none}, Partial: true})
	assert.Len(t, flavor.DataFaultsOf(err), 2)
}
