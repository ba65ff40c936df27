package cover

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
)

// drawRequest draws one of the proven drinks with one of its pours out, and a stock.
func (b *bench) drawRequest(t *rapid.T) Request {
	spec := &b.book[rapid.IntRange(0, len(b.book)-1).Draw(t, "drink")].Spec
	all := b.usual
	if rapid.Bool().Draw(t, "everything") {
		all = b.catalogue.Profiles()
	}
	r := Request{Spec: spec, Missing: []*flavor.Profile{rapid.SampledFrom(spec.Pours).Draw(t, "out").Profile},
		Parts: rapid.IntRange(1, 2).Draw(t, "parts"), Limit: 10}
	from := rapid.IntRange(0, len(all)-1).Draw(t, "from")
	for i := range rapid.IntRange(20, 90).Draw(t, "stock") {
		r.Candidates = append(r.Candidates, all[(from+i*7)%len(all)])
	}
	slices.SortFunc(r.Candidates, func(a, b *flavor.Profile) int { return compareIDs(a, b) })
	r.Candidates = slices.CompactFunc(r.Candidates, func(a, b *flavor.Profile) bool { return a.ID == b.ID })
	return r
}

func compareIDs(a, b *flavor.Profile) int {
	switch {
	case a.ID < b.ID:
		return -1
	case a.ID > b.ID:
		return 1
	}
	return 0
}

// pouredFor reports whether ingredients are those of a custom, or kin of those that are not at
// hand.
func (b *bench) pouredFor(custom, ids []string) bool {
	return len(custom) == len(ids) && !slices.ContainsFunc(ids, func(id string) bool {
		return !slices.ContainsFunc(custom, func(x string) bool { return x == id || slices.Contains(b.finder.tools.Trade.Customs.Kin(x), id) })
	})
}

// The rules that hold for every list of covers, over random drinks and stocks.
func TestListsKeepToTheRules(t *testing.T) {
	b := newBench(t)
	found := 0
	rapid.Check(t, func(rt *rapid.T) {
		r := b.drawRequest(rt)
		result, err := b.finder.Find(context.Background(), r)
		require.NoError(rt, err)
		customs := b.finder.tools.Trade.Customs.For(r.Missing[0].ID)
		for i := range result.Covers {
			c := &result.Covers[i]
			found++
			var ids []string
			for _, p := range c.Parts {
				ids = append(ids, p.Profile.ID)
				assert.Contains(rt, r.Candidates, p.Profile, "only what is in stock")
				assert.NotEqual(rt, r.Missing[0].ID, p.Profile.ID)
				assert.False(rt, flat(r.Spec.Method, p.Profile) && !flat(r.Spec.Method, r.Missing[0]) && !c.OnTop(&p), "%s goes flat: %s", p.Profile.ID, c.Text)
			}
			slices.Sort(ids)
			custom := slices.ContainsFunc(customs, func(x flavor.Custom) bool { return b.pouredFor(x.Parts, ids) })
			if len(c.Parts) > 1 && !custom {
				b.earnsItsPlace(rt, &r, c)
			}
			for k := range i {
				assert.GreaterOrEqual(rt, b.apart(rt, &result.Covers[k].Spec, &c.Spec), asked.SameIdea, "%s and %s are one", result.Covers[k].Text, c.Text)
			}
		}
	})
	assert.Positive(t, found)
}

// flat reports whether something would lose its fizz in the making.
func flat(m flavor.Method, p *flavor.Profile) bool {
	return (p.Carbonated || p.Class.Sparkles()) && m != flavor.Build && m != flavor.Swizzle
}

// apart returns how far apart two drinks are in the glass.
func (b *bench) apart(t require.TestingT, one, other *flavor.Spec) float64 {
	x, err := b.finder.tools.Mixer.Mix(one)
	require.NoError(t, err)
	y, err := b.finder.tools.Mixer.Mix(other)
	require.NoError(t, err)
	steps := sense.Between(b.finder.tools.Space.Percept(one, x), b.finder.tools.Space.Percept(other, y))
	return steps.Total()
}

// earnsItsPlace holds a cover of several bottles against each bottle alone, in the
// amounts that it pours, and against nothing: neither comes as near.
func (b *bench) earnsItsPlace(t *rapid.T, r *Request, c *Cover) {
	least := math.Inf(1)
	for _, drop := range c.Parts {
		fewer := c.Spec.Clone()
		fewer.Pours = slices.DeleteFunc(fewer.Pours, func(p flavor.Pour) bool { return p.Profile == drop.Profile })
		if len(fewer.Pours) > 0 {
			least = min(least, b.apart(t, r.Spec, &fewer))
		}
	}
	assert.LessOrEqual(t, c.Distance, least-b.finder.tools.Weights.Earn+1e-6, "%s: a part is not missed", c.Text)
}

// Nothing that nobody has stated is in the safe list, whatever is avoided.
func TestUnstatedIsNeverInTheSafeList(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := b.drawRequest(rt)
		r.Parts = 1
		r.Guest.Avoid = []flavor.Allergen{rapid.SampledFrom([]flavor.Allergen{flavor.TreeNuts, flavor.Milk, flavor.Eggs, flavor.Celery, flavor.Sulphites}).Draw(rt, "avoid")}
		result, err := b.finder.Find(context.Background(), r)
		require.NoError(rt, err)
		for _, c := range result.Covers {
			assert.Empty(rt, c.Read, c.Text)
			for _, p := range c.Spec.Pours {
				assert.Equal(rt, flavor.Free, p.Profile.Clear(r.Guest.Avoid), "%s in %s", p.Profile.ID, c.Text)
			}
		}
		for _, c := range result.IfLabelClears {
			assert.NotEmpty(rt, c.Read, c.Text)
		}
	})
}

// Common practice, no source: what a guest who drinks no alcohol is poured, and how
// much of it.
func TestAlcoholFreeComesFirstAndInFull(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ text, missing, first string }{
		{"2 oz London dry gin\n5 oz tonic water\nbuild, long", "London dry gin", "alcohol-free-juniper"},
		{"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "London dry gin", "alcohol-free-juniper"},
		{"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\n2 oz soda water\nbuild, long", "white rum", "alcohol-free-cane"},
		{"2 oz bourbon\n1/4 oz demerara syrup\nstir, rocks", "bourbon", "alcohol-free-oak-aged"},
	} {
		r := b.request(t, c.text, c.missing, 1, 3)
		r.Guest.NoAlcohol = true
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, c.text)
		first := got.Covers[0].Parts[0]
		assert.Equal(t, c.first, first.Profile.ID, c.text)
		assert.Equal(t, 2.0, first.Amount, c.text)
	}
}

// Common practice, no source: several bottles with alcohol are each covered by the one
// that is made after it without.
func TestSeveralWithoutAlcoholArePouredTogether(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, missing string
		first         []string // among the bottles of the first cover
	}{
		{"1 oz London dry gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", "London dry gin",
			[]string{"alcohol-free-juniper", "alcohol-free-red-bitter", "alcohol-free-red-vermouth"}},
		{"2 oz blanco tequila\n3/4 oz triple sec\n3/4 oz lime juice\nshake, up", "blanco tequila",
			[]string{"alcohol-free-agave", "alcohol-free-orange-liqueur"}},
		{"1 1/2 oz vodka\n1 oz espresso\n3/4 oz coffee liqueur\nshake, up", "coffee liqueur",
			[]string{"alcohol-free-coffee-liqueur"}},
	} {
		r := b.request(t, c.text, c.missing, 2, 3)
		r.Guest.NoAlcohol, r.Common = true, b.common
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, c.text)
		var ids []string
		for _, p := range got.Covers[0].Parts {
			ids = append(ids, p.Profile.ID)
		}
		assert.Subset(t, ids, c.first, c.text)
		assert.Less(t, got.Covers[0].Beside, got.Covers[0].Distance)
	}
}

// What led a drink is kept where anything keeps it. Common practice, no source.
func TestWhatLedIsKeptFirst(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, out string
		avoid     []flavor.Allergen
		lead      string   // material that the first cover brings back
		never     []string // ids of which none is listed
	}{
		{"2 oz white rum\n1 1/2 oz cream of coconut\n3 oz pineapple juice\nblend", "cream-of-coconut", nil, "coconut", []string{"agave-nectar", "gum-syrup"}},
		{"2 oz gin\n1/2 oz lime cordial\nshake, up", "lime-cordial", nil, "lime juice", nil},
		{"2 oz gin\n1/2 oz dry vermouth\n1/4 oz olive brine\nstir, up", "olive-brine", nil, "", []string{"clam-tomato-juice", "green-olive"}},
		{"2 oz white rum\n1 oz lime juice\n1/2 oz orgeat\nshake, up", "orgeat", []flavor.Allergen{flavor.TreeNuts}, "tiger nut", []string{"amaretto", "orgeat"}},
	} {
		spec, err := b.catalogue.ReadSpec("", c.text)
		require.NoError(t, err)
		got, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, c.out), Candidates: b.catalogue.Profiles(),
			Common: b.common, Guest: guest.Guest{Avoid: c.avoid}, Limit: 5})
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, c.text)
		brings := slices.ContainsFunc(got.Covers[0].Parts, func(p flavor.Pour) bool {
			return slices.ContainsFunc(p.Profile.Materials, func(m flavor.MaterialShare) bool { return m.Material == c.lead })
		})
		assert.True(t, brings || c.lead == "", "%s: %s", c.text, got.Covers[0].Text)
		for _, x := range got.Covers {
			for _, p := range x.Parts {
				assert.NotContains(t, c.never, p.Profile.ID, x.Text)
			}
		}
	}
}

// A bottle that covers two things out by leaving one of them out comes after what covers both.
func TestNothingOutIsLeftUnserved(t *testing.T) {
	b := newBench(t)
	r := b.request(t, "1 1/2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\n3 dashes Worcestershire-style sauce\nbuild, rocks", "vodka", 2, 5, flavor.Fish)
	r.Common = b.common
	got, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	require.NotEmpty(t, got.Covers)
	assert.Len(t, got.Covers[0].Parts, 2, got.Covers[0].Text)
}
