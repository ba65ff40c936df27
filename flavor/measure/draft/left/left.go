// Package left parts how much is left of a bottle from what it is.
package left

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/pattern"
)

// bottleML is what a bottle holds whose size nobody says: common practice, no source.
const bottleML = 700.0

// shares are the shares of a bottle that people say.
var shares = map[string]float64{"half": 1.0 / 2, "a third": 1.0 / 3, "two thirds": 2.0 / 3, "a quarter": 1.0 / 4, "three quarters": 3.0 / 4,
	"1/2": 1.0 / 2, "½": 1.0 / 2, "1/3": 1.0 / 3, "⅓": 1.0 / 3, "2/3": 2.0 / 3, "⅔": 2.0 / 3, "1/4": 1.0 / 4, "¼": 1.0 / 4, "3/4": 3.0 / 4, "¾": 3.0 / 4, "a": 1, "one": 1, "1": 1, "two": 2, "2": 2}

var ofABottle = pattern.Of(`(?i)^(half|a third|two thirds|a quarter|three quarters|[123]/[234]|[½⅓⅔¼¾]|an?|one|two|[12])(?: of)?(?: an?| one)?(?: full)? bottles?$`)

// leastBare is the least number alone that is mL of what is left: less is counted, as "2 limes".
const leastBare = 10

// mostAmountWords is the most words that say how much is left.
const mostAmountWords = 5

// Cut parts how much is left of a bottle from what it is: "300 mL fino sherry", "mezcal
// 10 oz", "half a bottle of mezcal". A number alone is mL. The amount is in mL; it is false
// where none is written, or nothing else.
func Cut(text string) (ml float64, name string, ok bool) {
	words := strings.Fields(text)
	for n := min(len(words)-1, mostAmountWords); n > 0; n-- {
		if ml, ok := amountLeft(strings.Join(words[:n], " ")); ok {
			name := withoutOf(words[n:])
			_, _, unit := draft.ParseAmount("1 " + name)
			return ml, name, !unit
		}
		if ml, ok := amountLeft(strings.Trim(strings.Join(words[len(words)-n:], " "), "()")); ok {
			return ml, strings.TrimRight(strings.Join(words[:len(words)-n], " "), " :,-–"), true
		}
	}
	return 0, "", false
}

// withoutOf joins the words of a name, without the "of" that joins it to its amount.
func withoutOf(words []string) string {
	if len(words) > 1 && strings.EqualFold(words[0], "of") {
		words = words[1:]
	}
	return strings.Join(words, " ")
}

// amountLeft reads an amount of a liquid in mL.
func amountLeft(text string) (float64, bool) {
	text = strings.TrimSuffix(strings.TrimSuffix(text, " left"), " of")
	if m := ofABottle.FindStringSubmatch(text); m != nil {
		share, known := shares[strings.ToLower(m[1])]
		return share * bottleML, known
	}
	amount, unit, ok := draft.ParseAmount(text)
	if !ok || amount <= 0 {
		return 0, false
	}
	if unit == "" && amount >= leastBare {
		unit = flavor.Millilitre
	}
	each, liquid := measure.MLPerUnit(unit, nil)
	return amount * each, liquid
}
