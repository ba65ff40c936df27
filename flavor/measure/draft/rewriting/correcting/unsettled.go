package correcting

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// takesBack are signals behind which something else is meant, and not merely denied.
var takesBack = vocabulary.Words(`wait sorry actually oops scratch correction`)

// poursAmounts reports whether each of some amounts is that of a pour.
func poursAmounts(all []amountOf, pours []flavor.Pour) bool {
	return !slices.ContainsFunc(all, func(a amountOf) bool {
		return !slices.ContainsFunc(pours, func(p flavor.Pour) bool { return math.Abs(p.Amount-a.value) < sameAmount })
	})
}

// eachOf sets the amount of several pours at once: "make that 25 of each", "all 25 not 22".
var eachOf = pattern.Of(`(?i)\b(?:(?:make|call|do|have|go)[ \t]+(?:it|that|them|those|these)[ \t]+(?:all[ \t]+|both[ \t]+)?(\d+(?:[.,/]\d+)?|\.\d+|\d*[½¼¾⅓⅔])[ \t]?(?:ml|cl|oz)?[ \t]+(?:of[ \t]+)?(?:each|all|both|apiece|everything)|(?:all|both|each)[ \t]+(\d+(?:[.,/]\d+)?|\.\d+|\d*[½¼¾⅓⅔])[ \t]?(?:ml|cl|oz)?,?[ \t]+not[ \t]+(?:\d+(?:[.,/]\d+)?|\.\d+|\d*[½¼¾⅓⅔]))`)

// ofEach is the fault of a text that sets the amount of several pours at once behind others, of which one alone has
// it: nobody knows which are meant.
func ofEach(text string, pours []flavor.Pour) *flavor.DataFault {
	m := eachOf.FindStringSubmatchIndex(text)
	if m == nil || len(amountsIn(token.Lex(nil, text, 0, m[0]))) < 2 {
		return nil
	}
	said := token.OneLine(text[m[0]:m[1]])
	amounts, have := amountsIn(token.Lex(nil, text, m[0], m[1])), 0
	for i := range pours {
		if len(amounts) > 0 && math.Abs(pours[i].Amount-amounts[0].value) < sameAmount {
			have++
		}
	}
	if have > 1 {
		return nil
	}
	return measure.Invalid("text", said, "%q may set the amounts of several pours; write each with its amount", said)
}

// Unsettled is the fault of a text that takes something back and names in its place what is not poured,
// or an amount of nothing: nobody could tell what it is to stand for.
func Unsettled(text string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	if len(text) > mostText {
		return nil
	}
	if f := ofEach(text, pours); f != nil {
		return f
	}
	if f := unsettledStar(text, pours, b); f != nil || !tellsOf(text) {
		return f
	}
	if f := pointed(text, pours); f != nil {
		return f
	}
	c := &corrector{text: text, resolver: b, clauses: clausesOf(text)}
	for i := 1; i+1 < len(c.clauses); i++ {
		cl, next := &c.clauses[i], &c.clauses[i+1]
		if end := c.ofAnother(i); end > 0 && c.firstPour(i) >= 0 {
			said := c.text[cl.start():c.clauses[end-1].end()]
			return measure.Invalid("text", said, "%q may say that what stands before it is of another drink; write only what is poured", said)
		}
		rest, armed, _ := withoutLeads(cl.toks)
		if len(rest) > 0 || !armed || next.before == "\n" || len(amountsIn(c.clauses[i-1].toks)) == 0 {
			continue
		}
		back := false
		for k := range cl.toks {
			back = back || takesBack.Has(cl.toks[k].Text)
		}
		if back && !poursAmounts(amountsIn(next.toks), pours) { // "wait, both 1.5"
			said := c.text[cl.start():next.end()]
			return measure.Invalid("text", said, "%q states an amount that nothing is poured in; write only what is poured", said)
		}
		if !back || !c.names(next.toks) {
			continue
		}
		meant := c.means(c.written(next.toks))
		if !slices.ContainsFunc(pours, func(p flavor.Pour) bool { return slices.Contains(meant, p.Profile) }) {
			said := c.text[cl.start():next.end()]
			return measure.Invalid("text", said, "%q names something in place of what stands before it; write only what is poured", said)
		}
	}
	return nil
}
