package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// What an entry says of method, service, ice and glass, and what is a step.

// changeVerbs change an amount that stands elsewhere: "cut to 1/4".
var changeVerbs = token.Words(`cut reduce reduced drop lower raise bump changed change`)

// takeServing takes what is said of method, service, ice and glass, and keeps
// what says more as a step.
func (r *reader) takeServing(n int, at entry.Span, toks []token.Token, prose bool) {
	if cut := laid.Served(toks); cut > 0 && !prose {
		r.takeServing(n, entry.Span{Start: at.Start, End: toks[cut-1].End}, toks[:cut], prose)
		r.laid(n, toks[cut:])
		return
	}
	s := serving.Read(toks)
	if s.Method != "" && ofAnotherTime(toks) {
		r.skips(n, toks)
		r.entry(KindRemark, n, at)
		return
	}
	if f := r.amountInStep(at, toks, s.Unknown); f != nil && !prose {
		r.unread(n, at, f)
		return
	}
	if fixed, ok := r.corrected(n, toks); ok {
		toks, s = fixed, serving.Read(fixed)
	}
	if s.Conflict != nil {
		s = r.firstOf(n, toks, s)
	}
	prose = prose || s.Begins && len(s.Unknown) > 0 || s.Words > 4
	if prose && !slices.ContainsFunc(s.Unknown, func(t token.Token) bool { return t.Text == "or" }) {
		s.Prose()
	}
	if s.Conflict != nil {
		r.unread(n, at, s.Conflict)
		return
	}
	r.d.Muddle = r.d.Muddle || s.Muddle
	if s.Service != "" || s.Glass != "" || s.Method != "" && s.Method != flavor.Build {
		r.served = len(r.d.Lines)
	}
	r.said.Merge(&s, prose || r.sentence || r.stepAfter(&s))
	if r.said.Conflict != nil {
		f := r.said.Conflict
		r.said.Conflict = nil
		r.unread(n, at, f)
		return
	}
	kind := KindServing
	if s.Keep && (s.Words > 0 || prose) {
		r.d.Steps = append(r.d.Steps, token.OneLine(strings.Trim(r.text[at.Start:at.End], " .,;-")))
		if !s.States() {
			kind = KindStep
		}
	}
	r.entry(kind, n, at)
}

// otherTimes are words for another time than that of the drink.
var otherTimes = [][]string{{"last", "time"}, {"last", "week"}, {"last", "night"}, {"last", "year"}, {"next", "time"}, {"used", "to"}, {"never", "again"}, {"yesterday"}, {"previously"}, {"formerly"}, {"originally"}, {"back", "then"}, {"in", "the", "past"}}

// ofAnotherTime reports whether words tell of another time: "shaken last time, never again".
func ofAnotherTime(toks []token.Token) bool {
	for i := range toks {
		for _, words := range otherTimes {
			if i+len(words) <= len(toks) && slices.EqualFunc(words, toks[i:i+len(words)], func(w string, t token.Token) bool { return t.Text == w }) {
				return true
			}
		}
	}
	return false
}

// amountInStep refuses an amount that a step states, or changes: it is never passed over.
func (r *reader) amountInStep(at entry.Span, toks, unknown []token.Token) *flavor.DataFault {
	if w := cmp.Or(entry.PouredIn(toks), entry.CountedIn(toks, unknown)); w != "" {
		return measure.Invalid("amount", w, "%q stands in a step; write it on a line of its own", w)
	}
	if i := slices.IndexFunc(toks, func(t token.Token) bool { return changeVerbs[t.Text] }); i >= 0 && i+2 < len(toks) && toks[i+1].Text == "to" && toks[i+2].Kind == token.Numeral {
		w := token.OneLine(r.text[at.Start:at.End])
		return measure.Invalid("amount", w, "%q changes an amount; write only the one that counts, in its place", w)
	}
	return nil
}

// firstOf reads words that leave a choice of methods that work a drink alike as the first
// of them, which is said: "flash blend or shake". It returns s where they leave none.
func (r *reader) firstOf(n int, toks []token.Token, s serving.Said) serving.Said {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "or" })
	if at < 1 {
		return s
	}
	one, other := serving.Read(toks[:at]), serving.Read(toks[at+1:])
	if serving.Mixes(one.Method) < serving.Mixes(flavor.Swizzle) || serving.Mixes(other.Method) < serving.Mixes(flavor.Swizzle) { // stirred or shaken are two drinks
		return s
	}
	if one.Conflict != nil || other.Conflict != nil || len(one.Unknown) > 0 {
		return s
	}
	r.said.Notes = append(r.said.Notes, lineNote(n, "“"+token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End])+"” leaves a choice; the first is taken"))
	if one.Method != "" {
		other.Method, other.MethodAs = "", ""
	}
	if one.Service != "" {
		other.Service = ""
	}
	one.Merge(&other, false)
	one.Keep, one.Words, one.Begins = true, s.Words, s.Begins
	return one
}

// stepAfter reports whether a second method is only a touch at the end: "stir
// gently" once a drink is built or shaken, "stir" once it is topped, "swizzle" once
// it is on its ice.
func (r *reader) stepAfter(s *serving.Said) bool {
	switch s.Method {
	case flavor.Stir:
		return s.Keep && s.Words > 1 || len(r.d.Lines) > 0 && r.d.Lines[len(r.d.Lines)-1].After
	case flavor.Swizzle:
		return s.OnIce || r.said.OnIce
	}
	return false
}
