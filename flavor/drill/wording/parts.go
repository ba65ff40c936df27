package wording

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
)

// part is what the pours of one kind come to.
type part struct {
	kin flavor.Kin
	ml  float64
}

const (
	smallPart = 0.06 // of the largest part: what is less is a dash, whatever it is poured with
	// how far a part may be from a mark of the jigger and be called that
	jiggerWithin = 0.04
	wholeWithin  = 0.05 // how far a part may be from a whole number and be called that
	mostParts    = 8    // that anybody counts of the largest, beside one of the smallest
	mostBeside   = 3    // and of those between the two
	mostSplit    = 2    // into how many the smallest part is split to make the others whole
	mostOfSplit  = 5    // and what the largest is then at most: 5 : 2, and no 7 : 2
)

// Parts says a drink as bars do: the parts as they are poured, the largest first, in
// whole numbers where there are any: "3 spirit : 2 liqueur : 1 sour juice, with bitters".
func Parts(s *flavor.Spec) string {
	var parts []part
	fizz := ""
	for i := range s.Pours {
		p := &s.Pours[i]
		kin := p.Profile.Class.Kin()
		if kin == flavor.KinSparkling {
			fizz = fizzOf(fizz, p.Profile.Class)
		}
		at := slices.IndexFunc(parts, func(x part) bool { return x.kin == kin })
		if at < 0 {
			at, parts = len(parts), append(parts, part{kin: kin})
		}
		parts[at].ml += p.ML
	}
	slices.SortStableFunc(parts, func(a, b part) int {
		return cmp.Or(cmp.Compare(leaves(a), leaves(b)), cmp.Compare(b.ml, a.ml))
	})
	var large, small []string
	most := slices.IndexFunc(parts, func(x part) bool { return x.ml < smallPart*parts[0].ml || leaves(x) > 0 })
	if most < 0 {
		most = len(parts)
	}
	for i, n := range wholeParts(parts[:most]) {
		large = append(large, n+" "+kinWord(parts[i].kin, fizz))
	}
	for _, x := range parts[most:] {
		small = append(small, kinWord(x.kin, fizz))
	}
	text := strings.Join(large, " : ")
	if len(small) > 0 {
		text += ", with a little " + strings.Join(small, " and ")
	}
	return text
}

// leaves is 1 for what is counted in leaves and pinches, which nobody calls a part, else 0.
func leaves(x part) int {
	if x.kin == flavor.KinHerb || x.kin == flavor.KinSpice {
		return 1
	}
	return 0
}

// wholeParts says amounts as parts: in whole numbers where these are within wholeWithin and
// few enough to be said, else by the marks of a jigger.
func wholeParts(parts []part) []string {
	least := parts[len(parts)-1].ml
	for split := 1; split <= mostSplit; split++ {
		unit := least / float64(split)
		whole := true
		for i, x := range parts {
			n := math.Round(x.ml / unit)
			whole = whole && math.Abs(x.ml/unit-n) <= wholeWithin*n && n <= mostOf(i, split)
		}
		if whole {
			return partNumbers(parts, unit)
		}
	}
	return jiggers(parts)
}

// mostOf is the most that a part, counted from the largest, may be called in whole numbers
// where the smallest is called split.
func mostOf(i, split int) float64 {
	switch {
	case split > 1:
		return mostOfSplit
	case i > 0:
		return mostBeside
	}
	return mostParts
}

// largestParts are what the largest part may be called where the parts are no whole numbers,
// as bars call it, "2 : ¾ : ¾", after its own ounces; the others come in fourths, or in eighths.
var largestParts = []float64{2, 1.5, 1, 2.25, 2.5, 1.75, 3}

// jiggers says amounts in fourths or eighths of a largest part, to the nearest eighth where
// none of them fits.
func jiggers(parts []part) []string {
	for _, grid := range []float64{4, 8} {
		ounces := math.Round(grid*parts[0].ml/measure.OunceML) / grid
		for _, top := range append([]float64{ounces}, largestParts...) {
			if out, worst := marked(parts, top, grid); worst <= jiggerWithin {
				return out
			}
		}
	}
	out, _ := marked(parts, largestParts[0], 8)
	return out
}

// marked says amounts by the nearest marks of a grid, one mark at least, and how far the worst
// of them is from its mark, as a share of it.
func marked(parts []part, top, grid float64) (out []string, worst float64) {
	for _, x := range parts {
		v := top * x.ml / parts[0].ml
		n := max(1, math.Round(grid*v)) / grid
		worst = max(worst, math.Abs(v-n)/n)
		out = append(out, measure.FormatAmount(n, ""))
	}
	return out, worst
}

func partNumbers(parts []part, unit float64) (out []string) {
	for _, x := range parts {
		out = append(out, fmt.Sprintf("%.0f", x.ml/unit))
	}
	return out
}

// kinWords are what bars call some kin that the catalogue calls otherwise.
var kinWords = map[flavor.Kin]string{
	flavor.KinTea:       "water, tea or coffee",
	flavor.KinFoam:      "egg or foam",
	flavor.KinSweetener: "syrup",
	flavor.KinSharp:     "vinegar or acid",
	flavor.KinWine:      "vermouth or wine",
	flavor.KinCream:     "cream liqueur",
	flavor.KinMilk:      "milk or cream",
	flavor.KinBitter:    "bitter liqueur",
}

// fizzWords are what bars call what sparkles, by class.
var fizzWords = map[flavor.Class]string{
	flavor.ClassSoda:          "soda",
	flavor.ClassBeer:          "beer",
	flavor.ClassCider:         "cider",
	flavor.ClassSparklingWine: "sparkling wine",
}

// fizzOf names what sparkles in a drink, once one more does.
func fizzOf(known string, c flavor.Class) string {
	if w := fizzWords[c]; known == "" || strings.Contains(known, w) {
		return cmp.Or(known, w)
	}
	return known + " and " + fizzWords[c]
}

func kinWord(k flavor.Kin, fizz string) string {
	if k == flavor.KinSparkling {
		return fizz
	}
	if w, ok := kinWords[k]; ok {
		return w
	}
	return string(k)
}

// Ratio says a ratio as the trade does, the largest part as 8, without what is less than a
// share of that.
func Ratio(e *ratio.Equivalents, least float64) string {
	top := slices.Max(e[:])
	var parts []string
	for a, v := range e {
		if v >= least*top {
			parts = append(parts, fmt.Sprintf("%.1f %v", 8*v/top, ratio.Axis(a)))
		}
	}
	return strings.Join(parts, " : ")
}
