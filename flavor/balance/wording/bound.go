package wording

import (
	"fmt"
	"strconv"

	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// Amounts are how much of something a drink has, and how much drinks like it have at most and
// in the middle of them, as a bartender says it.
type Amounts struct{ Poured, Most, Usual string }

// Beyond says that so much of a pour is more than drinks like it have, and how much those
// have at most; of a drink that is stirred, where what is not stirred may be out of place.
func Beyond(x *weigh.Beyond, of *Amounts, stirred bool) string {
	text := fmt.Sprintf("%s of %s is ", of.Poured, x.Profile.Name)
	switch {
	case x.Foreign && stirred && x.Profile.Class.Shaken():
		return text + "out of place: hardly any stirred drink like this has it"
	case x.Foreign:
		return text + "out of place: hardly any drink like this has it at all"
	case x.Edges < 1:
		return text + "a lot for a drink like this"
	case of.Most == of.Poured && of.Usual != of.Poured && x.Usual > 0:
		return text + "more than nearly all drinks like this have: about " + of.Usual + " is usual"
	case of.Most == of.Poured:
		return text + "a little more than drinks like this have"
	case !x.Own:
		return text + "too much: hardly any drink like this has it at all, and none more than " + of.Most
	}
	return text + "too much: drinks like this have " + of.Most + " at most"
}

// Bound says a number of the finished drink and the bound that it passes, or is near to.
func Bound(x *weigh.OutOfBounds) string {
	switch {
	case x.Glass.Name != "":
		return fmt.Sprintf("%.0f ml does not go into a %s, which takes about %.0f ml of it", x.Amount, x.Glass.Name, x.Bound)
	case !x.High:
		return under(x)
	case x.Edges < 1:
		return near(x)
	}
	return over(x)
}

// under says that a drink has too little of something.
func under(x *weigh.OutOfBounds) string {
	switch x.Axis {
	case ratio.Volume:
		return fmt.Sprintf("%.0f ml in the glass is less than a drink holds: at least %.0f ml", x.Amount, x.Bound)
	case ratio.Strong:
		if x.Amount < x.Bound {
			return "it has no alcohol, and nearly every drink made like this has some"
		}
		return "it has no base, and nearly every drink made like this has one"
	case ratio.Sweet:
		return "nothing sweet balances what is sour"
	case ratio.Sour:
		return "it has nothing sour, and nearly every drink made like this has something"
	case ratio.Bitter:
		return "it has no bitters, and most drinks of spirit and sweet vermouth have some"
	case ratio.Long:
		return "nothing makes it long, and nearly every drink served long has something that does"
	}
	return fmt.Sprintf("%.0f °C in the mug is too cold for a hot drink: at least %.0f °C", x.Amount, x.Bound)
}

// asLarge is the share of what a drink may have at most, from where it is more than that and not
// about as much.
const asLarge = 1.05

// over says that a drink has too much of something.
func over(x *weigh.OutOfBounds) string {
	switch {
	case x.Axis == ratio.Volume && x.Amount < asLarge*x.Bound:
		return fmt.Sprintf("%.0f ml in the glass is as much as the largest of its kind have", x.Amount)
	case x.Axis == ratio.Volume && x.Bound < weigh.MostML:
		return fmt.Sprintf("%.0f ml in the glass is large for its kind: about %.0f ml is usual", x.Amount, x.Bound)
	case x.Axis == ratio.Volume:
		return fmt.Sprintf("%.0f ml in the glass is more than a drink holds: at most %.0f ml", x.Amount, x.Bound)
	case x.Grams:
		return fmt.Sprintf("%s g of alcohol in one glass is more than drinks of its kind have: at most about %.0f g", above(x.Amount, x.Bound, 0), x.Bound)
	case x.Axis == ratio.Strong:
		return fmt.Sprintf("%s %% vol in the glass is stronger than any drink: at most %.0f %%", above(x.Amount, x.Bound, 0), x.Bound)
	case x.Axis == ratio.Sweet:
		return fmt.Sprintf("%s g of sugar in 100 ml is sweeter than any drink: at most %.0f g", above(x.Amount, x.Bound, 0), x.Bound)
	case x.Axis == ratio.Long:
		return fmt.Sprintf("juice is %.0f %% of it: served up it is a long drink without ice, and drinks served so have less than %.0f %%", x.Amount, x.Bound)
	case x.Axis == ratio.Sour:
		return fmt.Sprintf("%s g of acid in 100 ml is sharper than any drink: at most %.1f g", above(x.Amount, x.Bound, 1), x.Bound)
	}
	return fmt.Sprintf("%.0f °C scalds: a hot drink is served at %.0f °C at most", x.Amount, x.Bound)
}

// near says that a drink has nearly too much of something.
func near(x *weigh.OutOfBounds) string {
	switch {
	case x.Axis == ratio.Volume:
		return fmt.Sprintf("%.0f ml in the glass is a lot for its kind", x.Amount)
	case x.Grams:
		return fmt.Sprintf("%.0f g of alcohol in one glass is a lot for its kind", x.Amount)
	case x.Axis == ratio.Strong:
		return fmt.Sprintf("%.0f %% vol in the glass is a lot for any drink", x.Amount)
	case x.Axis == ratio.Sweet:
		return fmt.Sprintf("%.0f g of sugar in 100 ml is a lot for any drink", x.Amount)
	case x.Axis == ratio.Long:
		return fmt.Sprintf("juice is %.0f %% of it, a lot for a drink served up", x.Amount)
	case x.Axis == ratio.Sour:
		return fmt.Sprintf("%.1f g of acid in 100 ml is a lot for any drink", x.Amount)
	}
	return fmt.Sprintf("%.0f °C is nearly too hot for a drink", x.Amount)
}

// above says an amount over a bound with as many decimals as it takes for the two to
// differ, decimals at least and two more at most.
func above(amount, bound float64, decimals int) string {
	said := func(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }
	for n := decimals; n < decimals+2; n++ {
		if said(amount, n) != said(bound, n) {
			return said(amount, n)
		}
	}
	return said(amount, decimals+2)
}
