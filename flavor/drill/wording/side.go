package wording

import (
	"fmt"
	"math"

	"counterpour/flavor/ratio"
)

// guests are words of guests by axis, for too much and for too little: common practice,
// no source.
var guests = [ratio.NumAxes][2]string{
	ratio.Strong: {"hot, boozy", "weak"},
	ratio.Sweet:  {"cloying, sticky", "dry, not sweet enough"},
	ratio.Sour:   {"sharp", "flabby, flat"},
	ratio.Bitter: {"too bitter, medicinal", "no bite, nothing to hold the sugar"},
	ratio.Long:   {"thin, watery", "tight, wants stretching"},
}

// alsoSaid are other words for the same, by axis, for too much and for too little: common
// practice, no source.
var alsoSaid = [ratio.NumAxes][2][]string{
	ratio.Strong: {{"strong", "alcoholic", "burns"}, {"not strong enough", "not boozy enough", "soft"}},
	ratio.Sweet:  {{"sweet", "sickly", "sugary", "syrupy"}, {"not sweet", "needs sugar", "not enough sugar"}},
	ratio.Sour:   {{"sour", "tart", "acidic", "acid", "puckering"}, {"not sour enough", "not sharp enough", "dull", "not enough acid"}},
	ratio.Bitter: {{"bitter"}, {"not bitter enough", "not bitter"}},
	ratio.Long:   {{"long", "diluted", "watered down", "too much water"}, {"short", "not long enough", "not enough water"}},
}

// AlsoSaid are other words for too much or too little of an axis: "tart" for "sharp".
func AlsoSaid(a ratio.Axis, high bool) []string {
	if high {
		return alsoSaid[a][0]
	}
	return alsoSaid[a][1]
}

// Guest is what a guest says of too much or too little of an axis: "sharp".
func Guest(a ratio.Axis, high bool) string {
	if high {
		return guests[a][0]
	}
	return guests[a][1]
}

// Plain says that there is too much or too little of an axis: "too much acid".
func Plain(a ratio.Axis, high bool) string {
	if high {
		return "too much " + a.Noun()
	}
	return "too little " + a.Noun()
}

// Side says too much or too little of an axis plainly and as a guest does.
func Side(a ratio.Axis, high bool) string { return Plain(a, high) + " (" + Guest(a, high) + ")" }

// RightAsWell adds another answer that is right.
func RightAsWell(also string) string { return "; " + also + " is right as well" }

// glassUnits are the units of what shows an axis in the glass; length shows as strength.
var glassUnits = [ratio.NumAxes]string{"% vol", "g of sugar (as sucrose) in 100 ml", "g of acid (as citric) in 100 ml",
	"mg per litre of bitterness counted as quinine", "% vol"}

// NotSo begins to say why a drink is not what somebody said of it: what shows the axis in
// the glass, as it is and as it was when poured properly.
func NotSo(a ratio.Axis, high bool, is, was float64) string {
	text := "Not " + Plain(a, high) + ": "
	if a == ratio.Long {
		text += "the further it is stretched, the weaker it is; "
	}
	return text + fmt.Sprintf("in the glass it has %s %s, poured properly %s", figure(is), glassUnits[a], figure(was))
}

// How [NotSo] ends.
const (
	NobodyTells = ", which nobody tells apart."
	FewTell     = ", which few tell apart."
	OtherWay    = ", so it is the other way round."
)

// WithinFamily ends [NotSo] of what moved so many steps to the side that was said.
func WithinFamily(steps float64) string {
	return fmt.Sprintf(", %.1f noticeable steps away, and still within what good drinks of its family have.", steps)
}

func figure(v float64) string {
	if math.Abs(v) >= 20 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.1f", v)
}
