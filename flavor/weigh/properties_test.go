package weigh_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// same is how far two ways of adding up the same numbers may differ.
const same = 1e-9

// scaled is a spec of so many mL.
func scaled(s *flavor.Spec, ml float64) *flavor.Spec {
	out := s.Clone()
	factor := ml / s.VolumeML()
	for i := range out.Pours {
		out.Pours[i].Amount *= factor
		out.Pours[i].ML *= factor
	}
	return &out
}

// ratio is the score by the ratio alone.
func (k *kitchen) ratio(t require.TestingT, s *flavor.Spec) float64 {
	b := k.build(t, s)
	return b.Judge(b.Amounts()).Ratio
}

// Size says nothing of a small glass, nor of a batch; only a large glass is a
// drink with something poured twice.
func TestScalingLeavesTheScoreAlone(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := scaled(k.draft(t), 55)
		half := scaled(s, rapid.Float64Range(40, 55).Draw(t, "small"))
		assert.InDelta(t, k.ratio(t, s), k.ratio(t, half), same)
		one := scaled(s, rapid.Float64Range(2e3, 1e5).Draw(t, "batch"))
		two := scaled(s, rapid.Float64Range(2e3, 1e5).Draw(t, "other batch"))
		assert.InDelta(t, k.ratio(t, one), k.ratio(t, two), same)
		assert.InDelta(t, k.ratio(t, s), k.ratio(t, one), same, "a batch is judged as a small glass is")
	})
}

func TestOrderOfPoursLeavesTheScoreAlone(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		other := s.Clone()
		other.Pours = rapid.Permutation(s.Pours).Draw(t, "order")
		assert.InDelta(t, k.score(t, s), k.score(t, &other), same)
	})
}

func TestSplittingAPourLeavesTheScoreAlone(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		i := rapid.IntRange(0, len(s.Pours)-1).Draw(t, "pour")
		part := rapid.Float64Range(0.05, 0.95).Draw(t, "part")
		assert.InDelta(t, k.score(t, s), k.score(t, split(s, i, part)), same)
	})
}

// split pours one pour in two.
func split(s *flavor.Spec, i int, part float64) *flavor.Spec {
	out := s.Clone()
	rest := out.Pours[i]
	out.Pours[i].Amount *= part
	out.Pours[i].ML *= part
	rest.Amount -= out.Pours[i].Amount
	rest.ML -= out.Pours[i].ML
	out.Pours = append(out.Pours, rest)
	return &out
}

// mostJump is how many points a score may move when one pour changes by 1 %.
// No family is narrower than a spread of a tenth or so in a part's logarithm,
// which bounds the slope of its score; the rest is what passes between
// families.
const mostJump = 3.0

func TestScoreMovesContinuously(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		b := k.build(t, s)
		ml := b.Amounts()
		before := b.Score(ml)
		i := rapid.IntRange(0, len(ml)-1).Draw(t, "pour")
		ml[i] *= rapid.SampledFrom([]float64{0.99, 1.01}).Draw(t, "change")
		assert.InDelta(t, before, b.Score(ml), mostJump)
		moved := s.Clone()
		moved.Pours[i].ML = ml[i]
		assert.InDelta(t, before, k.score(t, &moved), mostJump, "prepared anew")
	})
}

func TestScoreStaysBelowItsCeiling(t *testing.T) {
	k := newKitchen(t)
	palate, err := k.set.WithPalate(k.sweetened())
	require.NoError(t, err)
	var sets, low int
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		for _, set := range []*weigh.Set{k.set, palate} {
			b, err := set.Prepare(s)
			require.NoError(t, err)
			ml := b.Amounts()
			ceiling := b.Ceiling(ml)
			assert.LessOrEqual(t, b.Score(ml), ceiling)
			assert.LessOrEqual(t, ceiling, 100.0)
			assert.Equal(t, ceiling, b.Ceiling(ml), "the same once the centres are known")
			i := rapid.IntRange(0, len(ml)-1).Draw(t, "pour")
			ml[i] *= rapid.Float64Range(0.2, 5).Draw(t, "change")
			assert.LessOrEqual(t, b.Score(ml), b.Ceiling(ml), "with other amounts")
			sets++
			if ceiling < weigh.BalancedFrom {
				low++
			}
		}
	})
	assert.Greater(t, low, sets/20, "a ceiling that rules nothing out is no use")
}

// sweetened is the proven drinks as a house with a very sweet tooth has them.
func (k *kitchen) sweetened() []template.Labelled {
	out := make([]template.Labelled, len(k.book))
	for i, l := range k.book {
		l.Spec = l.Spec.Clone()
		for p := range l.Spec.Pours {
			if l.Spec.Pours[p].Profile.Class.Part() == flavor.PartSweetener {
				l.Spec.Pours[p].ML *= 4
			}
		}
		out[i] = l
	}
	return out
}

// Without relatives a family has one centre, and the ceiling is the score.
func TestCeilingIsTheScoreWithoutRelatives(t *testing.T) {
	k := newKitchen(t)
	set, err := weigh.NewSet(k.families, k.fitted, nil, template.DefaultTuning())
	require.NoError(t, err)
	palate, err := set.WithPalate(k.sweetened())
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		for _, set := range []*weigh.Set{set, palate} {
			b, err := set.Prepare(s)
			require.NoError(t, err)
			const slack = 1e-5 // what the ceiling leaves for rounding
			assert.InDelta(t, b.Judge(b.Amounts()).Ratio, b.Ceiling(b.Amounts()), slack, "but for what is beyond habit")
		}
	})
}

// A score is given if it reaches what is asked for, and is that of Score.
func TestReaches(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		least := rapid.Float64Range(0, 100).Draw(t, "least")
		want := k.score(t, s)
		b := k.build(t, s)
		for range 2 { // before the centres are known, and after
			score, ok := b.Reaches(b.Amounts(), least)
			assert.Equal(t, want >= least, ok)
			if ok {
				assert.Equal(t, want, score)
			}
			b.Score(b.Amounts())
		}
	})
}

func TestJudgementIsSound(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		b := k.build(t, k.draft(t))
		ml := b.Amounts()
		j := b.Judge(ml)
		assert.Equal(t, j, b.Judge(ml), "twice the same")
		assert.Equal(t, j.Score, b.Score(ml), "the score alone is the same")
		assert.True(t, j.Score >= 0 && j.Score <= 100)
		var sum, mean float64
		for _, f := range j.Fits {
			sum += f.Probability
			mean += f.Probability * f.Score
			assert.True(t, f.Tail() >= 0 && f.Tail() <= 1)
		}
		assert.InDelta(t, 1, sum, same)
		assert.InDelta(t, j.Ratio, weigh.Excuse(mean, j.Excused), same)
		assert.LessOrEqual(t, j.Score, j.Ratio)
		if j.Score < j.Ratio && j.Score < weigh.BalancedFrom {
			assert.True(t, len(j.Beyond)+len(j.Bounds)+len(j.Method) > 0 || j.Uneven.Profile != nil, "something is said to be wrong")
		}
		assert.True(t, slices.IsSortedFunc(j.Fits, func(x, y weigh.Fit) int {
			return int(math.Copysign(1, y.Probability-x.Probability))
		}), "the most probable first")
		checkPulls(t, j.Pulls)
		checkPulls(t, j.Then)
	})
}

func checkPulls(t *rapid.T, pulls []weigh.Pull) {
	var odds float64
	for i, p := range pulls {
		odds += p.Odds
		assert.False(t, math.IsNaN(p.Change) || math.IsInf(p.Change, 0), "change of %v", p.Axis)
		assert.LessOrEqual(t, p.Gain, 1.0)
		if i > 0 {
			assert.LessOrEqual(t, p.Odds, pulls[i-1].Odds, "the likeliest first")
		}
	}
	if len(pulls) > 0 {
		assert.InDelta(t, 1, odds, same)
	}
}

func TestOuncesAndMillilitresAgree(t *testing.T) {
	k := newKitchen(t)
	// 1 US fluid ounce is 29.5735295625 mL (NIST Handbook 44, appendix C).
	ounces := k.read(t, "2 oz gin\n3/4 oz lemon juice\n1 1/2 oz simple syrup\nshake, up")
	metric := k.read(t, "59.147059 ml gin\n22.180147 ml lemon juice\n44.360294 ml simple syrup\nshake, up")
	centi := k.read(t, "5.9147059 cl gin\n2.2180147 cl lemon juice\n4.4360294 cl simple syrup\nshake, up")
	const digits = 1e-4 // of the figures above
	assert.InDelta(t, k.score(t, ounces), k.score(t, metric), digits)
	assert.InDelta(t, k.score(t, ounces), k.score(t, centi), digits)
}
