package balance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// A sour may be made of a liqueur, and a spirit beside it be half of its base or a third; what is
// wrong with one is its sugar and its acid, and never that there is little of the spirit. Common
// practice, no source.
func TestSpiritBacksALiqueurUp(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 1/2 oz amaretto|3/4 oz bourbon|1 oz lemon juice|1 tsp simple syrup|1/2 oz egg white|shake, rocks",
		"1 1/2 oz peach liqueur|3/4 oz bourbon|3/4 oz lemon juice|shake, up",
		"1 1/2 oz sloe gin|1 oz London dry gin|3/4 oz lemon juice|1/4 oz simple syrup|shake, up",
		"1 1/2 oz elderflower liqueur|3/4 oz vodka|3/4 oz lemon juice|1/2 oz egg white|shake, up",
		"1 1/2 oz limoncello|1 oz London dry gin|1 oz lemon juice|shake, rocks",
		"1 1/2 oz cherry liqueur|3/4 oz cognac|3/4 oz lemon juice|shake, up",
		"1 1/2 oz aromatic bitters|1 oz orgeat|3/4 oz lemon juice|1/2 oz rye whiskey|shake, up", // nor one of bitters
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(text, "|", "\n")))
		assert.Equal(t, weigh.Balanced, r.Verdict, "%s: %.0f %+v", text, r.Judgement.Score, r.Faults)
	}
	k.mends(t, "1 1/2 oz amaretto|3/4 oz bourbon|1/4 oz lemon juice|shake, rocks", ratio.Sour, "lemon juice instead of ¼ oz")
	k.mends(t, "1 1/2 oz sloe gin|3/4 oz London dry gin|2 oz lemon juice|shake, up", ratio.Sour, "lemon juice instead of 2 oz")
	// What is as strong as a spirit needs none to back it up.
	k.mends(t, "3/4 oz cognac|1 1/2 oz triple sec|3/4 oz lemon juice|shake, up", ratio.Aroma, "pour ¾ oz triple sec instead of 1½ oz")
}

// A drink is too sweet for what it is, though others of its family are sweeter: by what proven
// drinks of the same make-up have of sugar to strength, acid and bitterness. Common practice, no
// source.
func TestSweetnessIsHeldAgainstWhatCutsIt(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ good, spoilt, fix string }{
		{"1 1/2 oz vodka|1 oz coffee liqueur|1 oz espresso|1/4 oz simple syrup|shake, up",
			"1 1/2 oz vodka|1 oz coffee liqueur|1 oz espresso|3/4 oz simple syrup|shake, up", "simple syrup (1:1) instead of ¾ oz"},
		{"2 oz vodka|1/2 oz lime juice|4 oz ginger beer|build, highball",
			"2 oz vodka|1/2 oz lime juice|1 oz simple syrup|4 oz ginger beer|build, highball", "simple syrup (1:1) instead of 1 oz"},
		{"8 mint leaves|1 oz lime juice|1 oz simple syrup|4 oz soda water|build, highball",
			"8 mint leaves|1 oz lime juice|1 1/2 oz simple syrup|4 oz soda water|build, highball", "simple syrup (1:1) instead of 1½ oz"},
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(c.good, "|", "\n")))
		assert.Equal(t, weigh.Balanced, r.Verdict, "%s: %.0f", c.good, r.Judgement.Score)
		k.mends(t, c.spoilt, ratio.Sweet, c.fix)
	}
	for _, text := range []string{ // as sweet as their kind is
		"2 oz white rum|1 oz lime juice|1 oz simple syrup|shake, up",
		"1 oz crème de menthe|1 oz white crème de cacao|1 oz heavy cream|shake, up",
		"2 oz white rum|2 oz cream of coconut|2 oz pineapple juice|1/2 oz lime juice|blend",
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(text, "|", "\n")))
		assert.Equal(t, weigh.Balanced, r.Verdict, "%s: %.0f %+v", text, r.Judgement.Score, r.Faults)
	}
}
