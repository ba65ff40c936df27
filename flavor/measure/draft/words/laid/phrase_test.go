package laid

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/measure/draft/words/token"
)

// What is laid on a drink, by the words of bars: common practice, no source.
func TestPhrase(t *testing.T) {
	known := func(w string) bool { return w == "chewy" }
	for text, want := range map[string]bool{
		"shaved choc": true, "chery": true, "cherrry": true, "3 bns": true, "mint": true, "a green cherry sunk": true, "three caperberries on a stick": true, "basil leaf flat on top": true,
		"grated nutmeg": true, "dehydrated lime wheel": true, "pickle on top": true, "one raspberry": true, "2 olives on a pick": true, "candied ginger": true, "torched rosemary sprig": true, "lemon slice": true,
		"charred pineapple": true, "long orange twist expressed and discarded": false, "orange twist expressed": true, "a thick slice of lemon": true, "half fig": false, "half passionfruit": false,
		// it may be poured, or nobody knows it
		"lime": false, "ginger": false, "choc": false, "chocolate": false, "2 lime": false, "candied": false, "on top": false, "umeboshi": false, "umeboshi on top": false, "cherry umeboshi": false, "chewy": false,
		"8 mint": false, "8 mint leaves": false, "5 raspberries": false, "1.5 raspberries": false, "shaved umeboshi": false, "grated ginger syrup": false, "crushed nuts": false, "dust": false, "": false,
		"cherry liqueur": false, "olive brine": false, "chery 20": false, "20 chery": false, "mint & umeboshi": false, "sherry": false,
	} {
		assert.Equal(t, want, Phrase(token.Lex(nil, text, 0, len(text)), known), text)
	}
}
