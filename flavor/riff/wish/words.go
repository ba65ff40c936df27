package wish

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

// comparatives are the words for a step along an axis.
var comparatives = map[string]struct {
	axis template.Axis
	more bool
}{
	"stronger": {template.Strong, true}, "boozier": {template.Strong, true},
	"lighter": {template.Strong, false}, "weaker": {template.Strong, false}, "softer": {template.Strong, false},
	"sweeter": {template.Sweet, true}, "richer": {template.Sweet, true},
	"drier": {template.Sweet, false}, "dryer": {template.Sweet, false},
	"sourer": {template.Sour, true}, "tarter": {template.Sour, true}, "sharper": {template.Sour, true}, "brighter": {template.Sour, true},
	"rounder": {template.Sour, false}, "bitterer": {template.Bitter, true},
	"longer": {template.Long, true}, "taller": {template.Long, true}, "shorter": {template.Long, false},
}

// axisWords are the words for the axes themselves.
var axisWords = map[string]template.Axis{
	"strength": template.Strong, "alcohol": template.Strong, "boozy": template.Strong,
	"sweetness": template.Sweet, "sugar": template.Sweet, "sugary": template.Sweet,
	"sourness": template.Sour, "acid": template.Sour, "acidity": template.Sour, "tart": template.Sour,
	"bitterness": template.Bitter, "length": template.Long, "tall": template.Long,
}

func axisWord(word string) (template.Axis, bool) {
	if a, ok := template.ParseAxis(word); ok {
		return a, true
	}
	a, ok := axisWords[word]
	return a, ok
}

// familyWords are the words for the aroma families beside their own names.
var familyWords = map[string]flavor.Family{
	"citrusy": flavor.Citrus, "orangey": flavor.Orange, "fruity": flavor.Orchard, "apple": flavor.Orchard,
	"minty": flavor.Mint, "herbal": flavor.Herb, "herby": flavor.Herb, "herbs": flavor.Herb,
	"piney": flavor.Juniper, "pine": flavor.Juniper, "anisey": flavor.Anise, "liquorice": flavor.Anise,
	"clovey": flavor.Clove, "spicy": flavor.Pungent, "ginger": flavor.Pungent, "gingery": flavor.Pungent, "hot": flavor.Pungent,
	"peppery": flavor.Pungent, "caramelly": flavor.Caramel, "nutty": flavor.Nut, "nuts": flavor.Nut,
	"roasty": flavor.Roast, "roasted": flavor.Roast, "coffee": flavor.Roast, "oaky": flavor.Oak, "woody": flavor.Oak,
	"smoky": flavor.Smoke, "smokey": flavor.Smoke, "earthy": flavor.Root, "rooty": flavor.Root, "winey": flavor.Wine,
	"savoury": flavor.Vegetal, "green": flavor.Vegetal, "grainy": flavor.Grain, "malty": flavor.Grain,
	"creamy": flavor.Cream, "flowery": flavor.Floral, "berries": flavor.Berry, "warm": flavor.Cinnamon,
}

// familyWord knows a family's name, an adjective, and the comparative of either.
func familyWord(word string) (flavor.Family, bool) {
	for _, w := range []string{word, positive(word)} {
		if f, ok := flavor.ParseFamily(w); ok {
			return f, true
		}
		if f, ok := familyWords[w]; ok {
			return f, true
		}
	}
	return 0, false
}

// positive takes "nuttier" back to "nutty".
func positive(word string) string {
	if stem, ok := strings.CutSuffix(word, "ier"); ok {
		return stem + "y"
	}
	return word
}

const maxSuggest = 3

// unknownWish says what may be wished, nearest spellings first.
func unknownWish(written, word string) *flavor.Fault {
	f := &flavor.Fault{Kind: flavor.ErrUnknown, Value: written,
		Message: fmt.Sprintf("%q is no wish known here; write an axis (%s), an aroma family, with \"more\" or \"less\", \"no\" with what is to be left out, or a strength such as \"below 12 %%\"",
			written, axisList())}
	stem := word
	for _, prefix := range []string{"more ", "less "} {
		stem = strings.TrimPrefix(stem, prefix)
	}
	if len(stem) < 3 {
		return f
	}
	for _, known := range knownWords() {
		if strings.HasPrefix(known, stem[:3]) && len(f.Suggest) < maxSuggest {
			f.Suggest = append(f.Suggest, known)
		}
	}
	return f
}

func axisList() string {
	names := make([]string, 0, template.NumAxes)
	for _, a := range template.Axes() {
		names = append(names, a.String())
	}
	return strings.Join(names, ", ")
}

// knownWords lists every word that a wish may be made of, in order.
func knownWords() []string {
	var out []string
	for _, a := range template.Axes() {
		out = append(out, a.String())
	}
	for _, f := range flavor.Families() {
		out = append(out, f.ID)
	}
	for w := range comparatives {
		out = append(out, w)
	}
	for w := range axisWords {
		out = append(out, w)
	}
	for w := range familyWords {
		out = append(out, w)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
