package weigh_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/weigh"
)

// A cream liqueur is a drink of its own on ice, or with a spirit; beside another liqueur it is
// too much as any would be, and a dash or a barspoon of something makes it no other drink. Common
// practice, no source.
func TestWhatIsSippedOnIceIsNotTooMuchInItself(t *testing.T) {
	k := newKitchen(t)
	for text, balanced := range map[string]bool{
		"60 ml whiskey cream liqueur\nbuild, rocks":                                          true,
		"30 ml Irish whiskey\n45 ml whiskey cream liqueur\nshake, rocks":                     true,
		"30 ml aged rum\n45 ml whiskey cream liqueur\n1 dash aromatic bitters\nbuild, rocks": true,
		"30 ml vodka\n30 ml coffee liqueur\n90 ml whiskey cream liqueur\nshake, rocks":       false,
		"30 ml Irish whiskey\n45 ml whiskey cream liqueur\n30 ml lemon juice\nshake, rocks":  false,
	} {
		score := k.score(t, k.read(t, text))
		assert.Equal(t, balanced, score >= weigh.BalancedFrom, "%s: %.1f", text, score)
	}
	with := k.score(t, k.read(t, "30 ml Irish whiskey\n45 ml whiskey cream liqueur\n5 ml water\nshake, rocks"))
	without := k.score(t, k.read(t, "30 ml Irish whiskey\n45 ml whiskey cream liqueur\nshake, rocks"))
	assert.InDelta(t, without, with, 10, "a barspoon of water")
}
