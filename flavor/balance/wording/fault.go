package wording

import (
	"fmt"
	"strings"

	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// words say in a word or two that there is too much and too little of an axis.
var words = map[ratio.Axis][2]string{
	ratio.Strong: {"too strong", "too weak"}, ratio.Sweet: {"too sweet", "not sweet enough"}, ratio.Sour: {"too sour", "not sour enough"},
	ratio.Bitter: {"too bitter", "not bitter enough"}, ratio.Long: {"too thin", "too short"},
	ratio.Salty: {"too salty", "not salty enough"}, ratio.Umami: {"too savoury", "not savoury enough"}, ratio.Pungent: {"too fiery", "not fiery enough"},
	ratio.Aroma: {"takes over", "too plain"}, ratio.Fat: {"too rich", "too lean"}, ratio.Foam: {"too much egg", "too little egg"},
	ratio.Volume: {"too big", "too small"}, ratio.Temperature: {"too hot", "too cold"}, ratio.Method: {"badly made", "badly made"},
}

// flaws say the same of how a drink is made.
var flaws = map[technique.Flaw]string{
	technique.EggUnshaken: "not shaken", technique.Unshaken: "not shaken", technique.Uniced: "not chilled", technique.Curdled: "curdles",
	technique.Flat: "goes flat", technique.HotOnIce: "too hot to shake", technique.FatSet: "sets", technique.Clouded: "clouded",
}

// Word says in a word or two that there is too much or too little of an axis: "too sweet".
func Word(a ratio.Axis, high bool) string {
	if high {
		return words[a][0]
	}
	return words[a][1]
}

// Flaw says in a word or two what is wrong with how a drink is made: "curdles".
func Flaw(f technique.Flaw) string { return flaws[f] }

// OutOfPlace says the same of what hardly any drink has.
const OutOfPlace = "out of place"

func much(high bool) string {
	if high {
		return "too much"
	}
	return "too little"
}

// NoBase says that a drink has no base though its family has one.
func NoBase(family string) string {
	return fmt.Sprintf("there is no base in it, which drinks of this kind (%s) have", strings.ToLower(family))
}

// Lacks says that nothing brings an axis that a family has.
func Lacks(a ratio.Axis, family string) string {
	return fmt.Sprintf("nothing here brings %s, which drinks of this kind (%s) have", a.Noun(), strings.ToLower(family))
}

// About says by what amount there is too much or too little of an ingredient; [ForThisMuch]
// or [HaveAbout] may follow.
func About(amount string, high bool, name string) string {
	return fmt.Sprintf("about %s %s %s", amount, much(high), name)
}

// Far says that there is far too much or too little of an ingredient, as [About] does.
func Far(high bool, name string) string { return fmt.Sprintf("far %s %s", much(high), name) }

// ForThisMuch adds what an ingredient is too much or too little beside.
func ForThisMuch(name string) string { return " for this much " + name }

// HaveAbout adds how much of it there should be.
func HaveAbout(amount string) string { return ": drinks like this have about " + amount }

// Altogether says by what amount of its measure there is too much or too little of an axis.
func Altogether(a ratio.Axis, high bool, amount string) string {
	return fmt.Sprintf("%s %s altogether, by about %s of %s", much(high), a.Noun(), amount, a.Measure())
}

// Missing says what drinks made of the same pour beside it.
func Missing(name string) string {
	return fmt.Sprintf("something is missing: drinks made of this have %s too", name)
}

// Straight says that a draft is no mixed drink.
const Straight = "it is no mixed drink: a spirit as it is, or with a few dashes, is served so, and no ratio tells anything of it"

// FarFromAll says that a drink is like none, and which family is nearest.
func FarFromAll(family string) string {
	return fmt.Sprintf("it is far from all drinks that are known: the nearest kind is %s", strings.ToLower(family))
}
