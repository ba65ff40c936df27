package jargon_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
)

// A kind of thing and its form name no ingredient, least of all for a guest who must not have
// one of the kind: common practice, no source.
func TestAKindOfThingIsAsked(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	for _, name := range []string{"nut syrup", "nuts syrup", "seed syrup", "nut milk", "berry liqueur", "berries", "spice syrup", "herb liqueur", "flower syrup", "root syrup", "fish", "fruit brandy"} {
		_, err := c.ReadSpec("", "60 ml gin\n20 ml lemon juice\n15 ml "+name+"\nshake")
		assert.Error(t, err, name)
	}
	for name, want := range map[string]string{"nutmeg syrup": "nutmeg-syrup", "tiger nut syrup": "tiger-nut-syrup", "fennel seed syrup": "fennel-syrup", "passion fruit juice": "passion-fruit-juice"} {
		s, err := c.ReadSpec("", "60 ml gin\n20 ml lemon juice\n15 ml "+name+"\nshake")
		require.NoError(t, err, name)
		assert.Equal(t, want, s.Pours[2].Profile.ID)
	}
}
