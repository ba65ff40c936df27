package drinks_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/drinks"
)

// Names as bars write them above a drink: common practice, no source.
func TestCalled(t *testing.T) {
	for _, name := range []string{"MANHATTAN", "Rob Roy", "adonis", "Piña Colada", "pina colada", "caipi", "frozen marg", "Garden Spritz", "mezcal negroni", "Tuesday fizz", "sherry cobbler", "our house daiquiri"} {
		assert.True(t, drinks.Called(name), name)
	}
	for _, name := range []string{"", "campfire", "verjus", "red bitter", "cucumber", "mar", "so she wants it", "one two three four five six negroni"} {
		assert.False(t, drinks.Called(name), name)
	}
	assert.True(t, drinks.Known("Floradora"))
	assert.False(t, drinks.Known("frozen marg"))
}

// A place or a thing with its number before a kind of drink is a name; a spirit before its amount is poured.
func TestNumbered(t *testing.T) {
	for name, want := range map[string]bool{
		"Wharf 3 Cooler": true, "Line 22 Gin Sour": true, "The Cabin 8 Toddy": true,
		"wharf 3 cooler": false, "Rum 45 Punch": false, "3 Wharf Cooler": false, "Wharf 3": false, "Wharf 3.5 Cooler": false, "Wharf 3 Lemon": false, "Wharf 3 Pier 4 Sour": false, "Wharf Cooler": false,
	} {
		assert.Equal(t, want, drinks.Numbered(name), name)
	}
}

// What all bars pour into drinks of a name, other words beside it or not: common practice, no source.
func TestPours(t *testing.T) {
	for name, want := range map[string]string{
		"our house Jungle Bird": "jungle bird", "Corpse Reviver No. 2": "corpse reviver no 2", "Sbagliato": "negroni sbagliato", "MEZCAL NEGRONI": "negroni", "ward 8": "ward 8",
		"": "", "campfire": "", "bird": "",
	} {
		pours, called := drinks.Pours(name)
		assert.Equal(t, want, called, name)
		assert.Equal(t, want != "", len(pours) > 0, name)
	}
	pours, _ := drinks.Pours("white lady")
	assert.Equal(t, []string{"London dry gin", "lemon juice", "triple sec"}, pours)
}

// How bars make and serve drinks of a name: common practice, no source. Whether a whiskey sour is
// shaken dry first hangs on whether it has egg white.
func TestServed(t *testing.T) {
	for _, x := range []struct {
		name    string
		method  flavor.Method
		service flavor.Service
	}{
		{"Irish Coffee", flavor.Build, flavor.Hot},
		{"MANHATTAN", flavor.Stir, flavor.Up},
		{"moscow mule", flavor.Build, flavor.Long},
		{"Whiskey sour", "", flavor.Rocks},
		{"campfire", "", ""},
	} {
		method, service := drinks.Served(x.name)
		assert.Equal(t, x.method, method, x.name)
		assert.Equal(t, x.service, service, x.name)
	}
}
