package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

const (
	honeySour     = "2 oz gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up"
	artichokeSour = "1 oz gin\n1 oz artichoke amaro\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 thin orange slices\nshake, up"
)

// Common practice, no source: these three builds are balanced or near it.
func TestAcceptedBuildsAreInBalance(t *testing.T) {
	k := testHouse(t)
	for name, c := range map[string]struct{ text, family string }{
		"gin, honey, lemon":                  {honeySour, "sour"},
		"gin and artichoke amaro":            {artichokeSour, "bitter-split-sour"},
		"gin, passion fruit, orgeat, spices": {falernumSour, "tropical-sour"},
	} {
		spec := readDraft(t, k, c.text)
		r, _, err := k.Mend(&spec)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, r.Judgement.Score, weigh.NearFrom, name)
		assert.Equal(t, c.family, r.Judgement.Fits[0].ID, name)
		if r.Verdict == weigh.Balanced {
			assert.Empty(t, r.Faults, name)
		}
	}
}

// The first build spoilt on one axis is off, names it, and the first fix brings
// it back.
func TestSpoiltBuildIsNamedAndMended(t *testing.T) {
	k := testHouse(t)
	for name, c := range map[string]struct {
		text string
		axis ratio.Axis
		high bool
		pour string
	}{
		"syrup doubled": {spoiltHoney, ratio.Sweet, true, "honey-syrup"},
		"lemon cut":     {"2 oz gin\n3/4 oz honey syrup\n1/4 oz lemon juice\nshake, up", ratio.Sour, false, "lemon-juice"},
	} {
		spec := readDraft(t, k, c.text)
		r, fixes, err := k.Mend(&spec)
		require.NoError(t, err)
		assert.Equal(t, weigh.Off, r.Verdict, "%s: %.1f", name, r.Judgement.Score)
		require.NotEmpty(t, r.Faults, name)
		assert.Equal(t, c.axis, r.Faults[0].Axis, name)
		assert.Equal(t, c.high, r.Faults[0].High, name)
		require.NotEmpty(t, fixes, name)
		assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, name)
		require.Len(t, fixes[0].Changes, 1, name)
		assert.Equal(t, c.pour, fixes[0].Changes[0].Profile.ID, name)
		assertFixHolds(t, k, &fixes[0])
	}
}

// assertFixHolds scores the mended drink anew.
func assertFixHolds(t *testing.T, k *Snapshot, f *balance.Fix) {
	t.Helper()
	r, _, err := k.Mend(&f.Spec)
	require.NoError(t, err)
	assert.InDelta(t, f.Score, r.Judgement.Score, 1e-6, f.Text)
}

func TestCoversOfAcceptedBuilds(t *testing.T) {
	k := testHouse(t)
	for name, c := range map[string]struct {
		text, missing string
		avoid         []string
	}{
		"falernum":                   {falernumSour, "falernum", nil},
		"artichoke amaro":            {artichokeSour, "artichoke amaro", nil},
		"falernum, no nuts":          {falernumSour, "falernum", []string{"tree nuts"}},
		"artichoke amaro, no nuts":   {artichokeSour, "artichoke amaro", []string{"tree nuts"}},
		"falernum, three allergens":  {falernumSour, "falernum", []string{"tree nuts", "milk", "eggs"}},
		"artichoke amaro, sulphites": {artichokeSour, "artichoke amaro", []string{"sulphites"}},
	} {
		spec := readDraft(t, k, c.text)
		a, err := k.Cover(t.Context(), CoverRequest{Draft: Draft{Spec: &spec}, Missing: []string{c.missing}, Guest: Guest{Avoid: c.avoid}, Parts: 2, Limit: 10})
		require.NoError(t, err)
		missing, r := a.Missing[0], a.Result
		require.NotEmpty(t, r.Covers, name) // few bitter bottles state all that they carry
		assert.False(t, r.Unbalanced, name)
		for _, x := range r.Covers {
			require.NotEmpty(t, x.Spec.Pours, name)
			for _, p := range x.Spec.Pours {
				assert.NotEqual(t, missing.ID, p.Profile.ID, name)
				assert.Positive(t, p.ML, name)
				for _, a := range c.avoid {
					_, has := p.Profile.Allergen(flavor.Allergen(a))
					assert.False(t, has, "%s: %s carries %s", name, p.Profile.Name, a)
				}
			}
			got, _, err := k.Mend(&x.Spec)
			require.NoError(t, err)
			assert.InDelta(t, x.Score, got.Judgement.Score, 1e-6, "%s: %s", name, x.Text)
			assert.GreaterOrEqual(t, x.Score, min(weigh.BalancedFrom, r.ScoreBefore-5), "%s: %s", name, x.Text)
		}
	}
}

// A missing ingredient is excluded by its own name too, if the draft reads that name as
// something else: honey that is read as honey syrup is not poured as honey.
func TestMissingIngredientIsExcludedByEveryName(t *testing.T) {
	k := testHouse(t)
	text := "60 ml bourbon\n20 ml lemon juice\n15 ml honey\nshake, up"
	spec := readDraft(t, k, text)
	require.Equal(t, "honey-syrup", spec.Pours[2].Profile.ID, "the draft reads honey as its syrup")
	a, err := k.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: []string{"honey"},
		Stock: []string{"honey", "maple-syrup", "demerara-syrup"}, Parts: 2, Limit: 10})
	require.NoError(t, err)
	require.NotEmpty(t, a.Result.Covers)
	for _, c := range a.Result.Covers {
		for _, p := range c.Parts {
			assert.NotEqual(t, "honey", p.Profile.ID, c.Text)
		}
	}
}

// A name strikes what it stands in the names of, unless a stock lists that: who is out of
// grapefruit juice has none of any colour, and one who keeps the pink one says so.
func TestMissingNameExcludesItsVarieties(t *testing.T) {
	k := testHouse(t)
	for _, c := range []struct {
		pour, missing string
		stock         []string
		struck, kept  []string
	}{
		{pour: "1/2 oz grapefruit juice", missing: "grapefruit juice", struck: []string{"pink-grapefruit-juice", "acid-adjusted-grapefruit-juice"}, kept: []string{"orange-juice"}},
		{pour: "1/2 oz grapefruit juice", missing: "grapefruit juice", stock: []string{"pink-grapefruit-juice", "orange-juice"}, kept: []string{"pink-grapefruit-juice"}},
		{pour: "1/2 oz honey", missing: "honey", struck: []string{"honey", "honey-syrup-3-1", "honey-syrup-2-1"}, kept: []string{"demerara-syrup"}},
		{pour: "1/2 oz honey syrup", missing: "honey syrup", struck: []string{"honey-syrup-1-1"}, kept: []string{"honey"}},
		{pour: "2 oz prosecco", missing: "prosecco", struck: []string{"brut-prosecco"}, kept: []string{"cava"}},
		{pour: "1/2 oz maple syrup", missing: "maple syrup", struck: []string{"maple-syrup-cut"}, kept: []string{"honey-syrup"}},
	} {
		text := "2 oz bourbon\n3/4 oz lemon juice\n" + c.pour + "\nshake, up"
		a, err := k.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: []string{c.missing}, Stock: c.stock, Everywhere: true, Parts: 1, Limit: 100})
		require.NoError(t, err)
		poured := map[string]bool{}
		for _, x := range a.Result.Covers {
			poured[x.Parts[0].Profile.ID] = true
			for _, o := range x.Also {
				poured[o.Parts[0].Profile.ID] = true
			}
		}
		for _, id := range c.struck {
			assert.False(t, poured[id], "%s out, and %s poured", c.missing, id)
		}
		for _, id := range c.kept {
			assert.True(t, poured[id], "%s out, and %s not poured", c.missing, id)
		}
	}
}

// A stock that is sent to a house that is nobody's is another bar's: neither the menu nor
// the prices of the house stand beside it.
func TestDemoDataIsLeftOutForAnotherBar(t *testing.T) {
	k := testHouse(t)
	var stock []string
	for _, p := range k.Menu[0].Spec.Pours {
		stock = append(stock, p.Profile.ID)
	}
	text := "6 oz tomato juice\n1/2 oz lemon juice\n3 dashes hot pepper sauce\nbuild, long"
	for _, invented := range []bool{true, false} {
		k.About.Invented = invented
		a, err := k.Cover(t.Context(), CoverRequest{Draft: Draft{Text: &text}, Missing: []string{"tomato juice"}, Stock: stock, Parts: 1, Limit: 1})
		require.NoError(t, err)
		require.NotNil(t, a.Instead)
		assert.Equal(t, invented, a.Instead.Menu == nil)
		assert.Equal(t, invented, len(k.priced(Guest{}, stock).Prices) == 0 && k.priced(Guest{}, stock).Prices != nil)
	}
}
