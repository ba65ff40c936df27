package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/reading"
)

// A word of prose, of the glass or of the work is no slip and no clipping of what is poured: common
// practice, no source.
func TestAWordThatIsSpeltRightIsNoSlip(t *testing.T) {
	for _, word := range strings.Fields(`per past mug mugs jar bar each sample card rub brand perch cheery demon
scream topic waiter money homey each until before their guest kitchen manager`) {
		for _, amount := range []string{"1 oz ", "1 dash ", "1 "} {
			text := "45 ml rye\n20 ml lemon juice\n" + amount + word + "\nshake"
			s, err := reading.Read(text, wholeCatalogue(t))
			if err == nil {
				assert.Len(t, s.Pours, 2, text)
			}
		}
	}
	for text, want := range map[string]string{ // and what is clipped or slipped is still read
		"2 oz bourb\n1 oz lemn\n1 oz smple":     "bourb 59.15 + lemn 29.57 + smple 29.57",
		"2 oz gn\n1 oz curacoa\n1 oz lime juce": "gn 59.15 + curacoa 29.57 + lime juce 29.57",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
}

// A unit makes no name certain that may mean several things: common practice, no source.
func TestAUnitMakesNoNameCertain(t *testing.T) {
	for _, pour := range []string{"3 dashes herb liqueur", "4 drops herbal liqueur", "1 dash sherry", "2 dashes passionfruit", "40 ml arrack", "1 dash arrack"} {
		s, err := reading.Read("45 ml rye\n"+pour+"\nstir", wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", pour, s.Pours)
	}
	assert.Equal(t, "rye 45 + cherry 1.6 + bitters 1.6", poured(t, "45 ml rye\n2 dashes cherry\n2 dashes bitters\nstir"))
}

// One orange beside ounces may be counted, squeezed or the liqueur; one lemon is an ounce of juice.
func TestOneFruitBesideOunces(t *testing.T) {
	for _, text := range []string{"2 rum, 1 orange, .5 lime, .5 honey, shake", "1.5 cognac\n1 orange\n.75 lemon\nshake"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, "%q is read as %v", text, s.Pours)
	}
	assert.Equal(t, "rum 59.15 + lemon 29.57 + honey 14.79", poured(t, "2 rum, 1 lemon, .5 honey, shake"))
	assert.Equal(t, "rum 59.15 + orange juice 29.57 + lime 14.79 + honey 14.79", poured(t, "2 rum, 1 orange juice, .5 lime, .5 honey, shake"))
}
