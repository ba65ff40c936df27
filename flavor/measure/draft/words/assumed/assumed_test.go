package assumed_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/assumed"
)

// A draft that bears the name of a drink is made and served as that is, unless it says otherwise;
// the name of no drink tells nothing. Common practice, no source.
func TestAsItsNameSays(t *testing.T) {
	coffee := &flavor.Profile{ID: "filter-coffee", Name: "filter coffee", Class: flavor.ClassCoffee}
	whiskey := &flavor.Profile{ID: "irish-whiskey", Name: "Irish whiskey", Class: flavor.ClassWhiskey}
	for _, x := range []struct {
		name        string
		method      flavor.Method
		service     flavor.Service
		wantMethod  flavor.Method
		wantService flavor.Service
		by          string // what its note says it goes by
	}{
		{"Irish Coffee", "", "", flavor.Build, flavor.Hot, "a drink of that name"},
		{"irish coffee", flavor.Build, "", flavor.Build, flavor.Hot, "a drink of that name"},
		{"Irish coffee", flavor.Blend, "", flavor.Blend, flavor.Up, "this method"},
		{"Irish coffee", flavor.Shake, flavor.Rocks, flavor.Shake, flavor.Rocks, ""},
		{"Lantern coffee", "", "", flavor.Stir, flavor.Up, "this method"},
	} {
		got := assumed.Fill(flavor.Spec{Name: x.name, Method: x.method, Service: x.service, Pours: []flavor.Pour{
			{Profile: whiskey, Amount: 40, Unit: flavor.Millilitre, ML: 40},
			{Profile: coffee, Amount: 120, Unit: flavor.Millilitre, ML: 120},
		}})
		assert.Equal(t, x.wantMethod, got.Method, x.name)
		assert.Equal(t, x.wantService, got.Service, x.name)
		if x.by == "" {
			assert.Empty(t, got.Notes, x.name)
			continue
		}
		assert.Contains(t, got.Notes[len(got.Notes)-1], x.by, x.name)
	}
}
