package balance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// Drinks that lack nothing, though some are shaken without juice, have no sugar, or no
// spirit: common practice, no source.
var lackNothing = []string{
	"2 oz gin|1 oz dry vermouth|1 dash orange bitters|stir, up",
	"60 ml rye whiskey|30 ml sweet vermouth|2 dashes aromatic bitters|stir, up",
	"60 ml gin|30 ml sweet vermouth|stir, up",
	"2 oz rye whiskey|1 oz sweet vermouth|1 barspoon maraschino liqueur|stir, up",
	"2 oz cognac|1 oz white creme de menthe|shake, up",
	"45 ml vodka|25 ml coffee liqueur|build, rocks",
	"45 ml blended scotch|15 ml honeyed herbal liqueur|stir, rocks",
	"50 ml dark rum|15 ml lime juice|120 ml ginger beer|build, highball",
	"50 ml gin|25 ml lemon juice|20 ml simple syrup|100 ml soda water|build, collins",
	"2 oz gin|1/2 oz lime juice|4 oz soda water|build, highball",
	"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|1 egg white|dry shake, up",
	"45 ml vodka|20 ml coffee liqueur|10 ml simple syrup|30 ml espresso|shake, up",
	"2 oz gin|3/4 oz lime cordial|shake, up",
	"60 ml gin|30 ml lime cordial|shake, up",
	"60 ml gin|20 ml lime cordial|stir, up",
	"2 1/2 oz vodka|1/2 oz dry vermouth|shake, up",
	"15 cl dry white wine|10 cl soda water|build, wine glass",
	"10 cl dry white wine|10 cl soda water|build, wine glass",
	"3 oz dry vermouth|3 oz soda water|build, highball",
	"12 cl rosé wine|6 cl soda water|build, wine glass",
	"60 ml white rum|60 ml strawberry puree|25 ml lime juice|20 ml simple syrup|blend, frozen",
	"30 ml brandy|30 ml dark creme de cacao|30 ml heavy cream|shake, up",
	"60 ml white port|120 ml tonic water|build, highball",
	"1 1/2 oz dry vermouth|1 1/2 oz sweet vermouth|2 dashes orange bitters|stir, rocks",
}

func TestWhatLacksNothing(t *testing.T) {
	k := newKitchen(t)
	for _, text := range lackNothing {
		r := k.score(t, k.read(t, strings.ReplaceAll(text, "|", "\n")))
		assert.Equal(t, weigh.Balanced, r.Verdict, "%s: %.1f %+v", text, r.Judgement.Score, r.Faults)
	}
}

// Drinks from which something was left out, or in which it does not belong, what the
// first fault is about, and what the first fix does: common practice, no source.
var lackSomething = []struct {
	text string
	axis ratio.Axis
	fix  string
}{
	// Shaken and strained with nothing that wants shaking, a liqueur in it: no citrus.
	{"2 oz blanco tequila|1 oz triple sec|shake, up", ratio.Sour, "add ¾ oz lime juice"},
	{"1 1/2 oz gin|3/4 oz elderflower liqueur|shake, up", ratio.Sour, "add ¾ oz lemon juice"},
	{"1 oz cognac|1 oz white rum|1 oz triple sec|shake, up", ratio.Sour, "add ¾ oz lemon juice"},
	{"3/4 oz gin|3/4 oz green herbal liqueur|3/4 oz maraschino liqueur|shake, up", ratio.Sour, "add ¾ oz lemon juice"},
	{"2 oz gin|1/2 oz maraschino liqueur|1/4 oz creme de violette|shake, up", ratio.Sour, "add ¾ oz lemon juice"},
	{"3/4 oz bourbon|3/4 oz orange bitter aperitif|3/4 oz amaro|shake, up", ratio.Sour, "add ½ oz lemon juice"},
	// Spirit and syrup shaken, with egg white or without: no citrus.
	{"60 ml bourbon|25 ml simple syrup|20 ml egg white|shake, up", ratio.Sour, "add 22.5 ml lemon juice"},
	{"60 ml mezcal|20 ml agave syrup|shake, rocks", ratio.Sour, "add 22.5 ml lime juice"},
	{"60 ml gin|20 ml honey syrup|shake, up", ratio.Sour, "add 22.5 ml lime juice"},
	{"2 oz rye whiskey|1/2 oz simple syrup|shake, up", ratio.Sour, "add "},
	{"2 oz bourbon|3/4 oz simple syrup|shake, rocks", ratio.Sour, "add ¾ oz lemon juice"},
	// The same blended with fruit.
	{"2 oz white rum|1 oz simple syrup|2 oz mango puree|blend", ratio.Sour, "add ¾ oz lime juice"},
	{"60 ml white rum|45 ml simple syrup|60 ml strawberry puree|blend, frozen", ratio.Sour, "add 22.5 ml lime juice"},
	// The juice of a sweet fruit is no citrus, where most pour some.
	{"45 ml dark rum|20 ml red bitter aperitif|45 ml pineapple juice|15 ml simple syrup|shake, rocks", ratio.Sour, "lime juice"},
	// As much citrus as half of the spirit, and nothing sweet.
	{"45 ml gin|30 ml lemon juice|100 ml soda water|build, highball", ratio.Sweet, "add 15 ml rich simple syrup"},
	{"2 oz gin|1 oz lemon juice|3 oz soda water|shake, highball", ratio.Sweet, "add ½ oz rich simple syrup"},
	{"2 oz vodka|1 oz lime juice|4 oz soda water|build, highball", ratio.Sweet, "add ½ oz rich simple syrup"},
	{"2 oz bourbon|3/4 oz lemon juice|1 egg white|dry shake, up", ratio.Sweet, "add ½ oz rich simple syrup"},
	// The wrong bottle in the place of the syrup.
	{"60 ml white rum|30 ml lime juice|22.5 ml saline|shake, up", ratio.Sweet, "pour 15 ml rich simple syrup (2:1) instead of the saline"},
	{"60 ml bourbon|22.5 ml lemon juice|22.5 ml worcestershire sauce|shake, rocks", ratio.Sweet, "syrup (3:1) instead of the Worcestershire-style sauce"},
	{"2 oz gin|3/4 oz lime juice|3/4 oz olive brine|shake, up", ratio.Sweet, "pour ½ oz rich simple syrup (2:1) instead of the olive brine"},
	{"2 oz gin|1 oz lemon juice|1 oz saline|4 oz soda water|build, highball", ratio.Sweet, "pour ¾ oz simple syrup (1:1) instead of the saline"},
	// The little sugar of a fruit beside it.
	{"60 ml white rum|30 ml lime juice|45 ml strawberry puree|blend", ratio.Sweet, "add 15 ml rich simple syrup"},
	// A liqueur of cream where dry vermouth is.
	{"60 ml gin|20 ml whiskey cream liqueur|1 dash orange bitters|stir, up", ratio.Fat, "pour 12.5 ml dry vermouth instead of the whiskey cream liqueur"},
	// Syrup where dry vermouth is.
	{"60 ml rye whiskey|30 ml dry vermouth|20 ml simple syrup|stir, up", ratio.Sweet, "leave out the simple syrup"},
	{"2 oz rye whiskey|1 oz dry vermouth|1 oz simple syrup|2 dashes aromatic bitters|stir, up", ratio.Sweet, "leave out the simple syrup"},
	// Spirit and sweet vermouth without bitters, where most pour some.
	{"60 ml rye whiskey|30 ml sweet vermouth|stir, up", ratio.Bitter, "add 1 dash aromatic bitters"},
	{"2 oz blended scotch|1 oz sweet vermouth|stir, up", ratio.Bitter, "add 1 dash aromatic bitters"},
	// A syrup of fruit is not the juice.
	{"45 ml gin|20 ml raspberry syrup|80 ml soda water|build, highball", ratio.Sour, "add 15 ml l"},
	{"2 oz vodka|3/4 oz grenadine|1/2 oz elderflower liqueur|shake, up", ratio.Sour, "add "},
	// Served long, and nothing in it that is.
	{"45 ml cognac|15 ml ginger syrup|15 ml lemon juice|build, highball", ratio.Long, "add 90 ml ginger ale"},
	{"50 ml dark rum|15 ml lime juice|build, highball", ratio.Long, "add 90 ml ginger beer"},
	{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|shake, collins glass with ice", ratio.Long, "add 2 oz soda water"},
	// As small as half a spritz: its wine.
	{"50 ml red bitter aperitif|30 ml soda water|build, highball", ratio.Long, "add 90 ml prosecco"},
	// No base, where all else is without alcohol: one without.
	{"15 ml lime juice|120 ml grapefruit soda|build, highball", ratio.Strong, "add 60 ml alcohol-free agave spirit"},
	// No base, whichever of its class most pour.
	{"20 ml apricot liqueur|20 ml lemon juice|5 ml simple syrup|shake, up", ratio.Strong, "add 45 ml "},
	// Made wrongly.
	{"50 ml vodka|30 ml coffee liqueur|10 ml simple syrup|30 ml espresso|stir, up", ratio.Method, "shake it"},
	{"60 ml blanco tequila|20 ml lime juice|15 ml agave syrup|stir, up", ratio.Method, "shake it"},
	{"30 ml gin|30 ml green herbal liqueur|30 ml sweet vermouth|shake, up", ratio.Method, "stir it"},
	{"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|3 oz soda water|shake everything with ice, strain into a highball", ratio.Method, "add the soda water after"},
}

func TestWhatLacksSomething(t *testing.T) {
	k := newKitchen(t)
	for _, c := range lackSomething {
		k.mends(t, c.text, c.axis, c.fix)
	}
}

// What is shaken with nothing that wants shaking may have been meant without juice.
func TestClearDrinksMayBeStirredInstead(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "5 cl cognac\n2.5 cl triple sec\nshake, up")
	fixes := k.fixes(t, s, k.score(t, s))
	require.Len(t, fixes, 2)
	assert.Contains(t, fixes[0].Text, "lemon juice")
	assert.Equal(t, "stir it, if no juice is meant to be in it", fixes[1].Text)
	assert.Equal(t, flavor.Stir, fixes[1].Spec.Method)
}

// Too much of one pour is not too little of another as well: where what is told first explains
// the drink far more likely, nothing else is told.
func TestNoShadowOfAFaultIsTold(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"60 ml aged rum|40 ml lime juice|20 ml demerara syrup|shake, up",
		"60 ml aged rum|7.5 ml maple syrup|20 ml aromatic bitters|stir, rocks",
		"60 ml rye whiskey|70 ml lemon juice|22.5 ml simple syrup|shake, rocks",
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(text, "|", "\n")))
		assert.Len(t, r.Faults, 1, "%s: %+v", text, r.Faults)
	}
}

// Curds are worse than whatever else is wrong: what turns the milk is left out even of a draft
// that is out of balance without it.
func TestWhatCurdlesIsAlwaysLeftOut(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "30 ml Irish whiskey\n45 ml whiskey cream liqueur\n30 ml lemon juice\nshake, rocks")
	fixes := k.fixes(t, s, k.score(t, s))
	require.NotEmpty(t, fixes)
	assert.Contains(t, fixes[0].Text, "leave out the lemon juice")
}
