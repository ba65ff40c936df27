package correcting

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// eightySix is what bars say of what has run out or is left out, where an article, a preposition or a
// colon shows that it is no amount: "86 the mint", "86'd the mint", "we're 86 on mint", "86: mint".
// Common practice, no source.
var eightySix = pattern.Of(`(?im)(?:^|[ \t(,;.!])((?:(?:we're|we are|i'm|it's)[ \t]+)?86(?:['’]?e?d\b)?(?:[ \t]+(?:on|the|that|our|any|all)\b)+|86['’]?e?d|86[ \t]*:)[ \t]+(\pL[\pL'’-]*(?:[ \t]+\pL[\pL'’-]*)?)`)

// heads is a list of what has run out, which names more than one thing.
var heads = pattern.Of(`^[ \t]*(?:,|&|and\b|/)`)

// ranOut says plainly that what a text tells to leave out, by the number 86, is none of its pours.
func ranOut(text string) (edits []edit, note string) {
	if !strings.Contains(text, "86") {
		return nil, ""
	}
	for _, at := range eightySix.FindAllStringSubmatchIndex(text, -1) {
		if strings.HasSuffix(text[at[2]:at[3]], ":") && heads.MatchString(text[at[1]:]) {
			continue
		}
		edits = append(edits, edit{entry.Span{Start: at[2], End: at[3]}, "no"})
		note = "“" + token.OneLine(text[at[2]:at[1]]) + "” is read as what is left out"
	}
	return edits, note
}
