package practice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/practice"
	"counterpour/flavor/cover/role"
)

// known is what is known of three rums for one that went, of which the trade pours the first
// alone, then the other two together.
func known() *practice.Practice {
	went := &flavor.Profile{ID: "went", Class: flavor.ClassRum}
	g := &gap.Gap{Gone: []gap.Gone{{Bottle: &role.Bottle{Profile: went}}}}
	customs := gap.Customs{{{Place: 0, Parts: []string{"a"}}, {Place: 1, Parts: []string{"b", "c"}}}}
	k := practice.New(1)
	for _, p := range []*flavor.Profile{{ID: "a", Class: flavor.ClassRum}, {ID: "b", Class: flavor.ClassSyrup}, {ID: "c", Class: flavor.ClassRum}} {
		k.Add(p, g, customs)
	}
	k.AddChoice([]int{0}, 0, 0)
	k.AddChoice([]int{1, 2}, 1, 0.5)
	k.AddChoice([]int{0}, 2, 9)
	return &k
}

func plain([]int) float64 { return 3 }

func TestWhatTheTradePours(t *testing.T) {
	k := known()
	assert.Equal(t, [][]int{{0}, {1, 2}}, k.Choices(), "each once")
	for name, c := range map[string]struct {
		parts                              []int
		pours, knows, first, obvious, kind bool
		habit                              float64
	}{
		"the first choice": {parts: []int{0}, pours: true, first: true, obvious: true, habit: 1},
		"the second":       {parts: []int{1, 2}, pours: true, knows: true, obvious: true, habit: 0.75},
		"of its class":     {parts: []int{2}, obvious: true},
		"another":          {parts: []int{1}},
	} {
		assert.Equal(t, c.pours, k.Pours(c.parts), name)
		assert.Equal(t, c.knows, k.Knows(c.parts), name)
		assert.Equal(t, c.first, k.FirstChoice(c.parts), name)
		assert.Equal(t, c.obvious, k.Obvious(c.parts), name)
		assert.InDelta(t, c.habit, k.Habit(c.parts), 1e-9, name)
	}
}

// What was sent back is a custom no more and must earn more; what was kept must earn less; one
// taster moves less than many; and no liking makes something stand for what it cannot.
func TestTastingsAreHeeded(t *testing.T) {
	after := func(parts []int, liked float64, times int) (standing float64, pours bool) {
		k := known()
		var tasted []practice.Tasted
		for range times {
			tasted = append(tasted, practice.Tasted{Parts: parts, Liked: liked})
		}
		k.Heed(tasted, plain, 1)
		standing, _ = k.Standing(parts)
		return standing, k.Pours(parts)
	}
	back, pours := after([]int{0}, 0, 1)
	assert.False(t, pours)
	assert.Greater(t, back, plain(nil))
	worse, _ := after([]int{0}, 0, 9)
	assert.Greater(t, worse, back)
	kept, pours := after([]int{1}, 1, 2)
	assert.True(t, pours)
	assert.Less(t, kept, plain(nil))
	undecided, _ := after([]int{1, 2}, 0.5, 3)
	assert.InDelta(t, 0.5, undecided, 1e-9)

	k := known()
	k.Heed([]practice.Tasted{{Parts: []int{1}, Liked: 1}}, func([]int) float64 { return math.Inf(1) }, 1)
	assert.False(t, k.Pours([]int{1}))
}

// What covers several things one by one has its place by that, and is no custom.
func TestOneByOne(t *testing.T) {
	k := known()
	k.AddOneByOne([]int{0, 1}, 2)
	k.AddOneByOne([]int{1, 2}, 2)
	assert.True(t, k.EachAlone([]int{0, 1}))
	assert.False(t, k.Knows([]int{0, 1}))
	steps, _ := k.Standing([]int{0, 1})
	assert.InDelta(t, 2, steps, 1e-9)
	steps, _ = k.Standing([]int{1, 2})
	assert.InDelta(t, 0.5, steps, 1e-9, "it was known before")
}
