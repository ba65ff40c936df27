package draft

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
)

// withoutLead drops what leads up to an amount in a sentence, and says so.
func (r *reader) withoutLead(n int, toks []token.Token) []token.Token {
	for at := 2; ; at++ {
		from, to, ok := title.LeadIn(toks, at)
		if !ok {
			return toks
		}
		r.skips(n, toks[from:to])
		toks = slices.Concat(toks[:from], toks[to:])
		at = max(from, 1)
	}
}

// leads takes what stands before the first amount of a first line as the name, or as
// what is said of the glass, and is false if nothing does.
func (r *reader) leads(n int, span entry.Span, toks []token.Token) bool {
	k := title.Lead(toks)
	if k == 0 || r.plainly {
		return false
	}
	at := entry.Span{Start: toks[0].Start, End: toks[k-1].End}
	s := serving.Read(toks[:k])
	switch {
	case s.Method != "" && len(s.Unknown) == 0:
		return false // "shake 2 oz gin"
	case s.States() && len(s.Unknown) == 0:
		r.takeServing(n, at, toks[:k], false)
	case title.LeadsUp(toks[k-1].Text):
		r.skips(n, toks[:k])
		r.entry(KindRemark, n, at)
	default:
		if toks[k-1].Text == "with" { // "hot punch w/ 30 rum 20 honey"
			at.End = toks[k-2].End
		}
		r.setName(n, at)
		r.d.Led = true
	}
	r.entries(n, entry.Span{Start: toks[k].Start, End: span.End}, toks[k:], false)
	return true
}

// without drops so many tokens at the beginning of a line, and says so.
func (r *reader) without(n int, toks []token.Token, many int) []token.Token {
	if many > 0 {
		r.skips(n, toks[:many])
	}
	return toks[many:]
}

// skips notes that words of a line are skipped, if there are any.
func (r *reader) skips(n int, toks []token.Token) {
	if len(toks) == 0 {
		return
	}
	written := strings.Trim(token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End]), " :,=-")
	if written != "" {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+written+"” is skipped"))
	}
}
