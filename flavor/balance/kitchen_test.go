package balance_test

import (
	"strings"
	"sync"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// kitchen is a judge over the real families, catalogue and proven drinks.
type kitchen struct {
	catalogue *data.Catalogue
	book      []template.Labelled
	mixer     *mix.Mixer
	set       *weigh.Set
	judge     *balance.Judge
}

// loadKitchen uses families that are fitted anew, so that no test depends on when the file
// of fitted values was last written.
var loadKitchen = sync.OnceValues(func() (*kitchen, error) {
	f, err := datatest.Refitted()
	if err != nil {
		return nil, err
	}
	return &kitchen{catalogue: f.Catalogue, book: f.Proven, mixer: f.Mixer, set: f.Set, judge: balance.NewJudge(f.Mixer, f.Set, f.Catalogue.Pantry())}, nil
})

func newKitchen(t require.TestingT) *kitchen {
	k, err := loadKitchen()
	require.NoError(t, err)
	return k
}

func (k *kitchen) read(t require.TestingT, text string) *flavor.Spec {
	s, err := k.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	return &s
}

func (k *kitchen) score(t require.TestingT, s *flavor.Spec) *balance.Result {
	r, err := k.judge.Score(s)
	require.NoError(t, err)
	return r
}

func (k *kitchen) fixes(t require.TestingT, s *flavor.Spec, r *balance.Result) []balance.Fix {
	f, err := k.judge.Fixes(s, r, balance.MaxFixes)
	require.NoError(t, err)
	return f
}

// draft draws a proven drink with its pours out of proportion.
func (k *kitchen) draft(t *rapid.T) *flavor.Spec {
	s := rapid.SampledFrom(k.book).Draw(t, "drink").Spec.Clone()
	s.Name = ""
	for i := range s.Pours {
		factor := rapid.SampledFrom([]float64{1, 1, 1, 0.25, 0.5, 0.75, 1.5, 2, 3}).Draw(t, "factor")
		s.Pours[i].Amount *= factor
		s.Pours[i].ML *= factor
	}
	return &s
}

// mends asserts what the first fault of a draft is about, and that the first fix, which
// says this, balances it. Lines are parted by bars.
func (k *kitchen) mends(t require.TestingT, text string, axis ratio.Axis, fix string) {
	s := k.read(t, strings.ReplaceAll(text, "|", "\n"))
	r := k.score(t, s)
	require.NotEqual(t, weigh.Balanced, r.Verdict, text)
	require.NotEmpty(t, r.Faults, text)
	assert.Equal(t, axis, r.Faults[0].Axis, "%s: %+v", text, r.Faults)
	fixes := k.fixes(t, s, r)
	require.NotEmpty(t, fixes, text)
	assert.Contains(t, fixes[0].Text, fix, text)
	assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, text)
}
