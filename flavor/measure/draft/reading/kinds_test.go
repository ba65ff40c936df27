package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The kind of several pours may be told once, before them; alone it is the name of a drink as often: common
// practice, no source.
func TestOfOneKind(t *testing.T) {
	for text, want := range map[string]string{
		"rums: white 1 oz, dark 1 oz\nlime 1 oz\nsimple .75 oz\nshake, up":          "30 white-rum, 30 dark-rum, 30 lime-juice, 22 simple-syrup",
		"rum: white 30 ml, dark 30 ml; lime 20 ml; orgeat 15 ml; shake, up":         "30 white-rum, 30 dark-rum, 20 lime-juice, 15 orgeat",
		"50 ml gin\nSyrups: 10 ml cinnamon, 5 ml vanilla\n25 ml lemon\nshake, up":   "50 london-dry-gin, 10 cinnamon-syrup, 5 vanilla-syrup, 25 lemon-juice",
		"liqueurs - peach 20 ml, banana 10 ml; vodka 40 ml; lemon 20 ml; shake; up": "20 peach-liqueur, 10 banana-liqueur, 40 vodka, 20 lemon-juice",
		"Rum: 50 ml gold rum, 20 ml pineapple, 20 ml lime. Shake, up":               "50 gold-rum, 20 pineapple-juice, 20 lime-juice",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}
