package wording

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// InOrder names three drinks, the least first.
func InOrder(first, second, last string) string {
	return fmt.Sprintf("first %s; then %s; last %s", first, second, last)
}

// Gaps says at what three drinks finish on an axis, strength in % vol and sweetness in g of
// sugar per 100 mL; how many noticeable steps lie between them, and by what share each of
// these changes it.
func Gaps(a ratio.Axis, at [3]float64, steps [2]float64, each float64) string {
	unit := "% vol"
	if a == ratio.Sweet {
		unit = "g of sugar per 100 mL"
	}
	return fmt.Sprintf("They finish at %.1f, %.1f and %.1f %s. The gaps are %.1f and %.1f noticeable steps, each of which changes it by %.0f %%.",
		at[0], at[1], at[2], unit, steps[0], steps[1], 100*each)
}

// Size says how strong and how large a drink is.
func Size(d *mix.Drink) string {
	return fmt.Sprintf("%.1f ± %.1f %% vol, %.0f ± %.0f mL", d.ABV, d.PlusMinus.ABV, d.VolumeML, d.PlusMinus.VolumeML)
}

// Guessed says how a drink comes to its size, and how far guesses are out, in % vol and mL.
func Guessed(d *mix.Drink, abv, ml float64) string {
	return fmt.Sprintf("%.0f ml before ice, of which %.1f ml are alcohol, gain %.0f %% in water from the ice and make %.0f ± %.0f ml. That is %.1f in %.0f, or %.1f ± %.1f %% vol; your guesses are out by %.1f %% vol and %.0f ml.",
		d.BeforeML, d.ABV*d.VolumeML/100, d.DilutionPct, d.VolumeML, d.PlusMinus.VolumeML, d.ABV*d.VolumeML/100, d.VolumeML, d.ABV, d.PlusMinus.ABV, abv, ml)
}

// What is said of a guess that is half right.
const (
	StrengthOnly = "The strength is right, the volume is not."
	VolumeOnly   = "The volume is right, the strength is not."
)

// OrAsNear adds another cover that is as near.
func OrAsNear(cover string) string { return ", or as near " + cover }

// Covered says how far the best cover of what is out moves a drink, and the next, in
// noticeable steps; which aromas are lost, and on which axes the drink has more, above 0, or
// less, below it.
func Covered(cover, out string, best, next float64, lost []flavor.AromaFamily, leaves [ratio.NumAxes]int) string {
	gone := "nothing that a guest would notice"
	if len(lost) > 0 {
		names := make([]string, len(lost))
		for i, f := range lost {
			names[i] = f.String()
		}
		gone = strings.Join(names, ", ")
	}
	text := fmt.Sprintf("%s for %s moves the drink by %.1f noticeable steps, the next by %.1f. What is lost: %s", cover, out, best, next, gone)
	var other []string
	for _, a := range ratio.Axes() {
		switch {
		case leaves[a] > 0:
			other = append(other, "more "+a.Noun())
		case leaves[a] < 0:
			other = append(other, "less "+a.Noun())
		}
	}
	if len(other) > 0 {
		text += "; it leaves " + flavor.JoinAnd(other)
	}
	return text + "."
}

// OtherFamily says what makes another family, which the ratio is not of.
func OtherFamily(name, mark string) string { return fmt.Sprintf("%s would be %s.", name, mark) }

// Beside adds another sentence to one that it belongs to.
func Beside(text, other string) string { return strings.TrimSuffix(text, ".") + "; " + other }

// Read says what a drink pours, what makes it one of its family, and how bars say the ratio
// of that.
func Read(s *flavor.Spec, own, mark, poured string) string {
	return fmt.Sprintf("%s pours %s: %s, which is %s. As a rule that is %s.", s.Name, Parts(s), own, mark, poured)
}
