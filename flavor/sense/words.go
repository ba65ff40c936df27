package sense

// directions are the trade's words for less and for more of a sense. Colour and
// Aroma have none: they change, and neither way is more.
var directions = [NumSenses][2]string{
	Ethanol: {"lighter", "stronger"}, Sweet: {"drier", "sweeter"}, Sour: {"rounder", "sharper"}, Salty: {"less salty", "saltier"},
	Bitter: {"less bitter", "more bitter"}, Umami: {"less savoury", "more savoury"}, Pungent: {"less hot", "hotter"}, Cooling: {"less cooling", "cooler"},
	Astringent: {"less tannic", "more tannic"}, Carbonation: {"flatter", "livelier"}, Body: {"thinner", "fuller"}, Fat: {"leaner", "creamier"},
	Foam: {"less frothy", "frothier"}, Cloud: {"clearer", "cloudier"}, Temperature: {"colder", "warmer"}, Volume: {"shorter", "longer"},
}

// Direction says so many steps of a sense in a word of the trade, such as
// "drier" or "sharper"; empty for a sense without a more and a less, and for no
// steps.
func (s Sense) Direction(steps float64) string {
	switch {
	case s < 0 || int(s) >= NumSenses:
		return ""
	case steps < 0:
		return directions[s][0]
	case steps > 0:
		return directions[s][1]
	}
	return ""
}
