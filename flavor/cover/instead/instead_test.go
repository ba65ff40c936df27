package instead

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
)

// The nearest drink of a menu is one that can be poured, and the nearer of two.
func TestNearestOnTheMenu(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	space := d.Catalogue.Space()
	var menu []*flavor.Spec
	for _, text := range []string{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up",
		"2 oz vodka\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", "3 oz red wine\n1 oz cola\nbuild, rocks"} {
		menu = append(menu, d.Spec(t, text))
	}
	asked := d.Spec(t, "2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	percept := func(s *flavor.Spec) *sense.Percept {
		drink, err := d.Mixer.Mix(s)
		require.NoError(t, err)
		return space.Percept(s, drink)
	}
	mixed := Mix(d.Mixer, space, menu)
	got, err := mixed.Nearest(asked, &guest.Guest{}, func(*flavor.Profile) bool { return true })
	require.NoError(t, err)
	want := math.Inf(1)
	for _, s := range menu {
		steps := sense.Between(percept(asked), percept(s))
		want = min(want, steps.Total())
	}
	assert.InDelta(t, want, got.Distance, 1e-9)
	noSuch := func(p *flavor.Profile) bool { return p.ID != got.Spec.Pours[0].Profile.ID }
	other, err := mixed.Nearest(asked, &guest.Guest{}, noSuch)
	require.NoError(t, err)
	assert.NotEqual(t, got.Spec, other.Spec)
	assert.Greater(t, other.Distance, got.Distance)
	none, err := mixed.Nearest(asked, &guest.Guest{NoAlcohol: true}, func(*flavor.Profile) bool { return true })
	require.NoError(t, err)
	assert.Nil(t, none)
}
