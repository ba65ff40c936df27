package naming_test

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/index"
)

// loadIndex opens the index over all ingredients once: no resolver changes it.
var loadIndex = sync.OnceValues(func() (*index.Index, error) {
	c, err := data.Embedded()
	if err != nil {
		return nil, err
	}
	return index.New(c.Profiles())
})

// catalogue is a resolver over the whole catalogue.
func catalogue(t *testing.T) *naming.Resolver {
	t.Helper()
	x, err := loadIndex()
	require.NoError(t, err)
	return naming.NewResolver(x)
}

// Names are found as bars write them, whatever is said of style, origin, age and quality,
// in which order, clipped, misspelt or in another tongue; what would be a guess between
// classes, strengths or allergens is asked. Common practice, no source.
func TestNamesAsBarsWriteThem(t *testing.T) {
	b := catalogue(t)
	for _, c := range []struct {
		name string
		unit flavor.Unit
		id   string // empty where it is asked
	}{
		// without vowels
		{"rsmry syr", flavor.Ounce, "rosemary-syrup"},
		{"gyn", flavor.Ounce, ""},
		{"prfct", flavor.Ounce, ""},
		// style
		{"northern style elderflower liqueur", flavor.Ounce, "elderflower-liqueur"},
		{"cherry northern style liqueur", flavor.Ounce, "cherry-liqueur"},
		{"maraschino northern style", flavor.Ounce, "maraschino-liqueur"},
		{"northern style liqueur", flavor.Ounce, ""},
		{"northern style aperitif wine", flavor.Ounce, ""},
		{"walnut style cream", flavor.Ounce, ""},
		// origin, age and quality
		{"danish aquavit", flavor.Ounce, "aquavit"},
		{"mexican brandy", flavor.Ounce, "brandy"},
		{"small batch bourbon", flavor.Ounce, "bourbon"},
		{"calvados vsop", flavor.Ounce, "calvados"},
		{"grade a maple syrup", flavor.Ounce, "maple-syrup"},
		{"dark jamaican", flavor.Ounce, "aged-jamaican-rum"},
		// a fruit by the jigger, and fruit brandies
		{"fresh pineapple", flavor.Ounce, "pineapple-juice"},
		{"white grape", flavor.Ounce, "white-grape-juice"},
		{"blackcurrant brandy", flavor.Ounce, "creme-de-cassis"},
		{"peach brandy", flavor.Ounce, ""},
		{"brandy (cognac)", flavor.Ounce, "cognac"},
		// slips and clippings
		{"apricot liqour", flavor.Ounce, "apricot-liqueur"},
		{"lemn", flavor.Ounce, "lemon-juice"},
		{"lme juice", flavor.Ounce, "lime-juice"},
		{"pash puree", flavor.Ounce, "passion-fruit-puree"},
		{"pomegr.j", flavor.Ounce, "pomegranate-juice"},
		{"pas", flavor.Ounce, ""},
		{"ab", flavor.Dash, "aromatic-bitters"},
		{"ab", flavor.Ounce, ""},
		{"proof gin", flavor.Ounce, ""},
		// what is passed over never tells another bottle apart
		{"strong artichoke amaro (house)", flavor.Ounce, "strong-artichoke-amaro"},
		{"Japanese-style gin if possible", flavor.Ounce, "japanese-style-gin"},
		{"Sicilian amaro of choice", flavor.Ounce, "sicilian-style-amaro"},
		{"100pf rye", flavor.Ounce, "bonded-rye"},
		{"50.5% gin", flavor.Ounce, "london-dry-gin"},
		{"Spanish sparklig wine", flavor.Ounce, "cava"},
		{"rapsberry shrub", flavor.Ounce, "raspberry-shrub"},
		{"amaro rose and orange", flavor.Ounce, "mild-spiced-amaro"},
		{"saline? no", flavor.Ounce, ""},
		{"white cran", flavor.Ounce, ""},
		// sorts of a plant
		{"heather honey syrup", flavor.Ounce, "honey-syrup"},
		{"granny smith apple juice", flavor.Ounce, "apple-juice"},
		{"meyer lemon juice", flavor.Ounce, "meyer-lemon-juice"},
		// shorthand beside shorthand
		{"op jam", flavor.Ounce, "white-overproof-rum"},
		{"passion fruit jc", flavor.Ounce, "passion-fruit-juice"},
		{"white r", flavor.Ounce, "white-rum"},
		{"g beer", flavor.Ounce, "ginger-beer"},
		{"cr violette", flavor.Ounce, "creme-de-violette"},
		{"orange aperitif", flavor.Ounce, "light-orange-bitter-aperitif"},
		{"l juice", flavor.Ounce, ""},
		{"d rum", flavor.Ounce, ""},
		// other tongues
		{"frisch gepresster Limettensaft", flavor.Centilitre, "lime-juice"},
		{"sumo de limão", flavor.Centilitre, "lemon-juice"},
		{"aperitivo arancio leggero", flavor.Centilitre, "light-orange-bitter-aperitif"},
		{"färskpressad citronjuice", flavor.Centilitre, "lemon-juice"},
		{"veenbessensap", flavor.Centilitre, "cranberry-juice"},
		{"cacao oscuro", flavor.Centilitre, "dark-creme-de-cacao"},
		{"bitter à l'orange", flavor.Dash, "orange-bitters"},
		{"bitter di limone", flavor.Dash, "lemon-bitters"},
		{"crema di menta bianca", flavor.Centilitre, "creme-de-menthe"},
		{"xarope de manjericão", flavor.Centilitre, "basil-syrup"},
		{"sirope de flor de saúco", flavor.Centilitre, "elderflower-syrup"},
		{"vlierbloesemlikeur", flavor.Centilitre, "elderflower-liqueur"},
		{"Pistaziensirup", flavor.Centilitre, "pistachio-orgeat"},
		{"liqueur de bergamote", flavor.Centilitre, "bergamot-liqueur"},
		{"succo di mirtillo", flavor.Centilitre, ""},
		{"ドライベルモット", flavor.Millilitre, "dry-vermouth"},
		{"сок лимона", flavor.Millilitre, "lemon-juice"},
		{"soku z cytryny", flavor.Centilitre, "lemon-juice"},
		{"wódki żytniej", flavor.Centilitre, "rye-vodka"},
		{"likieru brzoskwiniowego", flavor.Centilitre, "peach-liqueur"},
		{"limetkové šťávy", flavor.Centilitre, "lime-juice"},
		{"сахарного сиропа", flavor.Millilitre, "simple-syrup"},
		{"красный вермут", flavor.Millilitre, "sweet-vermouth"},
		{"χυμό λεμονιού", flavor.Millilitre, "lemon-juice"},
		{"ジャパニーズウイスキー", flavor.Millilitre, "japanese-whisky"},
		{"柚子果汁", flavor.Millilitre, "yuzu-juice"},
		{"芋焼酎", flavor.Millilitre, "sweet-potato-shochu"},
		{"виски", flavor.Millilitre, ""},
		{"lemmon juce", flavor.Ounce, "lemon-juice"}, // a slip in one word, the other cut short
		{"honney syrp", flavor.Ounce, "honey-syrup"},
		// what is not known stays so
		{"cucamelon syrup", flavor.Ounce, ""},
		{"jackfruit gin", flavor.Ounce, ""},               // a drink called jackfruit, or a gin with some in it
		{"jackfruit syrup", flavor.Ounce, "simple-syrup"}, // what the fruit brings is told not to count
		{"Zorblax", flavor.Ounce, ""},
		{"cucamelon gin", flavor.Ounce, ""},
	} {
		amount := 1.0
		if c.unit == flavor.Millilitre {
			amount = 30
		}
		f := b.Find(c.name, naming.PlaceOf(c.unit, amount, false))
		if c.id == "" {
			assert.Nil(t, f.Profile, c.name)
			continue
		}
		if assert.Nil(t, f.Fault, c.name) {
			assert.Equal(t, c.id, f.Profile.ID, c.name)
		}
	}
}

// Only what shares more than its kind, or the look of a whole word, is suggested.
func TestSuggestionsShareAWord(t *testing.T) {
	b := catalogue(t)
	for _, c := range []struct {
		name    string
		suggest []string
	}{
		{"Zorblax", nil},
		{"quixnut liqueur", nil},
		{"pasion fruits", []string{"passion fruit syrup"}},
	} {
		f := b.Find(c.name, naming.PlaceOf(flavor.Ounce, 1, false))
		require.NotNil(t, f.Fault, c.name)
		if c.suggest == nil {
			assert.Empty(t, f.Fault.Suggest, c.name)
			assert.Contains(t, f.Fault.Message, "write its category", c.name)
			continue
		}
		assert.Subset(t, f.Fault.Suggest, c.suggest, c.name)
	}
}
