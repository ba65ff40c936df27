package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// queried is a mark of doubt that stands alone, in place of a word or an amount, "15 ml ??? syrup", or
// behind a pour that may be another: "25 gin??".
var queried = pattern.Of(`(?i)(?:[\d½¼¾⅓⅔]|\b(?:ml|cl|oz|dash|dashes|bsp|tsp))[ \t]*\?{2,}|(?:^|[ \t])\?{2,}[ \t]+[\pL\d]|[\d½¼¾⅓⅔][ \t]*(?:(?:ml|cl|oz)[ \t]+)?[\pL]+(?:[ \t]+[\pL]+)?[ \t]*\?{2,}`)

// doubted is the fault of a line that holds such a mark.
func doubted(line string) *flavor.DataFault {
	m := queried.FindString(line)
	if m == "" {
		return nil
	}
	return measure.Invalid("text", strings.TrimSpace(line), "%q leaves something open; write what is poured", strings.TrimSpace(m))
}

// eightySix is the number by which bars say that something has run out, before a name.
var eightySix = pattern.Of(`\b86[ \t]*:?[ \t]+(\pL[\pL'’ -]*)`)

// ranOut is the fault of a line that may say of an ingredient that it has run out, where that is poured:
// nobody pours 86 ml by the eye.
func ranOut(line string, pours []flavor.Pour) *flavor.DataFault {
	if !strings.Contains(line, "86") {
		return nil
	}
	m := eightySix.FindString(line)
	if m == "" {
		return nil
	}
	for i := range pours {
		if p := &pours[i]; p.Amount == 86 && slices.Contains(p.Match.Inferred, flavor.InferredUnit) {
			return measure.Invalid("amount", m, "%q may say that %s has run out; write \"86 ml\" if it is poured, or \"no\" before the name if it is not", strings.TrimSpace(m), p.Match.Asked)
		}
	}
	return nil
}
