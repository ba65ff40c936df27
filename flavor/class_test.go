package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What the table says of a class in one column agrees with what it says in another.
func TestTheClassesAgree(t *testing.T) {
	for _, c := range Classes() {
		if c.Pressed() {
			assert.Equal(t, SpoilsJuice, c.Spoils(), c)
			assert.True(t, c.Shaken(), c)
		}
		if c.Laced() {
			assert.Equal(t, KinWine, c.Kin(), c)
			assert.Equal(t, SpoilsFaded, c.Spoils(), c)
		}
		if c.Brewed() {
			assert.Equal(t, SpoilsWine, c.Spoils(), c)
		}
		if c.Vinous() {
			assert.True(t, c.Hued(), c)
			assert.Contains(t, []Kin{KinWine, KinSparkling}, c.Kin(), c)
		}
		if c.Soft() {
			assert.False(t, c.Vinous() || c.Brewed(), "%s: sold without alcohol", c)
			assert.Equal(t, SpoilsNever, c.Spoils(), c)
		}
		if c.Tart() || c.Plain() {
			assert.Equal(t, PartSweetener, c.Part(), c)
		}
		if c.Part() == PartBase && !c.StandsForSpirit() {
			assert.Equal(t, SpoilsNever, c.Spoils(), "%s: spirits keep", c)
		}
	}
	assert.Equal(t, SpoilsNever, Class("none").Spoils())
}
