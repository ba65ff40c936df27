package mend

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// No fix leaves in the glass what the guest must not have, or may have to avoid since nobody has
// stated it; to leave it out is one.
func TestFixesSuitTheGuest(t *testing.T) {
	orgeat := &flavor.Profile{ID: "orgeat", Class: flavor.ClassFruitSyrup, AllergensKnown: true, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}}}
	bitters := &flavor.Profile{ID: "bitters", Class: flavor.ClassCocktailBitters} // nobody has stated anything
	syrup := &flavor.Profile{ID: "simple-syrup", Class: flavor.ClassSyrup, AllergensKnown: true}
	avoids := guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}
	for _, c := range []struct {
		name string
		of   *flavor.Profile
		to   float64
		want bool
	}{
		{"more of what is safe", syrup, 22.5, true},
		{"nuts come in", orgeat, 15, false},
		{"fewer nuts", orgeat, 7.5, false},
		{"nuts left out", orgeat, 0, true},
		{"what nobody has stated", bitters, 1.6, false},
	} {
		f := Fix{Spec: flavor.Spec{Pours: []flavor.Pour{{Profile: syrup, ML: 20}}}}
		if c.to > 0 {
			f.Spec.Pours = append(f.Spec.Pours, flavor.Pour{Profile: c.of, ML: c.to})
		}
		assert.Equal(t, c.want, f.Suits(&avoids), c.name)
		assert.True(t, f.Suits(&guest.Guest{}), c.name)
	}
}
