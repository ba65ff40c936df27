package role_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/cover/role"
)

// bottles returns a function that finds bottles of the catalogue by id.
func bottles(t *testing.T) func(id string) *role.Bottle {
	t.Helper()
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	cellar := role.NewCellar(catalogue.Space(), nil)
	return func(id string) *role.Bottle {
		p, found := catalogue.ByID(id)
		require.True(t, found, id)
		return cellar.Of(p)
	}
}

// Common practice, no source.
func TestOtherWork(t *testing.T) {
	bottle := bottles(t)
	for _, c := range []struct {
		poured, gone string
		other        bool
	}{
		{"triple-sec", "light-orange-bitter-aperitif", true}, // sweet for bitter
		{"light-orange-bitter-aperitif", "triple-sec", true}, // bitter for sweet
		{"medium-amaro", "red-bitter-aperitif", false},       // bitter for bitter
		{"sweet-vermouth", "medium-amaro", false},            // somewhat bitter
		{"dry-white-wine", "ruby-port", true},                // white for red
		{"tawny-port", "ruby-port", false},                   // port for port
		{"sweet-vermouth", "dry-vermouth", true},             // red for white
		{"bianco-vermouth", "sweet-vermouth", false},         // of one class
		{"dry-white-wine", "prosecco", true},                 // still for sparkling
		{"dry-cider", "prosecco", false},                     // sparkling for sparkling
		{"ginger-beer", "orange-juice", true},                // sparkling for still
		{"lager", "ginger-ale", true},                        // alcohol for a soda
		{"elderflower-liqueur", "creme-de-violette", false},  // sweet for sweet
		{"grapefruit-juice", "orange-juice", false},          // juice for juice
		{"alcohol-free-lager", "lager", false},               // beer for beer
		{"stout", "lager", true},                             // black beer for pale
		{"lager", "stout", false},                            // pale for black, where there is no other
		{"porter", "stout", false},                           // black for black
		{"dry-white-wine", "red-wine", true},                 // white for red
		{"coffee-liqueur", "creme-de-cacao", false},          // a little bitter
		{"fernet", "creme-de-menthe", true},                  // bitter for sweet
		{"yellow-herbal-liqueur", "gentian-aperitif", true},  // hardly bitter for bitter
		{"gentian-liqueur", "white-bitter-aperitif", false},  // bitter for bitter
		{"tonic-water", "sparkling-lemonade", true},          // bitter for sweet
		{"cola", "coffee", true},                             // sparkling for still
		{"cold-brew", "coffee", false},                       // coffee for coffee
	} {
		assert.Equal(t, c.other, role.OtherWork(bottle(c.poured), bottle(c.gone)), "%s for %s", c.poured, c.gone)
	}
}

func TestDyed(t *testing.T) {
	bottle := bottles(t)
	for id, dyed := range map[string]bool{"blue-curacao": true, "triple-sec": false, "red-bitter-aperitif": false, "coffee-liqueur": false, "grenadine": false} {
		assert.Equal(t, dyed, bottle(id).Dyed(), id)
	}
}

// Near twins smell alike, whatever their strength; far bottles do not. Common practice,
// no source.
func TestApart(t *testing.T) {
	bottle := bottles(t)
	apart := func(a, b string) float64 {
		return role.Apart(&bottle(a).Smell, &bottle(b).Smell, 0, math.Inf(1))
	}
	const rounding = 1e-9
	for _, id := range []string{"bourbon", "triple-sec", "lemon-juice", "fernet"} {
		assert.InDelta(t, 0, apart(id, id), 1e-6, id)
		for _, other := range []string{"rye-whiskey", "orange-curacao", "lime-juice", "mint-fernet"} {
			assert.GreaterOrEqual(t, apart(id, other), 0.0)
			assert.LessOrEqual(t, apart(id, other), math.Sqrt2+rounding)
		}
	}
	for _, c := range []struct{ near, of, far string }{
		{"rye-whiskey", "bourbon", "mezcal"}, {"orange-curacao", "triple-sec", "coffee-liqueur"},
		{"lime-juice", "lemon-juice", "tomato-juice"}, {"mint-fernet", "fernet", "peach-liqueur"},
	} {
		assert.Less(t, apart(c.near, c.of), apart(c.far, c.of), "%s is nearer to %s than %s", c.near, c.of, c.far)
	}
	assert.True(t, bottle("simple-syrup").Smell.Plain())
	assert.True(t, bottle("vodka").Smell.Plain())
	assert.False(t, bottle("absinthe").Smell.Plain())
}
