package correcting

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// tried begins what was poured another time and is not poured now, and judged is what was thought of that:
// "tried it with an ounce of lime, way too sharp". Common practice, no source.
var (
	tried  = pattern.Of(`(?i)(?:^|[.!?…;\n])[ \t]*((?:(?:ok|okay|so|well|and|but|we|i|first|at first|yesterday|last night|last time)[ \t,]+)*(?:tried|started|began)\b[^.!?…;\n]*?\b(?:too[ \t]+\pL+|not enough|didn'?t work|was(?:n'?t| not) (?:right|good|great)|came out (?:flat|thin))\b[^.!?…;,\n\d]{0,20}[.!?…;,]*)[ \t]*`)
	figure = pattern.Of(`\d|[½¼¾⅓⅔]|\b(?:half|quarter|quarters|ounce|ounces|one|two|three)\b`)
)

// triedBefore takes out of a text what it tells of an earlier try that was found wanting, where all that it
// names is told anew with an amount.
func (c *corrector) triedBefore() (edits []edit, notes []string) {
	for _, at := range tried.FindAllStringSubmatchIndex(c.text, -1) {
		said := entry.Span{Start: at[2], End: at[3]}
		words := c.text[said.Start:said.End]
		if !figure.MatchString(strings.ToLower(words)) || !c.toldBehind(words, said.End, 1) {
			continue
		}
		edits = append(edits, edit{said, ""})
		notes = append(notes, "“"+c.said(said)+"” tells of an earlier try, and is passed over")
	}
	return edits, notes
}

// toldBehind reports whether words name at least so many ingredients, and each of them has an amount in the
// text behind a byte.
func (c *corrector) toldBehind(words string, from, least int) bool {
	named := c.resolver.Mentioned(words)
	if len(named) < least {
		return false
	}
	behind := c.pouredBehind(from)
	for _, p := range named {
		if !behind[p] {
			return false
		}
	}
	return true
}

// pouredBehind are the ingredients that stand in a clause with an amount behind a byte of the text.
func (c *corrector) pouredBehind(from int) map[*flavor.Profile]bool {
	out := map[*flavor.Profile]bool{}
	for i := range c.clauses {
		cl := c.clauses[i]
		for len(cl.toks) > 0 && cl.toks[0].Start < from {
			cl.toks = cl.toks[1:]
		}
		if len(cl.toks) == 0 {
			continue
		}
		if len(amountsIn(cl.toks)) == 0 {
			continue
		}
		for _, p := range c.resolver.Mentioned(token.OneLine(c.text[cl.start():cl.end()])) {
			out[p] = true
		}
	}
	return out
}
