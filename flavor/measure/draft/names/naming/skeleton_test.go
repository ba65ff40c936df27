package naming_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
)

// skeletonOf leaves the first letter of each word of a name and its consonants.
func skeletonOf(name string) string {
	words := strings.Fields(flavor.NormaliseName(name))
	for i, w := range words {
		words[i] = w[:1] + strings.Map(func(c rune) rune {
			if strings.ContainsRune("aeiou", c) {
				return -1
			}
			return c
		}, w[1:])
	}
	return strings.Join(words, " ")
}

// The consonants of a name stand for no other ingredient: it is read right or asked for.
func TestSkeletonsOfAllNames(t *testing.T) {
	b := catalogue(t)
	catalogued, err := data.Embedded()
	require.NoError(t, err)
	right, asked := 0, 0
	for _, p := range catalogued.Profiles() {
		written := skeletonOf(p.Name)
		unit := flavor.Ounce
		switch {
		case p.Class == flavor.ClassCocktailBitters:
			unit = flavor.Dash
		case p.Class.Solid():
			unit = flavor.Piece
			if _, ok := measure.MLPerUnit(flavor.Gram, p); ok {
				unit = flavor.Gram
			}
		}
		place := naming.PlaceOf(unit, 1, false)
		f, whole := b.Find(written, place), b.Find(p.Name, place)
		full, _ := jargon.Lengthen(written)
		switch {
		case whole.Profile == nil || b.Has(full) && flavor.NormaliseName(p.Name) != full: // "wht" is white in the trade, and no wheat
		case f.Profile == nil || f.Fault != nil:
			asked++
		case f.Profile.ID == whole.Profile.ID:
			right++
		default:
			assert.Failf(t, "read as another", "%q of %q is %q", written, p.Name, f.Profile.Name)
		}
	}
	t.Logf("of %d skeletons %d are read right and %d are asked for", right+asked, right, asked)
}
