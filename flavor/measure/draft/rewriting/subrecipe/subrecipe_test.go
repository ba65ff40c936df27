package subrecipe

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What tells how a syrup is made, or of another version, is found; what pours the drink is not.
// Common practice, no source.
func TestOf(t *testing.T) {
	for text, want := range map[string][]string{
		"50 gin\n20 raspberry syrup\nshake\n\nFor the raspberry syrup:\n200 g raspberries\n200 g sugar": {"For the raspberry syrup:\n200 g raspberries\n200 g sugar"},
		"Honey syrup:\n100 ml honey\n100 ml water\n\nDrink:\n50 gin\n20 honey syrup":                    {"Honey syrup:\n100 ml honey\n100 ml water", "Drink:"},
		"50 gin\n20 honey syrup\nHoney syrup: 2 parts honey, 1 part water\nshake":                       {"Honey syrup: 2 parts honey, 1 part water"},
		"50 gin\n15 honey 3:1 (3 honey 1 water)":                                                        {"(3 honey 1 water)"},
		"50 gin\n15 honey\nhoney 3:1 = 3 honey 1 water":                                                 {"honey 3:1 = 3 honey 1 water"},
		"50 gin\n25 lemon\nsame but mezcal":                                                             {"same but mezcal"},
		"50 gin\n25 lemon\nsyrup: 20 ml":                                                                nil,
		"Syrup: 20 honey\nSpirit: 50 gin":                                                               nil,
		"For the syrup:\n200 g sugar\n200 ml water":                                                     nil, // nothing else is poured
		"For the drink:\n50 gin\n25 lemon":                                                              nil,
	} {
		var got []string
		spans, restated := Of(text)
		for _, s := range spans {
			got = append(got, text[s.Start:s.End])
		}
		assert.Equal(t, want, got, text)
		assert.False(t, restated, text)
	}
	spans, restated := Of("Punch (serves 8)\n12 oz rum\n4 oz lemon\nstir\n(per cup: 1.5 oz rum, .5 oz lemon)")
	assert.True(t, restated)
	assert.Len(t, spans, 4)
}
