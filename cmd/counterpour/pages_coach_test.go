package main

import (
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
	"counterpour/webui"
)

func newTestCoach(t *testing.T) *coach {
	t.Helper()
	k, err := sharedKitchen()
	require.NoError(t, err)
	return newCoach(func() *api.Kitchen { return k })
}

// Every kind can be had, and its request makes the same round again.
func TestCoachMakesEveryKind(t *testing.T) {
	c := newTestCoach(t)
	for _, kind := range append(drill.Kinds(), "") {
		r, err := c.Next("", webui.RoundWish{Kind: kind})
		require.NoError(t, err, kind)
		again, err := c.Again(r.Request)
		require.NoError(t, err, kind)
		assert.Equal(t, r.Question, again.Question)
		assert.Equal(t, r.Options, again.Options)
	}
	r, err := c.Next("", webui.RoundWish{Kind: drill.KindOrder, Axis: template.Sweet, HasAxis: true, Size: 3})
	require.NoError(t, err)
	assert.Equal(t, template.Sweet, r.Request.Axis)
	assert.Equal(t, 3.0, r.Request.Size)
	_, err = c.Next("", webui.RoundWish{Kind: "darts"})
	assert.Error(t, err)
}

// Two right make it harder, one wrong easier, and a page sent twice counts once.
func TestCoachFollowsTheLearner(t *testing.T) {
	c := newTestCoach(t)
	wish := webui.RoundWish{Kind: drill.KindGuess}
	play := func(right bool) drill.Skill {
		r, err := c.Next("ann", wish)
		require.NoError(t, err)
		d, err := sharedDrink(r)
		require.NoError(t, err)
		a := drill.Answer{ABV: d.abv, Volume: d.volume}
		if !right {
			a.ABV = 99
		}
		for range 2 {
			g, err := c.Grade("ann", r, a)
			require.NoError(t, err)
			assert.Equal(t, right, g.Right)
		}
		return c.Learner("ann").Skills[0]
	}
	play(true)
	after := play(true)
	assert.Equal(t, 2, after.Rounds)
	assert.Less(t, after.Stairs.Next(), drill.StartSize)
	harder := after.Stairs.Next()
	assert.Greater(t, play(false).Stairs.Next(), harder)
	r, err := c.Next("ann", wish)
	require.NoError(t, err)
	assert.Equal(t, c.Learner("ann").Skills[0].Stairs.Next(), r.Request.Size)
	assert.Empty(t, c.Learner("bob").Skills)
}

type finished struct{ abv, volume float64 }

func sharedDrink(r *drill.Round) (finished, error) {
	k, err := sharedKitchen()
	if err != nil {
		return finished{}, err
	}
	scored, err := k.Judge.Score(&r.Specs[0])
	if err != nil {
		return finished{}, err
	}
	return finished{scored.Drink.ABV, scored.Drink.VolumeML}, nil
}

// What is due or new comes before the rest.
func TestSkillsToTry(t *testing.T) {
	now := time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)
	l := drill.Learner{Skills: []drill.Skill{{Kind: drill.KindOrder, Axis: "sweet", Rounds: 1, Repeat: drill.Repeat{Due: now.Add(time.Hour)}}}}
	for range 10 {
		got := skillsToTry(l, drill.KindOrder, now)
		require.Len(t, got, 2)
		assert.Equal(t, "strong", got[0].Axis)
		assert.Equal(t, 1, got[1].Rounds)
	}
	assert.Len(t, skillsToTry(l, drill.KindFault, now), template.NumAxes)
}

// Who has not answered for longest is forgotten first.
func TestCoachForgets(t *testing.T) {
	c := newCoach(nil)
	for i := range mostLearners {
		c.pupil(fmt.Sprint(i)).learner.Name = "x"
	}
	c.pupil("0")
	c.pupil("new")
	assert.Len(t, c.learners, mostLearners)
	assert.Equal(t, mostLearners, c.recent.Len())
	assert.Equal(t, "x", c.Learner("0").Name)
	assert.Empty(t, c.Learner("1").Name)
}

func TestCoachIsSafeForAll(t *testing.T) {
	c := newTestCoach(t)
	r, err := c.Next("", webui.RoundWish{Kind: drill.KindFamily})
	require.NoError(t, err)
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			for k := range 20 {
				id := fmt.Sprint((i + k) % 5)
				_, err := c.Grade(id, r, drill.Answer{})
				assert.NoError(t, err)
				assert.Len(t, c.Learner(id).Skills, 1)
			}
		})
	}
	all.Wait()
}
