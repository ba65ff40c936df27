package reading

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

// What a draft leaves open or tells by the numbers of its name is asked about, and is no smaller drink.
func TestHalfReadDraftsAreAsked(t *testing.T) {
	for text, want := range map[string]string{
		"5:1 gin martini, stirred up with a twist, 1 dash bitters":           "is made of more than",
		"30 gin / 25 gin?? 30 lime juice, 15 simple syrup, shake, up":        "leaves something open",
		"60 ml gin\n25 ml lime juice\n20 ml pineapple??\n15 ml simple syrup": "leaves something open",
	} {
		_, err := resolveText(t, text)
		assert.NotEmpty(t, flavor.DataFaultsOf(err), text)
		assert.ErrorContains(t, err, want, text)
	}
}
