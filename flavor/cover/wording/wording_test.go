package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/cover/wording"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Another drink says so before anything else, and what moved is named.
func TestDifference(t *testing.T) {
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	mixer, err := mix.NewMixer()
	require.NoError(t, err)
	pour := func(text string) (*mix.Drink, *sense.Percept) {
		s, err := catalogue.ReadSpec("", text)
		require.NoError(t, err)
		drink, err := mixer.Mix(&s)
		require.NoError(t, err)
		return drink, catalogue.Space().Percept(&s, drink)
	}
	drink, from := pour("2 oz vodka\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	sweeter, to := pour("2 oz vodka\n1 oz lemon juice\n1 1/2 oz simple syrup\nshake, up")
	mint, _ := pour("2 oz vodka\n1 oz lemon juice\n3/4 oz creme de menthe\nshake, up")

	same := wording.Difference{From: from, To: from}
	assert.Equal(t, "the same drink", same.String())
	moved := wording.Difference{From: from, To: to}
	assert.Contains(t, moved.String(), "sweeter")
	assert.NotContains(t, moved.String(), "another drink")
	other := wording.Difference{From: from, To: to, Another: true, Gone: []sense.Lost{{Material: "lemon juice"}}, Named: []sense.Lost{{Material: "lemon juice"}}, Gained: []flavor.AromaFamily{flavor.Mint}}
	assert.Regexp(t, "^another drink, loses lemon juice, more minty, .*sweeter", other.String())

	lost, gained := wording.Aromas(drink, drink)
	assert.Empty(t, lost)
	assert.Empty(t, gained)
	_, gained = wording.Aromas(drink, mint)
	assert.Contains(t, gained, flavor.Mint)
	lost, _ = wording.Aromas(mint, drink)
	assert.Contains(t, lost, flavor.Mint)
	lost, gained = wording.Aromas(drink, sweeter)
	assert.NotContains(t, append(lost, gained...), flavor.Mint)
}

func TestWhatIsPoured(t *testing.T) {
	b := bartest.New(t)
	gin, soda := b.Bottle(t, "London dry gin"), b.Bottle(t, "soda water")
	for _, c := range []struct{ got, want string }{
		{wording.Part(&flavor.Pour{Profile: gin, Amount: 2, Unit: flavor.Ounce}, false), "2 oz London dry gin"},
		{wording.Part(&flavor.Pour{Profile: soda, Amount: 3, Unit: flavor.Ounce}, true), "3 oz soda water on top"},
		{wording.LeaveOut(flavor.Shake, flavor.Shake), "leave it out"},
		{wording.LeaveOut(flavor.Shake, flavor.Stir), "leave it out and stir"},
		{wording.Moves(soda, 2, flavor.Ounce), ", soda water to 2 oz"},
		{wording.Moves(gin, 2, flavor.Ounce), ", London dry gin to 2 oz (nothing else keeps the balance)"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

// What nothing stands for is named, and nothing is said where there is nothing.
func TestWithout(t *testing.T) {
	egg, bitters := &flavor.Profile{Name: "egg white"}, &flavor.Profile{Name: "aromatic bitters"}
	assert.Empty(t, wording.Without(nil))
	assert.Equal(t, ", and leave out the egg white", wording.Without([]*flavor.Profile{egg}))
	assert.Equal(t, ", and leave out the egg white and aromatic bitters", wording.Without([]*flavor.Profile{egg, bitters}))
}
