package serving

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

func TestParseMethodAndService(t *testing.T) {
	for w, want := range map[string]flavor.Method{"shake": flavor.Shake, "Shaken hard": flavor.Shake, "dry-shake": flavor.DryShake,
		"STIRRED": flavor.Stir, "built": flavor.Build, "swizzled": flavor.Swizzle, "throw": flavor.Throw, "blend": flavor.Blend} {
		got, ok := ParseMethod(w)
		assert.True(t, ok && got == want, w)
	}
	for w, want := range map[string]flavor.Service{"up": flavor.Up, "on the rocks": flavor.Rocks, "over ice": flavor.Rocks,
		"crushed ice": flavor.Crushed, "Highball": flavor.Long} {
		got, ok := ParseService(w)
		assert.True(t, ok && got == want, w)
	}
	for _, m := range flavor.Methods() {
		got, ok := ParseMethod(string(m))
		assert.True(t, ok && got == m, m)
	}
	for _, s := range flavor.Services() {
		got, ok := ParseService(string(s))
		assert.True(t, ok && got == s, s)
	}
	for _, w := range []string{"", "sheke", "up", "shake stir", "hard"} {
		_, ok := ParseMethod(w)
		assert.False(t, ok, w)
	}
	for _, w := range []string{"", "shake", "up rocks", "glass"} {
		_, ok := ParseService(w)
		assert.False(t, ok, w)
	}
}

func TestNearestMethods(t *testing.T) {
	assert.Equal(t, []string{"shake"}, NearestMethods("sheke"))
	assert.Equal(t, []string{"stir"}, NearestMethods("Stirrd"))
	assert.Equal(t, []string{"rocks"}, NearestMethods("roks"))
	assert.Empty(t, NearestMethods("pamplemousse"))
}
