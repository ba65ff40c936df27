package balance_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// same is how far two ways of adding up the same numbers may differ.
const same = 1e-9

func TestFaultsAreSound(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		r := k.score(t, s)
		assert.Equal(t, r, k.score(t, s), "twice the same")
		assert.Equal(t, weigh.VerdictOf(r.Judgement.Score), r.Verdict)
		if r.Verdict == weigh.Balanced {
			assert.Empty(t, r.Faults, "a balanced draft has no faults")
		}
		seen := map[ratio.Axis]bool{}
		for i, f := range r.Faults {
			assert.False(t, seen[f.Axis] && !f.Beyond, "an axis is told once, but of pours that are each too much in themselves")
			seen[f.Axis] = true
			assert.Greater(t, f.Deviation, f.PlusMinus, "nothing within plus-or-minus is a fault")
			assert.GreaterOrEqual(t, f.Deviation, 1.0, "nor what nobody tastes")
			assert.NotEmpty(t, f.Text)
			if f.PlusMinus == 0 || i == 0 { // not of the ratio
				continue
			}
			if f.Then == r.Faults[i-1].Then {
				assert.LessOrEqual(t, f.Odds, r.Faults[i-1].Odds, "the likeliest first")
			}
			if r.Faults[i-1].Then {
				assert.True(t, f.Then, "what is wrong now comes first")
			}
		}
	})
}

func TestOrderAndSplittingLeaveFaultsAlone(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		want := k.score(t, s)
		other := s.Clone()
		other.Pours = rapid.Permutation(s.Pours).Draw(t, "order")
		got := k.score(t, &other)
		assert.InDelta(t, want.Judgement.Score, got.Judgement.Score, same)
		sameFaults(t, want.Faults, got.Faults)

		split := s.Clone()
		i := rapid.IntRange(0, len(s.Pours)-1).Draw(t, "pour")
		split.Pours[i].Amount /= 2
		split.Pours[i].ML /= 2
		split.Pours = append(split.Pours, split.Pours[i])
		got = k.score(t, &split)
		assert.InDelta(t, want.Judgement.Score, got.Judgement.Score, same)
		samePulls(t, want.Judgement.Pulls, got.Judgement.Pulls)
	})
}

func sameFaults(t *rapid.T, want, got []balance.Fault) {
	require.Len(t, got, len(want))
	for i := range want {
		assert.Equal(t, want[i].Axis, got[i].Axis)
		assert.Equal(t, want[i].High, got[i].High)
		assert.InDelta(t, want[i].Deviation, got[i].Deviation, 1e-6)
	}
}

func samePulls(t *rapid.T, want, got []weigh.Pull) {
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, want[i].Odds, got[i].Odds, 1e-6)
		assert.InDelta(t, want[i].Gain, got[i].Gain, 1e-6)
	}
}

func TestScalingLeavesTheVerdictAlone(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		scaled := func(ml float64) *flavor.Spec {
			out := s.Clone()
			for i := range out.Pours {
				out.Pours[i].Amount *= ml / s.VolumeML()
				out.Pours[i].ML *= ml / s.VolumeML()
			}
			return &out
		}
		batch := scaled(rapid.Float64Range(2e3, 1e5).Draw(t, "batch"))
		assert.InDelta(t, k.score(t, scaled(55)).Judgement.Ratio, k.score(t, batch).Judgement.Ratio, same)
	})
}

func TestFixesAreSound(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		r := k.score(t, s)
		before := s.Clone()
		fixes := k.fixes(t, s, r)
		assert.Equal(t, fixes, k.fixes(t, s, r), "twice the same")
		assert.Equal(t, before, *s, "the draft is left as it was")
		assert.LessOrEqual(t, len(fixes), balance.MaxFixes)
		if r.Verdict == weigh.Balanced {
			assert.Empty(t, fixes)
		}
		for i := range fixes {
			f := &fixes[i]
			assert.GreaterOrEqual(t, f.Score, r.Judgement.Score, "a fix never lowers the score")
			assert.Equal(t, f.Score, k.score(t, &f.Spec).Judgement.Score, "its score is that of the mended spec")
			checkChanges(t, s, f)
			for j := range i {
				assert.False(t, sameIdea(f, &fixes[j]), "fixes %d and %d are of a kind: %s; %s", j, i, fixes[j].Text, f.Text)
			}
			if i > 0 && f.Score >= weigh.BalancedFrom {
				assert.GreaterOrEqual(t, fixes[i-1].Score, weigh.BalancedFrom, "what balances comes first")
			}
		}
	})
}

// checkChanges holds the changes of a fix against its spec: every amount is one
// that a hand can pour.
func checkChanges(t *rapid.T, s *flavor.Spec, f *balance.Fix) {
	assert.NotEmpty(t, f.Text)
	assert.True(t, everything(f) || onlyLess(f) || len(f.Changes) <= 2)
	assert.True(t, len(f.Changes) > 0 || f.Spec.Method != s.Method || strings.Contains(f.Text, "after"))
	pours := len(s.Pours)
	for _, c := range f.Changes {
		switch {
		case c.ToML == 0:
			pours--
			continue
		case c.FromML == 0:
			pours++
			assert.Equal(t, len(s.Pours), c.Pour)
		default:
			assert.Equal(t, s.Pours[c.Pour].ML, c.FromML)
			if c.FromUnit == "" && !everything(f) {
				assert.Contains(t, measure.Neighbours(c.From, c.Unit, 100), c.To)
			}
		}
		poured := slices.ContainsFunc(f.Spec.Pours, func(p flavor.Pour) bool {
			return p.Profile == c.Profile && p.ML == c.ToML && p.Amount == c.To && p.Unit == c.Unit
		})
		assert.True(t, poured, "the spec pours %v of %s", c.To, c.Profile.Name)
	}
	assert.Len(t, f.Spec.Pours, pours)
}

// everything reports whether a fix makes a smaller drink.
func everything(f *balance.Fix) bool { return strings.HasSuffix(f.Text, " of everything") }

// onlyLess reports whether a fix only leaves out.
func onlyLess(f *balance.Fix) bool {
	return !slices.ContainsFunc(f.Changes, func(c balance.Change) bool { return c.ToML > 0 })
}

// sameIdea reports whether every move of one fix is in the other.
func sameIdea(a, b *balance.Fix) bool {
	if everything(a) != everything(b) {
		return false
	}
	if len(a.Changes) > len(b.Changes) {
		a, b = b, a
	}
	for _, x := range a.Changes {
		if !slices.ContainsFunc(b.Changes, func(y balance.Change) bool {
			return x.Profile.ID == y.Profile.ID && (x.ToML > x.FromML) == (y.ToML > y.FromML)
		}) {
			return false
		}
	}
	return true
}

// While something else balances a draft, no fix takes the base further than a
// quarter from what was ordered, unless a fault says that the base is wrong.
func TestFixesSpareTheBase(t *testing.T) {
	k := newKitchen(t)
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		r := k.score(t, s)
		fixes := k.fixes(t, s, r)
		spared := slices.ContainsFunc(fixes, func(f balance.Fix) bool {
			return f.Score >= weigh.BalancedFrom && furthestBase(&f) == 0
		})
		for _, f := range r.Faults {
			if f.Profile != nil && f.Profile.Class.Part() == flavor.PartBase {
				spared = false
			}
		}
		for i := range fixes {
			if spared {
				assert.LessOrEqual(t, furthestBase(&fixes[i]), 0.25+same, fixes[i].Text)
			}
		}
	})
}

func furthestBase(f *balance.Fix) float64 {
	var most float64
	if everything(f) { // a smaller drink of the same kind
		return 0
	}
	for _, c := range f.Changes {
		if c.Profile.Class.Part() == flavor.PartBase && c.FromML > 0 {
			most = math.Max(most, math.Abs(c.ToML-c.FromML)/c.FromML)
		}
	}
	return most
}
