package reading

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

const sourBelow = "2 oz gin\n1 oz lemon juice\n1 oz simple\nshake, up\n"

// What stands behind the label of a top note or a garnish is kept as it is written, and what may as well be
// poured is said to be left out of the drink.
func TestATopNoteIsKept(t *testing.T) {
	for line, kept := range map[string]string{
		"Top note: sweet vermouth mist": "sweet vermouth mist", "Top note: soda mist": "soda mist", "top note - mint": "mint", "Topnote: 2 spritzes sweet vermouth": "2 spritzes sweet vermouth", "Garnish: spritz of sweet vermouth and a lemon twist": "spritz of sweet vermouth and a lemon twist",
	} {
		s, err := resolveText(t, sourBelow+line)
		require.NoError(t, err, line)
		assert.Len(t, s.Pours, 3, line)
		assert.Equal(t, kept, s.Garnish, line)
		assert.Equal(t, !strings.Contains(line, "mint"), strings.Contains(strings.Join(s.Notes, "\n"), "its amount is not counted"), line)
	}
}

// What is measured by the jigger is no garnish: nobody can tell whether it is poured.
func TestAGarnishThatPoursIsAsked(t *testing.T) {
	for _, text := range []string{sourBelow + "Garnish: float 15 ml sweet vermouth", "Garnish: float 15 ml sweet vermouth\n" + sourBelow, sourBelow + "garnish: top with 1 oz soda water"} {
		_, err := resolveText(t, text)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, text)
		assert.Contains(t, faults[0].Message, "where the garnish is told", text)
	}
	s, err := resolveText(t, "Garnish: lemon twist, 2 oz gin, 1 oz lemon juice, shake")
	require.NoError(t, err)
	assert.Len(t, s.Pours, 2)
}

// A glass that is rinsed pours what it is rinsed with, whatever label it stands behind.
func TestARinsedGlassPours(t *testing.T) {
	for _, text := range []string{
		"Glass: Sweet vermouth rinsed coupe\n" + sourBelow, sourBelow + "Glass: Sweet vermouth rinsed coupe", sourBelow + "glass: coupe, rinsed with sweet vermouth", sourBelow + "coupe rinsed with sweet vermouth",
		sourBelow + "sweet vermouth rinse",
	} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		require.Len(t, s.Pours, 4, text)
		at := 3
		if strings.HasPrefix(text, "Glass") {
			at = 0
		}
		assert.Equal(t, flavor.Rinse, s.Pours[at].Unit, text)
		assert.Equal(t, "Sweet vermouth", s.Pours[at].Profile.Name, text)
	}
}

// A mist is a mist wherever it falls.
func TestAMistOverTheTopIsASpritz(t *testing.T) {
	s, err := resolveText(t, sourBelow+"sweet vermouth mist over the top")
	require.NoError(t, err)
	require.Len(t, s.Pours, 4)
	assert.Equal(t, flavor.Spritz, s.Pours[3].Unit)
}
