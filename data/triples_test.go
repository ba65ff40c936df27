package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// triples are facts of the trade, common practice, no source: the first smells
// more like the second than like the third. They were written down before the
// odorants were weighed.
var triples = [][3]string{
	// citrus
	{"lemon-juice", "lime-juice", "orange-juice"},
	{"lime-juice", "lemon-juice", "pineapple-juice"},
	{"lemon-juice", "lime-juice", "cranberry-juice"},
	{"orange-juice", "mandarin-juice", "lemon-juice"},
	{"orange-juice", "blood-orange-juice", "apple-juice"},
	{"yuzu-juice", "lemon-juice", "pear-juice"},
	{"triple-sec", "orange-curacao", "limoncello"},
	{"triple-sec", "mandarin-liqueur", "apricot-liqueur"},
	{"grapefruit-juice", "pink-grapefruit-juice", "orange-juice"},
	{"lemongrass-syrup", "lemon-oleo", "rosemary-syrup"},
	{"bergamot-liqueur", "limoncello", "creme-de-cassis"},
	// spirits
	{"rye-whiskey", "bourbon", "irish-whiskey"},
	{"bourbon", "tennessee-style-whiskey", "peated-malt"},
	{"bourbon", "rye-whiskey", "white-rum"},
	{"bourbon", "corn-whiskey", "london-dry-gin"},
	{"cognac", "armagnac", "calvados"},
	{"cognac", "brandy", "bourbon"},
	{"calvados", "apple-brandy", "cognac"},
	{"london-dry-gin", "navy-strength-gin", "genever"},
	{"london-dry-gin", "old-tom-gin", "vodka"},
	{"london-dry-gin", "soft-dry-gin", "blanco-tequila"},
	{"blanco-tequila", "reposado-tequila", "white-rum"},
	{"blanco-tequila", "mezcal", "fish-sauce"},
	{"mezcal", "blanco-tequila", "peated-malt"},
	{"blanco-tequila", "sotol", "pisco"},
	{"peated-malt", "single-malt", "bourbon"},
	{"blended-scotch", "irish-whiskey", "aged-rum"},
	{"aged-rum", "gold-rum", "rhum-agricole-blanc"},
	{"aged-jamaican-rum", "overproof-demerara-rum", "vodka"},
	{"rhum-agricole-blanc", "cachaca", "bourbon"},
	{"dark-rum", "demerara-rum", "london-dry-gin"},
	{"pisco", "grappa", "blended-scotch"},
	{"absinthe", "pastis", "fernet"},
	{"ouzo", "arak", "aquavit"},
	{"kirsch", "slivovitz", "pear-spirit"},
	{"pear-spirit", "pear-liqueur", "kirsch"},
	{"aquavit", "kummel", "vodka"},
	// herbs, mint
	{"peppermint", "mint", "basil"},
	{"creme-de-menthe", "peppermint-schnapps", "creme-de-cacao"},
	{"mint-fernet", "fernet", "artichoke-amaro"},
	{"thyme", "rosemary", "mint"},
	{"rosemary", "sage", "basil"},
	{"fennel-frond", "star-anise", "rosemary"},
	{"tarragon", "basil", "peppermint"},
	{"genepy", "wormwood-tincture", "limoncello"},
	{"green-herbal-liqueur", "yellow-herbal-liqueur", "amaretto"},
	// nuts
	{"orgeat", "hazelnut-orgeat", "grenadine"},
	{"orgeat", "apricot-kernel-orgeat", "hazelnut-orgeat"},
	{"amaretto", "creme-de-noyaux", "hazelnut-liqueur"},
	{"amaretto", "orgeat", "coffee-liqueur"},
	{"hazelnut-liqueur", "peanut-liqueur", "sesame-oil"},
	{"hazelnut-liqueur", "walnut-liqueur", "creme-de-violette"},
	{"hazelnut-orgeat", "macadamia-orgeat", "orgeat"},
	{"maraschino-liqueur", "kirsch", "triple-sec"},
	// flowers
	{"rose-liqueur", "lychee-liqueur", "creme-de-violette"},
	{"creme-de-violette", "rose-liqueur", "banana-liqueur"},
	{"creme-de-violette", "violet-syrup", "elderflower-liqueur"},
	{"elderflower-liqueur", "elderflower-cordial", "rose-liqueur"},
	{"elderflower-liqueur", "lychee-liqueur", "amaretto"},
	{"jasmine-liqueur", "orange-flower-syrup", "creme-de-cassis"},
	{"lavender-syrup", "chamomile-syrup", "coffee-syrup"},
	// fruit
	{"banana-liqueur", "pear-liqueur", "fernet"},
	{"pineapple-syrup", "passion-fruit-syrup", "cinnamon-syrup"},
	{"banana-syrup", "pineapple-syrup", "raspberry-syrup"},
	{"pineapple-syrup", "strawberry-syrup", "banana-syrup"},
	{"passion-fruit-syrup", "guava-syrup", "banana-syrup"},
	{"peach-liqueur", "apricot-liqueur", "apple-liqueur"},
	{"peach-liqueur", "apricot-liqueur", "pear-liqueur"},
	{"apple-liqueur", "pear-liqueur", "raspberry-liqueur"},
	{"raspberry-liqueur", "black-raspberry-liqueur", "apple-liqueur"},
	{"raspberry-liqueur", "creme-de-mure", "peach-liqueur"},
	{"creme-de-cassis", "creme-de-mure", "banana-liqueur"},
	{"cherry-liqueur", "morello-cherry-liqueur", "strawberry-liqueur"},
	{"strawberry-syrup", "raspberry-syrup", "cinnamon-syrup"},
	{"melon-liqueur", "watermelon-syrup", "coffee-liqueur"},
	{"cucumber-juice", "melon-juice", "pineapple-juice"},
	{"grenadine", "cranberry-juice", "vanilla-syrup"},
	{"coconut-syrup", "coconut-cream", "vanilla-syrup"},
	{"plum-liqueur", "apricot-liqueur", "pineapple-liqueur"},
	// spice, roast, sugar
	{"allspice-dram", "clove-syrup", "cardamom-syrup"},
	{"cinnamon-syrup", "allspice-dram", "coconut-syrup"},
	{"falernum", "allspice-dram", "creme-de-violette"},
	{"ginger-syrup", "ginger-beer", "cinnamon-syrup"},
	{"aromatic-bitters", "clove-bitters", "celery-bitters"},
	{"orange-bitters", "mandarin-bitters", "chocolate-bitters"},
	{"coffee-liqueur", "creme-de-cacao", "elderflower-liqueur"},
	{"creme-de-cacao", "chocolate-liqueur", "coffee-liqueur"},
	{"vanilla-syrup", "caramel-syrup", "lime-cordial"},
	{"maple-syrup", "brown-sugar-syrup", "honey-syrup"},
	{"demerara-syrup", "muscovado-syrup", "raspberry-syrup"},
	{"honey-syrup", "chamomile-syrup", "coconut-syrup"},
	// wine, bitter
	{"dry-vermouth", "blanc-vermouth", "sweet-vermouth"},
	{"fino-sherry", "manzanilla-sherry", "ruby-port"},
	{"fino-sherry", "amontillado-sherry", "pedro-ximenez-sherry"},
	{"ruby-port", "tawny-port", "fino-sherry"},
	{"brut-champagne", "cava", "lager"},
	{"red-bitter-aperitif", "dark-red-bitter-aperitif", "creme-de-cassis"},
	{"gentian-liqueur", "gentian-aperitif", "elderflower-liqueur"},
	// savoury
	{"soy-sauce", "tamari", "tomato-juice"},
	{"soy-sauce", "miso", "cucumber-juice"},
	{"fish-sauce", "clam-tomato-juice", "blanco-tequila"},
	{"celery-juice", "celery-bitters", "carrot-juice"},
	{"black-tea", "green-tea", "coffee"},
	{"smoked-tea", "peated-malt", "jasmine-tea"},
	{"espresso", "cold-brew", "cacao-nib"},
	{"heavy-cream", "whole-milk", "egg-white"},
	{"lager", "pilsner", "brut-champagne"},
	{"tonic-water", "bitter-lemon", "cola"},
}

// heldAtLeast is the share of the triples that the space holds.
const heldAtLeast = 0.95

func TestTriplesOfTheTrade(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	like := func(a, b string) float64 {
		p, ok := c.ByID(a)
		require.True(t, ok, a)
		q, ok := c.ByID(b)
		require.True(t, ok, b)
		x, y := c.Space().SmellOf(p), c.Space().SmellOf(q)
		return x.Likeness(&y)
	}
	for _, list := range [][][3]string{triples, finerTriples} {
		held := 0
		for _, f := range list {
			near, far := like(f[0], f[1]), like(f[0], f[2])
			if near > far {
				held++
				continue
			}
			t.Logf("not held: %s is %.2f like %s, %.2f like %s", f[0], near, f[1], far, f[2])
		}
		t.Logf("%d of %d held", held, len(list))
		assert.GreaterOrEqual(t, float64(held), heldAtLeast*float64(len(list)))
	}
}
