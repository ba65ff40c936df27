package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestNormaliseName(t *testing.T) {
	for written, want := range map[string]string{
		"Crème de Cassis": "creme de cassis", "creme  de-cassis": "creme de cassis", "Raspberries": "raspberry", "mint leaves": "mint leaf",
		"bitters": "bitter", "grass": "grass", "bosun's": "bosun", "hibiscus": "hibiscus", "anis": "anis", "": "", " - ": "", "gas": "gas", "leaves": "leaf",
		"Simple syrup (1:1)": "simple syrup 1 1",
	} {
		assert.Equal(t, want, NormaliseName(written), written)
	}
}

// Plain letters take a short cut, which must lead to the same place: a name
// with an accent added to it is normalised the long way.
func TestNormaliseNameShortCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plain := rapid.StringMatching(`[ -~]{0,30}`).Draw(t, "name")
		long := NormaliseName(plain + " é")
		want := NormaliseName(plain)
		if want != "" {
			want += " "
		}
		assert.Equal(t, want+"e", long)
		assert.Equal(t, NormaliseName(plain), NormaliseName(NormaliseName(plain)+""), "%q", plain)
	})
}
