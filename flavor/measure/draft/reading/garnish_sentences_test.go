package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// A sentence that lays something on a drink pours nothing of it, whatever its verb: common practice, no source.
func TestSentencesOfGarnish(t *testing.T) {
	const pours = "2 oz gin\n.75 lemon juice\n.75 simple\nshake, up\n"
	for text, garnish := range map[string]string{
		"top with a mint crown":                                 "mint crown",
		"float a star anise on the foam":                        "star anise",
		"complete with a lime cheek":                            "lime cheek",
		"top with a cherry":                                     "cherry",
		"thin lemon slice to float":                             "lemon slice",
		"walnut half on top":                                    "walnut half",
		"garnish is a lemon coin, flamed":                       "a lemon coin, flamed",
		"spear of pineapple with its frond":                     "with its frond",
		"dehydrated lime clipped to the rim with a mini peg":    "mini peg",
		"stick a rosemary sprig in it & torch":                  "rosemary sprig",
		"dress with fruit in season":                            "fruit in season",
		"finish with a hazelnut":                                "hazelnut",
		"lemon peel laid over":                                  "lemon peel laid over",
		"finish w/ a mint bouquet":                              "mint bouquet",
		"serve with a small dish of salted almonds on the side": "almonds",
	} {
		s, err := reading.Read(pours+text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
		assert.Contains(t, s.Garnish, garnish, text)
	}
	for text, want := range map[string]int{"top with soda": 4, "float .5 oz red wine": 4, "float a barspoon of absinthe": 4, "top with a splash of soda": 4, "float orange blossom water": 4, "top with cherry soda": 4} {
		s, err := reading.Read(pours+text, wholeCatalogue(t))
		if assert.NoError(t, err, text) {
			assert.Len(t, s.Pours, want, text)
		}
	}
}
