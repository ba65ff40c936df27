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
	"counterpour/flavor/guest"
)

// poured lists what each cover pours, as ids joined by +, ascending.
func poured(covers []Cover) []string {
	out := make([]string, len(covers))
	for i := range covers {
		var ids []string
		for _, p := range covers[i].Parts {
			ids = append(ids, p.Profile.ID)
		}
		slices.Sort(ids)
		out[i] = strings.Join(ids, "+")
	}
	return out
}

// What is poured from a small shelf, and what is not. Common practice, no source.
func TestWhatASmallShelfPours(t *testing.T) {
	b := newBench(t)
	for name, c := range map[string]struct {
		drink      string
		out, shelf []string
		avoid      []flavor.Allergen
		want       []string // exactly, the best first
	}{
		"mint by a little of its liqueur":       {"2 1/2 oz bourbon\n1/2 oz simple syrup\n8 mint leaves\nbuild, crushed ice", []string{"mint"}, []string{"creme-de-menthe", "fresh-ginger"}, nil, []string{"creme-de-menthe"}},
		"salt for a salt":                       {"50 ml aquavit\n120 ml tomato juice\n15 ml lemon juice\n1 pinch celery salt\nbuild, long", []string{"celery-salt"}, []string{"salt", "nutmeg", "clove"}, []flavor.Allergen{flavor.Celery}, []string{"salt"}},
		"no other fruit for a cucumber":         {"2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n4 slices cucumber\nshake, up", []string{"cucumber"}, []string{"tomato-cherry", "grape"}, nil, []string{}},
		"cider where no gluten may be":          {"250 ml pale lager\n250 ml lemon-lime soda\nbuild, long", []string{"lager"}, []string{"dry-cider", "pilsner", "alcohol-free-lager", "vodka"}, []flavor.Allergen{flavor.Gluten}, []string{"dry-cider"}},
		"no beer of a tonic and a spirit":       {"6 oz pale lager\n1 oz lime juice\n2 dashes hot pepper sauce\n1 pinch salt\nbuild, long", []string{"lager"}, []string{"soju", "light-tonic-water", "dry-cider"}, []flavor.Allergen{flavor.Gluten}, []string{"dry-cider"}},
		"no black beer for a pale one":          {"8 oz pale lager\n4 oz lemon-lime soda\nbuild, long", []string{"lager"}, []string{"stout", "dry-cider"}, nil, []string{"dry-cider"}},
		"another liqueur and a red syrup":       {"2 oz vodka\n1 oz peach liqueur\n2 oz orange juice\n1 oz cranberry juice\nshake, long", []string{"peach-liqueur", "cranberry-juice"}, []string{"elderflower-liqueur", "grenadine", "fernet"}, nil, []string{"elderflower-liqueur+grenadine"}},
		"no red vermouth for a white one":       {"1 1/2 oz London dry gin\n3/4 oz dry vermouth\n3/4 oz elderflower liqueur\nstir, up", []string{"dry-vermouth"}, []string{"fino-sherry", "sweet-vermouth"}, nil, []string{"fino-sherry"}},
		"no leaf for a liqueur":                 {"2 oz Irish whiskey\n1/2 oz green herbal liqueur\n1/2 oz sweet vermouth\n1 dash orange bitters\nstir, up", []string{"green-herbal-liqueur"}, []string{"basil"}, nil, []string{}},
		"cream where the whiskey is there":      {"1 1/2 oz Irish whiskey\n1 oz whiskey cream liqueur\n3 oz filter coffee\nbuild, hot", []string{"irish-cream-liqueur"}, []string{"heavy-cream", "simple-syrup", "coconut-rum"}, nil, []string{"heavy-cream+simple-syrup"}},
		"lemon and sugar for two of a daisy":    {"2 oz blanco tequila\n1 oz triple sec\n1 oz lime juice\nshake, rocks", []string{"triple-sec", "lime-juice"}, []string{"lemon-juice", "simple-syrup", "coffee-liqueur"}, nil, []string{"lemon-juice+simple-syrup"}},
		"nobody brings up a beer with a spirit": {"250 ml pale lager\n250 ml lemon-lime soda\nbuild, long", []string{"lager"}, []string{"alcohol-free-lager", "vodka"}, nil, []string{}},
		"green for white mint liqueur":          {"2 oz cognac\n1 oz crème de menthe\nstir, up", []string{"creme-de-menthe"}, []string{"green-creme-de-menthe"}, nil, []string{"green-creme-de-menthe"}},
		"tea for a spirit without alcohol":      {"60 ml alcohol-free juniper spirit\n20 ml lemon juice\n15 ml simple syrup\n90 ml tonic water\nbuild, long", []string{"alcohol-free-juniper"}, []string{"green-tea", "espresso", "whole-milk"}, nil, []string{"green-tea"}},
		"gin and a liqueur for sloe gin":        {"1 1/2 oz sloe gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 oz soda water\nshake, long", []string{"sloe-gin"}, []string{"london-dry-gin", "creme-de-cassis", "maraschino-liqueur"}, nil, []string{"creme-de-cassis+london-dry-gin", "maraschino-liqueur"}},
		"cucumber and the syrup that is there":  {"2 oz London dry gin\n1 oz lime juice\n3/4 oz cucumber syrup\nshake, up", []string{"cucumber-syrup"}, []string{"cucumber", "rich-simple-syrup"}, nil, []string{"cucumber+rich-simple-syrup"}},
		"no juice in what is stirred":           {"2 oz brandy\n1/2 oz dry orange curaçao\n2 dashes aromatic bitters\nstir, up", []string{"dry-orange-curacao"}, []string{"orange-juice", "simple-syrup", "triple-sec"}, nil, []string{"triple-sec"}},
		"gin beside tomato before rum":          {"2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\nbuild, long", []string{"vodka"}, []string{"white-rum", "london-dry-gin"}, nil, []string{"london-dry-gin"}},
		"rum beside ginger as ever":             {"1 1/2 oz vodka\n1/2 oz lime juice\n4 oz ginger beer\nbuild, long", []string{"vodka"}, []string{"white-rum", "london-dry-gin"}, nil, []string{"white-rum", "london-dry-gin"}},
		"of rums another, beside tomato too":    {"2 oz white rum\n4 oz tomato juice\n1/2 oz lime juice\nbuild, long", []string{"white-rum"}, []string{"gold-rum"}, nil, []string{"gold-rum"}},
		"sugar beside cream for a sweet cream":  {"2 oz gold rum\n1 oz cream of coconut\n3 oz pineapple juice\nshake, crushed ice", []string{"cream-of-coconut"}, []string{"heavy-cream", "demerara-syrup"}, []flavor.Allergen{flavor.Coconut}, []string{"demerara-syrup+heavy-cream", "heavy-cream"}},
		"cream and no foam for an egg":          {"2 oz brandy\n1/2 oz simple syrup\n1 whole egg\nshake, up", []string{"whole-egg"}, []string{"chickpea-water", "heavy-cream"}, []flavor.Allergen{flavor.Eggs}, []string{"heavy-cream"}},
		"vanilla for almond":                    {"2 oz amaretto\n1 oz lemon juice\n1/4 oz simple syrup\nshake, rocks", []string{"amaretto"}, []string{"vanilla-liqueur", "hazelnut-liqueur", "coffee-liqueur"}, []flavor.Allergen{flavor.TreeNuts}, []string{"vanilla-liqueur"}},
		"cacao for coffee":                      {"1 1/2 oz brandy\n1 oz coffee liqueur\n1 oz heavy cream\nshake, up", []string{"coffee-liqueur"}, []string{"dark-creme-de-cacao", "hazelnut-liqueur"}, nil, []string{"dark-creme-de-cacao", "hazelnut-liqueur"}},
		"no cacao for a coffee that wakes":      {"1 1/2 oz brandy\n1 oz coffee liqueur\n1 oz heavy cream\nshake, up", []string{"coffee-liqueur"}, []string{"dark-creme-de-cacao", "espresso"}, []flavor.Allergen{flavor.Caffeine}, []string{}},
		"fresh ginger and its sugar":            {"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz ginger syrup\nshake, up", []string{"ginger-syrup"}, []string{"fresh-ginger", "simple-syrup"}, nil, []string{"fresh-ginger+simple-syrup"}},
		"a full measure for each of two":        {"2 oz pisco\n1 oz lime juice\n3/4 oz simple syrup\n1 egg white\nshake, up", []string{"pisco", "egg-white"}, []string{"grappa", "chickpea-water"}, nil, []string{"chickpea-water+grappa"}},
	} {
		spec, err := b.catalogue.ReadSpec("", c.drink)
		require.NoError(t, err, name)
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, c.out...), Candidates: b.profiles(t, c.shelf...), Guest: guest.Guest{Avoid: c.avoid}})
		require.NoError(t, err, name)
		assert.Equal(t, c.want, poured(r.Covers), name)
	}
}

// What is muddled by the leaf is covered by about as many leaves where something else is out too,
// whichever of both is named first. Common practice, no source.
func TestAsManyLeavesBesideAnother(t *testing.T) {
	b := newBench(t)
	const few, many = 4.0, 12.0 // of eight
	spec, err := b.catalogue.ReadSpec("", "2 oz London dry gin\n1 oz lemon juice\n3/4 oz simple syrup\n8 leaves basil\nshake, rocks")
	require.NoError(t, err)
	for _, out := range [][]string{{"basil", "london-dry-gin"}, {"london-dry-gin", "basil"}} {
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, out...), Candidates: b.profiles(t, "mint", "old-tom-gin")})
		require.NoError(t, err)
		require.Equal(t, []string{"mint+old-tom-gin"}, poured(r.Covers))
		for _, p := range r.Covers[0].Parts {
			if p.Profile.ID == "mint" {
				assert.Equal(t, flavor.Leaf, p.Unit)
				assert.True(t, p.Amount > few && p.Amount <= many, "%v leaves", p.Amount)
			}
		}
	}
}

// A trace is covered by a trace of a relative, and that comes before leaving it out. Common
// practice, no source.
func TestATraceOfARelative(t *testing.T) {
	b := newBench(t)
	spec, err := b.catalogue.ReadSpec("", "2 oz rye whiskey\n1/4 oz simple syrup\n3 dashes anise bitters\n1 dash absinthe\nstir, up")
	require.NoError(t, err)
	r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "absinthe"), Candidates: b.profiles(t, "pastis")})
	require.NoError(t, err)
	require.Equal(t, []string{"pastis"}, poured(r.Covers))
	assert.Equal(t, flavor.Dash, r.Covers[0].Parts[0].Unit)
	assert.False(t, r.LeftOutBest)
	r, err = b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "absinthe"), Candidates: b.profiles(t, "cola")})
	require.NoError(t, err)
	assert.True(t, r.LeftOutBest)
}

// Where nothing stands for the cream that a guest avoids, what is left is offered if it is a
// drink in balance, named as another one, and stirred once nothing in it wants shaking; a
// liqueur by itself is none. Common practice, no source.
func TestWhatCreamLeavesIsAnotherDrink(t *testing.T) {
	b := newBench(t)
	for drink, says := range map[string]string{
		"1 1/2 oz vodka\n3/4 oz coffee liqueur\n3/4 oz heavy cream\nbuild, rocks": "leave it out: another drink",
		"1 1/2 oz vodka\n3/4 oz coffee liqueur\n3/4 oz heavy cream\nshake, up":    "leave it out and stir: another drink",
		"1 1/2 oz amaretto\n1 1/2 oz heavy cream\nbuild, rocks":                   "",
	} {
		spec, err := b.catalogue.ReadSpec("", drink)
		require.NoError(t, err, drink)
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "heavy-cream"), Candidates: b.profiles(t, "white-rum"), Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}}})
		require.NoError(t, err, drink)
		assert.Empty(t, r.Covers, drink)
		if says == "" {
			assert.Nil(t, r.LeftOut, drink)
			continue
		}
		require.NotNil(t, r.LeftOut, drink)
		assert.True(t, strings.HasPrefix(r.LeftOut.Text, says), r.LeftOut.Text)
		assert.True(t, r.LeftOutBest, drink)
		assert.False(t, r.Near, drink)
	}
}

// A guest who wants less alcohol is poured a wine in place of a spirit, what sparkles on top
// of the rest; one who drinks none is not. Common practice, no source.
func TestWineIsPouredWhereLessIsWanted(t *testing.T) {
	b := newBench(t)
	spec, err := b.catalogue.ReadSpec("", "1 oz London dry gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks")
	require.NoError(t, err)
	ask := func(g guest.Guest) *Result {
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "london-dry-gin"), Candidates: b.profiles(t, "dry-vermouth", "prosecco", "grappa"), Guest: g})
		require.NoError(t, err)
		return r
	}
	light := ask(guest.Guest{MaxABV: 15})
	assert.ElementsMatch(t, []string{"dry-vermouth", "prosecco"}, poured(light.Covers))
	for _, c := range light.Covers {
		assert.LessOrEqual(t, c.ABV, 15.0, c.Text)
		assert.Equal(t, c.Parts[0].Profile.Class.Sparkles(), c.Spec.Pours[0].After, c.Text)
		assert.Equal(t, c.Parts[0].Profile.Class.Sparkles(), strings.Contains(c.Text, " on top"), c.Text)
		assert.GreaterOrEqual(t, c.Parts[0].ML, spec.Pours[0].ML, "a full measure: %s", c.Text)
	}
	anybody := ask(guest.Guest{}).Covers
	assert.NotContains(t, poured(anybody), "dry-vermouth")
	for i := range anybody {
		if c := &anybody[i]; c.Parts[0].Profile.Class.Sparkles() {
			assert.NotEmpty(t, c.Called, "only since it makes another drink that has a name: %s", c.Text)
		}
	}
	assert.Empty(t, ask(guest.Guest{NoAlcohol: true}).Covers)
}

// What is too strong in full measure is poured in as much as the guest may have, and a spirit
// that would only season the drink not at all. Common practice, no source.
func TestLessOfWhatIsTooStrong(t *testing.T) {
	b := newBench(t)
	spec, err := b.catalogue.ReadSpec("", "2 oz rye whiskey\n1/4 oz simple syrup\n2 dashes aromatic bitters\nstir, rocks")
	require.NoError(t, err)
	r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "rye-whiskey"), Candidates: b.profiles(t, "oloroso-sherry", "bourbon"), Guest: guest.Guest{MaxABV: 12}})
	require.NoError(t, err)
	require.Equal(t, []string{"oloroso-sherry"}, poured(r.Covers))
	assert.Less(t, r.Covers[0].Parts[0].ML, spec.Pours[0].ML)
	assert.LessOrEqual(t, r.Covers[0].ABV, 12.0)
}

// Without its vermouth a drink is stronger: that is no offer to a guest who wants less alcohol.
func TestLeavingOutKeepsToTheStrength(t *testing.T) {
	b := newBench(t)
	spec, err := b.catalogue.ReadSpec("", "2 1/4 oz gin\n1/4 oz dry vermouth\n1/4 oz manzanilla sherry\nstir, up")
	require.NoError(t, err)
	for most, offered := range map[float64]bool{0: true, 12: false} {
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "dry-vermouth"), Candidates: b.profiles(t, "lime-juice"), Guest: guest.Guest{MaxABV: most}})
		require.NoError(t, err)
		assert.Equal(t, offered, r.LeftOut != nil, "at most %v %% vol", most)
	}
}

// What fills the glass as what went did leaves it hardly emptier. Common practice, no source.
func TestWhatFillsTheGlass(t *testing.T) {
	const leastShare = 0.8
	b := newBench(t)
	for _, c := range []struct{ drink, out, pour string }{
		{"2 oz bourbon\n4 oz soda water\nbuild, long", "soda-water", "ginger-ale"},
		{"1 1/2 oz vodka\n4 oz orange juice\nbuild, long", "orange-juice", "pineapple-juice"},
		{"1 1/2 oz bourbon\n4 oz whole milk\n1/2 oz maple syrup\nshake, rocks", "whole-milk", "oat-drink"},
	} {
		spec, err := b.catalogue.ReadSpec("", c.drink)
		require.NoError(t, err)
		r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, c.out), Candidates: b.profiles(t, c.pour)})
		require.NoError(t, err)
		require.Equal(t, []string{c.pour}, poured(r.Covers))
		assert.GreaterOrEqual(t, r.Covers[0].Parts[0].ML, leastShare*spec.Pours[1].ML, r.Covers[0].Text)
	}
}

// What may carry what a guest avoids is kept in the drink only where labels are read: a port
// that may have been fined with egg stays in its flip, apart from what is safe.
func TestALabelKeepsWhatMayCarryIt(t *testing.T) {
	b := newBench(t)
	spec, err := b.catalogue.ReadSpec("", "2 oz ruby port\n1 oz cognac\n1 whole egg\n1/2 oz simple syrup\nshake, up")
	require.NoError(t, err)
	port := b.profiles(t, "ruby-port")[0]
	r, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, "whole-egg"), Candidates: b.usual, Guest: guest.Guest{Avoid: []flavor.Allergen{flavor.Eggs}}})
	require.NoError(t, err)
	assert.Contains(t, r.Unstated, port)
	require.NotEmpty(t, r.IfLabelClears)
	for _, c := range r.IfLabelClears {
		assert.Contains(t, c.Read, port, c.Text)
		assert.LessOrEqual(t, c.Spec.Clear([]flavor.Allergen{flavor.Eggs}), flavor.MayBePresent, c.Text)
	}
	for _, c := range r.Covers {
		assert.Equal(t, flavor.Free, c.Spec.Clear([]flavor.Allergen{flavor.Eggs}), c.Text)
	}
}

// A result says that something keeps the drink exactly if a cover, or leaving out what
// went, says so of itself.
func TestNearIsWhatIsSaidOfTheCovers(t *testing.T) {
	b := newBench(t)
	left := 0
	rapid.Check(t, func(rt *rapid.T) {
		r, err := b.finder.Find(context.Background(), b.drawRequest(rt))
		require.NoError(rt, err)
		keeps := slices.ContainsFunc(r.Covers, func(c Cover) bool { return c.Keeps })
		if r.LeftOut != nil {
			left++
			keeps = keeps || r.LeftOut.Keeps
			assert.Equal(rt, !r.LeftOut.Keeps, strings.Contains(r.LeftOut.Text, "another drink"), r.LeftOut.Text)
		}
		assert.Equal(rt, keeps, r.Near)
	})
	assert.Positive(t, left)
}
