package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// A name that may mean several things is what the rest of the drink leaves of them, and
// asked where it leaves two. Common practice, no source.
func TestNamesInDoubtFitTheDrink(t *testing.T) {
	x := wholeCatalogue(t)
	for _, d := range []struct {
		text string
		pour int
		id   string // empty where it is asked
	}{
		{"2 oz gin\n1 oz passion fruit\n3/4 oz lemon\n3/4 oz simple\nshake, up", 1, "passion-fruit-puree"},
		{"2 oz gin\n3/4 oz passion fruit\n3/4 oz lemon\nshake, up", 1, "passion-fruit-syrup"},
		{"2 oz rye\n1/2 oz banana\n2 dashes aromatic bitters\nstir, up", 1, "banana-liqueur"},
		{"2 oz gin\n1/2 oz banana\n3/4 oz lemon\nshake, up", 1, ""},
		{"2 oz gin\n1/2 oz elderflower\n3/4 oz lemon\n1/4 oz simple\nshake, up", 1, "elderflower-liqueur"},
		{"1 1/2 oz spiced\n3/4 oz lime\n1/2 oz simple\nshake, up", 0, "spiced-rum"},
		{"1 1/2 oz gin\n1 oz bitter\n1 oz sweet vermouth\nstir, rocks", 1, "red-bitter-aperitif"},
		{"45 whisky\n135 soda\nhighball", 0, "blended-scotch"},
		{"45 whiskey\n135 soda\nhighball", 0, "bourbon"},
		{"45 whisky\n20 lemon\n90 soda\nhighball", 0, "blended-scotch"},
		{"45 whisky\n120 ginger ale\nhighball", 0, "blended-scotch"},
		{"2 oz whiskey\n3/4 oz lemon\n3/4 oz honey syrup\nshake, rocks", 0, "bourbon"},
		{"40 ml white rum\n40 ml passion fruit\n40 ml orange juice\nshake, up", 1, "passion-fruit-juice"},
		{"35 bitter aperitif\n105 orange juice\nbuild, rocks", 0, "red-bitter-aperitif"},
		{"60 pisco\n30 limón\n20 jarabe\nagitar", 1, "lime-juice"},
		{"50 ron\n25 limón\n20 jarabe\n90 cava", 1, "lemon-juice"},
		{"50 ron\n25 limón\n20 jarabe\nagitar", 1, ""},
		{"50 tequila\n25 limón\n20 zumo de naranja\nagitar", 1, ""},
		{"1 oz bitter\n3 oz prosecco\n1 oz soda\nbuild, rocks", 0, ""},
		{"3 prosecco\n2 orange bitter\n1 soda", 0, ""}, // the aperitif of a spritz, and no dashes
		{"3 cava\n1 sugar cube\n2 orange bitters", 2, "orange-bitters"},
		{"2 oz gin\n2 dashes bitters, orange\n1 oz dry vermouth\nstir, up", 1, "orange-bitters"},
		{"2 oz gin, 3/4 oz lemon, 1/2 oz curacao, orange", 2, "orange-curacao"},
	} {
		s, err := reading.Read(d.text, x)
		if d.id == "" {
			assert.Error(t, err, d.text)
			continue
		}
		if assert.NoError(t, err, d.text) {
			assert.Equal(t, d.id, s.Pours[d.pour].Profile.ID, d.text)
			assert.NotEmpty(t, s.Notes, d.text)
		}
	}
}

// Where English is not written, bars measure in centilitres: common practice, no source.
func TestBareNumbersOfOtherTongues(t *testing.T) {
	x := wholeCatalogue(t)
	for text, unit := range map[string]flavor.Unit{
		"Armagnac 4, citron 2, sucre 1,5":                       flavor.Centilitre,
		"Rhum blanc 5\ncitron vert 2\nsirop de sucre 2":         flavor.Centilitre,
		"Armagnac 4, crème de cacao brune 2, crème fleurette 2": flavor.Centilitre,
		"2 gin, 1 crème de cacao, 1 cream":                      flavor.Ounce,
		"4 gin, 2 crème de cacao, 2 cream":                      flavor.PartUnit,
		"1.5 oz gin, 0.75 Zitrone, 0.5 Zucker":                  flavor.Ounce,
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			for _, p := range s.Pours {
				assert.Equal(t, unit, p.Unit, text)
			}
		}
	}
}

// Several spirits, none of more than two ounces, make one drink of the tropics together; what
// is too much of one, or may be parts, is asked about or read as parts: common practice, no source.
func TestBareNumbersOfBlendedSpirits(t *testing.T) {
	for text, want := range map[string]string{
		"1.5 dark rum\n1.5 white rum\n1 overproof rum\n.75 lime\n.75 grapefruit\n.5 falernum\nshake, crushed": "dark rum 44.36 + white rum 44.36 + overproof rum 29.57 + lime 22.18 + grapefruit 22.18 + falernum 14.79",
		"2 cognac / 1½ white rum / ¾ lemon / ½ orgeat":                                                        "cognac 59.15 + white rum 44.36 + lemon 22.18 + orgeat 14.79",
		"2 cognac / 2 white rum / 1 lemon / 1 orgeat":                                                         "cognac 60 + white rum 60 + lemon 30 + orgeat 30",
	} {
		assert.Equal(t, want, poured(t, text), text)
	}
	for _, text := range []string{
		"2.5 cognac / 1.5 white rum / .75 lemon / .5 orgeat",
		"2 cognac / 2 white rum / 1.5 gin / .75 lemon / .5 orgeat",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "very large", text)
	}
}
