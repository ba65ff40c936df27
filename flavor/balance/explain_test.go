package balance_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/weigh"
)

// The lines sum to the score that the judge gives, whatever the drink.
func TestExplainSumsToTheScore(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		steps, err := k.judge.Explain(s)
		require.NoError(t, err)
		score := map[string]float64{}
		var sum float64
		for _, x := range steps {
			assert.NotEmpty(t, x.Text)
			assert.NotEmpty(t, x.Unit)
			switch x.Stage {
			case arithmetic.FamilyScore:
				score[x.Family] = x.Value
			case arithmetic.Probability:
				sum += x.Value / 100 * score[x.Family]
			case arithmetic.Other:
				sum += x.Value
			}
		}
		mean, habit, uneven, bound := 100.0, 100.0, 100.0, 100.0
		for _, x := range steps {
			switch x.Stage {
			case arithmetic.Mean:
				assert.InDelta(t, x.Value, sum, same)
				mean = x.Value
			case arithmetic.Excused:
				assert.Greater(t, x.Value, mean)
				mean = x.Value
			case arithmetic.Habit:
				habit = min(habit, x.Value)
			case arithmetic.Uneven:
				uneven = x.Value
			case arithmetic.Bound:
				bound = min(bound, x.Value)
			}
		}
		last := steps[len(steps)-1]
		assert.Equal(t, arithmetic.Score, last.Stage)
		assert.Equal(t, k.score(t, s).Judgement.Score, last.Value, "to the last bit")
		edges := func(points float64) float64 { return math.Log(points/100) / math.Log(0.7) }
		cubes := math.Pow(edges(mean), 3) + math.Pow(edges(habit), 3)
		both := math.Pow(cubes*cubes+math.Pow(edges(uneven), 6), 1.0/6)
		assert.InDelta(t, min(weigh.ScoreAt(both), bound), last.Value, same, "the ratio, habit and proportions together, or the bounds")
	})
}

func TestExplainIsInTheWordsOfTheTrade(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "2 oz gin\n3/4 oz lemon juice\n1 oz simple syrup\n1 dash aromatic bitters\nshake, up")
	steps, err := k.judge.Explain(s)
	require.NoError(t, err)
	byStage := map[arithmetic.Stage][]arithmetic.Step{}
	for _, x := range steps {
		byStage[x.Stage] = append(byStage[x.Stage], x)
	}
	require.Len(t, byStage[arithmetic.Pour], len(s.Pours))
	assert.True(t, strings.HasPrefix(byStage[arithmetic.Pour][0].Text, "2 oz London dry gin is 59.1 ml and counts as "))
	var pours, shares float64
	for _, x := range byStage[arithmetic.Pour] {
		pours += x.Value
	}
	for _, x := range byStage[arithmetic.Share] {
		shares += x.Value
	}
	assert.InDelta(t, 100, shares, 0.1, "per cent, but for axes too small to tell")
	together := byStage[arithmetic.Total][len(byStage[arithmetic.Total])-1]
	assert.True(t, strings.HasPrefix(together.Text, "together: "))
	assert.GreaterOrEqual(t, together.Value, pours-same, "length below nothing counts as none")
	assert.Equal(t, "sour", byStage[arithmetic.Centre][0].Family)
	assert.Contains(t, byStage[arithmetic.Ratio][0].Text, "strong against sweet is √(1/2) × ln(")
	assert.Contains(t, byStage[arithmetic.Ratio][1].Text, "strong and sweet against sour is √(2/3) × ln(√(")
	assert.Contains(t, byStage[arithmetic.Distance][0].Text, "squared distance")
}

// What a family lacks and the drink has plenty of is told as such.
func TestExplainTellsExcess(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n6 oz cola\nshake, up")
	steps, err := k.judge.Explain(s)
	require.NoError(t, err)
	told := false
	for _, x := range steps {
		told = told || x.Stage == arithmetic.Excess && strings.Contains(x.Text, "such drinks carry up to") && x.Value > 0
	}
	var wanted bool
	build, err := k.judge.Prepare(s)
	require.NoError(t, err)
	for _, f := range build.Detail(build.Amounts()).Families {
		wanted = wanted || len(f.Excess) > 0 && f.Probability >= 0.05
	}
	assert.Equal(t, wanted, told)
}

func TestExplainFaults(t *testing.T) {
	k := newKitchen(t)
	_, err := k.judge.Explain(&flavor.Spec{})
	assert.Error(t, err)
}
