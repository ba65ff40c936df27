package balance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/weigh"
)

// What has no place in a kind of drink is told first, and goes out whole: less of it is
// still foreign. Common practice, no source.
func TestForeignPourIsLeftOut(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ text, foreign string }{
		{"2 oz aged rum\n1 oz lemon juice\n3/4 oz demerara syrup\n1 oz tomato juice\nshake, up", "tomato-juice"},
		{"2 oz pisco\n3/4 oz lime juice\n3/4 oz simple syrup\n1/2 oz olive brine\nshake, up", "olive-brine"},
		{"1 oz mezcal\n1 oz red bitter aperitif\n1 oz sweet vermouth\n1/2 oz espresso\nstir, rocks", "espresso"},
		{"2 1/4 oz gin\n3/4 oz dry vermouth\n1/2 oz coffee liqueur\n1 dash orange bitters\nstir, up", "coffee-liqueur"},
		{"2 oz cognac\n3/4 oz lemon juice\n3/4 oz triple sec\n1/2 oz creme de menthe\nshake, up", "creme-de-menthe"},
		{"1 oz bourbon\n1 oz red bitter aperitif\n1 oz sweet vermouth\n3/4 oz heavy cream\nstir, rocks", "heavy-cream"},
		{"2 oz scotch\n1 oz sweet vermouth\n2 dashes aromatic bitters\n1/2 oz lime juice\nstir, up", "lime-juice"},
	} {
		s := k.read(t, c.text)
		r := k.score(t, s)
		require.NotEqual(t, weigh.Balanced, r.Verdict, c.text)
		require.NotNil(t, r.Faults[0].Profile, c.text)
		assert.Equal(t, c.foreign, r.Faults[0].Profile.ID, c.text)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		for _, p := range fixes[0].Spec.Pours {
			assert.NotEqual(t, c.foreign, p.Profile.ID, "%s: %s", c.text, fixes[0].Text)
		}
	}
}

// The same characters where they are a custom, or a touch. Common practice, no source.
func TestCustomIsNotForeign(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"2 oz vodka\n1/2 oz dry vermouth\n1/2 oz olive brine\nstir, up",
		"2 oz bourbon\n1/4 oz coffee liqueur\n1 tsp simple syrup\n2 dashes orange bitters\nstir, rocks",
		"2 oz aged rum\n1 oz cold brew\n1/2 oz coffee liqueur\n1/4 oz simple syrup\nshake, rocks",
		"1 1/2 oz dark rum\n1/2 oz coffee liqueur\n1 oz pineapple juice\n1/2 oz lime juice\nshake, crushed",
		"2 oz blanco tequila\n3/4 oz lime juice\n3/4 oz tomato juice\n1/2 oz agave syrup\n2 dashes hot pepper sauce\nshake, rocks",
		"2 oz cognac\n3/4 oz creme de menthe\nstir, rocks",
		"2 oz cognac\n1/2 oz maraschino liqueur\n1/2 oz lemon juice\n1 tsp simple syrup\n2 dashes aromatic bitters\nshake, up",
		"2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\n1 tsp orange juice\nstir, up",
		"6 oz lager\n1 oz tomato juice\n1/2 oz lime juice\n3 dashes hot pepper sauce\nbuild, tall",
	} {
		for _, f := range k.score(t, k.read(t, text)).Faults {
			assert.NotEqual(t, "out of place", f.Word(), text)
		}
	}
}
