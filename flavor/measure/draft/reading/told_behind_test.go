package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/index"
)

// wholeCatalogue finds names among all ingredients.
func wholeCatalogue(t *testing.T) *index.Index {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	return x
}

// What is told behind a name is passed over aloud, unless it names an ingredient or is part
// of a name: common practice, no source.
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

// What a name is said not to be is passed over aloud, and what a bracket names of the same
// kind is meant: common practice, no source.
func TestBracketsAndDenials(t *testing.T) {
	x := wholeCatalogue(t)
	for text, id := range map[string]string{
		"25 ml lime NOT lemon": "lime-juice", "1 oz vermouth (dry not sweet)": "dry-vermouth", "2 oz gin (the floral one, not the navy)": "floral-gin",
		"20 ml sweet sherry (PX)": "pedro-ximenez-sherry", "1 oz vermouth (the red stuff)": "sweet-vermouth",
	} {
		s, err := reading.Read(text+"\n2 oz vodka\nzero proof\nstir, up", x)
		if assert.NoError(t, err, text) {
			assert.Equal(t, id, s.Pours[0].Profile.ID, text)
		}
	}
	_, err := reading.Read("2 oz gin (almond)\n1 oz lime juice", x)
	assert.Error(t, err, "an allergen in brackets is no remark")
}

// How warm a pour is may stand behind its amount, and a nought be typed for a letter:
// common practice, no source.
func TestWarmthAndNoughts(t *testing.T) {
	s, err := reading.Read("1 1/2 0z aged rum\nblack tea 4oz hot\n.5 oz honey syrup", wholeCatalogue(t))
	require.NoError(t, err)
	assert.InDelta(t, 44.36, s.Pours[0].ML, 0.01)
	assert.Equal(t, "black-tea", s.Pours[1].Profile.ID)
	assert.Equal(t, flavor.HeatHot, s.Pours[1].Heat)
	assert.Equal(t, flavor.Hot, s.Service)
}

// No pour is lost in the name of a drink, in a word that is nearly a unit, or at the stop of
// an abbreviation: common practice, no source.
func TestNoPourIsLostBesideAName(t *testing.T) {
	x := wholeCatalogue(t)
	_, err := reading.Read("(part = 1 oz) 2 parts rye : 1 part red quinquina : 1/2 part walnut liqueur. stir, rocks", x)
	assert.ErrorContains(t, err, "holds a pour")
	s, err := reading.Read("pisco 60 / lime 25 / pineapple gum 20", x)
	require.NoError(t, err)
	assert.Equal(t, "pineapple-gum-syrup", s.Pours[2].Profile.ID)
	s, err = reading.Read("Acid-adj. OJ 22 / peated scotch 15 / blended scotch 30", x)
	require.NoError(t, err)
	assert.Equal(t, "acid-adjusted-orange-juice", s.Pours[0].Profile.ID)
}

// A title with a number in it is no pour where each line below states its amount and unit
// and a base: common practice, no source. Where no base stands below, it is one.
func TestTitlesAreNotPoured(t *testing.T) {
	x := wholeCatalogue(t)
	for text, pours := range map[string]int{
		"Cherry 22\n60 ml rye whiskey\n30 ml sweet vermouth\n2 dashes aromatic bitters": 3,
		"Peach 75\n30 ml gin\n15 ml lemon juice\n90 ml prosecco":                        3,
		"Hot egg\n45 ml aged rum\n20 ml honey syrup\n1 whole egg":                       3,
		"Gin 60\n25 ml lemon juice\n20 ml simple syrup":                                 3,
		"Gin 60\nLemon 25\nSimple 20":                                                   3,
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, pours, text)
		}
	}
}

// What is said to colleagues around the pours is passed over aloud: common practice, no source.
func TestWhatIsSaidToColleagues(t *testing.T) {
	s, err := reading.Read("so it's the stirred one, um, two ounces of gin, one ounce dry vermouth\nstir, up\ndon't let Jo free pour the vermouth\nWe were at 2 oz vermouth, too flabby.", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Len(t, s.Pours, 2)
	assert.Contains(t, strings.Join(s.Notes, "\n"), "don't let Jo free pour the vermouth")
}

// A measure in brackets says more exactly what a count comes to: common practice, no source.
func TestAMeasureBehindACount(t *testing.T) {
	x := wholeCatalogue(t)
	for text, ml := range map[string]float64{
		"juice of half a lemon (20 ml)": 20, "white of 1 egg (about 1 oz)": 29.57, "1 egg white (about 1 oz)": 29.57, "juice of 1 lime (25 ml)": 25,
		"heavy cream, floated ...... 20 ml": 20,
	} {
		s, err := reading.Read("2 oz gin\n"+text+"\n.75 oz simple syrup", x)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, ml, s.Pours[1].ML, 0.01, text)
		}
	}
}
