package unpoured

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// remarks sets aside what stands beside and behind the pours and is proved to be a remark.
func (s *search) remarks(faulty map[int]bool) {
	s.bracketed, s.quoted = false, false
	first, last := s.pours[0].line.Span.Start, s.pours[len(s.pours)-1].line.Span.End
	for i := range s.d.Entries {
		e := &s.d.Entries[i]
		if e.Span.Start < first || !faulty[e.Line] {
			continue
		}
		afterPour, behind := i > 0 && s.d.Entries[i-1].Kind == draft.KindPour, e.Span.Start >= last
		switch {
		case e.Kind == draft.KindUnread || e.Kind == draft.KindPour && s.unknown(e.Span):
			s.remarkIn(e.Span, afterPour, behind)
		}
	}
	for _, p := range s.pours {
		if !p.head.Empty() && faulty[p.line.Number] && !s.opens(token.Lex(nil, s.text, p.head.Start, p.head.End)) {
			s.masks = append(s.masks, p.head)
		}
		if !p.tail.Empty() && faulty[p.line.Number] {
			s.remarkIn(p.tail, true, p.line.Span.End >= last)
		}
	}
	s.portions(last)
	s.behind(last, faulty)
}

// behind sets aside stretches behind the last pour that hold numbers which count or refer.
func (s *search) behind(last int, faulty map[int]bool) {
	line := 1 + strings.Count(s.text[:last], "\n")
	for from := last; from < len(s.text); line++ {
		end := len(s.text)
		if at := strings.IndexAny(s.text[from:], "\r\n"); at >= 0 {
			end = from + at
		}
		for _, p := range s.parts(line, from, end, false) {
			i := slices.IndexFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral })
			if said := serving.Read(p.toks); i < 0 || !faulty[line] || p.serves || said.States() || said.Words > 0 && len(said.Unknown) == 0 {
				continue
			}
			if i+1 == len(p.toks) && i <= leastTold && !marked(p.toks, i) && !aside.Costs(p.toks[0].Text) {
				continue
			}
			if s.poursNothing(p.toks) || aside.Costs(p.toks[0].Text) && s.countsOrRefers(p.toks) && len(s.resolver.Mentioned(s.words(p.toks))) == 0 {
				s.passOver(p.toks)
			}
		}
		from = end + 1
	}
}

// deniesPour reports whether a stretch says no and nothing else: it takes back the pour before it.
func deniesPour(toks []token.Token) bool {
	return len(toks) == 1 && denials.Has(toks[0].Text)
}

// denials take back what was said.
var denials = vocabulary.Words(`no nope nah naah nay`)

// remarkIn sets aside a stretch that is a remark, or the denial that it ends in.
func (s *search) remarkIn(at entry.Span, afterPour, behind bool) {
	toks := entry.TrimMarks(token.Lex(nil, s.text, at.Start, at.End))
	if len(toks) == 0 {
		return
	}
	if deniesPour(toks) {
		return
	}
	if s.remark(toks, afterPour, behind) {
		s.passOver(toks)
	} else if k := denied(toks); k > 0 {
		s.passOver(toks[k:])
	}
}

// passOver sets tokens aside, with the brackets around them.
func (s *search) passOver(toks []token.Token) {
	at := entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}
	if at.Start > 0 && s.text[at.Start-1] == '(' && at.End < len(s.text) && s.text[at.End] == ')' {
		at = entry.Span{Start: at.Start - 1, End: at.End + 1}
	}
	s.masks = append(s.masks, at)
}

// unknown reports whether a pour without an amount stands there whose ingredient is not known.
func (s *search) unknown(at entry.Span) bool {
	return slices.ContainsFunc(s.d.Lines, func(l entry.Line) bool { return l.Span == at && l.AmountAt.Empty() }) &&
		!slices.ContainsFunc(s.pours, func(p pour) bool { return p.line.Span == at })
}

// mostDenied is the most tokens of what is denied.
const mostDenied = 4

// denied returns where a denial starts that ends a stretch of something else, "lemon twist not
// orange": what it names is not poured. It is 0 if there is none.
func denied(toks []token.Token) int {
	k := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "not" || t.Text == "never" })
	if k < 1 || len(toks)-k > mostDenied || slices.ContainsFunc(toks[k:], func(t token.Token) bool { return t.Kind != token.Word }) {
		return 0
	}
	return k
}

// remark reports whether a stretch without an amount pours nothing; afterPour says that it
// stands behind a pour, of which it may tell something, and behind that no pour follows.
func (s *search) remark(toks []token.Token, afterPour, behind bool) bool {
	if behind && len(toks) > leastTold && toks[0].Text == "one" && toks[1].Text == "of" && len(s.resolver.Mentioned(s.words(toks))) == 0 { // "one of Tim's"
		return true
	}
	if len(toks) == 2 && (aside.Multiplies(toks, 0) || aside.Multiplies(toks, 1)) {
		return true
	}
	if slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) && !(behind && s.countsOrRefers(toks)) || measures(toks) {
		return false
	}
	if afterPour && handledSo(toks) {
		return true
	}
	if (afterPour || behind) && told(toks) && len(s.resolver.Mentioned(s.words(toks))) == 0 {
		return true
	}
	said := words(toks)
	return (aside.Spoken(said) && len(toks) >= leastSpoken && (!entry.TellsToPour(toks) || serving.Starts(toks)) || aside.Allows(said)) && !s.opens(toks)
}

// leastSpoken is the fewest words of a sentence.
const leastSpoken = 3

// told reports whether words say only how or where something was done: "clapped in", "stored
// freezer", "cut very fine".
func told(toks []token.Token) bool {
	if len(toks) < 2 || !strings.HasSuffix(toks[0].Text, "ed") && !naming.SaysWhere(toks[0].Text) {
		return false
	}
	for _, t := range toks[1:] {
		if t.Kind == token.Word && !naming.SaysWhere(t.Text) && !particles.Has(t.Text) && !serving.Fillers[t.Text] && !strings.HasSuffix(t.Text, "ly") {
			return false
		}
	}
	return true
}

// handled are what may be done to what is poured, that changes nothing about it.
var handled = vocabulary.Words(`sieved sifted strained chilled cooled warmed peeled measured weighed
beaten whisked fluffed aerated squeezed pressed juiced stirred rested settled thawed skimmed decanted`)

// handling says how, before it: "freshly squeezed".
var handling = vocabulary.Words(`fresh freshly hand just well lightly gently finely twice cold`)

// handledSo reports whether words say what is done to what is poured before them: "beaten".
func handledSo(toks []token.Token) bool {
	last := len(toks) - 1
	return handled.Has(toks[last].Text) && !slices.ContainsFunc(toks[:last], func(t token.Token) bool { return !handling.Has(t.Text) })
}

// particles end what a participle begins.
var particles = vocabulary.Words(`in on up off out down over through apart once twice too again before after overnight`)

// portionVerbs tell how much of what was made goes into a glass.
var portionVerbs = vocabulary.Words(`serve pour portion dispense ladle`)

// portionWords stand behind the amount of one portion.
var portionWords = vocabulary.Words(`on over into in per each a p.p pp down up`)

// portions sets aside what tells, behind the last pour, how much of all of it goes into one
// glass: "serve 100 on one big rock". What says how it is served stays.
func (s *search) portions(last int) {
	for from := last; from < len(s.text); {
		end := len(s.text)
		if at := strings.IndexAny(s.text[from:], "\r\n"); at >= 0 {
			end = from + at
		}
		toks := token.Lex(nil, s.text, from, end)
		for i := 0; i+1 < len(toks); i++ {
			if n := portion(toks[i:]); n > 0 && (i == 0 || toks[i-1].Kind == token.Mark) {
				s.masks = append(s.masks, entry.Span{Start: toks[i].Start, End: toks[i+n-1].End})
			}
		}
		from = end + 1
	}
}

// portion returns how many tokens say how much a portion is; 0 if they do not begin with it.
func portion(toks []token.Token) int {
	if len(toks) < 2 || !portionVerbs.Has(toks[0].Text) || toks[1].Kind != token.Numeral {
		return 0
	}
	n := 2
	if _, unit := entry.UnitAt(toks[n:]); unit > 0 {
		n += unit
	}
	switch {
	case n == len(toks) || toks[n].Kind == token.Mark:
		return n
	case toks[n].Text == "p" && n+2 < len(toks) && toks[n+1].Is(".") && toks[n+2].Text == "p": // "95 p.p."
		return n + 3
	case (toks[n].Text == "per" || toks[n].Text == "a") && n+1 < len(toks):
		return n + 2
	case toks[n].Text == "each":
		return n + 1
	case portionWords.Has(toks[n].Text):
		return n
	}
	return 0
}
