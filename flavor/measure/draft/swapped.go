package draft

import (
	"slices"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// A draft may change what it has just listed: "swap gin for genever", "honey syrup instead of
// simple". One of the two is poured above, and the other takes its place.

// mostSwapped is the most words of a line that changes what is poured.
const mostSwapped = 10

// swapped carries out a stretch that puts one ingredient in the place of another, and is false
// if it is none, or if neither of the two is poured above. Where both are it is a fault.
func (r *reader) swapped(n int, span entry.Span, toks []token.Token) bool {
	toks = entry.TrimMarks(toks)
	if len(toks) > 2 && toks[0].Is("(") && toks[len(toks)-1].Is(")") {
		toks = toks[1 : len(toks)-1]
	}
	for len(toks) > 1 && (toks[0].Text == "but" || toks[0].Text == "and" || toks[0].Text == "then" || toks[0].Text == "just" || toks[0].Text == "pls" || toks[0].Text == "please") {
		toks = toks[1:]
	}
	if len(toks) < 3 || len(toks) > mostSwapped || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Word }) {
		return false
	}
	one, other := speech.Swapped(toks)
	if len(one) == 0 || len(other) == 0 {
		return false
	}
	i, k := r.pouredAs(one), r.pouredAs(other)
	if i < 0 && k < 0 {
		return false
	}
	if i >= 0 && k >= 0 {
		written := token.OneLine(r.text[span.Start:span.End])
		r.unread(n, span, measure.Invalid("ingredient", written, "%q changes what is poured, and both are poured above; write only what is poured", written))
		return true
	}
	if i < 0 {
		i, other = k, one
	}
	l := &r.d.Lines[i]
	was := l.Name
	at := entry.Span{Start: other[0].Start, End: other[len(other)-1].End}
	l.Name = token.OneLine(r.text[at.Start:at.End])
	r.said.Notes = append(r.said.Notes, lineNote(n, "“"+l.Name+"” is poured instead of “"+was+"”"))
	r.entry(KindRemark, n, span)
	return true
}

// swapAhead is a change of what is poured below it.
type swapAhead struct {
	line       int
	one, other string
}

// swapsAhead keeps what changes the pours that follow a colon on the line, "replace the gin with
// vodka in this one: 50 gin", and returns what follows it.
func (r *reader) swapsAhead(n int, toks []token.Token) []token.Token {
	if !speech.Swaps(toks[0].Text) {
		return toks
	}
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind != token.Word })
	if colon < 4 || colon > mostSwapped || !toks[colon].Is(":") {
		return toks
	}
	one, other := speech.Swapped(toks[:colon])
	other = speech.WithoutBelow(other)
	if len(one) == 0 || len(other) == 0 {
		return toks
	}
	written := func(of []token.Token) string { return token.OneLine(r.text[of[0].Start:of[len(of)-1].End]) }
	r.ahead = append(r.ahead, swapAhead{n, written(one), written(other)})
	return entry.TrimMarks(toks[colon+1:])
}

// swapBelow carries out the changes that stand above what they change. One of something that is
// not poured is a fault.
func (r *reader) swapBelow() {
	for _, s := range r.ahead {
		i := r.pouredAs(token.Lex(nil, s.one, 0, len(s.one)))
		if i < 0 {
			r.fail(s.line, measure.Invalid("ingredient", s.one, "%q is to be changed for %q, and no one pour below is of it; write only what is poured", s.one, s.other))
			continue
		}
		r.said.Notes = append(r.said.Notes, lineNote(s.line, "“"+s.other+"” is poured instead of “"+r.d.Lines[i].Name+"”"))
		r.d.Lines[i].Name = s.other
	}
}

// pouredAs is the only pour so far whose name holds all of a name's words, below 0 if there
// is none, or more.
func (r *reader) pouredAs(name []token.Token) int {
	found := -1
	for i := range r.d.Lines {
		of := token.Lex(nil, r.d.Lines[i].Name, 0, len(r.d.Lines[i].Name))
		if slices.ContainsFunc(name, func(t token.Token) bool {
			return !slices.ContainsFunc(of, func(o token.Token) bool { return o.Text == t.Text })
		}) {
			continue
		}
		if found >= 0 {
			return -1
		}
		found = i
	}
	return found
}

// insteadOf drops behind a pour what it is poured instead of, "20 honey syrup instead of
// simple", and says so. Where that is poured above, nobody can tell which is meant.
func (r *reader) insteadOf(n int, toks []token.Token) []token.Token {
	for i := 2; i+2 < len(toks); i++ {
		if toks[i].Text != "instead" || toks[i+1].Text != "of" || toks[i-1].Kind != token.Word {
			continue
		}
		end := i + 2
		for end < len(toks) && toks[end].Kind == token.Word {
			end++
		}
		start := i - 1
		for start > 0 && toks[start-1].Kind != token.Mark {
			start--
		}
		if !entry.StartsAmount(toks[start:]) || r.pouredAs(speech.WithoutThe(toks[i+2:end])) >= 0 {
			continue
		}
		r.skips(n, toks[i:end])
		return slices.Concat(toks[:i], toks[end:])
	}
	return toks
}
