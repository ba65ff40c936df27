package wording

import (
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// Mended says what a drink scores with a pour moved from an amount in its unit to what it
// is, what it scored before and what it scores when poured properly; [Now] or [NowStretched]
// follows.
func Mended(moved *flavor.Pour, from float64, after, before, proper float64) string {
	move := "Without its " + moved.Profile.Name
	if moved.Amount > 0 {
		move = fmt.Sprintf("With %s of %s instead of %s", measure.FormatAmount(moved.Amount, moved.Unit), moved.Profile.Name, measure.FormatAmount(from, moved.Unit))
	}
	return fmt.Sprintf("%s the drink scores %.0f of 100; as it was it scored %.0f, and poured properly it scores %.0f. ", move, after, before, proper)
}

// Now says how much of an axis there is and should be, in mL of the trade's own measure.
func Now(a ratio.Axis, is, want float64) string {
	return fmt.Sprintf("Its %s is now as much as %s of %s; poured properly it is %s.", a.Noun(), millilitres(is), a.Measure(), millilitres(want))
}

// NowStretched says how long a drink is and should be, as it stands in the glass.
func NowStretched(is, want *mix.Drink) string {
	return fmt.Sprintf("It is now %s; poured properly it is %s.", glassOf(is), glassOf(want))
}

// What a move lacks to mend a drink.
const (
	NoBetter   = "It makes the drink no better."
	LesserPart = "It takes back the lesser part of the slip: a mend must undo two thirds of it, or more than half of it and two thirds of the score that it cost."
)

// NobodyPours says that a move pours more of an ingredient than anybody does.
func NobodyPours(name string) string {
	return fmt.Sprintf("Nobody pours so much %s into one glass.", name)
}

// StillOff says that a move does not bring a drink to the score from which it is balanced.
func StillOff(from float64) string {
	return fmt.Sprintf("It is still off: balanced begins at %.0f of 100.", from)
}

// OtherSize says that a move leaves another size of drink than is proper, in mL before ice.
func OtherSize(is, want float64) string {
	return fmt.Sprintf("It leaves another size of drink: %s before ice, poured properly %s.", millilitres(is), millilitres(want))
}

// TooFar says that a move puts an axis out on the other side.
func TooFar(a ratio.Axis) string {
	return fmt.Sprintf("It goes too far the other way: the proper %s lies between.", a.Noun())
}
