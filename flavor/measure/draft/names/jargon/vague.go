package jargon

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

var (
	// vagueKinds are words for many things that a bar has, of which each smells otherwise and
	// may harm another guest: "nut" is no clipping of nutmeg. Common practice, no source.
	vagueKinds = token.Words(`nut nuts seed seeds berry berries fruit fruits herb herbs spice spices grain grains flower flowers blossom blossoms root roots leaf leaves bean beans kernel kernels pea peas vegetable vegetables veg fish shellfish`)
	// vagueForms say what was made of it.
	vagueForms = token.Words(`syrup liqueur liquor juice puree purée cordial shrub bitters milk cream butter oil paste extract orgeat spirit brandy tincture infusion drink mix`)
)

// Vague reports whether a name says a kind of thing and its form, and not which: it is
// nobody's name, and no clipping or slip of one.
func Vague(name string) bool {
	kind := false
	for w := range strings.FieldsSeq(flavor.NormaliseName(name)) {
		switch {
		case vagueKinds[w]:
			kind = true
		case !vagueForms[w]:
			return false
		}
	}
	return kind
}
