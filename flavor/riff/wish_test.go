package riff

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

func TestParseWishes(t *testing.T) {
	for _, c := range []struct {
		word string
		want []Wish
	}{
		{"bitter", []Wish{{Kind: WishAxis, Axis: template.Bitter, More: true}}},
		{"more bitter", []Wish{{Kind: WishAxis, Axis: template.Bitter, More: true}}},
		{"Less  Sweet", []Wish{{Kind: WishAxis, Axis: template.Sweet}}},
		{"drier", []Wish{{Kind: WishAxis, Axis: template.Sweet}}},
		{"lighter", []Wish{{Kind: WishAxis, Axis: template.Strong}}},
		{"longer", []Wish{{Kind: WishAxis, Axis: template.Long, More: true}}},
		{"nuttier", []Wish{{Kind: WishAroma, Family: flavor.Nut, More: true}}},
		{"less smoky", []Wish{{Kind: WishAroma, Family: flavor.Smoke}}},
		{"smokier", []Wish{{Kind: WishAroma, Family: flavor.Smoke, More: true}}},
		{"no nuts", []Wish{{Kind: WishAllergen, Allergen: flavor.TreeNuts}, {Kind: WishAllergen, Allergen: flavor.Peanuts}}},
		{"no dairy", []Wish{{Kind: WishAllergen, Allergen: flavor.Milk}}},
		{"no smoke", []Wish{{Kind: WishWithout, Family: flavor.Smoke}}},
		{"no rum", []Wish{{Kind: WishClass, Class: flavor.ClassRum}}},
		{"no honey", []Wish{{Kind: WishAnimal, Animal: "honey"}}},
		{"below 12 %", []Wish{{Kind: WishBelow, ABV: 12}}},
		{"under 12,5% vol", []Wish{{Kind: WishBelow, ABV: 12.5}}},
		{"at least 20 %", []Wish{{Kind: WishAbove, ABV: 20}}},
		{"no alcohol", []Wish{{Kind: WishBelow, ABV: cover.NoAlcoholABV}}},
	} {
		got, err := ParseWishes([]string{c.word})
		require.NoError(t, err, c.word)
		for i := range got {
			assert.NotEmpty(t, got[i].Word)
			got[i].Word = ""
		}
		assert.Equal(t, c.want, got, c.word)
	}
}

func TestWishesThatCannotBeRead(t *testing.T) {
	_, err := ParseWishes([]string{"bitter", "crunchy", "no zebra", "below 300 %", "less bitter", ""})
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

	_, err = ParseWishes([]string{"more bittter"})
	require.ErrorAs(t, err, &faults)
	assert.Contains(t, faults[0].Suggest, "bitter")
	_, err = ParseWishes([]string{"above 20 %", "below 10 %"})
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
		_, err := ParseWishes([]string{w})
		assert.NoError(t, err, w)
	}
}

func FuzzParseWishes(f *testing.F) {
	for _, s := range []string{"more bitter", "no nuts", "below 12 %", "nuttier", "more", "less ", "no ", "ier"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		wishes, err := ParseWishes([]string{s})
		if err == nil && len(wishes) == 0 {
			t.Errorf("%q is neither a wish nor a fault", s)
		}
	})
}
