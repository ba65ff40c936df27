package everyday

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/names/naming"
)

// passed is what of a text pours nothing beside some pours.
func passed(text string, names ...string) []string {
	shelf := drafttest.Bar()
	var pours []flavor.Pour
	for _, n := range names {
		pours = append(pours, flavor.Pour{Profile: shelf[n], Match: flavor.Match{Asked: n}})
	}
	var out []string
	for _, c := range Clauses(text, pours, naming.NewResolver(shelf)) {
		out = append(out, text[c.At.Start:c.At.End])
	}
	return out
}

func TestWord(t *testing.T) {
	for _, w := range []string{"guest", "guests", "loved", "tried", "trying", "biggest", "kindly", "happiness", "who's", "boss's", "came", "written", "corridor", "laminator", "vividly"} {
		assert.True(t, Word(w), w)
	}
	for _, w := range []string{"", "umeboshi", "galangal", "sherbet", "saffron", "half", "ounce", "lemon", "guestly-ish", "blend", "extra", "base", "irish", "jamaican"} {
		assert.False(t, Word(w), w)
	}
}

// What is said in everyday words pours nothing: common practice, no source.
func TestClausesThatPourNothing(t *testing.T) {
	for _, text := range []string{
		"guests keep asking for this one", "perfect for the terrace", "price still to be decided", "credit: Marta", "Priya came up with this",
		"a touch too dry for me", "still not happy with the balance", "version two", "might go sweeter next time",
		// it names something in a sentence that pours nothing
		"could work with gin too", "might swap for gin next week", "Sam prefers gin", "my mum likes hers with gin", "goes well with the gin", "for the gin drinkers",
		// it likens the drink to anything
		"reminds me of lemon sherbet", "almost like eating an orange", "halfway between a sour and a highball",
		// its numbers count, rate, date, price or refer
		"1 shaker, 1 jigger, recipe card", "8 judges on 12 May", "approx 140 covers", "score 7/10", "2/2 marks", "table 1-14 only", "19 March", "25 Jan", "£4", "double +£4", "spicy +$1",
		"bar opens at 5:30", "stop using the 3 year old bottle from shelf 2", "no more than two per guest", "2 shot glasses", "$6", "page 8", "the 2nd version", "since 2019", "40 bookings tonight",
		"3/11 tasting notes", "made 02/11 by Tess", "notebook, p. 12", "lime 8/10", "team score 7, 8, 8, 6", "6.50", "delivery tmrw 9.00", "we have 9 btl",
		// it names people
		"Lena loves it", "ask Tomek before you change the menu", "Priya's night off", "the laminator is at Marcus's",
		// it greets somebody, or says where something is written
		"hi team", "thanks, M.", "cheers all", "umeboshi see p. 8", "lemon sherbet see overleaf",
	} {
		assert.Equal(t, []string{text}, passed(text), text)
		assert.Equal(t, []string{text}, passed("2 oz gin, shaken ("+text+")"), text)
	}
	assert.Equal(t, []string{"the gin ties it together"}, passed("the gin ties it together", "gin"), "what is poured may be named again")
}

// What may pour, change or make something stays, and so does a word that nobody here knows.
func TestClausesThatStay(t *testing.T) {
	for _, text := range []string{
		"umeboshi", "the umeboshi from Monday", "gin", "with gin", "guest wants gin", "gin goes in last", "add the usual", "instead of this", "without the good one", "half of that",
		"same again", "more for me", "twice this", "each guest", "simple to taste", "a splash of something", "shake", "served up", "over ice", "soda on the side", "gin not this",
		"3", "20", "7½", "umeboshi 3", "3 umeboshi", "1 velvet", "60 house", "2 dark", "30 well", "3 drops", "1 jigger", "2 cans", "a bottle of something", "3 bottles", "2 parts", "for 2 guests", "4 people",
		"1/2 measure", "3/4", "20 %", "2:1", "house blend", "the usual mix", "secret base", "lose the foam", "ditch the second one", "bin that", "kill the top", "hold it", "hi umeboshi", "see umeboshi",
		"double", "umeboshi +", "2 oz umeboshi +£4", "splash of umeboshi +£1", "2 per shaker",
		"with Fernandina", "Fernandina goes in last", "Fernandina calls for it", "3/4 umeboshi", "umeboshi 8/10", "3/11 oz", "house 6.50", "velvet 7.50", "1.25", "umeboshi 6.50", "9 btl", "same again", "0.5",
		"shaved choc", "chery", "3 bns", // the service is said behind them
		"nuts", "with dairy", "the eggs are here", "crushed nuts all over", "milk", "fish", "contains nuts", "sesame", "a little soy goes round",
		"sweet", "verdant", "smoky and verdant", "dark and light", "needs gin", "should have gin", "not this one", "for two", "2 guests", "Fernandina first", "guests love it with gin",
	} {
		assert.Empty(t, passed(text), text)
	}
	assert.Empty(t, passed("2 oz rum, sweet"), "it may tell which bottle is meant")
	assert.Empty(t, passed(strings.Repeat("guests love it\n", 1+mostText/15)), "too long for a note of one drink")
}

// What is laid on a drink is told behind the service and behind every amount.
func TestWhatIsLaidOnIt(t *testing.T) {
	for text, want := range map[string]string{
		"2 oz gin\nshake, coupe, shaved choc": "shaved choc", "2 oz gin. Shake, up. Basil leaf flat on top.": "Basil leaf flat on top", "2 oz gin\nstir, up, chery": "chery",
		"2 oz gin\nshaved choc\nshake, up": "", "2 oz gin\nshake, up, shaved choc, 1 oz lemon": "", "2 oz gin\nshake, up, umeboshi": "", "2 oz gin\nshake, shake, up": "",
	} {
		shelf, got := drafttest.Bar(), ""
		for _, c := range Clauses(text, nil, naming.NewResolver(shelf)) {
			if c.Laid {
				got += text[c.At.Start:c.At.End]
			}
		}
		assert.Equal(t, want, got, text)
	}
}

// A step of a recipe names again what is listed.
func TestStepsNameAgain(t *testing.T) {
	assert.Equal(t, []string{"Add the gin and lemon juice to a shaker"}, passed("2 oz gin\n1 oz lemon juice\nAdd the gin and lemon juice to a shaker", "gin", "lemon juice"))
	assert.Equal(t, []string{"gin and lemon juice"}, passed("2 oz gin\n1 oz lemon juice\nShake the gin and lemon juice hard", "gin", "lemon juice"), "how it is made stays")
	assert.Equal(t, []string{"gin, lemon juice and simple syrup,"}, passed("2 oz gin\n1 oz lemon juice\n1 oz simple syrup\n3 oz soda\nshake gin, lemon juice and simple syrup, strain over ice, top with soda", "gin", "lemon juice", "simple syrup", "soda"), "what it is filled up with stays")
	assert.Empty(t, passed("2 oz gin\nAdd the gin and lemon juice to a shaker", "gin"), "not all of it is poured")
	assert.Empty(t, passed("2 oz gin\nAdd a splash of gin to a shaker", "gin"), "a measure")
}
