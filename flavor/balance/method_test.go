package balance_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// Drinks that are made as bars make them: common practice, no source. None has a
// fault of method, nor is one too cold to be hot.
var wellMade = []string{
	"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|shake, up",
	"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|1 egg white|dry shake, up",
	"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|top 2 oz soda water|shake, highball",
	"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|3 oz soda water|shake, collins glass",
	"1 1/2 oz bourbon|3/4 oz lemon juice|3/4 oz honey syrup|4 oz wheat beer|shake, highball",
	"2 oz rye|1 oz sweet vermouth|2 dashes aromatic bitters|stir, up",
	"2 oz cognac|3/4 oz white creme de menthe|shake, up",
	"1 oz gin|1 oz apricot liqueur|1 oz calvados|shake, up",
	"1 1/2 oz apple brandy|3/4 oz yellow herbal liqueur|3/4 oz honey-herb liqueur|2 dashes aromatic bitters|shake, up",
	"2 oz cognac|3/4 oz triple sec|shake, up",
	"2 oz rye|1 tsp simple syrup|3 dashes anise bitters|stir, neat",
	"2 oz amaro|1 oz sweet vermouth|1/4 oz lemon juice|stir, rocks",
	"2 oz vodka|4 oz tomato juice|1/2 oz lemon juice|3 dashes hot sauce|stir, highball",
	"50 ml vodka|20 ml coffee liqueur|30 ml heavy cream|build, rocks",
	"1 oz cognac|1 oz dark creme de cacao|1 oz heavy cream|shake, up",
	"1 1/2 oz gin|1/2 oz lemon juice|1/2 oz lime juice|1 oz simple syrup|1 oz heavy cream|1 egg white|top 2 oz soda water|shake, highball",
	"1 oz vanilla anise liqueur|3/4 oz triple sec|3/4 oz orange juice|1/2 oz heavy cream|shake, up",
	"2 oz cognac|4 oz whole milk|1 oz simple syrup|shake, highball",
	"3 oz medium sherry|2 tsp sugar|1 whole egg|3 oz whole milk|shake, up",
	"1 1/2 oz Irish whiskey|4 oz hot coffee|1/2 oz demerara syrup|1 oz heavy cream|build, mug",
	"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|4 oz hot water|build, mug",
	"2 oz aged rum|1/2 oz demerara syrup|1 tsp butter|4 oz hot water|build, mug",
	"1 1/2 oz vodka|1 oz hot espresso|1/2 oz coffee liqueur|1/4 oz simple syrup|shake, up",
	"3 oz prosecco|1 oz orange juice|build, flute",
	"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, mug over ice",
	"2 oz white rum|1 oz lime juice|3/4 oz simple syrup|3 oz soda water|6 mint leaves|build, highball",
	"1 1/2 oz vodka|1 oz coffee liqueur|1 oz heavy cream|1 oz cola|build, highball",
	"2 1/4 oz vodka|1/2 oz dry vermouth|1/2 oz olive brine|shake, up",
	"2 1/2 oz gin|1/2 oz dry vermouth|shake, up",
	"2 oz gin|1/2 oz sweet vermouth|3/4 oz orange juice|shake, up",
	"2 oz brandy|3/4 oz lemon juice|1 oz whole milk|1 oz simple syrup|stir, rocks|step: strain off the curd through a cloth",
	"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|1 oz heavy cream|2 oz soda water|shake, highball",
	"2 oz gin|1/2 oz lemon juice|1/2 oz lime juice|1 oz simple syrup|3/4 oz heavy cream|1 egg white|2 oz soda water|dry shake, highball",
}

// Drinks that are spoilt in the making, the fault, the pour that is named, and what
// the first fix says: common practice, no source.
var badlyMade = []struct {
	text string
	flaw technique.Flaw // empty for one that is too cold
	pour string
	fix  string
}{
	{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz cold water|build, mug", "", "", "use hot water"},
	{"1 1/2 oz Irish whiskey|4 oz cold coffee|1/2 oz demerara syrup|1 oz heavy cream|build, mug", "", "", "use hot filter coffee"},
	{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|shake, up", technique.HotOnIce, "water", "build it hot, without shaking"},
	{"1 1/2 oz Irish whiskey|4 oz hot coffee|1/2 oz demerara syrup|shake, mug", technique.HotOnIce, "filter coffee", "build it hot, without shaking"},
	{"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|stir, up", technique.HotOnIce, "water", "build it hot, without ice"},
	{"2 oz scotch|3/4 oz lemon juice|1 oz heavy cream|3/4 oz honey syrup|5 oz hot water|build, mug", technique.Curdled, "heavy cream", "leave out the heavy cream"},
	{"1 1/2 oz Irish whiskey|4 oz hot coffee|1/2 oz demerara syrup|3/4 oz lime juice|1 oz heavy cream|build, hot", technique.Curdled, "heavy cream", "leave out the lime juice"},
	{"2 oz white rum|3/4 oz lime juice|3/4 oz simple syrup|1 oz heavy cream|shake, up", technique.Curdled, "heavy cream", "leave out the heavy cream"},
	{"2 oz cognac|4 oz whole milk|1 oz simple syrup|1 oz lemon juice|shake, highball", technique.Curdled, "whole milk", "leave out the lemon juice"},
	{"2 oz bourbon|1 oz whole milk|4 oz cola|build, highball", technique.Curdled, "whole milk", "leave out the whole milk"},
	{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|3 oz soda water|shake everything with soda, highball", technique.Flat, "soda water", "add the soda water after the shake"},
	{"2 oz gin|1/2 oz lemon juice|1/2 oz simple syrup|3 oz champagne|shake all ingredients, flute", technique.Flat, "brut champagne", "add the brut champagne after the shake"},
	{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|shake, highball", technique.Flat, "ginger beer", "add the ginger beer after the shake"},
	{"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|build, neat", technique.Uniced, "lemon juice", "shake it"},
	{"2 oz rye whiskey|1 oz sweet vermouth|2 dashes aromatic bitters|build, up", technique.Uniced, "rye whiskey", "stir it"},
	{"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|stir, up", technique.Unshaken, "lemon juice", "shake it"},
	{"1 oz gin|1 oz red bitter aperitif|1 oz sweet vermouth|3/4 oz lemon juice|stir, rocks", technique.Unshaken, "lemon juice", "shake it"},
	{"1 oz gin|1 oz white creme de cacao|1 oz heavy cream|stir, up", technique.Unshaken, "heavy cream", "shake it"},
	{"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|1 egg white|build, rocks", technique.EggUnshaken, "egg white", "shake it, first without ice"},
	{"2 oz aged rum|1/4 oz demerara syrup|2 dashes aromatic bitters|1 tbsp butter|stir, up", technique.FatSet, "butter", "leave out the butter"},
	{"2 oz rye|1 oz sweet vermouth|2 dashes aromatic bitters|shake, up", technique.Clouded, "sweet vermouth", "stir it"},
	{"2 oz rye|1 oz sweet vermouth|2 dashes aromatic bitters|blend, up", technique.Clouded, "sweet vermouth", "stir it"},
	{"2 oz gin|1 oz dry vermouth|1 dash orange bitters|blend, up", technique.Clouded, "dry vermouth", "stir it"},
	{"1 oz gin|1 oz red bitter aperitif|1 oz sweet vermouth|shake, rocks", technique.Clouded, "sweet vermouth", "stir it"},
	{"1 1/2 oz fino sherry|1 1/2 oz dry vermouth|2 dashes orange bitters|shake, up", technique.Clouded, "fino sherry", "stir it"},
	{"2 oz blended scotch|3/4 oz whisky honey liqueur|shake, rocks", technique.Clouded, "whisky honey liqueur", "stir it"},
	{"1 oz green creme de menthe|1 oz white creme de cacao|1 oz heavy cream|3/4 oz lemon juice|shake, up", technique.Curdled, "heavy cream", "leave out the lemon juice"},
	{"1 1/2 oz vodka|1 oz coffee liqueur|1 oz heavy cream|1/2 oz lime juice|shake, rocks", technique.Curdled, "heavy cream", "leave out the lime juice"},
	{"2 oz bourbon|3/4 oz lemon juice|3/4 oz honey syrup|1 1/2 oz whole milk|build, rocks", technique.Curdled, "whole milk", "leave out the whole milk"},
	{"2 oz gin|1/2 oz lemon juice|1/2 oz lime juice|1 oz simple syrup|1 oz soy milk|1 egg white|2 oz soda water|shake, highball", technique.Curdled, "soy drink", "leave out the soy drink"},
	{"50 ml gin|150 ml tonic|1 egg yolk|build, highball", technique.EggUnshaken, "egg yolk", ""},
}

func TestWhatIsWellMadeHasNoFaultOfMethod(t *testing.T) {
	k := newKitchen(t)
	for _, text := range wellMade {
		s := k.read(t, strings.ReplaceAll(text, "|", "\n"))
		r := k.score(t, s)
		for _, f := range r.Faults {
			assert.True(t, f.Method == "" && f.Axis != ratio.Temperature, "%s: %s", text, f.Text)
		}
	}
}

// What is too sweet, too sour or too smoky for its kind, and what lacks its juice,
// against drinks of the same kind that are right: common practice, no source.
func TestLevelsOfTheKind(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text, fix string // empty for what is right
	}{
		{"2 1/2 oz gin|1/2 oz dry vermouth|1 barspoon simple syrup|stir, up", ""},
		{"2 1/2 oz gin|1/2 oz dry vermouth|1/2 oz simple syrup|stir, up", "simple syrup"},
		{"2 1/2 oz vodka|1/2 oz dry vermouth|1 oz simple syrup|stir, up", "simple syrup"},
		{"1 1/2 oz gin|3/4 oz dry vermouth|3/4 oz sweet vermouth|stir, up", ""},
		{"50 ml scotch|20 ml honey syrup|20 ml lemon juice|120 ml hot water|build, hot", ""},
		{"50 ml scotch|15 ml honey syrup|60 ml lemon juice|120 ml hot water|build, hot", "lemon juice instead of 60 ml"},
		{"2 oz peated malt|3/4 oz lemon juice|3/4 oz honey syrup|shake, rocks", ""},
		{"2 oz bourbon|3/4 oz lemon juice|3/4 oz honey syrup|1 1/2 oz peated malt|shake, rocks", "heavily peated instead of 1½ oz"},
		{"2 oz white rum|1 oz lime juice|3/4 oz simple syrup|8 mint leaves|2 oz soda water|build, long", ""},
		{"2 oz white rum|3/4 oz simple syrup|8 mint leaves|shake, rocks", "add "},
		{"1 oz aged rum|1 oz gold rum|1/2 oz orange curacao|1/2 oz orgeat|1/4 oz simple syrup|shake, rocks", "lime juice"},
		{"2 oz aged rum|1/4 oz orange curacao|1 barspoon orgeat|2 dashes aromatic bitters|stir, rocks", ""},
		{"1 oz cognac|1 oz dark creme de cacao|1 oz heavy cream|shake, up", ""},
		{"1 oz elderflower liqueur|4 oz prosecco|1 oz soda water|build, wine glass", ""},
		{"90 ml elderflower liqueur|90 ml prosecco|30 ml soda water|build, wine glass", "elderflower liqueur instead of 90 ml"},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, "|", "\n"))
		r := k.score(t, s)
		assert.Equal(t, c.fix == "", r.Verdict == weigh.Balanced, "%s: %.1f %+v", c.text, r.Judgement.Score, r.Faults)
		if c.fix != "" {
			fixes := k.fixes(t, s, r)
			require.NotEmpty(t, fixes, c.text)
			assert.Contains(t, fixes[0].Text, c.fix, c.text)
		}
	}
}

func TestWhatIsBadlyMadeIsSaidAndMended(t *testing.T) {
	k := newKitchen(t)
	for _, c := range badlyMade {
		s := k.read(t, strings.ReplaceAll(c.text, "|", "\n"))
		r := k.score(t, s)
		require.NotEqual(t, weigh.Balanced, r.Verdict, c.text)
		require.NotEmpty(t, r.Faults, c.text)
		found := false
		for _, f := range r.Faults[:min(2, len(r.Faults))] {
			if f.Method == c.flaw && (c.flaw != "" && f.Profile.Name == c.pour || c.flaw == "" && f.Axis == ratio.Temperature && !f.High) {
				found = true
			}
		}
		assert.True(t, found, "%s: %+v", c.text, r.Faults)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.True(t, strings.HasPrefix(fixes[0].Text, c.fix), "%s: %q at %.1f", c.text, fixes[0].Text, fixes[0].Score)
		for _, f := range fixes {
			neverShakesHot(t, c.text, &f)
		}
	}
}

// What does not go into the glass that is named, and what is too strong for one glass,
// against what bars pour: common practice, no source.
func TestGlassAndStrength(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text string
		axis ratio.Axis // Method where nothing of it is said
		fix  string
	}{
		{"4 oz prosecco|2 oz light orange bitter aperitif|2 oz soda|build, coupe", ratio.Volume, "pour it into a wine glass"},
		{"4 oz gin|1 1/2 oz lemon juice|1 1/2 oz simple syrup|shake, coupe", ratio.Volume, "pour half of everything"},
		{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|4 oz soda water|shake, coupe", ratio.Volume, "pour it into a "},
		{"2 oz dark rum|1/2 oz lime juice|12 oz ginger beer|build, highball", ratio.Volume, ""},
		{"4 oz Irish whiskey|4 oz hot coffee|1/2 oz demerara syrup|1 oz heavy cream|build, hot", ratio.Strong, "pour 1¾ oz Irish"},
		{"3 oz gin|2 oz cask strength bourbon|1/2 oz triple sec|stir, up", ratio.Strong, ""},
		{"2 oz blended scotch|3 oz orange juice|shake, up", ratio.Long, "pour 2¼ oz orange juice"},
		{"1 oz blended scotch|3 oz orange juice|shake, coupe", ratio.Long, ""},
		{"1 1/2 oz vodka|3/4 oz triple sec|1/2 oz lime juice|3 oz cranberry juice|shake, up", ratio.Volume, "pour 2 oz cranberry juice"},
		{"2 oz gin|1 1/2 oz orange juice|1/4 oz grenadine|1 dash absinthe|shake, up", ratio.Method, ""},
		{"2 oz pisco|1 oz lime juice|3/4 oz simple syrup|1 egg white|dry shake, coupe", ratio.Method, ""},
		{"2 oz gin|1/2 oz dry vermouth|stir, nick and nora", ratio.Method, ""},
		{"50 ml gin|150 ml tonic|build, highball", ratio.Method, ""},
		{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, highball", ratio.Method, ""},
		{"3 oz prosecco|2 oz light orange bitter aperitif|1 oz soda|build, wine glass", ratio.Method, ""},
		{"6 oz wheat beer|6 oz sparkling lemonade|build, pint", ratio.Method, ""},
		{"2 1/2 oz bourbon|1/2 oz simple syrup|8 mint leaves|build, julep cup, crushed ice", ratio.Method, ""},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, "|", "\n"))
		r := k.score(t, s)
		said := false
		for _, f := range r.Faults {
			said = said || f.Axis == c.axis && f.High
			if c.axis == ratio.Method {
				assert.NotContains(t, f.Text, "does not go into", c.text)
				assert.NotContains(t, f.Text, "g of alcohol in one glass", c.text)
			}
		}
		if c.axis == ratio.Method {
			continue
		}
		assert.True(t, said, "%s: %+v", c.text, r.Faults)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.True(t, strings.HasPrefix(fixes[0].Text, c.fix), "%s: %q", c.text, fixes[0].Text)
	}
}

// A closed tin of something hot bursts.
func neverShakesHot(t *testing.T, text string, f *balance.Fix) {
	t.Helper()
	if m := f.Spec.Method; m != flavor.Shake && m != flavor.DryShake && m != flavor.Blend {
		return
	}
	for i := range f.Spec.Pours {
		p := &f.Spec.Pours[i]
		hot := p.Heat == flavor.HeatHot && p.ML > 45 && !p.After
		assert.False(t, hot, "%s: %s", text, f.Text)
	}
}

// Much of flowers tastes of soap, where a little is what the drink is about: common
// practice, no source.
func TestFlowers(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text     string
		balanced bool
	}{
		{"1 1/2 oz gin|3/4 oz elderflower liqueur|3/4 oz lemon juice|1/4 oz simple syrup|shake, up", true},
		{"1 oz elderflower liqueur|4 oz prosecco|1 oz soda water|4 mint leaves|build, wine glass", true},
		{"2 oz gin|1/4 oz creme de violette|1/2 oz maraschino liqueur|3/4 oz lemon juice|shake, up", true},
		{"1 1/2 oz blanco tequila|4 oz tomato juice|1/2 oz lime juice|3 dashes hot sauce|1 1/2 oz creme de violette|build, long", false},
		{"2 oz cognac|2 oz black tea|1/2 oz lemon juice|1/2 oz simple syrup|1 1/2 oz creme de violette|build, rocks", false},
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(c.text, "|", "\n")))
		assert.Equal(t, c.balanced, r.Verdict == weigh.Balanced, "%s: %.1f %+v", c.text, r.Judgement.Score, r.Faults)
	}
}

// A fix for what curdles leaves no curds: less cream beside the same lime is no way out.
func TestNoFixStillCurdles(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"45 ml whiskey cream liqueur|30 ml lime juice|30 ml vodka|shake, up",
		"60 ml whiskey cream liqueur|15 ml lemon juice|shake, rocks",
		"1 1/2 oz Irish whiskey|4 oz hot coffee|1 oz heavy cream|1/2 oz lemon juice|build, hot",
		"2 oz vodka|1 oz coffee liqueur|1 oz heavy cream|1/2 oz lemon juice|build, rocks",
	} {
		s := k.read(t, strings.ReplaceAll(text, "|", "\n"))
		r := k.score(t, s)
		assert.True(t, curdles(r), text)
		for _, f := range k.fixes(t, s, r) {
			assert.False(t, curdles(k.score(t, &f.Spec)), "%s: %s", text, f.Text)
		}
	}
}

func curdles(r *balance.Result) bool {
	return slices.ContainsFunc(r.Faults, func(f balance.Fault) bool { return f.Method == technique.Curdled })
}
