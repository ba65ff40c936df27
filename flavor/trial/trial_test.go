package trial_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/balance"
	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/trial"
)

// handful is a rig of two families and a handful of drinks as bars pour them:
// common practice, no source.
func handful(t *testing.T) *trial.Rig {
	c, err := data.Embedded()
	require.NoError(t, err)
	rig := &trial.Rig{Tuning: template.DefaultTuning(), Pantry: c.Pantry(), Advise: true, Families: []template.Family{
		{ID: "sour", Name: "Sour", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Sour},
			Ratio: []float64{8, 3, 3}, Source: "2 : ¾ : ¾, common practice", Signs: makeup.Signals{makeup.HasSour: 4}},
		{ID: "old-fashioned", Name: "Old-fashioned", Axes: []ratio.Axis{ratio.Strong, ratio.Sweet, ratio.Bitter},
			Ratio: []float64{50, 5, 8}, Source: "60 ml, a spoon of syrup, two dashes, common practice", Signs: makeup.Signals{makeup.HasBitters: 4, makeup.IsStirred: 2}},
	}}
	for _, d := range []struct{ name, family, text string }{
		{"gin sour", "sour", "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"},
		{"rum sour", "sour", "2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up"},
		{"whiskey sour", "sour", "2 oz bourbon\n3/4 oz lemon juice\n1 oz simple syrup\nshake, rocks"},
		{"vodka sour", "sour", "2 oz vodka\n1 oz lemon juice\n1 oz simple syrup\nshake, up"},
		{"bourbon", "old-fashioned", "2 oz bourbon\n1/4 oz simple syrup\n2 dashes aromatic bitters\nstir, rocks"},
		{"rye", "old-fashioned", "2 oz rye whiskey\n1/4 oz simple syrup\n3 dashes aromatic bitters\nstir, rocks"},
	} {
		s, err := c.ReadSpec(d.name, d.text)
		require.NoError(t, err)
		rig.Proven = append(rig.Proven, template.Labelled{Spec: s, Family: d.family, Source: "common practice", Status: template.StatusRead})
	}
	rig.Proven[0].Status = template.StatusRecalled
	return rig
}

func TestTrialOfAHandful(t *testing.T) {
	rig := handful(t)
	var seen []int
	r, err := rig.Run(func(done, total int) {
		assert.Equal(t, len(rig.Proven), total)
		seen = append(seen, done)
	})
	require.NoError(t, err)
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6}, seen, "progress drink by drink")
	assert.Equal(t, 6, r.Drinks)
	assert.Equal(t, 4, r.Sours.Drinks)
	assert.Equal(t, 5, r.Read.Drinks, "one is recalled")
	assert.InDelta(t, 1, r.FamilyFirst, 0, "the signs tell them apart")
	require.Len(t, r.Spoilt, len(trial.Spoilings()))
	for i, s := range r.Spoilt {
		// A sour can be spoilt on three axes and an old-fashioned on two, each up and down.
		assert.Equal(t, 4*6+2*4, s.Drinks)
		assert.Equal(t, 4*6, r.Sours.Spoilt[i].Drinks)
		for _, share := range []float64{s.Area, s.OwnBelow, s.RightAxis, s.Noticed, s.FirstNames, s.TwoName, s.FirstFixes, s.FirstUndoes} {
			assert.True(t, share >= 0 && share <= 1)
		}
		assert.LessOrEqual(t, s.FirstNames, s.TwoName)
		assert.Greater(t, s.Area, 0.9, "plain drinks, plainly spoilt")
		assert.Greater(t, s.TwoName, 0.8)
		assert.Greater(t, s.FirstFixes, 0.8)
	}
	assert.Greater(t, r.Spoilt[1].Noticed, r.Spoilt[0].Noticed-0.01, "the more it is spoilt the more it shows")
	assert.Len(t, r.Cases, 6+2*(4*6+2*4))

	again, err := rig.Run(nil)
	require.NoError(t, err)
	assert.Equal(t, r, again, "twice the same")
}

func TestTrialWritesATable(t *testing.T) {
	rig := handful(t)
	rig.Advise = false
	r, err := rig.Run(nil)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, r.WriteMarkdown(&b))
	assert.Contains(t, b.String(), "| all | 6 |")
	assert.Contains(t, b.String(), "| sours | 4 |")
	assert.Contains(t, b.String(), "| read in their source | 5 |")
	assert.Contains(t, b.String(), "not tried")
	columns := 0
	for line := range strings.Lines(b.String()) {
		if !strings.HasPrefix(line, "|") {
			columns = 0
			continue
		}
		if columns > 0 {
			assert.Equal(t, columns, strings.Count(line, "|"), "%s", line)
		}
		columns = strings.Count(line, "|")
	}
}

func TestTrialFaults(t *testing.T) {
	rig := handful(t)
	rig.Proven[2].Family = "broth"
	_, err := rig.Run(nil)
	assert.ErrorContains(t, err, "broth")
	rig.Proven = nil
	_, err = rig.Run(nil)
	assert.ErrorContains(t, err, "no proven drinks")
}

func TestSpoil(t *testing.T) {
	p := &handful(t).Proven[0].Spec
	s, ok := trial.Spoil(p, ratio.Sour, 3)
	require.True(t, ok)
	assert.InDelta(t, 3*p.Pours[1].ML, s.Pours[1].ML, 1e-12)
	assert.Equal(t, p.Pours[0], s.Pours[0])
	_, ok = trial.Spoil(p, ratio.Bitter, 3)
	assert.False(t, ok, "nothing in it is bitter")
}

// By hand: of the pairs (3,1) (3,2) (2,1) (2,2) three are won and one is tied.
func TestArea(t *testing.T) {
	assert.InDelta(t, 3.5/4, trial.Area([]float64{3, 2}, []float64{1, 2}), 1e-12)
	assert.Zero(t, trial.Area(nil, []float64{1}))
	assert.Zero(t, trial.Area([]float64{1}, nil))
}

func TestSummaryOfNothing(t *testing.T) {
	s := trial.Summarise(nil, func(*trial.Case) bool { return true })
	assert.Zero(t, s.Drinks)
	for _, x := range s.Spoilt {
		assert.False(t, math.IsNaN(x.Area) || math.IsNaN(x.TwoName))
	}
}

// Faults of cases count by axis and sign, among the first two.
func TestSummaryCountsTheRightAxis(t *testing.T) {
	fault := func(a ratio.Axis, high bool) balance.Fault { return balance.Fault{Axis: a, High: high} }
	up := trial.Spoilings()[0].Up
	cases := []trial.Case{
		{Family: "sour", Taken: "sour", Factor: 1, Score: 90, Own: 90},
		{Family: "sour", Axis: ratio.Sour, Factor: up, Score: 10, Own: 90, Faults: []balance.Fault{fault(ratio.Sour, true)}},
		{Family: "sour", Axis: ratio.Sour, Factor: up, Score: 20, Own: 90, Faults: []balance.Fault{fault(ratio.Sweet, false), fault(ratio.Sour, true)}},
		{Family: "sour", Axis: ratio.Sour, Factor: up, Score: 30, Own: 90, Faults: []balance.Fault{fault(ratio.Sour, false)}},
		{Family: "sour", Axis: ratio.Sweet, Factor: up, Score: 95, Own: 90, Mended: true},
	}
	s := trial.Summarise(cases, func(*trial.Case) bool { return true }).Spoilt[0]
	assert.Equal(t, 4, s.Drinks)
	assert.InDelta(t, 3.0/4, s.Noticed, 1e-12)
	assert.InDelta(t, 1.0/3, s.FirstNames, 1e-12)
	assert.InDelta(t, 2.0/3, s.TwoName, 1e-12)
	assert.InDelta(t, 2.0/4, s.RightAxis, 1e-12)
	assert.InDelta(t, 3.0/4, s.OwnBelow, 1e-12)
	assert.InDelta(t, 3.0/4, s.Area, 1e-12)
	assert.InDelta(t, 1.0/4, s.FirstFixes, 1e-12)
}
