package service

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// A drink names a word if it stands there, not if it is only near to it or meant by it.
func TestADrinkNamesWhatIsWritten(t *testing.T) {
	mezcal := &flavor.Profile{ID: "mezcal", Name: "mezcal", Class: flavor.ClassAgaveSpirit, Aliases: []string{"Oaxacan spirit"}}
	lime := &flavor.Profile{ID: "lime-juice", Name: "lime juice", Class: flavor.ClassSourJuice}
	d := Drink{Spec: flavor.Spec{Name: "Fog Trail", Pours: []flavor.Pour{{Profile: mezcal}, {Profile: lime}}}}
	for text, want := range map[string]bool{"": true, "trail": true, "Mezcal": true, "lime mezc": true, "oaxacan": true, "agave": true, "trial": false, "smoky": false, "mezcal gin": false} {
		assert.Equal(t, want, d.Names(text), text)
	}
}

// A word is had whole, in a longer word, or nowhere: ginger is no gin.
func TestAnIngredientHasAWordWhole(t *testing.T) {
	p := &flavor.Profile{Name: "ginger beer", Class: flavor.ClassSoda, Aliases: []string{"fiery soda"}}
	for word, want := range map[string]int{"ginger": wholly, "gin": inPart, "beer": wholly, "fiery": wholly, "soda": wholly, "rum": nowhere} {
		assert.Equal(t, want, named(p, word), word)
	}
}
