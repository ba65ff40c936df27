package service

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/api/service/evening"
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
	in := foundUnder(p)
	for _, word := range []string{"ginger", "beer", "fiery", "soda"} {
		assert.True(t, evening.HasWhole(in, word), word)
	}
	assert.True(t, evening.HasWords(in, "gin") && !evening.HasWhole(in, "gin"))
	assert.False(t, evening.HasWords(in, "rum"))
}
