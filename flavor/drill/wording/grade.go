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
	text := fmt.Sprintf("%s for %s moves the drink by %.1f noticeable steps, the next by %.1f. What is lost: %s.", cover, out, best, next, gone)
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
		text += " It leaves " + flavor.JoinAnd(other) + "."
	}
	return text
}

// Telling is the part by which a drink is told from a family: its shares of all parts, 0 to 1,
// in the drink and in the middle of the family.
type Telling struct {
	Axis           ratio.Axis
	Here, InFamily float64
}

// say says what a family has of the part, and the drink.
func (t *Telling) say(family string) string {
	return fmt.Sprintf("%s, %s is %s of the parts, here %s", family, t.Axis.Noun(), shareOf(t.InFamily), shareOf(t.Here))
}

// hardlyAny is the share of the parts that nobody reads off a ratio.
const hardlyAny = 0.02

func shareOf(share float64) string {
	if share < hardlyAny {
		return "hardly any"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// NotFamily says why a ratio is not that of a family.
func NotFamily(name string, by Telling) string {
	return fmt.Sprintf("Not %s: %s.", name, by.say("in it"))
}

// Read says what a drink pours, how the ratio of its own family is handed down, and what tells
// it from the next one offered.
func Read(s *flavor.Spec, own, handed, next string, by Telling) string {
	return fmt.Sprintf("%s pours %s: %s, handed down as “%s”. %s.",
		s.Name, Parts(s), own, HandedDown(handed), by.say("In "+next+", the next one offered"))
}

// HandedDown is the ratio in the source of a family, which goes on to say more.
func HandedDown(source string) string {
	first, _, _ := strings.Cut(source, ";")
	first, _, _ = strings.Cut(first, ". ")
	return first
}
