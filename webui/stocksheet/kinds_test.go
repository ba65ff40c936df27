package stocksheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/kinds"
	"counterpour/flavor"
)

// A bottle that is called after nuts is offered no kind without them.
func TestNoKindLosesWhatANameSays(t *testing.T) {
	liqueur := func(id, name string, marks ...flavor.AllergenMark) *flavor.Profile {
		return &flavor.Profile{ID: id, Name: name, Class: flavor.ClassLiqueur, AllergensKnown: true, AllergenMarks: marks}
	}
	nuts := flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}
	hazelnut, walnut, anisette := liqueur("hazelnut-liqueur", "hazelnut liqueur", nuts), liqueur("walnut-liqueur", "walnut liqueur", nuts), liqueur("anisette", "anisette")
	shelf := house.NewShelf([]*flavor.Profile{anisette, hazelnut, walnut})
	offered := func(name string) (ids []string) {
		r := exchange.SheetRow{Bottle: house.Bottle{Name: name}, Kind: kinds.Kind{Profile: hazelnut, Others: []string{"anisette"}, Supposed: true}}
		for _, o := range kindOf(&r, shelf).Options {
			ids = append(ids, o.Value)
		}
		return ids
	}
	for _, name := range []string{"Haselnusslikör", "Hazelnut liqueur", "crème de noisette"} {
		assert.Equal(t, []string{"hazelnut-liqueur", "walnut-liqueur"}, offered(name), name)
	}
	assert.Contains(t, offered("Monk's liqueur"), "anisette")
}
