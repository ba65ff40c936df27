package reading_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/reading"
)

// and a base: common practice, no source. Where no base stands below, it is one.
func TestTitlesAreNotPoured(t *testing.T) {
	x := wholeCatalogue(t)
	for text, pours := range map[string]int{
		"Cherry 22\n60 ml rye whiskey\n30 ml sweet vermouth\n2 dashes aromatic bitters": 3,
		"Peach 75\n30 ml gin\n15 ml lemon juice\n90 ml prosecco":                        3,
		"Hot egg\n45 ml aged rum\n20 ml honey syrup\n1 whole egg":                       3,
		"Gin 60\n25 ml lemon juice\n20 ml simple syrup":                                 3,
		"Gin 60\nLemon 25\nSimple 20":                                                   3,
		"French 75\n1 oz gin\n1/2 lemon\n1/2 simple\nshake into flute, champagne":       4,
		"Ward 8\nrye 60\nlemon 15\noj 15\ngrenadine 10\nshake coupe":                    4,
		"Wharf 3 Cooler, gin 45, lemon 20, simple syrup 15, soda 60":                    4,
		"Bay 17 Fizz | 45 gin | 20 lemon | 15 simple syrup | 60 soda":                   4,
		"French 75, gin 30, lemon 15, simple syrup 10, champagne 60":                    4,
		"60 gin, 20 lemon, 20 simple syrup, champagne flute":                            3,
		"60 gin, 20 lemon, 20 simple syrup, champagne, flute":                           4,
		"Gin sixty, dry vermouth ten, one dash orange bitters. Stir.":                   3,
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, pours, text)
		}
	}
}

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

// What leads a line may be poured where its amounts stand behind the names: then the draft is
// asked about, and no amount slides to the next name. Where the last amount is one of what is laid
// on the drink, it is a name: common practice, no source.
func TestNoAmountSlidesToTheNextName(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"whisky 40 soda 100 orange twist",
		"whiskey 1.5 ginger ale 4 lime wedge",
		"blorbin 30 tonic 120 lemon peel",
		"tall gate 45 soda 120 lemon twist",
		"zzorb 60 lime 20 tonic top. no booze",
	} {
		_, err := reading.Read(text, x)
		assert.Error(t, err, text)
	}
	for text, pours := range map[string]int{
		"julep 60 bourbon 10 simple 8 mint":      3,
		"daisy 50 tequila 25 lime 20 triple sec": 3,
		"Night gate 50 gin 25 lemon 20 honey":    3,
		"vodka 40 soda 120 lemon peel":           2,
		"Basil gimlet 2 gin .75 lime .75 simple": 3,
	} {
		s, err := reading.Read(text, x)
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, pours, text)
		}
	}
}

// A row of a sheet that begins with the name of the drink keeps that apart from what is poured
// first: common practice, no source.
func TestARowNamesItsDrink(t *testing.T) {
	for text, want := range map[string]string{
		"Pier Lamp\tCitrus vodka\t40\tTriple sec\t15\tLime juice\t15\tShake\tCoupe":                   "Pier Lamp: citrus vodka 40 + triple sec 15 + lime juice 15",
		"Pier Lamp\tWhite rum\t50\tLime juice\t25\tSugar syrup\t20\tMint\t10 leaves\tBuild\tHighball": "Pier Lamp: white rum 50 + lime juice 25 + simple syrup (1:1) 20 + mint 4",
		"0% Lamp\tAlcohol-free cane spirit\t50 ml\tLime juice\t20 ml\tGinger beer\t100 ml":            "0% Lamp: alcohol-free cane spirit 50 + lime juice 20 + ginger beer 100",
		"gin\t50\tlemon juice\t25\tsimple\t20\tshake\tup":                                             ": London dry gin 50 + lemon juice 25 + simple syrup (1:1) 20",
	} {
		out, err := reading.Resolve(draft.Parse(text), wholeCatalogue(t))
		require.NoError(t, err, text)
		require.Empty(t, out.Faults, text)
		var pours []string
		for i := range out.Spec.Pours {
			p := &out.Spec.Pours[i]
			pours = append(pours, fmt.Sprintf("%s %.0f", p.Profile.Name, p.ML))
		}
		assert.Equal(t, want, out.Spec.Name+": "+strings.Join(pours, " + "), text)
		assert.Equal(t, text, out.Draft.String(), "the draft is kept to the letter")
	}
	out, err := reading.Resolve(draft.Parse("Soda\tGin\t50\tLemon juice\t25\tSimple\t20\tshake\tup"), wholeCatalogue(t))
	require.NoError(t, err)
	assert.Empty(t, out.Spec.Name, "what may be poured is no name")
	assert.Contains(t, strings.Join(out.Spec.Notes, "\n"), "“soda”", "and is told")

	out, err = reading.Resolve(draft.Parse("name: No. 2, x 10\n50 ml gin\n25 ml lemon juice\nshake, up"), wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, "No. 2, x 10", out.Spec.Name, "a name by its label heads no table")
}
