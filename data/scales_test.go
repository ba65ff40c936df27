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

// A tea dries the mouth by the tannin that its record states, of which half
// counts as tannic acid; what states none keeps what the senses' file gives.
func TestTanninDriesTheMouth(t *testing.T) {
	c := loadCatalogue(t)
	for id, astringent := range map[string]float64{"black-tea": 0.55, "green-tea": 0.65, "white-tea": 0.35, "red-wine": 1.5} {
		p, ok := c.ByID(id)
		require.True(t, ok, id)
		assert.Equal(t, id != "red-wine", p.Tannin.Origin != "", id)
		assert.InDelta(t, astringent, p.Senses.AstringentGPerL, 1e-9, id)
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

// How sweet the sugars of a record are by kind, against the single sugars, in g
// per 100 g, that a table gives of its like.
func TestSugarsByKind(t *testing.T) {
	const within = 0.07 // of the sweetness of a gram: fruit of one kind differs by as much
	c := loadCatalogue(t)
	for _, x := range []struct {
		id, source string
		table      flavor.SugarBlend
	}{
		{"lemon-juice", "USDA SR 26, NDB 09152", flavor.SugarBlend{Sucrose: 0.43, Glucose: 0.99, Fructose: 1.1}},
		{"lime-juice", "USDA SR 26, NDB 09160", flavor.SugarBlend{Sucrose: 0.48, Glucose: 0.6, Fructose: 0.61}},
		{"grapefruit", "USDA SR 26, NDB 09112", flavor.SugarBlend{Sucrose: 3.51, Glucose: 1.61, Fructose: 1.77}},
		{"pineapple", "USDA SR 26, NDB 09266", flavor.SugarBlend{Sucrose: 5.99, Glucose: 1.73, Fructose: 2.12}},
		{"apple", "USDA SR 26, NDB 09003", flavor.SugarBlend{Sucrose: 2.07, Glucose: 2.43, Fructose: 5.9}},
		{"apple-juice", "Ciqual code 2074", flavor.SugarBlend{Sucrose: 1.44, Glucose: 2.13, Fructose: 5.96}},
		{"raspberry", "USDA SR 26, NDB 09302", flavor.SugarBlend{Sucrose: 0.2, Glucose: 1.86, Fructose: 2.35}},
		{"strawberry", "USDA SR 26, NDB 09316", flavor.SugarBlend{Sucrose: 0.47, Glucose: 1.99, Fructose: 2.44}},
		{"blueberry", "USDA SR 26, NDB 09050", flavor.SugarBlend{Sucrose: 0.11, Glucose: 4.88, Fructose: 4.97}},
		{"grape", "USDA SR 26, NDB 09132", flavor.SugarBlend{Sucrose: 0.15, Glucose: 7.2, Fructose: 8.13}},
		{"peach", "USDA SR 26, NDB 09236", flavor.SugarBlend{Sucrose: 4.76, Glucose: 1.95, Fructose: 1.53, Maltose: 0.08}},
		{"pear", "USDA SR 26, NDB 09252", flavor.SugarBlend{Sucrose: 0.71, Glucose: 2.6, Fructose: 6.42}},
		{"plum", "USDA SR 26, NDB 09279", flavor.SugarBlend{Sucrose: 1.57, Glucose: 5.07, Fructose: 3.07, Maltose: 0.08}},
		{"mango", "USDA SR 26, NDB 09176", flavor.SugarBlend{Sucrose: 6.97, Glucose: 2.01, Fructose: 4.68}},
		{"pomegranate-juice", "USDA SR 26, NDB 09442", flavor.SugarBlend{Glucose: 6.28, Fructose: 6.37}},
		{"unsweetened-cranberry-juice", "USDA SR 26, NDB 09078", flavor.SugarBlend{Sucrose: 0.13, Glucose: 3.28, Fructose: 0.63}},
		{"honey", "USDA SR 26, NDB 19296", flavor.SugarBlend{Sucrose: 0.89, Glucose: 35.75, Fructose: 40.94, Maltose: 1.44}},
		{"maple-syrup", "USDA SR 26, NDB 19353", flavor.SugarBlend{Sucrose: 58.32, Glucose: 1.6, Fructose: 0.52}},
		{"agave-nectar", "USDA SR 26, NDB 19912", flavor.SugarBlend{Glucose: 12.43, Fructose: 55.6}},
		{"molasses", "USDA SR 26, NDB 19304", flavor.SugarBlend{Sucrose: 29.4, Glucose: 11.92, Fructose: 12.79}},
		{"tawny-port", "USDA SR 26, NDB 14057", flavor.SugarBlend{Sucrose: 0.05, Glucose: 2.6, Fructose: 5.15}},
		{"cola", "USDA SR 26, NDB 14148", flavor.SugarBlend{Glucose: 4.48, Fructose: 6.1}},
		{"whole-milk", "USDA SR 26, NDB 01079", flavor.SugarBlend{Sucrose: 0.01, Glucose: 0.01, Fructose: 0.01, Lactose: 5.01, Maltose: 0.01}},
	} {
		p, ok := c.ByID(x.id)
		require.True(t, ok, x.id)
		b := x.table
		want := mix.SweetnessOf(b) / (b.Sucrose + b.Glucose + b.Fructose + b.Lactose + b.Maltose)
		assert.InEpsilon(t, want, mix.SweetnessOf(p.Sugars), within, "%s: a gram of its sugars tastes of %.2f g of sucrose, %s has %.2f",
			p.Name, mix.SweetnessOf(p.Sugars), x.source, want)
	}
}
