package visit_test

import (
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/ratio"
)

// Every kind of round can be made, and made again from its request.
func TestCoachMakesEveryKind(t *testing.T) {
	c := testVisit(t)
	for _, kind := range append(drill.Kinds(), "") {
		r, err := c.Next(drill.Learner{}, coaching.RoundWish{Kind: kind})
		require.NoError(t, err, kind)
		again, err := c.Again(r.Request, coaching.Looks(r))
		require.NoError(t, err, kind)
		assert.Equal(t, r.Question, again.Question)
		assert.Equal(t, r.Options, again.Options)
		_, err = c.Again(r.Request, []byte("another"))
		assert.ErrorIs(t, err, coaching.ErrChanged)
	}
	r, err := c.Next(drill.Learner{}, coaching.RoundWish{Kind: drill.KindOrder, Axis: ratio.Sweet, HasAxis: true, Size: 3})
	require.NoError(t, err)
	assert.Equal(t, ratio.Sweet, r.Request.Axis)
	assert.Equal(t, 3.0, r.Request.Size)
	_, err = c.Next(drill.Learner{}, coaching.RoundWish{Kind: "darts"})
	assert.Error(t, err)
}

// The size of the next round follows the learner's results.
func TestCoachFollowsTheLearner(t *testing.T) {
	c := testVisit(t)
	var l drill.Learner
	play := func(right bool) drill.Skill {
		r, err := c.Next(l, coaching.RoundWish{Kind: drill.KindGuess})
		require.NoError(t, err)
		scored, err := c.Judge(&r.Specs[0])
		require.NoError(t, err)
		a := drill.Answer{ABV: scored.Drink.ABV, Volume: scored.Drink.VolumeML}
		if !right {
			a.ABV = 99
		}
		g, err := c.Grade(r, a)
		require.NoError(t, err)
		assert.Equal(t, right, g.Right)
		l, err = l.After(drill.OutcomeOf(r, g, time.Now()))
		require.NoError(t, err)
		return l.Skills[0]
	}
	play(true)
	after := play(true)
	assert.Equal(t, 2, after.Rounds)
	r, err := c.Next(l, coaching.RoundWish{Kind: drill.KindGuess})
	require.NoError(t, err)
	assert.Equal(t, after.Stairs.Next(), r.Request.Size)
	assert.Greater(t, play(false).Stairs.Next(), r.Request.Size)
}

// A flight and a card come from the same kitchen as the rounds.
func TestCoachPlans(t *testing.T) {
	c := testVisit(t)
	spec, err := c.Read("2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\nshake, up\n")
	require.NoError(t, err)
	f, err := c.Flight(tasting.FlightRequest{Spec: &spec, Axis: ratio.Sweet, Builds: 3, Step: 1, BuildML: 30, Tasters: 2})
	require.NoError(t, err)
	assert.Len(t, f.Builds, 3)
	card, err := c.Card("sour", nil)
	require.NoError(t, err)
	assert.Len(t, card.Examples, 3)
	_, err = c.Card("nothing", nil)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

func TestCoachConcurrently(t *testing.T) {
	c := testVisit(t)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			r, err := c.Next(drill.Learner{}, coaching.RoundWish{Kind: drill.KindFamily})
			if assert.NoError(t, err) {
				_, err = c.Grade(r, drill.Answer{})
				assert.NoError(t, err)
			}
		})
	}
	all.Wait()
}
