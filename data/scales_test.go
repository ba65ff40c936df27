package data

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Which of two is the more bitter as it is served: common practice, no source.
func TestBitternessIsOnOneScale(t *testing.T) {
	c := loadCatalogue(t)
	for _, ladder := range [][]string{
		{"espresso", "tonic-water", "coffee", "black-tea", "chamomile-tea"},
		{"ristretto", "espresso", "moka-coffee", "coffee", "cold-brew"},
		{"fernet", "medium-amaro", "sweet-vermouth", "white-quinquina", "dry-vermouth"},
		{"quinquina", "sweet-vermouth"},
		{"india-pale-ale", "pale-ale", "pilsner", "lager", "wheat-beer"},
		{"gentian-tincture", "gentian-bitters", "aromatic-bitters", "orange-bitters"},
		{"hop-tincture", "coffee-tincture", "orange-peel-tincture"},
		{"sour-orange-juice", "grapefruit-juice", "lime-juice", "orange-juice"},
		{"red-bitter-aperitif", "light-orange-bitter-aperitif"},
	} {
		for i := range ladder[1:] {
			more, ok := c.ByID(ladder[i])
			require.True(t, ok, ladder[i])
			less, ok := c.ByID(ladder[i+1])
			require.True(t, ok, ladder[i+1])
			assert.Greater(t, more.Bitter.Value, less.Bitter.Value, "%s is more bitter than %s", more.Name, less.Name)
		}
	}
	pink, _ := c.ByID("pink-grapefruit-juice")
	white, _ := c.ByID("grapefruit-juice")
	assert.InDelta(t, white.Bitter.Value, pink.Bitter.Value, white.Bitter.Spread, "their naringin is alike: USDA Flavonoid Database 3.3")
}

// A drink that goes without sugar tastes about as sweet as the one it stands
// for, and sugars that hardly sweeten count for less than they weigh.
func TestSweetness(t *testing.T) {
	c := loadCatalogue(t)
	for _, x := range []struct {
		id        string
		low, high float64 // g/L of sucrose
	}{
		{"diet-tonic-water", 70, 100},
		{"diet-ginger-ale", 70, 100},
		{"diet-cola", 80, 110},
		{"corn-syrup", 400, 470}, // 42 dextrose equivalents, about 0.42 of 1,106 g/L; relative sweetness from memory
		{"condensed-milk", 550, 680},
		{"honey", 1080, 1260}, // as sweet as the sucrose of its weight of sugars: Public Health Nutrition 26:952, 2023
		{"whole-milk", 10, 25},
		{"vodka", 0, 2},
	} {
		p, ok := c.ByID(x.id)
		require.True(t, ok, x.id)
		sweet := mix.SweetOf(p)
		assert.True(t, sweet >= x.low && sweet <= x.high, "%s tastes of %.0f g/L of sucrose, not of %v to %v", p.Name, sweet, x.low, x.high)
		per := mix.PerML(p)
		assert.InDelta(t, sweet/1000, per.Sweet, 1e-12, p.Name)
	}
	for _, p := range c.Profiles() {
		if p.Sweeteners.Origin != "" {
			assert.True(t, slices.Contains(p.Cautions, "aspartame") || slices.Contains(p.Cautions, "polyols"), "%s: what sweetens it has a caution", p.ID)
		}
	}
}

func TestCaffeineIsStated(t *testing.T) {
	c := loadCatalogue(t)
	for _, id := range []string{"coffee", "espresso", "decaf-espresso", "black-tea", "cola"} {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		assert.NotEqual(t, flavor.Origin(""), p.Caffeine.Origin, id)
		assert.Positive(t, p.Caffeine.Value, id)
	}
}

// general are the cautions that go with every drink that holds alcohol.
var general = []string{"alcohol", "age", "medicines"}

// Every caution reaches somebody: it goes with an ingredient or with alcohol.
func TestEveryCautionIsAttached(t *testing.T) {
	c := loadCatalogue(t)
	attached := map[string]bool{}
	for _, p := range c.Profiles() {
		for _, key := range p.Cautions {
			attached[key] = true
		}
	}
	for _, key := range sortedKeys(c.cautions) {
		assert.True(t, attached[key] || slices.Contains(general, key), "caution %q goes with nothing; attach it or delete it", key)
	}
}

// A dash of overproof is no fire and a float is; what several pours hold adds up.
func TestCautionsHaveDoses(t *testing.T) {
	c := loadCatalogue(t)
	for _, x := range []struct {
		text string
		key  string
		told bool
	}{
		{"2 oz white rum\n2 dashes white overproof rum\nbuild, crushed", "overproof", false},
		{"2 oz white rum\n1/2 oz white overproof rum\nbuild, crushed", "overproof", true},
		{"2 oz bourbon\n2 dashes grapefruit bitters\nstir, rocks", "grapefruit", false},
		{"2 oz bourbon\n1 oz grapefruit juice\nshake, up", "grapefruit", true},
		{"2 oz bourbon\n1 tsp cinnamon syrup\nstir, rocks", "cassia", false},
		{"2 oz bourbon\n3/4 oz cinnamon syrup\nstir, rocks", "cassia", true},
		{"2 oz bourbon\n1/4 oz cinnamon syrup\n1/4 oz cinnamon honey\nstir, rocks", "cassia", false},
		{"2 oz bourbon\n1/4 oz cinnamon syrup\n1/2 oz cinnamon honey\nstir, rocks", "cassia", true},
		{"2 oz vodka\n1 oz espresso\nshake, up", "caffeine", true},
		{"2 oz gin\n4 oz tonic water\nbuild, long", "quinine", true},
	} {
		s, err := c.ReadSpec("a drink", x.text)
		require.NoError(t, err, x.text)
		assert.Equal(t, x.told, slices.Contains(c.CautionsOf(&s), x.key), "%s in %q", x.key, x.text)
	}
}
