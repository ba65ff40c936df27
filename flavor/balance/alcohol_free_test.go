package balance_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// Drafts that are meant without alcohol, balanced or not: common practice, no source.
var meantWithout = []string{
	"150 ml soda water|5 dashes aromatic bitters|build, long",
	"4 oz ginger beer|2 dashes aromatic bitters|build, long",
	"60 ml espresso|150 ml oat milk|20 ml vanilla syrup|build",
	"50 ml alcohol-free gin|150 ml tonic water|build, long",
	"60 ml alcohol-free gin|10 ml lemon juice|shake, up",
	"30 ml lemon juice|15 ml simple syrup|150 ml water|build, long",
	"30 ml lemon juice|200 ml water|build, long",
	"4 oz hot coffee|1/2 oz demerara syrup|1 oz heavy cream|build, hot",
	"120 ml pineapple juice|30 ml coconut cream|shake, long",
	"60 ml grapefruit juice|10 ml lime juice|60 ml soda water|build, long",
	"2 oz cranberry juice|2 oz orange juice|shake, rocks",
	"200 ml tomato juice|60 ml lemon juice|build, long",
}

func TestNoAlcoholIsSuggestedToADraftWithout(t *testing.T) {
	k := newKitchen(t)
	mended := 0
	for _, text := range meantWithout {
		s := k.read(t, strings.ReplaceAll(text, "|", "\n"))
		require.True(t, s.AlcoholFree(), text)
		mended += k.staysFree(t, s)
	}
	assert.GreaterOrEqual(t, mended, len(meantWithout)/2, "to suggest nothing is no remedy")
}

func TestNoDraftWithoutAlcoholIsGivenAny(t *testing.T) {
	k := newKitchen(t)
	free := slices.DeleteFunc(slices.Clone(k.catalogue.Profiles()), func(p *flavor.Profile) bool { return p.ABV.Value > flavor.NoAlcoholABV })
	rapid.Check(t, func(t *rapid.T) {
		s := flavor.Spec{Method: rapid.SampledFrom(flavor.Methods()).Draw(t, "method"), Service: rapid.SampledFrom(flavor.Services()).Draw(t, "service")}
		for range rapid.IntRange(1, 4).Draw(t, "pours") {
			p := rapid.SampledFrom(free).Draw(t, "ingredient")
			pour := flavor.Pour{Profile: p, Unit: flavor.Millilitre, Amount: float64(rapid.IntRange(5, 120).Draw(t, "amount"))}
			if p.Class.Solid() {
				pour.Unit = flavor.Gram
			}
			if per, ok := measure.MLPerUnit(pour.Unit, p); ok {
				pour.ML = pour.Amount * per
				s.Pours = append(s.Pours, pour)
			}
		}
		if _, err := k.judge.Score(&s); err != nil || !s.AlcoholFree() {
			t.Skip("nothing in it can be weighed, or it is half a drink")
		}
		k.staysFree(t, &s)
	})
}

// staysFree asserts that nothing with alcohol is suggested for a draft, and returns 1 if it
// is balanced or a fix is told.
func (k *kitchen) staysFree(t require.TestingT, s *flavor.Spec) int {
	r, fixes, err := k.judge.Mend(s, balance.MaxFixes)
	require.NoError(t, err)
	for _, f := range fixes {
		for _, c := range f.Changes {
			assert.False(t, c.ToML > c.FromML && c.Profile.ABV.Value > flavor.NoAlcoholABV, "%s", f.Text)
		}
	}
	build, err := k.judge.Prepare(s)
	require.NoError(t, err)
	defer build.Done()
	companions := build.Forgotten().Companions(len(k.book))
	for _, c := range companions {
		assert.LessOrEqual(t, c.Profile.ABV.Value, flavor.NoAlcoholABV, "a companion: %s", c.Profile.Name)
	}
	for _, f := range r.Faults {
		for _, p := range k.catalogue.Profiles() {
			assert.False(t, p.ABV.Value > flavor.NoAlcoholABV && strings.HasSuffix(f.Text, " have "+p.Name+" too"), f.Text)
		}
	}
	if r.Verdict == weigh.Balanced || len(fixes) > 0 {
		return 1
	}
	return 0
}
