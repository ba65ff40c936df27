package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// What is told behind a name is no part of it: common practice, no source.
func TestWhatIsToldBehindAName(t *testing.T) {
	x := wholeCatalogue(t)
	s, err := reading.Read("2 oz Irish whiskey\n4 oz cold brew off the nitro tap\n3 dashes aromatic bitters round the glass\n1 oz white wine aged under flor", x)
	require.NoError(t, err)
	assert.Equal(t, "cold-brew", s.Pours[1].Profile.ID)
	assert.Equal(t, "aromatic-bitters", s.Pours[2].Profile.ID)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "line 2: “off the nitro tap” is skipped")
	_, err = reading.Read("2 oz gin from the almond jar\n1 oz lime juice", x)
	assert.ErrorContains(t, err, "says more than")
}

// kind is meant: common practice, no source.
func TestBracketsAndDenials(t *testing.T) {
	x := wholeCatalogue(t)
	for text, id := range map[string]string{
		"25 ml lime NOT lemon": "lime-juice", "1 oz vermouth (dry not sweet)": "dry-vermouth", "2 oz gin (the floral one, not the navy)": "floral-gin",
		"20 ml sweet sherry (PX)": "pedro-ximenez-sherry", "1 oz vermouth (the red stuff)": "sweet-vermouth",
		"⅜ oz falernum syrup (alcohol-free)": "falernum-syrup", // said of the syrup, not of the drink
	} {
		s, err := reading.Read(text+"\n2 oz vodka\nstir, up", x)
		if assert.NoError(t, err, text) {
			assert.Equal(t, id, s.Pours[0].Profile.ID, text)
		}
	}
	s, err := reading.Read("60 ml gin\n25 ml lemon juice\n60 ml aged rum\n25 ml lime juice\nshake, up", x)
	require.NoError(t, err, "one list is one drink, whatever it holds")
	assert.Len(t, s.Pours, 4)
	_, err = reading.Read("2 oz gin\n1 oz lime juice\nzero proof\nstir, up", x)
	assert.ErrorContains(t, err, "% vol of alcohol")
	_, err = reading.Read("2 oz gin (almond)\n1 oz lime juice", x)
	assert.Error(t, err, "an allergen in brackets is no remark")
}

// What is said to colleagues around the pours is passed over aloud: common practice, no source.
func TestWhatIsSaidToColleagues(t *testing.T) {
	s, err := reading.Read("so it's the stirred one, um, two ounces of gin, one ounce dry vermouth\nstir, up\ndon't let Jo free pour the vermouth\nWe were at 2 oz vermouth, too flabby.", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Len(t, s.Pours, 2)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "don't let Jo free pour the vermouth")
}

// A brine or a syrup is named after what it is poured off, and what was taken out again is not
// poured, unless it was put back.
func TestPouredOffAJar(t *testing.T) {
	x := wholeCatalogue(t)
	s, err := reading.Read("60 ml vodka\n15 ml dry vermouth\n10 ml brine from a jar of capers\nstir, up", x)
	require.NoError(t, err)
	assert.Equal(t, "caper-brine", s.Pours[2].Profile.ID)
	_, err = reading.Read("60 ml vodka\n15 ml dry vermouth\n10 ml brine from a jar of umeboshi\nstir, up", x)
	assert.Error(t, err)
	s, err = reading.Read("japanese whisky 40, yuzu juice 10, soda 120. I first had honey 5 in it, took it out. Build, tall glass.", x)
	require.NoError(t, err)
	assert.Len(t, s.Pours, 3)
	assert.Contains(t, s.Notes[0], "is not poured")
	_, err = reading.Read("japanese whisky 40, yuzu juice 10, soda 120. I first had honey 5 in it, took it out, put it back. Build, tall glass.", x)
	assert.Error(t, err)
	_, err = reading.Read("2 oz gin\n.5 oz dry vermouth\nstir, up. take the coupe from the freezer, took it out of there cold", x)
	assert.NoError(t, err)
}
