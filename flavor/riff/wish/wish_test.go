package wish

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		word string
		want []Wish
	}{
		{"bitter", []Wish{{Kind: Axis, Axis: template.Bitter, More: true}}},
		{"more bitter", []Wish{{Kind: Axis, Axis: template.Bitter, More: true}}},
		{"Less  Sweet", []Wish{{Kind: Axis, Axis: template.Sweet}}},
		{"drier", []Wish{{Kind: Axis, Axis: template.Sweet}}},
		{"lighter", []Wish{{Kind: Axis, Axis: template.Strong}}},
		{"longer", []Wish{{Kind: Axis, Axis: template.Long, More: true}}},
		{"nuttier", []Wish{{Kind: Aroma, Family: flavor.Nut, More: true}}},
		{"less smoky", []Wish{{Kind: Aroma, Family: flavor.Smoke}}},
		{"smokier", []Wish{{Kind: Aroma, Family: flavor.Smoke, More: true}}},
		{"no nuts", []Wish{{Kind: Allergen, Allergen: flavor.TreeNuts}, {Kind: Allergen, Allergen: flavor.Peanuts}}},
		{"no dairy", []Wish{{Kind: Allergen, Allergen: flavor.Milk}}},
		{"no smoke", []Wish{{Kind: Without, Family: flavor.Smoke}}},
		{"no rum", []Wish{{Kind: Class, Class: flavor.ClassRum}}},
		{"no honey", []Wish{{Kind: Animal, Animal: "honey"}}},
		{"below 12 %", []Wish{{Kind: Below, ABV: 12}}},
		{"under 12,5% vol", []Wish{{Kind: Below, ABV: 12.5}}},
		{"at least 20 %", []Wish{{Kind: Above, ABV: 20}}},
		{"no alcohol", []Wish{{Kind: Below, ABV: cover.NoAlcoholABV}}},
	} {
		got, err := Parse([]string{c.word})
		require.NoError(t, err, c.word)
		for i := range got {
			assert.NotEmpty(t, got[i].Word)
			got[i].Word = ""
		}
		assert.Equal(t, c.want, got, c.word)
	}
}

func TestWishesThatCannotBeRead(t *testing.T) {
	_, err := Parse([]string{"bitter", "crunchy", "no zebra", "below 300 %", "less bitter", ""})
	var faults flavor.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 5)
	for i, f := range faults {
		assert.NotEmpty(t, f.Message)
		assert.NotEmpty(t, f.Location, "fault %d", i)
	}
	assert.ErrorIs(t, faults[0], flavor.ErrUnknown)
	assert.Equal(t, "crunchy", faults[0].Value)
	assert.ErrorIs(t, faults[3], flavor.ErrInvalid)
	assert.Contains(t, faults[3].Message, "cannot both be met")

	_, err = Parse([]string{"more bittter"})
	require.ErrorAs(t, err, &faults)
	assert.Contains(t, faults[0].Suggest, "bitter")
	_, err = Parse([]string{"above 20 %", "below 10 %"})
	assert.Error(t, err)
}

// Every axis and every family can be asked for by its own name.
func TestEveryNameIsAWish(t *testing.T) {
	var words []string
	for _, a := range template.Axes() {
		words = append(words, "more "+a.String(), "less "+a.String())
	}
	for _, f := range flavor.Families() {
		words = append(words, f.ID, "less "+f.ID)
	}
	for _, a := range flavor.Allergens() {
		words = append(words, "no "+string(a))
	}
	for _, w := range words {
		_, err := Parse([]string{w})
		assert.NoError(t, err, w)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"more bitter", "no nuts", "below 12 %", "nuttier", "more", "less ", "no ", "ier"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		wishes, err := Parse([]string{s})
		if err == nil && len(wishes) == 0 {
			t.Errorf("%q is neither a wish nor a fault", s)
		}
	})
}
