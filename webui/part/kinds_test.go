package part_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/part"
)

// What a label says of the strength tells a bitter aperitif from a gin; what its name says that
// there is, is in whatever is offered.
func TestLikelyKinds(t *testing.T) {
	of := func(id string, abv float64, holds ...flavor.Allergen) *flavor.Profile {
		p := &flavor.Profile{ID: id, Name: id, AllergensKnown: true, ABV: flavor.Figure{Value: abv}}
		for _, a := range holds {
			p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: a, Certainty: flavor.Contains})
		}
		return p
	}
	gin, juice, bitter, nutty := of("gin", 41), of("lemon juice", 0), of("bitter", 25), of("nut liqueur", 24, flavor.TreeNuts)
	usual := []*flavor.Profile{gin, juice, bitter, nutty}
	at := func(v float64) house.Measured { return house.Measured{ABVPct: &v} }
	assert.Empty(t, part.LikelyKinds(&house.Bottle{Name: "Hawse"}, usual), "no strength, so that one is as likely as another")
	assert.Equal(t, []*flavor.Profile{bitter, nutty}, part.LikelyKinds(&house.Bottle{Name: "Hawse", Measured: at(25)}, usual))
	assert.Equal(t, []*flavor.Profile{juice}, part.LikelyKinds(&house.Bottle{Name: "Hawse", Measured: at(0)}, usual))
	assert.Equal(t, []*flavor.Profile{nutty}, part.LikelyKinds(&house.Bottle{Name: "Hawse hazelnut", Measured: at(24)}, usual))
}
