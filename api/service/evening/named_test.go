package evening_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/api/service/evening"
	"counterpour/flavor"
)

// A drink is found under its name and its pours, in the spelling that is to hand.
func TestADrinkIsFoundAsItIsTyped(t *testing.T) {
	s := &flavor.Spec{Name: "Quai d'Été", Pours: []flavor.Pour{{Profile: &flavor.Profile{Name: "crème de cassis"}}, {Profile: &flavor.Profile{Name: "lime juice", Aliases: []string{"Quayside Limes"}}}}}
	for text, want := range map[string]bool{
		"": true, "  ": true, "quai": true, "QUA": true, "ete": true, "dete": true, "creme cass": true, "limes": true, "ete lime": true, "quayside": true, "creme quayside": true,
		"sour": true, "tropical lime": true,
		"lemon": false, "quai lemon": false, "quaid": false,
	} {
		assert.Equal(t, want, evening.Holds(s, "Tropical sour", text), "%q", text)
	}
}

// What begins like a word is not the word: ginger is no gin.
func TestADrinkHoldsWholeWords(t *testing.T) {
	s := &flavor.Spec{Name: "Quai d'Été", Pours: []flavor.Pour{{Profile: &flavor.Profile{Name: "ginger beer", Aliases: []string{"fiery soda"}}}}}
	for text, want := range map[string]bool{"ginger": true, "gin": false, "beer ginger": true, "fiery": true, "QUAI": true, "qua": false, "long": true, "": false} {
		assert.Equal(t, want, evening.HoldsWhole(s, "Long drink", text), "%q", text)
	}
}

// A drink is found by what it plainly smells of, in the words of the trade, and not by a trace.
func TestADrinkIsFoundByItsTaste(t *testing.T) {
	smoke := &flavor.Profile{Name: "mezcal"}
	smoke.Aroma[flavor.Smoke] = 8
	s := &flavor.Spec{Name: "Beacon", Pours: []flavor.Pour{{Profile: smoke, ML: 45}, {Profile: &flavor.Profile{Name: "lime juice"}, ML: 45}}}
	for text, want := range map[string]bool{"smoky": true, "smokier": true, "Peaty lime": true, "smoky lemon": false, "minty": false, "lime": false, "": false, "zorble": false} {
		assert.Equal(t, want, evening.Tastes(s, "Sour", text), "%q", text)
	}
	s.Pours[0].ML = 2
	assert.False(t, evening.Tastes(s, "Sour", "smoky"), "a few drops smell of it, and are no smoky drink")
}
