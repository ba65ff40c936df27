package wish

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// names stands for a small bar.
var names = NamesIn([]*flavor.Profile{
	{ID: "gin", Name: "London dry gin"}, {ID: "rum", Name: "white rum"}, {ID: "dark-rum", Name: "dark rum"},
	{ID: "mezcal", Name: "mezcal"}, {ID: "lime-juice", Name: "lime juice", Aliases: []string{"lime"}},
	{ID: "egg-white", Name: "egg white"}, {ID: "smoke-tincture", Name: "smoke tincture"}, {ID: "coffee", Name: "coffee"}, {ID: "coffee-liqueur", Name: "coffee liqueur"},
})

func taste(s sense.Sense, more bool) []Wish { return []Wish{{Kind: Sense, Sense: s, More: more}} }

func aroma(more bool, f ...flavor.AromaFamily) []Wish {
	return []Wish{{Kind: Aroma, Families: f, More: more}}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		word string
		want []Wish
	}{
		{"bitter", taste(sense.Bitter, true)},
		{"more bitter", taste(sense.Bitter, true)},
		{"bitterer", taste(sense.Bitter, true)},
		{"Less  Sweet", taste(sense.Sweet, false)},
		{"drier", taste(sense.Sweet, false)},
		{"a bit drier, please", taste(sense.Sweet, false)},
		{"less dry", taste(sense.Sweet, true)},
		{"not so sweet", taste(sense.Sweet, false)},
		{"too sweet", taste(sense.Sweet, false)},
		{"not sweet enough", taste(sense.Sweet, true)},
		{"richer", taste(sense.Sweet, true)},
		{"lighter", taste(sense.Ethanol, false)},
		{"low-ABV", taste(sense.Ethanol, false)},
		{"lower proof", taste(sense.Ethanol, false)},
		{"boozier", taste(sense.Ethanol, true)},
		{"spirit-forward", taste(sense.Ethanol, true)},
		{"sharper", taste(sense.Sour, true)},
		{"tarter", taste(sense.Sour, true)},
		{"rounder", taste(sense.Sour, false)},
		{"longer", taste(sense.Volume, true)},
		{"shorter", taste(sense.Volume, false)},
		{"fizzier", taste(sense.Carbonation, true)},
		{"silkier", taste(sense.Body, true)},
		{"saltier", taste(sense.Salty, true)},
		{"frothier", taste(sense.Foam, true)},
		{"nuttier", aroma(true, flavor.Nut)},
		{"less smoky", aroma(false, flavor.Smoke)},
		{"smokier", aroma(true, flavor.Smoke)},
		{"more savoury", []Wish{{Kind: Aroma, Families: []flavor.AromaFamily{flavor.Vegetal}, Or: []sense.Sense{sense.Salty, sense.Umami}, More: true}}},
		{"more floral", aroma(true, flavor.Floral)},
		{"hotter", []Wish{{Kind: Aroma, More: true, Families: []flavor.AromaFamily{flavor.Pungent}, Or: []sense.Sense{sense.Pungent}}}},
		{"something a little more herbal", aroma(true, flavor.Herb)},
		{"chocolatey", aroma(true, flavor.Roast)},
		{"warming", aroma(true, flavor.Clove, flavor.Cinnamon)},
		{"fruitier", aroma(true, flavor.Orchard, flavor.Berry, flavor.Tropical, flavor.Orange)},
		{"drier and smokier", append(taste(sense.Sweet, false), aroma(true, flavor.Smoke)...)},
		{"longer, lighter", append(taste(sense.Volume, true), taste(sense.Ethanol, false)...)},
		{"no nuts", []Wish{{Kind: Allergen, Allergen: flavor.TreeNuts}, {Kind: Allergen, Allergen: flavor.Peanuts}}},
		{"no shellfish", []Wish{{Kind: Allergen, Allergen: flavor.Crustaceans}, {Kind: Allergen, Allergen: flavor.Molluscs}}},
		{"nut-free", []Wish{{Kind: Allergen, Allergen: flavor.TreeNuts}, {Kind: Allergen, Allergen: flavor.Peanuts}}},
		{"no dairy", []Wish{{Kind: Allergen, Allergen: flavor.Milk}}},
		{"no smoke", []Wish{{Kind: Without, Families: []flavor.AromaFamily{flavor.Smoke}}}},
		{"no citrus", []Wish{{Kind: Class, Class: flavor.ClassSourJuice}, {Kind: Bar, IDs: []string{"lime-juice"}}}},
		{"no rum", []Wish{{Kind: Class, Class: flavor.ClassRum}}},
		{"no egg white", []Wish{{Kind: Bar, IDs: []string{"egg-white"}}}},
		{"hold the mezcal", []Wish{{Kind: Bar, IDs: []string{"mezcal"}}}},
		{"no honey", []Wish{{Kind: Animal, Animal: "honey"}}},
		{"with mezcal", []Wish{{Kind: With, IDs: []string{"mezcal"}}}},
		{"mezcal", []Wish{{Kind: With, IDs: []string{"mezcal"}}}},
		{"with lime", []Wish{{Kind: With, IDs: []string{"lime-juice"}}}},
		{"with coffee", []Wish{{Kind: With, IDs: []string{"coffee", "coffee-liqueur"}}}},
		{"with smoke", aroma(true, flavor.Smoke)},
		{"more rum", []Wish{{Kind: Poured, IDs: []string{"rum", "dark-rum"}, More: true}}},
		{"less gin", []Wish{{Kind: Poured, IDs: []string{"gin"}}}},
		{"rum instead of gin", []Wish{{Kind: With, IDs: []string{"rum", "dark-rum"}}, {Kind: Class, Class: flavor.ClassGin}}},
		{"swap the gin for mezcal", []Wish{{Kind: With, IDs: []string{"mezcal"}}, {Kind: Class, Class: flavor.ClassGin}}},
		{"on the rocks", []Wish{{Kind: Served, Service: flavor.Rocks}}},
		{"stirred", []Wish{{Kind: Served, Method: flavor.Stir}}},
		{"simpler", []Wish{{Kind: Fewer}}},
		{"cheaper", []Wish{{Kind: Cheaper}}},
		{"below 12 %", []Wish{{Kind: Below, ABV: 12}}},
		{"12 % or less", []Wish{{Kind: Below, ABV: 12}}},
		{"under 12,5% vol", []Wish{{Kind: Below, ABV: 12.5}}},
		{"at least 20 %", []Wish{{Kind: Above, ABV: 20}}},
		{"no alcohol", []Wish{{Kind: Below, ABV: flavor.NoAlcoholABV}}},
		{"alcohol-free", []Wish{{Kind: Below, ABV: flavor.NoAlcoholABV}}},
	} {
		got, err := Parse([]string{c.word}, names)
		require.NoError(t, err, c.word)
		for i := range got {
			assert.NotEmpty(t, got[i].Word)
			got[i].Word, got[i].Of = "", ""
		}
		assert.Equal(t, c.want, got, c.word)
	}
}

func TestWishesThatCannotBeRead(t *testing.T) {
	_, err := Parse([]string{"bitter", "crunchy", "no zebra", "below 300 %", "less bitter", "", "with zebra"}, names)
	var faults flavor.DataFaults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 6)
	for i, f := range faults {
		assert.NotEmpty(t, f.Message)
		assert.NotEmpty(t, f.Location, "fault %d", i)
	}
	assert.ErrorIs(t, faults[0], flavor.ErrUnknown)
	assert.Equal(t, "crunchy", faults[0].Value)
	assert.ErrorIs(t, faults[3], flavor.ErrInvalid)
	assert.Contains(t, faults[3].Message, "cannot both be met")

	_, err = Parse([]string{"more bittter"}, nil)
	require.ErrorAs(t, err, &faults)
	assert.Contains(t, faults[0].Suggest, "bitter")
	for _, both := range [][]string{{"above 20 %", "below 10 %"}, {"stirred", "shaken"}, {"with mezcal", "no mezcal"}, {"drier and sweeter"}} {
		_, err = Parse(both, names)
		assert.Error(t, err, "%v", both)
	}
}

// Every sense, family and allergen can be asked for by its own name, and every
// plain word more and less.
func TestEveryNameIsAWish(t *testing.T) {
	var words []string
	for _, w := range knownWords() {
		words = append(words, w, "more "+w, "less "+w)
	}
	for _, f := range flavor.AromaFamilies() {
		words = append(words, f.ID, "less "+f.ID)
	}
	for _, a := range flavor.Allergens() {
		words = append(words, "no "+string(a))
	}
	for _, c := range flavor.Classes() {
		words = append(words, "no "+string(c))
	}
	for _, w := range words {
		_, err := Parse([]string{w}, nil)
		assert.NoError(t, err, w)
	}
}

// A word means one thing.
func TestLexiconHasEachWordOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range entries {
		for _, w := range e.words {
			assert.False(t, seen[w], w)
			seen[w] = true
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"more bitter", "no nuts", "below 12 %", "nuttier", "more", "less ", "no ", "ier", "rum instead of", "a, b and"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		wishes, err := Parse([]string{s}, names)
		if err == nil && len(wishes) == 0 {
			t.Errorf("%q is neither a wish nor a fault", s)
		}
	})
}

// A drink for a hot day is cold and no stronger, and more of it may be what is wished; who wants
// it less so wants only less of the smell.
func TestForAHotDay(t *testing.T) {
	more, err := Parse([]string{"summery"}, nil)
	require.NoError(t, err)
	require.Len(t, more, 2)
	assert.Equal(t, HotDay, more[1].Kind)
	assert.NotEmpty(t, more[0].Or)
	less, err := Parse([]string{"less summery"}, nil)
	require.NoError(t, err)
	require.Len(t, less, 1)
	assert.Empty(t, less[0].Or)
	for _, wishes := range [][]string{{"for summer", "served hot"}, {"for summer", "stronger"}, {"chilled", "piping hot"}} {
		_, err := Parse(wishes, nil)
		assert.Error(t, err, wishes)
	}
}

// Who wants no citrus may have what sours and is another fruit; a sour juice that nobody knows
// counts as citrus.
func TestWithoutCitrusSparesOtherFruit(t *testing.T) {
	known := map[string][]string{"verjus": {"verjus"}, "lime": {"lime-juice"}, "tamarind": {"tamarind-water"}}
	w, err := Parse([]string{"no citrus"}, func(name string) []string { return known[name] })
	require.NoError(t, err)
	require.Len(t, w, 2)
	assert.Equal(t, []string{"tamarind-water", "verjus"}, w[0].Spared)
	assert.Equal(t, []string{"lime-juice"}, w[1].IDs)
}
