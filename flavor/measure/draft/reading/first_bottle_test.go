package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A word before what the first bottle is says which bottle it is, as it does further down, and is asked about
// where nobody knows it.
func TestTheFirstBottleIsAskedAbout(t *testing.T) {
	for text, told := range map[string]string{
		"oyster gin 60 ml, dry vermouth 10 ml":                   "molluscs",
		"Oyster gin 60ml\ndry vermouth 10ml":                     "molluscs",
		"oyster gin 60 dry vermouth 10":                          "molluscs",
		"shrimp vodka 50, lemon 25, sugar syrup 15":              "crustaceans",
		"crab gin 50 ml / lemon 25 / sugar syrup 20":             "crustaceans",
		"anchovy vodka 2 oz, dry vermouth .5 oz":                 "fish",
		"smoked salmon vodka 50ml tomato juice 100ml lemon 10ml": "fish",
		"wombat gin 60ml, lemon 30ml, simple 22ml":               "wombat gin",
		"blue orange liqueur 20\nvodka 40\nlemon 20":             "blue orange liqueur",
		"kelp gin 50\ndry vermouth 10":                           "kelp gin",
		"Crab apple gin 50, lemon 25, simple 20":                 "Crab apple gin",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, told, "%q is read as %v", text, s.Pours)
	}
}

// What is written as the name of a drink is one, with the pours behind it on its line.
func TestNamesBeforeTheFirstBottle(t *testing.T) {
	for text, want := range map[string]string{
		"Tideway gin 60 lemon 30 honey 20":                 "gin 60 + lemon 30 + honey 20",
		"NEGRONI gin 30, sweet vermouth 30, red bitter 30": "gin 30 + sweet vermouth 30 + red bitter 30",
		"TIDEWAY gin 60, lemon 30, honey syrup 20":         "gin 60 + lemon 30 + honey syrup 20",
		"tideway: gin 60, lemon 30, honey syrup 20":        "gin 60 + lemon 30 + honey syrup 20",
		"Milk Punch rum 60, milk 60, simple 20":            "rum 60 + milk 60 + simple 20",
		"blue curacao 20\nvodka 40\nlemon 20":              "blue curacao 20 + vodka 40 + lemon 20",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}
