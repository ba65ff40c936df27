package balance

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// No fix pours more of what the guest must not have, or may have to avoid since nobody has
// stated it; to pour less of it, or none, is one.
func TestFixesSuitTheGuest(t *testing.T) {
	orgeat := &flavor.Profile{ID: "orgeat", Class: flavor.ClassFruitSyrup, AllergensKnown: true, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}}}
	bitters := &flavor.Profile{ID: "bitters", Class: flavor.ClassCocktailBitters} // nobody has stated anything
	syrup := &flavor.Profile{ID: "simple-syrup", Class: flavor.ClassSyrup, AllergensKnown: true}
	avoids := guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}
	for _, c := range []struct {
		name     string
		of       *flavor.Profile
		from, to float64
		want     bool
	}{
		{"more of what is safe", syrup, 15, 22.5, true},
		{"nuts come in", orgeat, 0, 15, false},
		{"more nuts", orgeat, 7.5, 15, false},
		{"fewer nuts", orgeat, 30, 15, true},
		{"nuts left out", orgeat, 15, 0, true},
		{"what nobody has stated", bitters, 0, 1.6, false},
	} {
		f := Fix{Changes: []Change{{Profile: syrup, FromML: 15, ToML: 20}, {Profile: c.of, FromML: c.from, ToML: c.to}}}
		assert.Equal(t, c.want, f.Suits(&avoids), c.name)
		assert.True(t, f.Suits(&guest.Guest{}), c.name)
	}
}
