package drill

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Every family that has three proven drinks has a card, whose range is where the
// engine itself draws the line.
func TestCards(t *testing.T) {
	s := newSchool(t)
	families, _ := s.trainer.set.Families()
	full := 0
	for _, f := range families {
		c, err := s.trainer.Card(f.ID, s.Proven)
		require.NoError(t, err, f.ID)
		if len(c.Examples) == cardExamples {
			full++
		}
		assert.NotEmpty(t, c.Usual)
		assert.NotEmpty(t, c.Ratio)
		var sum float64
		for _, p := range c.Parts {
			sum += p.Fitted
			assert.Less(t, p.Low, 1.0)
			assert.Greater(t, p.High, 1.0)
		}
		assert.InDelta(t, 1, sum, 1e-9)
		for _, x := range c.Examples {
			assert.GreaterOrEqual(t, x.Score, weigh.NearFrom, x.Spec.Name)
		}
	}
	assert.Greater(t, full, 15)
	_, err := s.trainer.Card("nothing", s.Proven)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

// A house's own drinks come first, whatever they score, and proven ones fill up.
func TestCardExamplesAreOfTheHouseFirst(t *testing.T) {
	s := newSchool(t)
	own := []template.Labelled{{Family: "sour", Spec: *s.Spec(t, "2 oz London dry gin\n1 oz lemon juice\n1/2 oz simple syrup\nshake, up")},
		{Family: "flip", Spec: *s.Spec(t, "2 oz brandy\n1 oz simple syrup\n1 whole egg\nshake, up")}}
	own[0].Spec.Name = "Halyard Sour"
	c, err := s.trainer.Card("sour", own)
	require.NoError(t, err)
	require.Len(t, c.Examples, cardExamples)
	assert.Equal(t, "Halyard Sour", c.Examples[0].Spec.Name)
	assert.False(t, c.Examples[0].Proven)
	for _, x := range c.Examples[1:] {
		assert.True(t, x.Proven)
		assert.GreaterOrEqual(t, x.Score, weigh.BalancedFrom, x.Spec.Name)
	}
	own[0].Spec.Name = c.Examples[1].Spec.Name
	again, err := s.trainer.Card("sour", own)
	require.NoError(t, err)
	for _, x := range again.Examples[1:] {
		assert.NotEqual(t, own[0].Spec.Name, x.Spec.Name, "no drink stands there twice")
	}
}
