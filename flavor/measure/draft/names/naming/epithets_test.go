package naming_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// Words of quality, making, origin, age and colour are passed over with a note, where no bottle is told apart by
// them; what may be tasted is asked. Common practice, no source.
func TestEpithetsArePassedOver(t *testing.T) {
	b := catalogue(t)
	for _, c := range []struct{ name, id, dropped string }{
		{"old white rum", "white-rum", "old"},
		{"blended old rum", "aged-rum", "blended"},
		{"well-aged Kentucky bourbon", "bourbon", "well-aged"},
		{"siphon soda water", "soda-water", "siphon"},
		{"rum from Jamaica", "aged-jamaican-rum", ""},
		{"agave spirit from Mexico", "", ""},
		{"pot still aged rum", "aged-rum", "pot still"},
		{"golden tequila", "gold-tequila", ""},
		{"finest dark spiced rum", "spiced-rum", "finest dark"},
		{"special reserve cognac", "cognac", "special reserve"},
		{"bottle-fermented sparkling wine", "brut-champagne", ""},
		{"double distilled vodka", "vodka", "double distilled"},
		{"imported dry vermouth", "dry-vermouth", "imported"},
		// a colour beside what was put in is of the bottle, and is asked where it may be of either
		{"dark & spicy rum", "dark-rum", ""},
		{"gold and smoky rum", "gold-rum", ""},
		{"dark and spiced rum", "spiced-rum", "dark and"},
		{"dark spicy rum", "", ""},
		// what may be tasted, or tells bottles apart, is asked
		{"fruity white rum", "", ""},
		{"smoky vodka", "", ""},
		{"navy strength spiced rum", "", ""},
		{"cask strength gin", "", ""},
		{"old liqueur", "", ""},
		{"French liqueur", "", ""},
		{"special sauce", "", ""},
		{"old fashioned", "", ""},
		{"caribbean rum", "", ""},
	} {
		f := b.Find(c.name, naming.Place{Unit: flavor.Ounce, Amount: 1})
		if c.id == "" {
			assert.False(t, f.Firm() && f.Infusion == "", "%s is read as %v", c.name, f.Profile)
			continue
		}
		if assert.True(t, f.Firm(), c.name) {
			assert.Equal(t, c.id, f.Profile.ID, c.name)
			assert.Equal(t, c.dropped, f.Dropped, c.name)
			assert.True(t, f.Inferred, "%s is told", c.name)
		}
	}
}

// harmful are words for what guests must not have, some of each allergen of Regulation (EU) No 1169/2011, Annex II, that
// a name of a drink's pour may hold.
var harmful = []string{"almond", "hazelnut", "walnut", "pecan", "cashew", "pistachio", "macadamia", "marzipan", "peanut", "sesame", "tahini", "milk", "cream", "butter", "brown butter", "ghee",
	"egg", "egg white", "yolk", "custard", "fish sauce", "anchovy", "oyster", "clam", "shrimp", "soy", "miso", "soy sauce", "celery", "celery salt", "mustard", "wheat", "barley malt", "lupin", "wine", "honey", "bacon", "dried apricot"}

// No word is passed over that names what may harm a guest: before a name, behind it, in brackets, behind a comma.
func TestNoAllergenIsPassedOver(t *testing.T) {
	b := catalogue(t)
	bases := []string{"vodka", "white rum", "simple syrup", "dry vermouth", "lemon juice", "coffee liqueur", "soda water", "London dry gin", "honey syrup", "aged rum", "brut champagne"}
	read, asked := 0, 0
	for i, w := range harmful {
		for k, form := range []string{"%w %b", "old %w %b", "%b %w", "%b (%w)", "%b, %w", "%b infused with %w", "special %w-washed %b", "%b from the %w", "%w-style %b"} {
			name := strings.NewReplacer("%w", w, "%b", bases[(i+k)%len(bases)]).Replace(form)
			f := b.Find(name, naming.Place{Unit: flavor.Ounce, Amount: 1})
			if f.Profile == nil || f.Fault != nil {
				asked++
				continue
			}
			read++
			assert.Empty(t, naming.Loses(name, f.Profile), "%q is read as %s", name, f.Profile.Name)
		}
	}
	assert.Positive(t, read)
	assert.Positive(t, asked)
}
