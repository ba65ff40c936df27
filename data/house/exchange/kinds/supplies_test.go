package kinds_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/data/house"
	"counterpour/data/house/exchange/kinds"
	"counterpour/flavor"
)

// What nobody drinks is told from what is on a shelf, whatever fruit its name holds; what the
// row calls an ingredient is one. Common practice, no source.
func TestSupplies(t *testing.T) {
	k := kinds.New(speller{house.NewShelf([]*flavor.Profile{{ID: "orange", Name: "orange", Class: flavor.ClassFruit}, {ID: "gin", Name: "gin", Class: flavor.ClassGin}}), nil})
	for _, c := range []struct {
		kind, group, name string
		supply            bool
	}{
		{"", "", "orange bin bags", true}, {"", "", "Blue roll 6 pack", true}, {"", "", "CO2 refill", true}, {"", "", "glass wash", true},
		{"", "", "Lemon washing-up liquid", true}, {"", "", "Limescale remover 1L", true}, {"", "", "Mint tea lights", true}, {"", "", "Cocktail sticks 1000", true},
		{"", "", "Paper straws", true}, {"", "", "Boston shakers", true}, {"", "", "Highball glasses", true}, {"Cleaning", "", "Hawse", true}, {"", "Disposables", "Hawse", true},
		{"", "", "orange", false}, {"", "", "Hawse gin", false}, {"gin", "", "Hawse roll", false}, {"", "Spirits", "Hawse", false},
		{"", "", "Cinnamon sticks", false}, {"", "", "Tea bags", false}, {"", "", "Cola bag-in-box", false}, {"", "", "Fruit cup", false}, {"", "", "Hawse gas works gin", false}, {"", "", "", false},
	} {
		assert.Equal(t, c.supply, k.Supply(c.kind, c.group, c.name), "%q %q %q", c.kind, c.group, c.name)
	}
}

// No name of the catalogue is that of something nobody drinks, also with a maker's word before it.
func TestNoIngredientIsASupply(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	none := kinds.New(nil)
	for _, p := range d.Catalogue.Profiles() {
		for _, name := range append([]string{p.Name}, p.Aliases...) {
			assert.False(t, none.Supply("", "", "Hawse "+name), "%s, %s", p.ID, name)
		}
	}
}
