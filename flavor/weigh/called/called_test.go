package called_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/weigh/called"
)

// proven are the names of some drinks, of which several have one.
var proven = []string{"Martini, seven to one", "Dry Martini", "Martini, reversed", "Espresso Martini", "Kir Royale", "Old Fashioned",
	"Old Cuban", "The Business", "Corpse Reviver No. 2", "Piña Colada", "Honey Bee", "Bee’s Knees", "rum, lime and tea", "Daiquiri"}

func names() *called.Names {
	n := &called.Names{}
	for _, name := range proven {
		n.Add(name)
	}
	return n
}

var (
	vodka = &flavor.Profile{ID: "vodka", Name: "vodka", Class: flavor.ClassVodka}
	gin   = &flavor.Profile{ID: "gin", Name: "London dry gin", Class: flavor.ClassGin}
	rye   = &flavor.Profile{ID: "rye", Name: "rye whiskey", Class: flavor.ClassWhiskey}
	guava = &flavor.Profile{ID: "guava", Name: "guava nectar", Class: flavor.ClassJuice}
)

// spec is a draft of a title and some ingredients.
func spec(title string, profiles ...*flavor.Profile) *flavor.Spec {
	s := &flavor.Spec{Name: title}
	for _, p := range profiles {
		s.Pours = append(s.Pours, flavor.Pour{Profile: p, ML: 30})
	}
	return s
}

// What a title calls a drink after: common practice, no source.
func TestTitles(t *testing.T) {
	martini := []int{0, 2}
	for _, c := range []struct {
		title    string
		profiles []*flavor.Profile
		want     []int
	}{
		{"Martini", nil, martini},
		{"MARTINI", nil, martini},
		{"Our Martini", nil, martini},
		{"The House Martini", nil, martini},
		{"Anna's Martini", nil, martini},
		{"Quayside Daiquiri", nil, []int{13}},
		{"Martini (house recipe)", nil, martini},
		{"Martini cocktail", nil, martini},
		{"Old-Fashioned", nil, []int{5}},
		{"old fashioned, our way", nil, []int{5}},
		{"Business", nil, nil},
		{"the business", nil, []int{7}},
		{"Pina Colada", nil, []int{9}},
		{"Bees Knees", nil, []int{11}},
		{"our corpse reviver no 2", nil, []int{8}},
		{"Dry Martini", nil, []int{1}}, // the longer name
		{"Espresso Martini", nil, []int{3}},
		{"Vodka Martini", []*flavor.Profile{vodka}, martini}, // what its base is changes nothing
		{"Rye Old Fashioned", []*flavor.Profile{rye}, []int{5}},
		{"Martini Royale", nil, nil}, // what stands behind a name is a kind of it
		{"Martini Verde", nil, nil},
		{"Royale Martini", nil, nil}, // a word of another name
		{"Honey Daiquiri", nil, nil},
		{"Martini, reversed", nil, martini}, // as a proven one is
		{"Daiquiri, reversed", nil, nil},
		{"Wet Martini", nil, nil}, // poured otherwise
		{"Dry Old Fashioned", []*flavor.Profile{gin}, nil},
		{"extra dry martini", nil, nil},
		{"Guava Daiquiri", []*flavor.Profile{vodka, guava}, nil}, // what it is of beside
		{"Martini Daiquiri", nil, nil},                           // two at once
		{"Cuban", nil, nil},                                      // one word of a name
		{"Old Fashion", nil, nil},
		{"Rum", nil, nil}, // what is in a drink without a name
		{"Martin", nil, nil},
		{"", nil, nil},
		{"—", nil, nil},
	} {
		assert.Equal(t, c.want, names().After(spec(c.title, c.profiles...)), c.title)
	}
	assert.Nil(t, (&called.Names{}).After(spec("Martini")), "nothing is proven")
}

// A name is found however it is written and wherever it stands among words that change nothing; among
// words of other names, never.
func TestNamesAreFound(t *testing.T) {
	n := names()
	rapid.Check(t, func(t *rapid.T) {
		place := rapid.SampledFrom([]int{0, 1, 3, 4, 5, 6, 8, 9, 10, 13}).Draw(t, "place")
		name, _, _ := strings.Cut(proven[place], ",")
		before := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"our", "the", "house", "Tideway"}), 0, 3).Draw(t, "before"), " ")
		behind := strings.Join(rapid.SliceOfN(rapid.SampledFrom([]string{"cocktail", "(our way)", "- house spec"}), 0, 2).Draw(t, "behind"), " ")
		if rapid.Bool().Draw(t, "loud") {
			name = strings.ToUpper(name)
		}
		assert.Contains(t, n.After(spec(before+" "+name+" "+behind)), place)
		other := rapid.SampledFrom([]string{"royale", "honey", "reviver", "tea", "Colada"}).Draw(t, "other")
		if !strings.Contains(strings.ToLower(name), strings.ToLower(other)) {
			assert.NotContains(t, n.After(spec(other+" "+name)), place)
			assert.NotContains(t, n.After(spec(name+" "+other)), place)
		}
	})
}
