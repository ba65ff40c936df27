package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// What a draft tells of a guest is no name of the drink, and holds what is poured to account.
func TestGuestsWithAnAllergy(t *testing.T) {
	const pours = "\n2 oz tequila, 1 oz lime, .75 simple, shake"
	for _, head := range []string{"NUT ALLERGY!!", "allergy: sesame", "guest allergy sesame??"} {
		s, err := reading.Read(head+pours, wholeCatalogue(t))
		require.NoError(t, err, head)
		assert.Empty(t, s.Name, head)
		assert.NotEmpty(t, s.Steps, head)
	}
	for _, text := range []string{
		"nut allergy\n2 oz rum, 1 oz lime, .75 orgeat, shake", "2 oz rum, 1 oz lime, .75 orgeat, shake. guest is allergic to nuts",
		"ALLERGY: egg, nuts\n2 oz gin, 1 oz lemon, 1 oz simple, 1 egg white, shake",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.ErrorContains(t, err, "tells of a guest", text)
	}
}

// A step that works something into the drink pours it: herbs once, the rest is asked for.
func TestWhatStepsWorkIn(t *testing.T) {
	const pours = "2 oz gin, .75 lime, .75 simple, "
	for making, want := range map[string]string{
		"shake with mint, up": "mint", "shake with a little basil, up": "basil", "muddle mint, shake, up": "mint", "shake w/ ice and mint leaves, up": "mint",
		"8 mint leaves, shake with mint, up": "mint", "8 mint leaves, muddle lime + mint, shake, up": "mint", "shake with a grapefruit peel, up": "",
	} {
		s, err := reading.Read(pours+making, wholeCatalogue(t))
		require.NoError(t, err, making)
		herbs := []string{}
		for _, p := range s.Pours[3:] {
			herbs = append(herbs, p.Profile.Name)
		}
		if want == "" {
			assert.Empty(t, herbs, making)
		} else {
			assert.Equal(t, []string{want}, herbs, making)
		}
	}
	for _, making := range []string{"shake with cucumber, up", "blend with frozen mango, up"} {
		_, err := reading.Read(pours+making, wholeCatalogue(t))
		assert.Error(t, err, making)
	}
}

// The number 86 says that something has run out.
func TestWhatHasRunOut(t *testing.T) {
	for _, text := range []string{"can we 86 the mint? so 50 white rum, 25 lime, 20 sugar, soda", "50 white rum, 25 lime, 20 sugar, soda. 86 the mint", "86: mint\n50 white rum\n25 lime\n20 sugar\nsoda"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 4, text)
	}
	for _, text := range []string{"50 rum, 25 lime, 20 sugar, soda. 86 mint", "50 rum, 25 lime, 20 sugar, 6 mint leaves, soda. 86 the mint"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
