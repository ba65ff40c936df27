package balance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/balance/wording"
	"counterpour/flavor/weigh"
)

// A base that no guest is served so much of goes back to what one is, before anything is added to
// so much of it. Common practice, no source.
func TestBaseGoesBackToWhatAGuestIsServed(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"12 oz vodka|2 oz lime juice|shake, rocks",
		"350 ml vodka|60 ml lime juice|shake, rocks",
		"10 oz gin|1 oz lemon juice|1 oz simple syrup|shake, up",
		"9 oz bourbon|1 tsp simple syrup|2 dashes aromatic bitters|stir, rocks",
	} {
		s := k.read(t, strings.ReplaceAll(text, "|", "\n"))
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, text)
		first := fixes[0].Changes[0]
		assert.Equal(t, s.Pours[0].Profile, first.Profile, "%s: %s", text, fixes[0].Text)
		assert.LessOrEqual(t, first.ToML, 75.0, "%s: %s", text, fixes[0].Text)
		assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, "%s: %s", text, fixes[0].Text)
	}
}

// What modifies a drink goes back to the nearest amount that mends it, mL, and not on to the middle
// of its kind. Common practice, no source.
func TestFixStopsAtTheNearestAmount(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text  string
		least float64
	}{
		{"1 oz gin|2 oz red bitter aperitif|1 oz sweet vermouth|stir, rocks", 29},
		{"1 1/4 oz bourbon|1 oz red bitter aperitif|2 1/4 oz sweet vermouth|stir, rocks", 29},
		{"4 oz red bitter aperitif|3 oz prosecco|1 oz soda water|build, rocks", 50},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, "|", "\n"))
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, c.text)
		assert.GreaterOrEqual(t, fixes[0].Changes[0].ToML, c.least, "%s: %s", c.text, fixes[0].Text)
		assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, c.text)
	}
}

// What has no place in a drink leaves it off, and not near: nobody drinks that.
func TestWhatHasNoPlaceIsNotNearlyThere(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 oz gin|1 oz red bitter aperitif|1 oz sweet vermouth|1 oz heavy cream|stir, rocks",
		"2 1/2 oz gin|1/2 oz dry vermouth|1 oz heavy cream|stir, up",
		"2 oz white rum|1 1/2 oz cream of coconut|3 oz tomato juice|1/2 oz lime juice|blend",
	} {
		assert.Equal(t, weigh.Off, k.score(t, k.read(t, strings.ReplaceAll(text, "|", "\n"))).Verdict, text)
	}
}

// A spirit as it is, or pink, is no mixed drink: that is told, and nothing is mixed into it. What is
// called after a drink, or made as one, lacks what that has.
func TestASpiritAsItIsIsNoMixedDrink(t *testing.T) {
	k := newKitchen(t)
	for text, straight := range map[string]bool{
		"2 oz bourbon|neat":                                          true,
		"2 oz Islay scotch|1 tsp water|neat":                         true,
		"2 oz bourbon|stir, rocks":                                   true,
		"2 oz London dry gin|4 dashes aromatic bitters|stir, up":     true,
		"2 oz London dry gin|1 oz aromatic bitters|stir, up":         false,
		"2 oz bourbon|2 dashes aromatic bitters|stir, rocks":         false,
		"Manhattan: 2 oz rye whiskey|build, rocks":                   false,
		"60 ml gin|stir, up":                                         false,
		"3 oz London dry gin|1 oz vodka|1 oz overproof rum|stir, up": false,
	} {
		name, pours, ok := strings.Cut(text, ": ")
		if !ok {
			name, pours = "", text
		}
		s := k.read(t, strings.ReplaceAll(pours, "|", "\n"))
		s.Name = name
		r := k.score(t, s)
		require.NotEmpty(t, r.Faults, text)
		assert.Equal(t, straight, r.Faults[0].Text == wording.Straight, text)
		assert.Equal(t, straight, len(k.fixes(t, s, r)) == 0, text)
	}
}
