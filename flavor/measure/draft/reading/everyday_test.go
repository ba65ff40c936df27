package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// What is said beside the pours in everyday words changes none of them, wherever it stands, and is
// noted: common practice, no source.
func TestEverydayWordsPourNothing(t *testing.T) {
	const listed = "Halyard\n50 ml gin\n25 ml lemon juice\n20 ml honey syrup\nshake, coupe"
	want := poured(t, listed)
	for _, said := range []string{
		"perfect for the terrace", "Price still to be decided", "might swap for mezcal next week", "my mum likes hers with vodka", "the honey ties it together",
		"our 8 judges met on 12 May", "score 7/10", "doors open at 5:30", "stop using the 3 year old bottle from shelf 2", "no more than two per guest", "the laminator is broken", "honey sherbet see p. 8",
		"reminds me of lemon sherbet", "glasses are in the cupboard", "for people who say they hate gin",
	} {
		for _, text := range []string{
			said + "\n" + listed, listed + "\n" + said, listed + " (" + said + ")", listed + " - " + said, listed + ". " + said + "!",
			strings.Replace(listed, "\n25", "\n"+said+"\n25", 1),
		} {
			assert.Equal(t, want, poured(t, text), text)
			s, err := reading.Read(text, wholeCatalogue(t))
			require.NoError(t, err, text)
			kept := strings.Join(append(append(s.Notes, s.Steps...), s.Name), "; ")
			assert.Contains(t, strings.ToLower(kept), strings.ToLower(said), text)
		}
	}
}

// What may be poured, or may change a pour, is asked: common practice, no source.
func TestWordsThatMayPourAreAsked(t *testing.T) {
	for _, said := range []string{"umeboshi", "tinkerbell and moonlight", "vodka instead", "with mezcal", "guest wants mezcal", "mezcal goes in last", "half of that",
		"3", "20", "umeboshi 3", "3 umeboshi", "60 house", "1 velvet", "a bottle of something", "2 measures", "umeboshi +", "3 grinds of umeboshi", "house blend", "the usual mix",
		"lose the honey", "skip the lemon", "ditch the honey syrup", "bin the gin", "swap the lemon", "double the honey", "hold the lemon this time", "make it a double", "the honey has to go", "the lemon is out",
		"contains nuts", "with almonds", "crushed nuts all over",
		"2 oz umeboshi +£4", "see umeboshi",
	} {
		_, err := reading.Read("Halyard\n50 ml gin\n25 ml lemon juice\n"+said+"\n20 ml honey syrup\nshake, coupe", wholeCatalogue(t))
		assert.Error(t, err, said)
	}
}

// A phrase for what is laid on a drink is kept as its garnish, and said: common practice, no source.
func TestPhrasesOfWhatIsLaidOnADrink(t *testing.T) {
	const listed = "Halyard\n50 ml gin\n25 ml lemon juice\n20 ml honey syrup\nshake, coupe"
	want := poured(t, listed)
	for _, said := range []string{"shaved choc", "chery", "3 bns", "a green cherry sunk", "basil leaf flat on top", "three caperberries on a stick"} {
		text := listed + ", " + said + "\nguests keep asking for the laminated one"
		assert.Equal(t, want, poured(t, text), text)
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Contains(t, s.Garnish, said)
	}
}

// What is set aside above the pours makes no name of a pour, and does not hide what it says of them: common
// practice, no source.
func TestHeadingsThatRefer(t *testing.T) {
	const listed = "50 ml gin\n25 ml lemon juice\n20 ml honey syrup\nshake, coupe"
	want := poured(t, listed)
	for _, head := range []string{"DEV 7 / 19 March", "notebook, p. 12", "3/11 tasting notes", "Dear all,", "Ticket 0817 21:42 BAR 2", "Hi team,"} {
		assert.Equal(t, want, poured(t, head+"\n"+listed), head)
		s, err := reading.Read(head+"\nHalyard\n"+listed, wholeCatalogue(t))
		require.NoError(t, err, head)
		assert.Equal(t, "Halyard", s.Name, head)
	}
	for _, text := range []string{"0.0 | Halyard\n" + listed, "3/11 tasting notes\nvodka\n" + listed, "3/11 tasting notes\numeboshi\n" + listed} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// What stands at the end and may be poured is asked, though nobody knows it: common practice, no source.
func TestWhatMayGoInAtTheEndIsAsked(t *testing.T) {
	const listed = "Halyard\n50 ml gin\n25 ml lemon juice\n20 ml honey syrup\nshake, coupe\n"
	for _, said := range []string{"and the umeboshi, obviously", "with nuts", "plus almonds", "umeboshi goes in last", "actually skip the honey", "we skip the lemon", "the honey has to go"} {
		_, err := reading.Read(listed+said, wholeCatalogue(t))
		assert.Error(t, err, said)
	}
}

// The steps of a recipe pour no more than its list: common practice, no source.
func TestStepsOfARecipePourNoMore(t *testing.T) {
	const listed = "6 cl tequila reposado\n2 cl licor de naranja\n2 cl jarabe de agave\n"
	want := poured(t, listed+"shake")
	for _, steps := range []string{
		"Combine tequila, naranja and agave in a shaker.\nShake with ice.\nStrain into a glass.",
		"Start with the tequila reposado, then the licor de naranja and jarabe de agave. Finish with ice and shake.",
	} {
		assert.Equal(t, want, poured(t, listed+steps), steps)
	}
	_, err := reading.Read(listed+"Combine tequila, naranja and mezcal in a shaker.", wholeCatalogue(t))
	assert.Error(t, err, "what no line pours")
}

// What a drink goes well with is no pour of it: common practice, no source.
func TestWhatGoesWithADrinkIsAsked(t *testing.T) {
	_, err := reading.Read("50 ml gin\n25 ml lemon juice\n20 ml honey syrup\nshake, coupe. Nice with a small beer.", wholeCatalogue(t))
	assert.ErrorContains(t, err, "stand beside the drink")
}
