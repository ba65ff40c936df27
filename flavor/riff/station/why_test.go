package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor/sense"
)

// What two bottles have in common is told by what it smells of, for every odorant of the
// table that says; a bartender knows no molecule by its name.
func TestABondIsToldByItsSmell(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	molecules, told := map[string]bool{}, 0
	j := &Job{Station: &Station{Space: d.Catalogue.Space()}}
	for _, p := range d.Catalogue.Profiles() {
		for _, o := range j.odorants(p) {
			molecules[o.Name] = true
			heaviest := 0.0
			for _, c := range o.Character {
				heaviest = max(heaviest, c.Weight)
			}
			assert.Contains(t, o.Character, sense.Share{Name: leading(o), Weight: heaviest}, o.Name)
			told++
		}
	}
	require.Greater(t, told, len(molecules))
	assert.Equal(t, "cooked agave", leading(sense.Odorant{Name: "methyl 2-furoate", Character: []sense.Share{{Name: "caramel", Weight: 0.3}, {Name: "cooked agave", Weight: 0.7}}}))
}
