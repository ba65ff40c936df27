package speech

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/pattern"
)

// Who lists what he pours may take a whole pour back, and write the next in its place: where one
// of these stands before an amount, what stands before them is not poured. [SecondThoughts] reads
// more words than these, where it can tell by the tokens what they take back.

// Amount is how bars write one in figures, with its unit or without, as part of a pattern.
const Amount = `(?:\d+(?:[.,/:-]\d+)*(?:[ \t]?[½¼¾⅓⅔])?|\.\d+|[½¼¾⅓⅔])(?:[ \t]?(?:ml|oz|cl|dash(?:es)?|bsp|tsp))?`

var (
	// asked is a pour that is asked about and denied, before the one that counts: "3 cl kirsch? no, ".
	asked = pattern.Of(`(?i)(?:^|[,.;:\n(])[ \t]*(` + Amount + `[ \t]*[^,.;:\n?]*\?[ \t]*(?:no|nope|nah|naah)[,.:;][ \t]*)` + Amount)
	// replaced is a pour before "no:" or "no,", which the one behind it takes the place of.
	replaced = pattern.Of(`(?i)(?:^|[,;:\n(])[ \t]*(` + Amount + `[ \t]*[^,.;:\n]*[ \t]*(?:\.\.+|…|[-–—,])[ \t]*(?:no|nope|nah|correction)[ \t]*[:.,][ \t]*)` + Amount)
)

// Retracted lists the stretches of a text that are a pour which is taken back, with the words that
// take it back: "5 cl gin, no, " before "4 cl pear spirit". They are listed as they are found, and
// none overlaps another.
func Retracted(text string) []entry.Span {
	var out []entry.Span
	for _, r := range []*pattern.Pattern{asked, replaced} {
		for _, at := range r.FindAllStringSubmatchIndex(text, -1) {
			out = append(out, entry.Span{Start: at[2], End: at[3]})
		}
		for _, s := range out { // what is taken back takes nothing back itself
			text = text[:s.Start] + strings.Repeat(" ", s.End-s.Start) + text[s.End:]
		}
	}
	return out
}
