package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
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

// A title pours nothing above a list, a lone minus is asked about, and what steps say of pours they have.
func TestWhatIsNotPouredSilently(t *testing.T) {
	for _, text := range []string{"whiskey sour, egg\n2 oz bourbon\n3/4 lemon\n3/4 simple\nshake, rocks", "-10 gin, 20 lemon, 20 simple"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	for _, text := range []string{"-10 gin\n-20 lemon\n-20 simple", "gin -50 ml\nlemon -20 ml"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.NoError(t, err, text)
	}
	s, err := reading.Read("2 oz bourbon\n3 oz black tea\n.75 lemon\n.5 honey syrup\nshake the tea, lemon and honey, top", wholeCatalogue(t))
	require.NoError(t, err)
	for _, p := range s.Pours {
		assert.False(t, p.After, p.Profile.Name)
	}
	assert.Equal(t, "gin 59.15 + lime 29.57 + mint sprigs 12", poured(t, "2 oz gin, 1 oz lime, mint sprigs x6"))
	s, err = reading.Read("2 oz vodka, 1 oz lime, served frozen", wholeCatalogue(t))
	require.NoError(t, err)
	assert.Equal(t, flavor.Blend, s.Method)
}

// Of a bottle that nobody knows the reader says which kinds such drinks have.
func TestWhatAnUnknownBottleMayBe(t *testing.T) {
	for text, kind := range map[string]string{
		"1 gin 1 Rossarolo 1 sweet verm": "red bitter aperitif", "Last word: gin 22, Grenoblaise 22, maraschino 22, lime 22": "green herbal liqueur", "50 tequila 25 Angevine 25 lime": "triple sec",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		var faults flavor.DataFaults
		require.ErrorAs(t, err, &faults, text)
		require.NotEmpty(t, faults[0].Suggest, text)
		assert.Equal(t, kind, faults[0].Suggest[0], text)
	}
}

// An amount of each that nothing takes is asked about, the strength of a syrup told in words counts, and what
// steps deny is not assumed.
func TestWhatStandsBesidePours(t *testing.T) {
	for _, text := range []string{"0.5 stout\n0.5 champagne\n90 ml each", "1 oz gin\n1 oz dry vermouth\n90 ml each", "Black Velvet: half stout half champagne, 90ml each"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	for text, last := range map[string]string{
		"2oz bourbon; ¾oz lemon; ¾oz honey syrup (3 parts honey to 1 part water); shake": "honey syrup (3:1)",
		"2 gin .75 lemon .75 honey syrup (3:1) shake n strain into coupe n thats all":    "honey syrup (3:1)",
		"2oz bourbon, ¾oz lemon, ¾oz simple (2 parts sugar to 1 water), shake":           "rich simple syrup (2:1)",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, last, s.Pours[2].Profile.Name, text)
	}
	for _, text := range []string{"70ml gin, 10ml dry vermouth, no ice, no stir", "60 vodka, 1 lime cut in wedges, 2 tsp sugar, muddle, crushed ice"} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, flavor.Build, s.Method, text)
	}
	s, err := reading.Read("for the oldies: Wallbanger 45 vodka / 90 OJ / 15 vanilla anise liq float", wholeCatalogue(t))
	require.NoError(t, err)
	assert.True(t, s.Pours[2].After)
}

// Who asks whether an amount should change has not changed it, and what is poured long is not dashed.
func TestWhatIsOnlyAsked(t *testing.T) {
	for _, text := range []string{"gin 50, lemon 25, simple 20. drop lemon to 20?", "rye 40, fino 10, maple 5. too sweet, drop the maple to 3?"} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
	assert.Equal(t, "gin 50 + lemon 20 + simple 20", poured(t, "gin 50, lemon 25, simple 20. drop lemon to 20"))
	assert.Equal(t, "vodka 44.36 + clam tomato juice 147.87", poured(t, "1.5 vodka, 5 clam tomato juice"))
	assert.Equal(t, "vodka 59.15 + bloody mary mix 88.72", poured(t, "2 vodka, 3 bloody mary mix"))
	assert.Equal(t, "vodka 50 + double espresso 60", poured(t, "50ml vodka, 1 double espresso"))
}
