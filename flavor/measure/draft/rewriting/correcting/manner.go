package correcting

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// manner carries out the correction of a method or a service, "shake. no, stir", or of what is asked
// about and denied, "build? NO shake", that begins at clause i; 0 if none does.
func (c *corrector) manner(i int) (int, []edit, string) {
	if i+1 >= len(c.clauses) {
		return 0, nil, ""
	}
	asked := &c.clauses[i]
	if len(amountsIn(asked.toks)) > 0 {
		return 0, nil, ""
	}
	next, rest, ok := c.denial(i + 1)
	if !ok {
		return 0, nil, ""
	}
	was, now := serving.Read(asked.toks), serving.Read(rest)
	served := len(was.Unknown) == 0 && was.States()
	switch {
	case served && len(now.Unknown) == 0 && (was.Method != "" && now.Method != "" && was.Method != now.Method || was.Service != "" && now.Service != "" && was.Service != now.Service):
		return c.otherManner(i, next, rest, &was, &now)
	case served || asked.after != "?":
		return 0, nil, ""
	}
	if asked.before == "\n" && i == 0 || next >= len(c.clauses) { // the name of the drink
		return 0, nil, ""
	}
	at := entry.Span{Start: asked.start(), End: rest[0].Start}
	return next - i, []edit{{at, ""}}, "“" + c.said(entry.Span{Start: at.Start, End: asked.end()}) + "” is asked about and denied, and skipped"
}

// denial is what stands behind a denial that begins at clause i: the clause and its words; false if
// none begins there.
func (c *corrector) denial(i int) (next int, rest []token.Token, ok bool) {
	cl := &c.clauses[i]
	rest, armed, denied := withoutLeads(cl.toks)
	if !armed {
		return 0, nil, false
	}
	if len(rest) > 0 { // "? NO shake"
		return i, rest, !denied || c.clauses[i-1].after == "?"
	}
	for i++; i < len(c.clauses); i++ {
		if rest, _, _ = withoutLeads(c.clauses[i].toks); len(rest) > 0 {
			return i, c.clauses[i].toks, c.clauses[i].before != "\n"
		}
	}
	return 0, nil, false
}

// otherManner puts a method or a service in place of the one before it.
func (c *corrector) otherManner(i, next int, rest []token.Token, was, now *serving.Said) (int, []edit, string) {
	asked := &c.clauses[i]
	drops := func(t *token.Token) bool {
		s := serving.Read([]token.Token{*t})
		return now.Method != "" && s.Method != "" || now.Service != "" && s.Service != ""
	}
	var edits []edit
	var dropped []token.Token
	if (was.Method == "" || now.Method != "") && (was.Service == "" || now.Service != "") {
		dropped = asked.toks
		edits = append(edits, edit{entry.Span{Start: asked.start(), End: rest[0].Start}, ""})
	} else {
		for k := range asked.toks {
			if t := &asked.toks[k]; drops(t) {
				dropped = append(dropped, *t)
				edits = append(edits, edit{entry.Span{Start: t.Start, End: t.End}, ""})
			}
		}
		edits = append(edits, edit{entry.Span{Start: asked.end(), End: rest[0].Start}, ", "})
	}
	if len(dropped) == 0 {
		return 0, nil, ""
	}
	return max(next-i, 1), edits, "“" + c.written(dropped) + "” is corrected to “" + c.written(rest) + "”, and skipped"
}
