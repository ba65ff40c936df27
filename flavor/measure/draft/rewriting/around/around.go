package around

import (
	"strings"

	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/everyday"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// mostText is how long a text is at most, in bytes: a longer one holds more than one drink.
const mostText = 4000

// Of returns the stretches of a text that tell of something else before and behind its drink, in
// order. They are empty if the text pours nothing, or nothing but its drink.
func Of(text string, b *naming.Resolver) []everyday.Clause {
	if len(text) > mostText {
		return nil
	}
	r := reader{text: text, resolver: b}
	r.part()
	first, last := r.drink()
	if first < 0 {
		return nil
	}
	title := r.title(first)
	var out []everyday.Clause
	for i := range r.found {
		s := &r.found[i]
		if i < title && !r.set(&r.found[title]) { // the next line would be the name, and may be a pour
			continue
		}
		if i == title {
			if n := orders(s.toks); n > 0 {
				out = append(out, r.clause(s, s.toks[:n]))
			}
			continue
		}
		if i < first && r.tells(s) || i > last && (r.tells(s) || earlier(s.toks) || rated(r.text, s.toks)) {
			out = append(out, r.clause(s, s.toks))
		}
	}
	return out
}

// reader looks through one text.
type reader struct {
	text     string
	resolver *naming.Resolver
	found    []stretch
}

// stretch is a sentence of a line, or a line that is none.
type stretch struct {
	toks  []token.Token
	line  int  // of the text, from 1
	alone bool // nothing else stands on its line
	ends  bool // a stop ends it
}

// clause is what is set aside of a stretch.
func (r *reader) clause(s *stretch, toks []token.Token) everyday.Clause {
	return everyday.Clause{At: entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}, Line: s.line, Alone: s.alone && len(toks) == len(s.toks), Spoken: true}
}

// part cuts the text into stretches.
func (r *reader) part() {
	at, n := 0, 0
	for line := range strings.Lines(r.text) {
		n++
		toks := token.Lex(nil, r.text, at, at+len(strings.TrimRight(line, "\r\n")))
		at += len(line)
		if len(toks) == 0 || toks[0].Is("#") {
			continue
		}
		for from := 0; from < len(toks); {
			end := r.end(toks, from)
			whole := from == 0 && end == len(toks)
			r.found = append(r.found, stretch{toks: toks[from:end], line: n, alone: whole, ends: stops(&toks[end-1])})
			from = end
		}
	}
}

// leastLabel is the fewest words of what a colon parts from the pours behind it: a shorter one is a
// label, or the name of the drink.
const leastLabel = 4

// end is where the stretch ends that begins at a token.
func (r *reader) end(toks []token.Token, from int) int {
	for i := from; i < len(toks); i++ {
		t := &toks[i]
		next := i+1 == len(toks) || !toks[i+1].Glued
		if stops(t) && next && i-from > 1 && !(i+1 < len(toks) && toks[i+1].Kind == token.Numeral) { // "p. 8", "Sat. 22nd"
			return i + 1
		}
		if t.Is(":") && next && i+1 < len(toks) && i-from >= leastLabel && !r.pours(toks[from:i]) && r.pours(toks[i+1:]) {
			return i + 1
		}
	}
	return len(toks)
}

// stops reports whether a token ends a sentence.
func stops(t *token.Token) bool { return t.Is(".") || t.Is("!") || t.Is("?") }

// drink returns the first stretch that pours something and the last one; −1 if there is none.
func (r *reader) drink() (first, last int) {
	first, last = -1, -1
	for i := range r.found {
		s := &r.found[i]
		if outOfStock(s.toks) || r.ordered(s) || rated(r.text, s.toks) || first >= 0 && earlier(s.toks) || !r.pours(s.toks) {
			continue
		}
		if first < 0 {
			first = i
		}
		last = i
	}
	return first, last
}

// pours reports whether tokens hold an amount and a name.
func (r *reader) pours(toks []token.Token) bool {
	for i := range toks {
		if toks[i].Kind == token.Numeral || token.NumberWords[toks[i].Text] > 0 && entry.StartsMeasure(toks[i:]) {
			return r.names(toks)
		}
	}
	return false
}

// names reports whether tokens name an ingredient.
func (r *reader) names(toks []token.Token) bool {
	return len(toks) > 0 && len(r.resolver.Mentioned(r.text[toks[0].Start:toks[len(toks)-1].End])) > 0
}

// mostTitle is the most words of the name of a drink.
const mostTitle = 7

// title returns the stretch right above the drink that may be its name, −1 if there is none: it is a
// line of few words, and no sentence.
func (r *reader) title(first int) int {
	if i := first - 1; i >= 0 && r.found[i].alone && !r.found[i].ends && words(r.found[i].toks) <= mostTitle {
		return i
	}
	return -1
}

// set reports whether a line is set as the name of a drink: in capitals, in quotes, between dashes, or
// as what is ordered.
func (r *reader) set(s *stretch) bool {
	first, last := &s.toks[0], &s.toks[len(s.toks)-1]
	written := r.text[first.Start:last.End]
	return orders(s.toks) > 0 || strings.ToUpper(written) == written && words(s.toks) > 1 || first.Kind == token.Mark && last.Kind == token.Mark && strings.Contains(`"“*_—–-=`, first.Text)
}

// words counts those of tokens.
func words(toks []token.Token) int {
	n := 0
	for i := range toks {
		if toks[i].Kind == token.Word {
			n++
		}
	}
	return n
}

// ordered reports whether a line says that one drink is ordered, by a name that is no ingredient's.
func (r *reader) ordered(s *stretch) bool {
	n := orders(s.toks)
	return n > 0 && s.alone && !r.resolver.Has(token.OneLine(r.text[s.toks[n].Start:s.toks[len(s.toks)-1].End]))
}

// score is what somebody gives a drink.
var score = pattern.Of(`^(?:\d|10)/10$`)

// rated reports whether the numbers of a stretch are all scores: "lime 8/10".
func rated(text string, toks []token.Token) bool {
	n := 0
	for i := range toks {
		if t := &toks[i]; t.Kind == token.Numeral {
			if n++; !score.MatchString(text[t.Start:t.End]) {
				return false
			}
		}
	}
	return n > 0
}

// orders returns how many tokens before the name of a drink say that one of it is ordered: "1 x".
func orders(toks []token.Token) int {
	if len(toks) > 2 && toks[0].Kind == token.Numeral && toks[0].Value == 1 && (toks[1].Is("×") || toks[1].Text == "x") {
		return 2
	}
	return 0
}

// outOfStock reports whether a stretch lists what has run out: "86: mint".
func outOfStock(toks []token.Token) bool {
	return len(toks) > 1 && toks[0].Text == "86" && (toks[1].Is(":") || toks[1].Text == "list")
}

// past begin what is told of an earlier version of the drink.
var past = vocabulary.Words(`tried previous previously earlier originally formerly`)

// earlier reports whether a stretch tells of an earlier version of the drink.
func earlier(toks []token.Token) bool { return past.Has(toks[0].Text) }

// changes say that something is done to a pour, though they name none.
var changes = vocabulary.Words(`double doubled triple halve halved half twice swap swaps swapped instead replace replaced omit omitted leave leaves skip skipped without minus sub subs substitute
		more less extra except either or change changed cut reduce increase correction wrong forget hold lose both each per every rest remaining make makes go goes try bump raise lower up down to free proof virgin zero`)

// initials are the most letters of a word that stands for a person or a thing.
const initials = 1

// tells reports whether a stretch outside the drink pours nothing.
func (r *reader) tells(s *stretch) bool {
	if outOfStock(s.toks) {
		return true
	}
	if said := serving.Read(s.toks); r.names(s.toks) || entry.TellsToPour(s.toks) || said.States() {
		return false
	}
	known, unknown, numbers := 0, 0, 0
	for i := range s.toks {
		t := &s.toks[i]
		switch {
		case entry.StartsMeasure(s.toks[i:]):
			return false
		case t.Kind == token.Numeral || t.Kind == token.Ratio || t.Kind == token.Percent:
			if numbers++; !counts(s.toks, i) {
				return false
			}
		case t.Kind != token.Word:
		case changes.Has(t.Text) || entry.PouringVerb(t.Text) || everyday.Allergen(t.Text):
			return false
		case everyday.Word(t.Text) || len(t.Text) <= initials || token.NumberWords[t.Text] > 0:
			known++
		default:
			unknown++
		}
	}
	switch n := known + unknown; {
	case unknown == 0:
		return n > 0
	case n <= fewWords || numbers > 0 && n <= fewBeside:
		return false
	}
	return unknown <= known
}

const (
	fewWords  = 2 // words of a stretch of which one is unknown, at most: it may be a pour
	fewBeside = 3 // and beside a number
)

// counts reports whether the number at i counts or refers: a word that is no pour stands beside it.
func counts(toks []token.Token, i int) bool {
	beside := func(step int) bool {
		for k := i + step; k >= 0 && k < len(toks); k += step {
			if toks[k].Kind == token.Word {
				return lexicon.Of(toks[k].Text)&lexicon.Nouns != 0 || len(toks[k].Text) <= initials
			}
		}
		return false
	}
	return beside(-1) || beside(1)
}
