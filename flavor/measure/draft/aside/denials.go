package aside

import (
	"strings"

	"counterpour/flavor/measure/vocabulary"
)

// denials stand before what is not to be poured: "not ginger beer", "no soda".
var denials = vocabulary.Words(`no not never without dont don't instead skip avoid stop`)

// mostDenied is the most words behind a denial that it speaks of.
const mostDenied = 3

// Denials parts words into those that follow a denial and the others.
func Denials(words string) (kept, denied string) {
	left := 0
	for w := range strings.FieldsSeq(words) {
		switch bare := strings.ToLower(strings.Trim(w, ",;.()!")); {
		case denials.Has(bare):
			left = mostDenied
		case left > 0:
			denied += " " + w
			left--
		default:
			kept += " " + w
		}
		if strings.ContainsAny(w, ",;.") {
			left = 0
		}
	}
	return strings.TrimSpace(kept), strings.TrimSpace(denied)
}
