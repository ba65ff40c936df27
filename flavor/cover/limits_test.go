package cover

import (
	"cmp"
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// What a guest with limits is poured first, and what is left out for it. Common practice,
// no source.
func TestAGuestWithLimits(t *testing.T) {
	b := newBench(t)
	for name, c := range map[string]struct {
		drink      string
		out, shelf []string
		diet       string
		avoid      []flavor.Allergen
		first      string   // of the covers; empty for none
		without    []string // of the first
		leftOut    bool     // leaving out what went is best
		label      string   // the label to read first
	}{
		"a colada without its rum": {drink: "60 ml white rum\n45 ml cream of coconut\n90 ml pineapple juice\n15 ml lime juice\nblend, crushed",
			out: []string{"white-rum"}, shelf: []string{"guava-nectar", "mango-nectar", "agave-syrup"}, diet: "alcohol-free", leftOut: true},
		"a lemonade of a fizz": {drink: "50 ml London dry gin\n25 ml lemon juice\n20 ml simple syrup\n60 ml soda water\nshake, long",
			out: []string{"london-dry-gin"}, shelf: []string{"tonic-water", "agave-nectar"}, diet: "alcohol-free", leftOut: true},
		"a short sour is none without its spirit": {drink: "60 ml white rum\n25 ml lime juice\n20 ml demerara syrup\nshake, up",
			out: []string{"white-rum"}, shelf: []string{"guava-nectar", "black-tea"}, diet: "alcohol-free", first: "black-tea"},
		"what is made after it before leaving out": {drink: "50 ml London dry gin\n10 ml lime juice\n120 ml tonic water\nbuild, long",
			out: []string{"london-dry-gin"}, shelf: []string{"alcohol-free-juniper", "green-tea"}, diet: "alcohol-free", first: "alcohol-free-juniper"},
		"its label first where not even a trace is taken": {drink: "60 ml alcohol-free juniper spirit\n120 ml tonic water\n10 ml lime juice\nbuild, long",
			out: []string{"alcohol-free-juniper"}, shelf: []string{"alcohol-free-garden", "green-tea", "vodka"}, diet: "0.0 % alcohol", first: "green-tea", label: "alcohol-free-garden"},
		"its label first where gluten is avoided": {drink: "50 ml London dry gin\n10 ml lime juice\n120 ml tonic water\nbuild, long",
			out: []string{"london-dry-gin"}, shelf: []string{"alcohol-free-juniper"}, diet: "alcohol-free", avoid: []flavor.Allergen{flavor.Gluten}, leftOut: true, label: "alcohol-free-juniper"},
		"soda where no wine may be": {drink: "30 ml London dry gin\n15 ml lemon juice\n15 ml simple syrup\n90 ml brut champagne\nbuild, up",
			out: []string{"brut-champagne"}, shelf: []string{"soda-water", "dry-cider"}, avoid: []flavor.Allergen{flavor.Sulphites, flavor.Milk}, first: "soda-water"},
		"a soda where no beer may be": {drink: "200 ml pale lager\n30 ml lime juice\n1 pinch salt\nbuild, long",
			out: []string{"lager"}, shelf: []string{"ginger-ale", "stout"}, avoid: []flavor.Allergen{flavor.Gluten}, first: "ginger-ale"},
		"what lengthens the rest for the liqueur that a sour is made on": {drink: "50 ml amaretto\n25 ml lemon juice\n15 ml simple syrup\nshake, rocks",
			out: []string{"amaretto"}, shelf: []string{"soda-water", "sambuca", "fernet"}, diet: "alcohol-free", first: "soda-water"},
		"sugar beside it where the rest has none": {drink: "50 ml amaretto\n25 ml lemon juice\nshake, rocks",
			out: []string{"amaretto"}, shelf: []string{"soda-water", "vanilla-syrup", "fernet"}, diet: "alcohol-free", first: "soda-water+vanilla-syrup"},
		"soda for the spirit and sugar for the liqueur": {drink: "50 ml blanco tequila\n25 ml triple sec\n25 ml lime juice\nshake, rocks",
			out: []string{"blanco-tequila", "triple-sec"}, shelf: []string{"soda-water", "agave-nectar", "coffee-liqueur"}, diet: "alcohol-free", first: "agave-nectar+soda-water"},
		"nothing to make of a stirred drink": {drink: "30 ml London dry gin\n30 ml red bitter aperitif\n30 ml sweet vermouth\nstir, rocks",
			out: []string{"london-dry-gin"}, shelf: []string{"soda-water", "agave-nectar", "orange-juice"}, diet: "alcohol-free"},
		"a milk punch without its rum": {drink: "60 ml aged rum\n20 ml simple syrup\n120 ml whole milk\nbuild, hot",
			out: []string{"aged-rum"}, shelf: []string{"agave-nectar"}, diet: "alcohol-free", leftOut: true},
		"a cream alone is no drink": {drink: "45 ml banana liqueur\n45 ml heavy cream\nshake, up",
			out: []string{"banana-liqueur"}, shelf: []string{"agave-nectar"}, diet: "alcohol-free"},
		"neither tea nor soda beside milk and coffee": {drink: "45 ml vodka\n15 ml vanilla syrup\n60 ml cold brew coffee\n60 ml whole milk\nbuild, rocks",
			out: []string{"vodka", "whole-milk"}, shelf: []string{"coconut-drink", "green-tea", "soda-water"}, diet: "alcohol-free", avoid: []flavor.Allergen{flavor.Milk}, first: "coconut-drink", without: []string{"vodka"}},
		"the label first where only leaving it out is left": {drink: "60 ml sweet vermouth\n22 ml lemon juice\n15 ml simple syrup\n1 egg white\nshake, rocks",
			out: []string{"egg-white"}, shelf: []string{"heavy-cream"}, diet: "vegan", label: "leave it out"},
		"nothing strange where a label keeps the drink": {drink: "30 ml London dry gin\n30 ml red bitter aperitif\n30 ml sweet vermouth\nstir, rocks",
			out: []string{"red-bitter-aperitif"}, shelf: []string{"plant-red-bitter-aperitif", "cognac", "brandy"}, diet: "vegan", label: "plant-red-bitter-aperitif"},
		"nothing of another kind beside it": {drink: "22 ml bourbon\n22 ml light orange bitter aperitif\n22 ml medium amaro\n22 ml lemon juice\nshake, up",
			out: []string{"medium-amaro"}, shelf: []string{"vodka", "orange-marmalade", "southern-herb-amaro"}, diet: "vegan", avoid: []flavor.Allergen{flavor.TreeNuts}, label: "southern-herb-amaro"},
		"no kernels for who avoids nuts, and what is left in balance": {drink: "45 ml amaretto\n22.5 ml bourbon\n30 ml lemon juice\n5 ml simple syrup\n15 ml egg white\ndry shake, rocks",
			out: []string{"amaretto"}, shelf: []string{"maraschino-liqueur", "creme-de-noyaux", "dark-creme-de-cacao"}, avoid: []flavor.Allergen{flavor.TreeNuts}, leftOut: true},
		"another brandy and no egg": {drink: "60 ml pisco\n25 ml lime juice\n20 ml simple syrup\n20 ml egg white\nshake, up",
			out: []string{"pisco"}, shelf: []string{"grappa", "vodka"}, avoid: []flavor.Allergen{flavor.Eggs, flavor.Milk}, first: "grappa", without: []string{"egg-white"}},
		"another liqueur and no egg": {drink: "50 ml amaretto\n25 ml lemon juice\n10 ml simple syrup\n20 ml egg white\nshake, rocks",
			out: []string{"amaretto", "egg-white"}, shelf: []string{"maraschino-liqueur"}, avoid: []flavor.Allergen{flavor.TreeNuts, flavor.Eggs}, first: "maraschino-liqueur", without: []string{"egg-white"}},
		"chickpea water where it is at hand": {drink: "60 ml pisco\n25 ml lime juice\n20 ml simple syrup\n20 ml egg white\nshake, up",
			out: []string{"pisco"}, shelf: []string{"grappa", "chickpea-water"}, avoid: []flavor.Allergen{flavor.Eggs, flavor.Milk}, first: "chickpea-water+grappa"},
	} {
		r := b.request(t, c.drink, c.out[0], 2, 5, c.avoid...)
		r.Missing, r.Candidates = b.profiles(t, c.out...), b.profiles(t, c.shelf...)
		if c.diet != "" {
			require.NoError(t, r.Guest.Keep(c.diet))
		}
		got, err := b.finder.Find(context.Background(), r)
		require.NoError(t, err, name)
		assert.Equal(t, c.leftOut, got.LeftOutBest, name)
		assert.Equal(t, c.label != "", got.LabelFirst, name)
		if c.label != "" {
			assert.Equal(t, c.label, cmp.Or(poured(got.IfLabelClears)[0], "leave it out"), name)
		}
		if c.first == "" {
			assert.Empty(t, poured(got.Covers), name)
			continue
		}
		require.NotEmpty(t, got.Covers, name)
		assert.Equal(t, c.first, poured(got.Covers)[0], name)
		var without []string
		for _, p := range got.Covers[0].Without {
			without = append(without, p.ID)
			assert.Contains(t, got.Covers[0].Text, "leave out the "+p.Name, name)
		}
		assert.Equal(t, c.without, without, name)
	}
}

// Another class, however near, keeps no whiskey off the list where a whiskey is out. Common
// practice, no source.
func TestAWhiskeyForAWhiskey(t *testing.T) {
	b := newBench(t)
	r := b.request(t, "60 ml bourbon\n25 ml lemon juice\n20 ml simple syrup\nshake, rocks", "bourbon", 2, 5)
	r.Candidates = b.profiles(t, "aged-rum", "irish-whiskey", "blended-scotch", "fernet")
	got, err := b.finder.Find(context.Background(), r)
	require.NoError(t, err)
	list := poured(got.Covers)
	require.GreaterOrEqual(t, len(list), 2)
	assert.Contains(t, list[:2], "irish-whiskey")
	assert.NotContains(t, list, "fernet")
}

// Over random drinks, stocks and guests of two limits and more, nothing is poured that the
// guest must not have, whatever is left out for it.
func TestNoCoverHoldsWhatAGuestMustNotHave(t *testing.T) {
	b := newBench(t)
	found := 0
	rapid.Check(t, func(rt *rapid.T) {
		r := b.drawRequest(rt)
		r.Guest = guest.Guest{Avoid: rapid.SliceOfNDistinct(rapid.SampledFrom(flavor.Allergens()), 1, 3, rapid.ID).Draw(rt, "avoid")}
		for _, diet := range rapid.SliceOfNDistinct(rapid.SampledFrom(flavor.DietNames()), 0, 2, rapid.ID).Draw(rt, "diet") {
			require.NoError(rt, r.Guest.Keep(diet))
		}
		result, err := b.finder.Find(context.Background(), r)
		require.NoError(rt, err)
		safe := result.Covers
		if result.LeftOut != nil {
			safe = append(slices.Clip(safe), *result.LeftOut)
		}
		for _, c := range safe {
			found++
			assert.True(rt, r.Guest.MayHaveAll(&c.Spec), c.Text)
			for _, p := range result.Removed {
				assert.False(rt, c.Spec.Has(func(q *flavor.Profile) bool { return q == p }), "%s is still in: %s", p.Name, c.Text)
			}
			for _, ch := range c.Changes {
				assert.Equal(rt, ch.Profile, r.Spec.Pours[ch.Pour].Profile, "a change names the pour of the draft: %s", c.Text)
			}
		}
		for _, c := range result.IfLabelClears {
			require.NotEmpty(rt, c.Read, c.Text)
			for _, p := range c.Spec.Pours {
				assert.True(rt, r.Guest.IfCleared(p.Profile), "%s in %s", p.Profile.Name, c.Text)
			}
		}
		assert.False(rt, result.LabelFirst && len(result.IfLabelClears) == 0)
	})
	assert.Positive(t, found)
}
