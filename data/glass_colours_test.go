package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What finished drinks look like: common practice, no source. Words are what a
// bartender would call the glass, cloudiness is 0 for clear and 1 for opaque.
func TestColoursOfFinishedDrinks(t *testing.T) {
	const (
		clear  = 0.1 // at most, of a drink that one sees through
		hazy   = 0.3 // at least, of one with juice
		opaque = 0.8 // at least, of one with cream or pulp
	)
	b := newBench(t)
	for _, c := range []struct {
		text  string
		words []string
		least float64
		most  float64
	}{
		{"2 1/2 oz London dry gin\n1/2 oz dry vermouth\nstir, up", []string{"clear", "straw"}, 0, clear},
		{"2 oz vodka\n4 oz soda water\nbuild, long", []string{"clear"}, 0, clear},
		{"2 oz London dry gin\n4 oz tonic water\nbuild, long", []string{"clear"}, 0, clear},
		{"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", []string{"amber", "copper", "brown"}, 0, clear},
		{"2 oz bourbon\n1 tsp simple syrup\n2 dashes aromatic bitters\nstir, rocks", []string{"amber", "gold", "copper"}, 0, clear},
		{"1 oz London dry gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks", []string{"red", "ruby", "copper"}, 0, clear},
		{"3 oz prosecco\n2 oz light orange bitter aperitif\n1 oz soda water\nbuild, rocks", []string{"orange", "amber"}, 0, clear},
		{"2 oz white rum\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up", []string{"cloudy", "cloudy straw", "cloudy gold", "cloudy yellow", "white"}, hazy, 1},
		{"2 oz blanco tequila\n3/4 oz lime juice\n3/4 oz triple sec\nshake, up", []string{"cloudy", "cloudy straw", "cloudy gold", "cloudy yellow", "white"}, hazy, 1},
		{"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", []string{"cloudy gold", "cloudy straw", "cloudy amber", "cloudy yellow"}, hazy, 1},
		{"2 oz vodka\n4 oz orange juice\nbuild, long", []string{"cloudy orange", "cloudy gold", "cloudy amber", "cloudy yellow"}, opaque, 1},
		{"1 1/2 oz vodka\n3 oz cranberry juice\nbuild, long", []string{"red", "pink", "ruby"}, 0, hazy},
		{"2 oz vodka\n4 oz tomato juice\nbuild, long", []string{"cloudy red", "cloudy orange", "cloudy copper"}, opaque, 1},
		{"2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz raspberry syrup\nshake, up", []string{"cloudy pink", "cloudy red"}, hazy, 1},
		{"2 oz cognac\n1 oz dark crème de cacao\n1 oz heavy cream\nshake, up", []string{"white", "cloudy straw", "cloudy gold", "cloudy copper", "cloudy amber"}, opaque, 1},
		{"2 oz vodka\n1 oz coffee liqueur\n1 oz espresso\nshake, up", []string{"cloudy black", "cloudy brown", "black", "brown"}, 0, 1},
		{"2 oz dark rum\n4 oz cola\nbuild, long", []string{"brown", "black", "copper", "amber"}, 0, clear},
		{"2 oz London dry gin\n1/2 oz crème de violette\n1/2 oz maraschino liqueur\nstir, up", []string{"violet", "purple", "blue"}, 0, clear},
		{"2 oz vodka\n1 oz blue curaçao\nstir, up", []string{"blue"}, 0, clear},
		{"1 1/2 oz green crème de menthe\n1 1/2 oz vodka\nstir, up", []string{"green"}, 0, clear},
		{"3 oz red wine\n1 oz brandy\nstir, rocks", []string{"red", "ruby", "purple"}, 0, clear},
		{"5 oz brut champagne\n1/2 oz crème de cassis\nbuild, up", []string{"red", "ruby", "pink", "purple"}, 0, hazy},
	} {
		s := b.glass(c.text).Swatch()
		assert.Contains(t, c.words, s.Words(), "%s is %s", c.text, s.Hex())
		assert.GreaterOrEqual(t, s.Cloudy, c.least, c.text)
		assert.LessOrEqual(t, s.Cloudy, c.most, c.text)
		assert.Len(t, s.Hex(), len("#rrggbb"))
	}
}

// Base spirits of a class are near one another: common practice, no source. The
// steps are those in a sour, and a class apart is further.
func TestBaseSpiritsKeepTogether(t *testing.T) {
	b := newBench(t)
	sour := func(base string) string {
		return "2 oz " + base + "\n3/4 oz lime juice\n3/4 oz simple syrup\nshake, up"
	}
	for _, c := range []struct {
		from, near, far string
		most            float64 // steps to the near one
	}{
		{"vodka", "potato vodka", "white rum", 1.5},
		{"vodka", "corn vodka", "soju", 1.5},
		{"vodka", "grape vodka", "pisco", 1.5},
		{"white rum", "gold rum", "cognac", 4},
		{"gold rum", "aged rum", "bourbon", 4},
		{"bourbon", "rye whiskey", "Irish whiskey", 4},
		{"bourbon", "wheated bourbon", "blended Scotch", 3},
		{"blended Scotch", "Irish whiskey", "peated malt", 3},
		{"cognac", "armagnac", "calvados", 3},
		{"London dry gin", "soft dry gin", "genever", 3},
		{"blanco tequila", "reposado tequila", "mezcal", 4},
	} {
		near, far := b.steps(sour(c.from), sour(c.near)), b.steps(sour(c.from), sour(c.far))
		require.Less(t, near.Total(), far.Total(), "%s: %s and %s", c.from, c.near, c.far)
		assert.LessOrEqual(t, near.Total(), c.most, "%s and %s", c.from, c.near)
	}
}
