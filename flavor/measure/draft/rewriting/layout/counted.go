package layout

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// Numbers that measure nothing, and amounts that are written in another way than figures, are told as
// other drafts tell them.

// replaced is an amount before an arrow that points at the one that counts: "rye 50ml -> 45ml".
var replaced = pattern.Of(`(?i)(` + amount + `[ \t]*(?:->|=>|-->|→|⇒)[ \t]*)` + amount)

// counts are numbers that say how many drinks there are, where they go, or what is set beside them.
var counts = []*pattern.Pattern{
	// "x12 per bottle"
	pattern.Of(sentence + `((?:x[ \t]?\d+|\d+[ \t]?x)[ \t]+(?:per|to[ \t]+(?:a|the)|in[ \t]+a)[ \t]+(?:bottle|batch|keg|jug|litre|liter|l|tray|flask|box|case))` + ends),
	// "Deck 9 and 12"
	pattern.Of(sentence + `((?:deck|station|bar|floor|table|terrace|room|gate|zone|section|level|tent|stand|booth)s?[ \t]+\d+(?:[ \t]*(?:,|&|\+|and|or|to|-)[ \t]*\d+)+)` + ends),
	// "Serve with 2 biscuits"
	pattern.Of(sentence + `((?:serve[d]?[ \t]+)?with[ \t]+` + count + `[ \t]+(?:biscuits?|cookies?|wafers?|crackers?|crisps|nuts|straws?|napkins?|picks?|stirrers?|coasters?|amaretti|chocolates?|truffles?)(?:[ \t]+(?:on[ \t]+the[ \t]+side|beside|alongside))?)` + ends),
}

// earlier is a bracket at the end of a text that tells what a drink was before: "(Was 45/15, 50/50 is
// nicer.)".
var earlier = pattern.Of(`(?i)\((?:was|were|used to be|previously|formerly|originally)\b[^()\n]*\)[ \t\n.]*$`)

// loosened is what a pour is for, behind its amount: "water 10 to loosen the miso".
var loosened = pattern.Of(`(?i)` + amount + `([ \t]+to[ \t]+(?:loosen|thin|dissolve|bloom|melt|slacken|let down|bring together|wake up)(?:[ \t]+(?:the|it|your|that))?(?:[ \t]+\pL+)?)` + ends)

// filled is how far a glass is filled up: "soda up to rim", "cola, fill to neck".
var filled = pattern.Of(`(?i)\pL((?:,?[ \t]*\bfill(?:ed)?)?(?:[ \t]+up)?[ \t]+to[ \t]+(?:the[ \t]+)?(?:rim|brim|neck|shoulder|lip|edge)(?:[ \t]+of[ \t]+the[ \t]+glass)?)` + ends)

// topped is how any draft says so.
const topped = " to top"

// alone is a part of a fruit behind another garnish, of which nobody says the fruit: "with an olive and
// a slice".
var alone = pattern.Of(`(?i)\b(?:with|garnish:?)[ \t]+(?:an?[ \t]+)?\pL+([ \t]+(?:and|&|\+)[ \t]+an?[ \t]+(?:slice|wedge|wheel|twist|peel))` + ends)

// roman is a count of dashes at the end of a line, behind dots or the name of bitters.
var roman = pattern.Of(`(?im)(?:[.…·_-]{2,}|bitters)[ \t]*\b(i{1,3}|iv|vi{0,3})[ \t]*$`)

// figuresOf are the figures of such a count.
var figuresOf = map[string]string{"i": "1", "ii": "2", "iii": "3", "iv": "4", "v": "5", "vi": "6", "vii": "7", "viii": "8"}

// counted sets aside numbers that measure nothing, and writes counts in figures.
func (s *Set) counted() {
	for _, r := range append([]*pattern.Pattern{replaced, loosened, alone}, counts...) {
		for _, at := range r.FindAllStringSubmatchIndex(s.Text, -1) {
			if at[0] > 0 {
				s.blank(at[2], at[3])
			}
		}
	}
	for _, at := range filled.FindAllStringSubmatchIndex(s.Text, -1) {
		s.Text = s.Text[:at[2]] + topped + strings.Repeat(" ", at[3]-at[2]-len(topped)) + s.Text[at[3]:]
	}
	if at := earlier.FindStringIndex(s.Text); at != nil {
		s.blank(at[0], at[1])
	}
	for _, at := range roman.FindAllStringSubmatchIndex(s.Text, -1) {
		figure := figuresOf[strings.ToLower(s.Text[at[2]:at[3]])]
		s.Text = s.Text[:at[2]] + figure + strings.Repeat(" ", at[3]-at[2]-len(figure)) + s.Text[at[3]:]
	}
}
