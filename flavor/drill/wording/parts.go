package wording

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// part is what the pours of one kind come to.
type part struct {
	kin flavor.Kin
	ml  float64
}

const (
	smallPart   = 0.06 // of the largest part: what is less is a dash, whatever it is poured with
	wholeWithin = 0.08 // how far a part may be from a whole number and be called that
	mostParts   = 16   // that anybody counts
	mostSplit   = 4    // into how many the smallest part is split to make the others whole
)

// Parts says a drink as bars do: the parts as they are poured, the largest first, in
// whole numbers where there are any: "3 spirit : 2 liqueur : 1 sour juice, with bitters".
func Parts(s *flavor.Spec) string {
	var parts []part
	for i := range s.Pours {
		p := &s.Pours[i]
		kin := p.Profile.Class.Kin()
		at := slices.IndexFunc(parts, func(x part) bool { return x.kin == kin })
		if at < 0 {
			at, parts = len(parts), append(parts, part{kin: kin})
		}
		parts[at].ml += p.ML
	}
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(b.ml, a.ml) })
	var large, small []string
	most := slices.IndexFunc(parts, func(x part) bool { return x.ml < smallPart*parts[0].ml })
	if most < 0 {
		most = len(parts)
	}
	for i, n := range wholeParts(parts[:most]) {
		large = append(large, n+" "+kinWord(parts[i].kin))
	}
	for _, x := range parts[most:] {
		small = append(small, kinWord(x.kin))
	}
	text := strings.Join(large, " : ")
	if len(small) > 0 {
		text += ", with a little " + strings.Join(small, " and ")
	}
	return text
}

// wholeParts says amounts as parts: in whole numbers where these are within wholeWithin,
// else to one decimal of the smallest.
func wholeParts(parts []part) []string {
	least := parts[len(parts)-1].ml
	for split := 1; split <= mostSplit; split++ {
		unit := least / float64(split)
		whole := !slices.ContainsFunc(parts, func(x part) bool {
			n := math.Round(x.ml / unit)
			return n > mostParts || math.Abs(x.ml/unit-n) > wholeWithin*n
		})
		if whole {
			return partNumbers(parts, unit, "%.0f")
		}
	}
	return partNumbers(parts, least, "%.1f")
}

func partNumbers(parts []part, unit float64, format string) (out []string) {
	for _, x := range parts {
		out = append(out, fmt.Sprintf(format, x.ml/unit))
	}
	return out
}

// kinWords are what bars call some kin that the catalogue calls otherwise.
var kinWords = map[flavor.Kin]string{
	flavor.KinTea:       "water, tea or coffee",
	flavor.KinFoam:      "egg or foam",
	flavor.KinSparkling: "soda, beer or sparkling wine",
	flavor.KinSweetener: "syrup",
	flavor.KinSharp:     "vinegar or acid",
	flavor.KinWine:      "vermouth or wine",
	flavor.KinCream:     "cream liqueur",
	flavor.KinMilk:      "milk or cream",
	flavor.KinBitter:    "bitter liqueur",
}

func kinWord(k flavor.Kin) string {
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
