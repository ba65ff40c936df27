package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
)

// A recipe as a page prints it is read as its list; the prose says how it is made. The pages are
// invented; that prose names shortly what the list names in full is common practice, no source.
func TestRecipesOnAPage(t *testing.T) {
	x := wholeCatalogue(t)
	for name, c := range map[string]struct {
		text    string
		pours   string
		method  flavor.Method
		service flavor.Service
		steps   int
	}{
		"headnote, headings, steps": {"Pier Sour\n\nBright, short and a little wicked.\n\nIngredients\n2 oz gin\n1 oz lemon juice, freshly squeezed\n3/4 oz simple syrup\n\nMethod\n1. Add the gin, lemon and syrup to a shaker with ice.\n2. Shake hard for 12 seconds.\n3. Strain into a chilled coupe.",
			"london-dry-gin lemon-juice simple-syrup", flavor.Shake, flavor.Up, 3},
		"marks of a heading, a table": {"# Raspberry Pier\n\n*This makes one.*\n\n| | |\n|---|---|\n| London dry gin | 60 ml |\n| lime juice | 20 ml |\n| raspberry syrup | 20 ml |\n\n## Instructions\n\n1. Shake all with ice.\n2. Double-strain into a cold coupe.",
			"london-dry-gin lime-juice raspberry-syrup", flavor.Shake, flavor.Up, 2},
		"a note below a mark": {"Basil Pier\n\n• 50 ml vodka\n• 20 ml lime juice\n• 15 ml basil syrup†\n\n1. Add all with ice, shake.\n2. Fine-strain into an ice-filled rocks glass.\n\n† Basil syrup: blanch 30 g basil, blend with 250 ml simple syrup, strain.",
			"vodka lime-juice basil-syrup", flavor.Shake, flavor.Rocks, 2},
		"a gentle stir behind the soda": {"Pier Fizz\nCreated for the spring list\n\n45 ml gin\n20 ml lemon juice\n20 ml simple syrup\n60 ml soda water\n\nShake all but the soda with ice. Strain into a highball over fresh ice. Top with the soda and stir gently.",
			"london-dry-gin lemon-juice simple-syrup soda-water", flavor.Shake, flavor.Long, 3},
		"soda measured in the prose": {"Cassis Pier\n\n35 ml crème de cassis\n25 ml dry vermouth\nSoda water\n\nFill a tall glass with ice. Pour in the cassis and vermouth, then top with about 100 ml soda.",
			"creme-de-cassis dry-vermouth soda-water", flavor.Build, flavor.Long, 1},
	} {
		s, err := reading.Read(c.text, x)
		require.NoError(t, err, name)
		ids := ""
		for _, p := range s.Pours {
			ids += " " + p.Profile.ID
		}
		assert.Equal(t, c.pours, ids[1:], name)
		assert.Equal(t, c.method, s.Method, name)
		assert.Equal(t, c.service, s.Service, name)
		assert.Len(t, s.Steps, c.steps, "%s: %q", name, s.Steps)
	}
}

// What the prose of a page pours, changes or asks beside the list is not lost: it is poured or asked
// about.
func TestProseThatPoursIsNotLost(t *testing.T) {
	const list = "Pier Manhattan\n\nDark and warm.\n\n2 oz rye whiskey\n1 oz sweet vermouth\n\n"
	x := wholeCatalogue(t)
	for _, steps := range []string{
		"1. Stir with ice and 2 dashes aromatic bitters.\n2. Strain into a coupe.",
		"1. Stir with ice.\n2. Strain into a coupe rinsed with absinthe.",
		"1. Stir with ice.\n2. Strain into a coupe and float 1/4 oz mezcal.",
		"1. Stir with ice.\n2. Strain into a highball, top with ginger beer.",
		"1. Leave out the vermouth. Stir with ice.\n2. Strain into a coupe.",
		"1. Stir with ice.\n2. Strain into a coupe. Skip the vermouth.",
	} {
		s, err := reading.Read(list+steps, x)
		if err == nil {
			assert.True(t, len(s.Pours) > 2 || s.Pours[0].ML < 59, "%q: %v", steps, s.Pours)
		}
	}
}

// A bracket that says an amount another way is none.
func TestBracketsThatSayAnAmountAnotherWay(t *testing.T) {
	s, err := reading.Read("60 ml gin\n25 ml lemon juice (about half a lemon)\n20 ml simple syrup\n1 cup ice (about 150 g)", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Len(t, s.Pours, 3)
	_, err = reading.Read("60 ml gin\n25 ml lemon juice (about half a lime)\n20 ml simple syrup (roughly 10 ml mezcal)", wholeCatalogue(t))
	assert.Error(t, err, "another ingredient")
}
