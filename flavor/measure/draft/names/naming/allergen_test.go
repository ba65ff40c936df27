package naming_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/index"
)

// Who writes that something is in a bottle pours none that is without it.
func TestWhatIsWrittenIsNoBottleWithoutIt(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	x, err := index.New(c.Profiles())
	require.NoError(t, err)
	b := naming.NewResolver(x)
	for _, n := range []string{
		"nut falernum syrup", "falernum syrup with almond", "worcestershire sauce with fish", "dairy cream liqueur", "cochineal red bitter",
		"caffeinated espresso", "caffeinated coffee", "sugar cola",
	} {
		assert.Nil(t, b.Find(n, naming.PlaceOf(flavor.Ounce, 1, false)).Profile, n)
	}
	for _, n := range []string{"nut-free falernum syrup", "decaf espresso", "diet cola", "dairy-free cream liqueur", "plant coloured red bitter"} {
		assert.NotNil(t, b.Find(n, naming.PlaceOf(flavor.Ounce, 1, false)).Profile, n)
	}
}
