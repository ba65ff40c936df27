package wording

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/ratio"
)

// tastings say of each axis what its value in the glass is given in, and what more of it
// does to a drink; common practice, no source.
var tastings = [ratio.NumAxes]struct{ unit, lesson string }{
	ratio.Strong: {"% vol", "More alcohol is felt before it is tasted: heat in the nose and the throat, and everything else steps back behind it."},
	ratio.Sweet: {"g/100 mL of sweetness, counted as sucrose",
		"More sugar makes the drink fuller and rounder, and hides acid, bitterness and heat; too much lies on the tongue and tastes flat."},
	ratio.Sour: {"g/100 mL of acid, counted as citric", "More acid makes the drink brighter and drier and brings fruit forward; too much is thin and sharp."},
	ratio.Bitter: {"mg/L of bitterness, counted as quinine",
		"Bitterness comes last and stays longest, so wait ten seconds before the next glass; sugar hides it, and cold brings it out."},
	ratio.Long: {"mL of drink for each mL of alcohol", "More length opens the aroma and takes the heat away; too much, and the drink is thin and tastes of water."},
}

// Unit is what the value of an axis in the glass is given in.
func Unit(a ratio.Axis) string { return tastings[a].unit }

// Lesson says what more of an axis does to a drink.
func Lesson(a ratio.Axis) string { return tastings[a].lesson }

// HardlyAlcohol is the ethanol, in g, below which a tasting counts as free of alcohol: less
// than a ripe banana holds. Common practice, no source.
const HardlyAlcohol = 0.5

// Cautions are what is read out before the first sip of a tasting with so much ethanol for
// each taster, in g and in standard drinks; common practice.
func Cautions(ethanolG, drinks float64) []string {
	if ethanolG < HardlyAlcohol {
		return []string{
			"Nobody has to swallow, and nobody has to say why.",
			"Water before each glass, and a minute between them; plain crackers if the drink is bitter.",
		}
	}
	return []string{
		fmt.Sprintf("Whoever swallows all of it takes in %.1f g of ethanol, %.1f standard drinks (United States, 14 g).", ethanolG, drinks),
		"Taste, then spit into the cup; nobody has to swallow, and nobody has to say why.",
		"Water before each glass, and a minute between them; plain crackers if the drink is bitter.",
		"Not for anyone who is driving, pregnant, under age, or taking medicine that does not mix with alcohol.",
	}
}

// Glass says one glass of a tasting on a line: its code, how many noticeable steps it lies
// from the middle, and what is poured.
func Glass(code int, steps float64, pours []flavor.Pour) string {
	out := fmt.Sprintf("%d: %+.1f steps", code, steps)
	for i := range pours {
		out += ", " + measured(&pours[i])
	}
	return out
}

// Found says how many of those who answered found the odd one, how probable that is by
// guessing alone, and whether that shows that the two can be told apart; [CanTell] follows.
func Found(right, answers int, p float64, different bool) string {
	if different {
		return fmt.Sprintf("%d of %d found the odd one; guessing alone does that with p = %.3f: the cover can be told apart. About ", right, answers, p)
	}
	return fmt.Sprintf("%d of %d found the odd one; guessing alone does that with p = %.2f: the test does not show that the cover can be told apart. That is no proof that it cannot: about ",
		right, answers, p)
}

// CanTell says which share of people can tell, from how many to how many, and how sure that is.
func CanTell(share, low, high, sure float64) string {
	return fmt.Sprintf("%.0f %% can tell, between %.0f and %.0f %% with %.0f %% confidence.", 100*share, 100*low, 100*high, 100*sure)
}
