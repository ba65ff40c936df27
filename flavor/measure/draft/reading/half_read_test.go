package reading

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What a draft leaves open or tells by the numbers of its name is asked about, and is no smaller drink.
func TestHalfReadDraftsAreAsked(t *testing.T) {
	for text, want := range map[string]string{
		"5:1 gin martini, stirred up with a twist, 1 dash bitters":           "is made of more than",
		"30 gin / 25 gin?? 30 lime juice, 15 simple syrup, shake, up":        "leaves something open",
		"gin 30 t. sec 20 lem 20":                                            "is more than anybody spoons into one drink",
		"60 ml gin\n25 ml lime juice\n20 ml pineapple??\n15 ml simple syrup": "leaves something open",
	} {
		_, err := resolveText(t, text)
		assert.NotEmpty(t, flavor.DataFaultsOf(err), text)
		assert.ErrorContains(t, err, want, text)
	}
}

// Shares of a hundred before the name of a drink that everybody knows belong to that.
func TestSharesBelongToTheName(t *testing.T) {
	s, err := resolveText(t, "50/50 Martini\n45 ml gin\n45 ml sweet vermouth\n2 dashes bitters\nstir, up")
	require.NoError(t, err)
	assert.Equal(t, "50/50 Martini", s.Name)
	assert.Len(t, s.Pours, 3)
	s, err = resolveText(t, "50/50 gin and sweet vermouth\n2 dashes bitters\nstir, up")
	require.NoError(t, err)
	assert.Len(t, s.Pours, 3, "those are pours")
}

// A minus before one amount without a unit is asked about, as with one; where every line has one
// it is a bullet.
func TestAnAmountBelowZeroIsAsked(t *testing.T) {
	for _, text := range []string{"-10 gin\n20 lemon juice\n10 simple syrup\nshake, up", "60 gin\n-10 lemon juice\n10 simple syrup\nshake, up", "-10 ml gin\n20 ml lemon juice\n10 ml simple syrup\nshake, up",
		"-5 gin 20 lime", "-½ oz gin 2 oz lime juice\nshake, up", "60 gin -20 lime juice 20 simple syrup\nshake, up", "-5 gin 20 lime\nshake, up", "-5ml gin 20ml lime juice\nshake, up", "shake, up\n-5 ml gin 20 ml lime juice 10 ml simple syrup"} {
		_, err := resolveText(t, text)
		assert.Error(t, err, text)
	}
	for _, text := range []string{"- 60 gin\n- 20 lemon juice\n- 10 simple syrup\nshake, up", "-60 ml gin\n-20 ml lemon juice\n-10 ml simple syrup\nshake, up", "-60 ml gin -20 ml lemon juice -10 ml simple syrup\nshake, up",
		"60 ml gin -20 ml lemon juice -10 ml simple syrup\nshake, up", "60 gin - 20 lemon juice - 10 simple syrup\nshake, up"} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
	}
}

// A squeeze is a wedge, counted or not: no ounce of juice.
func TestASqueezeIsNoOunce(t *testing.T) {
	for _, of := range []string{"squeeze of lime", "1 squeeze of lime", "1 squeeze lime", "1 small squeeze of lime juice", "squeeze of lime juice"} {
		s, err := resolveText(t, "2 oz gin\n"+of+"\nstir")
		require.NoError(t, err, of)
		require.Len(t, s.Pours, 2, of)
		assert.InDelta(t, 7.4, s.Pours[1].ML, 0.1, of)
	}
}
