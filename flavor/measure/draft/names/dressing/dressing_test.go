package dressing_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/dressing"
)

// said tells what a profile brings: allergens, "?" behind those that are possible, animals after
// "+", "unread" where nobody knows.
func said(p *flavor.Profile) string {
	if p.Unread {
		return "unread"
	}
	var out []string
	for _, m := range p.AllergenMarks {
		w := strings.ReplaceAll(string(m.Allergen), " ", "-")
		if m.Certainty != flavor.Contains {
			w += "?"
		}
		out = append(out, w)
	}
	for _, a := range p.Animal {
		if !slices.Contains([]string{"milk", "egg", "fish"}, a) {
			out = append(out, "+"+a)
		}
	}
	if p.ABV.Value > flavor.NoAlcoholABV {
		out = append(out, "alcohol")
	}
	if !p.AllergensKnown {
		out = append(out, "open")
	}
	return strings.Join(out, " ")
}

// What bars lay on drinks: common practice, no source.
func TestWhatIsLaidOnADrink(t *testing.T) {
	c, err := datatest.Calibrated()
	require.NoError(t, err)
	for text, want := range map[string]string{
		"toasted hazelnuts": "tree-nuts", "crushed almonds": "tree-nuts", "salted peanuts": "peanuts", "marzipan": "tree-nuts", "whipped cream": "milk", "egg white foam": "unread", "celery salt": "celery",
		"3 coffee beans": "", "lemon twist, expressed": "", "lime wheel": "", "dehydrated orange wheel": "", "mint sprig": "", "grated nutmeg": "", "2 olives on a pick": "sulphites?", "brandied cherry": "sulphites? alcohol",
		"cherry": "sulphites?", "fresh cherry": "", "dragon dust": "unread", "stuffed olives": "unread", "edible flowers": "", "cocktail umbrella": "", "salt": "", "half salt rim": "", "sugar": "", "smoked rosemary": "",
		"1/2 grapefruit slice": "", "cinnamon stick": "", "star anise": "", "cucumber ribbon": "", "rose petals": "", "candied ginger": "sulphites?", "banana chips": "", "crisps": "unread", "gold leaf": "", "pineapple frond": "",
		"lemon foam": "unread", "mint crown": "", "bacon": "+meat", "marshmallow": "eggs? +meat", "honeycomb": "+honey", "anchovy": "fish", "blue cheese": "milk", "oreo": "unread", "piel de limón": "", "Minzzweig": "", "avellanas": "tree-nuts",
		"toasted coconut flakes": "", "orange peel, flamed": "", "freeze-dried raspberry powder": "", "peanut brittle": "peanuts", "popcorn": "milk?", "zork shards": "unread", "cocoa powder": "", "chilli salt": "", "black pepper": "",
	} {
		s := flavor.Spec{Garnish: text}
		require.NoError(t, dressing.Dress(&s, c.Catalogue), text)
		var got []string
		for i := range s.Dressings {
			if w := said(s.Dressings[i].Profile); w != "" && !slices.Contains(got, w) {
				got = append(got, w)
			}
		}
		assert.Equal(t, want, strings.Join(got, " / "), text)
	}
}
