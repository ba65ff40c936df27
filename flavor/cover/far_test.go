package cover

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/cover/asked"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/guest"
)

// Nothing is listed that is another drink: what lies beyond the last step, or has lost
// half of the score, unless the trade pours it, or it is as much sugar for sugar. A spirit without alcohol is poured for
// no guest who drinks.
func TestNothingFarIsListed(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(rt *rapid.T) {
		r := b.drawRequest(rt)
		r.Parts = 1
		r.Guest = guest.Guest{}
		result, err := b.finder.Find(context.Background(), r)
		require.NoError(rt, err)
		for _, c := range result.Covers {
			one := len(c.Parts) == 1 && c.Parts[0].Profile.Class.Kin() == flavor.KinSpirit
			most, worth := LastJND, listing.LeastWorth
			switch {
			case c.Custom:
				most, worth = asked.LastCustomJND, listing.LeastKnownWorth
			case one:
				most = asked.LastKnownJND
			}
			assert.LessOrEqual(rt, c.Distance, most, c.Text)
			if len(c.Parts) == 1 && len(result.Removed) == 1 && role.Sweetens(c.Parts[0].Profile.Class, result.Removed[0].Class) {
				worth = 0
			}
			assert.GreaterOrEqual(rt, c.Score, worth*result.ScoreBefore, c.Text)
			if c.Called != "" { // which the guest is told instead
				assert.Contains(rt, c.Text, c.Called+", so tell the guest", c.Text)
			} else {
				assert.Equal(rt, !c.Keeps, strings.Contains(c.Text, ": another drink"), c.Text)
			}
			if c.Keeps && c.Distance > listing.FarJND {
				assert.True(rt, c.Custom && len(c.Gone) == 0, c.Text)
			}
		}
	})
}

// Common practice, no source: what comes first when several things are out, or the base.
func TestSeveralMissingAreSolvedOneByOne(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text    string
		missing []string
		stock   []string
		want    []string // of one of the first three covers
	}{
		{"2 oz bourbon\n1/4 oz demerara syrup\n2 dashes aromatic bitters\nstir, rocks",
			[]string{"bourbon", "demerara-syrup", "aromatic-bitters"},
			[]string{"rye-whiskey", "simple-syrup", "anise-bitters", "medium-amaro", "aged-rum"},
			[]string{"rye-whiskey", "simple-syrup", "anise-bitters"}},
		{"2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz honey syrup\nshake, up",
			[]string{"london-dry-gin"},
			[]string{"vodka", "honey-herb-liqueur", "alcohol-free-juniper", "green-herbal-liqueur"},
			[]string{"vodka"}},
	} {
		r := Request{Spec: b.menu(t, c.text)[0], Missing: b.profiles(t, c.missing...), Candidates: b.profiles(t, c.stock...), Limit: 3}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		var lists [][]string
		for _, x := range got.Covers {
			var ids []string
			for _, p := range x.Parts {
				assert.NotEqual(t, flavor.ClassAlcoholFree, p.Profile.Class, x.Text)
				ids = append(ids, p.Profile.ID)
			}
			lists = append(lists, ids)
		}
		assert.Contains(t, lists, c.want)
	}
}

// What leads the base makes the drink: where something near is there, what the trade pours
// far off is not listed, and where nothing is, it is told as another drink. Common
// practice, no source.
func TestAFarBaseIsAnotherDrink(t *testing.T) {
	b := newBench(t)
	spec := b.menu(t, "2 oz pisco\n3/4 oz lime juice\n3/4 oz simple syrup\n1 egg white\nshake, up")[0]
	for _, c := range []struct {
		stock  []string
		listed bool
	}{
		{[]string{"aromatic-pisco", "blanco-tequila"}, false},
		{[]string{"blanco-tequila"}, true},
	} {
		r := Request{Spec: spec, Missing: b.profiles(t, "pisco"), Candidates: b.profiles(t, c.stock...), Parts: 1}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err)
		at := slices.IndexFunc(got.Covers, func(x Cover) bool { return x.Parts[0].Profile.ID == "blanco-tequila" })
		assert.Equal(t, c.listed, at >= 0)
		if at >= 0 {
			assert.False(t, got.Covers[at].Keeps)
			assert.False(t, got.Near)
		}
	}
}

// Of what the trade pours together no amounts beside those listed come nearer in the glass
// and score as well.
func TestACustomIsPouredInItsBestAmounts(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		text, missing string
		stock         []string
	}{
		{"2 oz vodka\n1 oz coffee liqueur\n1 oz heavy cream\nbuild, rocks", "coffee-liqueur", []string{"espresso", "simple-syrup"}},
		{"2 oz white rum\n1/2 oz maraschino liqueur\n3/4 oz lime juice\nshake, up", "maraschino-liqueur", []string{"kirsch", "simple-syrup"}},
		{"2 oz blanco tequila\n1/2 oz lime juice\n4 oz grapefruit soda\nbuild, long", "grapefruit-soda", []string{"grapefruit-juice", "lemon-lime-soda"}},
	} {
		r := Request{Spec: b.menu(t, c.text)[0], Missing: b.profiles(t, c.missing), Candidates: b.profiles(t, c.stock...), Limit: 10}
		task := b.task(t, &r)
		task.Strict = true
		ideas, _, err := task.Ideas(context.Background())
		require.NoError(t, err)
		at := slices.IndexFunc(ideas, func(x idea.Idea) bool { return len(x.Filling.Parts) == 2 })
		require.GreaterOrEqual(t, at, 0, c.missing)
		best := ideas[at]
		for k := range 2 {
			for _, by := range []int{-1, 1} {
				other := best.Filling
				other.Amounts[k] += by
				if n := other.Amounts[k]; n < 0 || n >= len(task.Cands[other.Parts[k]].Amounts) {
					continue
				}
				x, err := task.Mixed(&other)
				require.NoError(t, err)
				if score, err := b.finder.tools.Judge.ScoreOnly(&x.Spec); assert.NoError(t, err) && score >= best.Score {
					assert.GreaterOrEqual(t, x.Distance, best.Distance, "%s: %s", c.missing, task.describe(x).Text)
				}
			}
		}
	}
}

// A liqueur that leads where an ounce of it is much stands for no ounce and a half of a mild one, and
// a drink made on another spirit is told as that, however near (common practice, no source).
func TestCoversAreWhatABarPours(t *testing.T) {
	b := newBench(t)
	finder := NewFinder(b.finder.tools.Mixer, b.finder.tools.Judge, b.finder.tools.Space, b.finder.tools.Trade.Customs, DefaultWeights())
	finder.Pour(func(p *flavor.Profile) float64 {
		if p.ID == "maraschino-liqueur" {
			return 30
		}
		return 60
	})
	find := func(text, missing string, stock ...string) *Result {
		got, err := finder.Find(context.Background(), Request{Spec: b.menu(t, text)[0], Missing: b.profiles(t, missing), Candidates: b.profiles(t, stock...), Far: true})
		require.NoError(t, err)
		require.NotEmpty(t, got.Covers, text)
		return got
	}
	for _, c := range find("1 1/2 oz amaretto\n3/4 oz bourbon\n1 oz lemon juice\n1/4 oz simple syrup\nshake, rocks", "amaretto", "maraschino-liqueur").Covers {
		assert.LessOrEqual(t, c.Parts[0].ML, 30.0, c.Text)
	}
	near := find("2 oz vodka\n5 oz orange juice\nbuild, long", "vodka", "white-rum", "rye-vodka").Covers
	for _, c := range near {
		assert.Equal(t, c.Keeps && c.Parts[0].Profile.Class == flavor.ClassRum, strings.Contains(c.Text, "another spirit, so tell the guest"), c.Text)
	}
	port := find("2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "sweet-vermouth", "ruby-port").Covers[0]
	assert.NotContains(t, port.Text, "white wine", "port is a wine")
	lemon := find("2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up", "lime-juice", "lemon-juice").Covers[0]
	assert.NotContains(t, lemon.Text, "loses lime juice", "whoever is out of it knows")
}

// Who avoids tree nuts is never offered peanuts, though no law says so (common practice, no source).
func TestNutsAreNotCoveredByOtherNuts(t *testing.T) {
	b := newBench(t)
	r := Request{Spec: b.menu(t, "2 oz amaretto\n1 oz lemon juice\n1/4 oz simple syrup\nshake, rocks")[0], Missing: b.profiles(t, "amaretto"),
		Candidates: b.profiles(t, "peanut-liqueur", "sesame-orgeat", "peanut-orgeat"), Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}, Far: true}
	got, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	assert.Empty(t, got.Covers)
	assert.Empty(t, got.IfLabelClears)
}
