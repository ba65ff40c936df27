package wording

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// SamePours says that nothing is poured otherwise.
const SamePours = "the same pours"

// FirstStop says of the first drink of a walk that nothing leads up to it.
const FirstStop = "The first drink"

// mostNamed is how many aroma families are named each way.
const mostNamed = 3

// Strength says that a drink is stronger or weaker by so many noticeable steps, and how
// strong it is and was, in % vol.
func Strength(steps, is, was float64) string {
	return fmt.Sprintf("%s at %.0f %% vol, not %.0f", sense.Ethanol.Direction(steps), is, was)
}

// MoreAlcohol says that a drink that tastes hardly stronger holds more alcohol, and how much it
// holds and held, in grams.
func MoreAlcohol(is, was float64) string {
	return fmt.Sprintf("more alcohol, %.0f g and not %.0f", is, was)
}

// Effect says what a guest notices: senses in words, and the aroma families that there is
// more and less of.
func Effect(senses []string, more, less []flavor.AromaFamily) string {
	if len(more) > 0 {
		senses = append(senses, "more "+aromas(more))
	}
	if len(less) > 0 {
		senses = append(senses, "less "+aromas(less))
	}
	if len(senses) == 0 {
		return "much the same on the tongue"
	}
	return strings.Join(senses, ", ")
}

// ReadsAs adds the family that a drink is of now.
func ReadsAs(family string) string { return ", which reads as " + strings.ToLower(family) }

func aromas(fs []flavor.AromaFamily) string {
	names := make([]string, 0, mostNamed)
	for _, f := range fs[:min(len(fs), mostNamed)] {
		names = append(names, f.String())
	}
	return flavor.JoinAnd(names)
}

// Uses says what bottles a draft uses up, amounts and names, and what the draft is.
func Uses(moved []string, family string, abv float64) string {
	return fmt.Sprintf("Uses %s: %s, %.0f %% vol", flavor.JoinAnd(moved), strings.ToLower(family), abv)
}
