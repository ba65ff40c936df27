package correcting

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// inWords is the strength of a syrup in words, in a bracket behind it: "honey syrup (3 parts honey to 1 part
// water)".
var inWords = pattern.Of(`(?i)\([ \t]*(\d)[ \t]*(?:parts?[ \t]+)?(?:sugar|honey|agave|maple|demerara|white sugar|caster sugar)[ \t]*(?:to|:|/|,|and|\+)[ \t]*(\d)[ \t]*(?:parts?[ \t]+)?(?:hot[ \t]+|warm[ \t]+)?water[ \t]*\)`)

// strengths writes such a strength as a list does, "(3:1)".
func strengths(text string) (edits []edit, note string) {
	for _, at := range inWords.FindAllStringSubmatchIndex(text, -1) {
		ratio := "(" + text[at[2]:at[3]] + ":" + text[at[4]:at[5]] + ")"
		edits = append(edits, edit{entry.Span{Start: at[0], End: at[1]}, ratio})
		note = "“" + token.OneLine(text[at[0]:at[1]]) + "” is read as " + ratio
	}
	return edits, note
}
