package wording

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

var mistakes = [slip.NumMistakes]string{
	slip.Doubled:   "it was poured twice",
	slip.Halved:    "only half of it was poured",
	slip.Misread:   "another mark of the jigger was read",
	slip.Miscount:  "it was counted wrong",
	slip.ByEye:     "it was poured by eye",
	slip.Unstopped: "it ran out of a bottle whose stopper is off",
	slip.Swapped:   "the two amounts were swapped",
	slip.Forgotten: "it was forgotten",
	slip.Strength:  "syrup of another strength was poured",
}

// Slip says which pours were wrong, how much was poured and what the proper drink pours.
func Slip(s *slip.Slip, proper *flavor.Spec) string {
	was := func(m slip.Moved) string { return Poured(&proper.Pours[m.At]) }
	is := func(m slip.Moved) string {
		p := proper.Pours[m.At]
		p.Amount, p.Profile = m.Amount, m.Profile
		return Poured(&p)
	}
	first, how := s.Moved[0], mistakes[s.Mistake]
	switch s.Mistake {
	case slip.Forgotten:
		return fmt.Sprintf("%s is missing: %s", was(first), how)
	case slip.Strength:
		return fmt.Sprintf("%s in place of %s: %s", is(first), was(first), how)
	case slip.Swapped:
		return fmt.Sprintf("%s and %s in place of %s and %s: %s", is(first), is(s.Moved[1]), was(first), was(s.Moved[1]), how)
	}
	return fmt.Sprintf("%s in place of %s: %s", is(first), amountOf(&proper.Pours[first.At]), how)
}

// Poured says a pour: "3/4 oz lemon juice".
func Poured(p *flavor.Pour) string { return amountOf(p) + " " + p.Profile.Name }

// Pours says pours that stand for one thing: "1 oz dry vermouth + 1 dash orange bitters".
func Pours(of []flavor.Pour) string {
	parts := make([]string, len(of))
	for i, p := range of {
		parts[i] = measured(&p)
	}
	return strings.Join(parts, " + ")
}

// measured says a pour, pieces with their unit.
func measured(p *flavor.Pour) string {
	return measure.FormatAmount(p.Amount, p.Unit) + " " + p.Profile.Name
}

// amountOf says the amount of a pour; pieces have no unit.
func amountOf(p *flavor.Pour) string {
	if p.Unit == flavor.Piece {
		return measure.FormatAmount(p.Amount, "")
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}

// Slipped says how much of an axis there is in a drink, and how much when it is poured
// properly, in mL of the trade's own measure; [Times] or [HardlyLeft] follows.
func Slipped(a ratio.Axis, was, is float64) string {
	return fmt.Sprintf("Poured properly, its %s is as much as %s of %s; here it is %s. ", a.Noun(), millilitres(was), a.Measure(), millilitres(is))
}

// Stretched says how long a drink is, as it stands in the glass, and how long when it is poured
// properly; [Times] or [HardlyLeft] follows, which is of what lengthens it.
func Stretched(was, is *mix.Drink) string {
	return fmt.Sprintf("Poured properly it is %s; here it is %s, by what lengthens it. ", glassOf(was), glassOf(is))
}

// glassOf says how large and how strong a drink is: "188 ml of 13.3 % vol".
func glassOf(d *mix.Drink) string { return fmt.Sprintf("%.0f ml of %.1f %% vol", d.VolumeML, d.ABV) }

// HardlyLeft says that a slip left next to nothing of an axis.
const HardlyLeft = "Hardly any of it is left."

// Times says how many times as much there is, how many noticeable steps that is, and by
// what share each of them changes it.
func Times(times, steps, each float64) string {
	text := fmt.Sprintf("%.2g times as much", times)
	if times < 1 {
		text = fmt.Sprintf("%.0f %% of what it should be", 100*times)
	}
	return fmt.Sprintf("That is %s, or %.1f noticeable steps, each of which changes it by %.0f %%.", text, steps, 100*each)
}

// millilitres says an amount, the small ones more finely.
func millilitres(ml float64) string {
	if ml < 10 {
		return fmt.Sprintf("%.1f ml", ml)
	}
	return fmt.Sprintf("%.0f ml", ml)
}
