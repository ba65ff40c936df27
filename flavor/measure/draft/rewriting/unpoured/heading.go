package unpoured

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// part is a stretch between two signs of what stands above the pours.
type part struct {
	at       entry.Span // with the signs around it
	toks     []token.Token
	line     int
	before   string // the sign that stands before it
	behind   string // the sign that ends it
	labelled bool   // it stands behind a label for the name
	serves   bool   // it says how the drink is made or served
	leads    bool   // it stands on the line of the first pour
	multiple int    // where a multiple ends that is left off its end
	alone    bool   // nothing else stands on its line but prices and what is in brackets
	inside   bool   // it stands in brackets
}

// heading sets aside what stands above the first pour, but for the name of the drink and what
// says how it is served. Unless all of it is proved to pour nothing, it stays.
func (s *search) heading(faulty map[int]bool) {
	first := s.pours[0].line.Span.Start
	parts := s.above(first)
	if len(parts) == 0 || !slices.ContainsFunc(parts, func(p part) bool { return faulty[p.line] }) {
		return
	}
	last := &parts[len(parts)-1]
	headed := last.leads && last.behind == ":" // what stands on the line before the colon is no list
	for i := range parts {
		p := &parts[i]
		if p.serves {
			continue
		}
		s.bracketed, s.quoted = p.inside, closes[p.before] != "" && closes[p.before] == p.behind
		if p.line == s.batched || p.before == "=" && entry.AmountAt(p.toks) == len(p.toks) { // "portion = 90 ml"
			continue
		}
		if !s.poursNothing(p.toks) || s.listed(p) && !headed {
			s.numbersInBrackets(parts)
			return
		}
	}
	name := s.nameOf(parts)
	if !s.based && slices.ContainsFunc(parts, func(p part) bool { return (name < 0 || p.at != parts[name].at) && plain(&p) }) {
		return // what makes up the drink may be among them
	}
	for i := range parts {
		p := &parts[i]
		switch {
		case p.serves:
			s.blank(p.toks[len(p.toks)-1].End, p.multiple)
		case i == name:
			s.keep(p, i, first)
		default:
			s.masks = append(s.masks, p.at)
		}
	}
}

// listed reports whether a part stands on the line of the first pour as the pours do, before a
// sign that parts them, and nothing shows that it is none: "toddy: umeboshi wash, 15 lemon".
func (s *search) listed(p *part) bool {
	if !p.leads || p.multiple > 0 || !strings.Contains(",/+;|•&>", cmp.Or(p.behind, ".")) {
		return false
	}
	numbered := slices.ContainsFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral })
	return !numbered && !aside.Spoken(words(p.toks)) && len(s.resolver.Mentioned(s.words(p.toks))) == 0
}

// plain reports whether a part holds only words, so that it may be a pour of which the amount
// was left out.
func plain(p *part) bool {
	said := words(p.toks)
	return p.behind != ":" && !p.inside && p.before != "[" && !p.serves && !p.labelled && !aside.Spoken(said) && !aside.Allows(said) && !declared.NoAlcohol(strings.Join(said, " ")) &&
		!slices.ContainsFunc(p.toks, func(t token.Token) bool { return t.Kind != token.Word })
}

// numbersInBrackets sets aside numbers in brackets that count or refer, amid what may be poured: "for
// the tasting (6 pax) 45 ml gin".
func (s *search) numbersInBrackets(parts []part) {
	for _, p := range parts {
		numbered := slices.ContainsFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral })
		s.bracketed = true
		if p.before == "(" && p.behind == ")" && numbered && s.poursNothing(p.toks) {
			s.passOver(p.toks)
		}
	}
}

// poursNothing reports whether a stretch above the pours is proved to pour nothing.
func (s *search) poursNothing(toks []token.Token) bool {
	if toks = s.withoutBatchSize(toks); len(toks) == 0 {
		return true
	}
	if !s.countsOrRefers(toks) && !aside.Commentary(toks) || !s.quoted && measures(toks) {
		return false
	}
	if aside.Spoken(words(toks)) && entry.TellsToPour(toks) && !aside.Forbids(toks) { // "we also add umeboshi"
		return false
	}
	return !s.opens(withoutReferences(toks))
}

// measures reports whether a stretch speaks of a measure, in words or without a number: "splash
// of umeboshi brine", "handful umeboshi", "an ounce and a half of umeboshi".
func measures(toks []token.Token) bool {
	if w := toks[0].Text; w != "a" && w != "an" && toks[0].Kind == token.Word && entry.StartsAmount(toks) && !(len(toks) > 1 && counted.Has(toks[1].Text)) { // but "one portion"
		return true
	}
	for i := range toks {
		measure := parting.Measured(&toks[i]) || serving.OtherMeasures[toks[i].Text] && !gathers[toks[i].Text]
		word := i+1 < len(toks) && toks[i+1].Kind == token.Word
		switch {
		case word && toks[i+1].Text == "of" && (measure || token.FractionWords[toks[i].Text] > 0), measure && i == 0 && word:
			return true
		case measure && i > 0 && (entry.StartsAmount(toks[i-1:i+1]) || token.FractionWords[toks[i-1].Text] > 0 || token.NumberWords[toks[i-1].Text] > 0):
			return true
		}
	}
	return false
}

// gathers are measures that as often say what a text is about: "batch no. 4".
var gathers = token.Words(`batch bottle glass`)

// above returns the parts of what stands above the first pour.
func (s *search) above(first int) []part {
	var out []part
	line := 1
	for from := 0; from < first; line++ {
		end := len(s.text)
		if at := strings.IndexAny(s.text[from:], "\r\n"); at >= 0 {
			end = from + at
		}
		next := end + 1
		if strings.HasPrefix(s.text[end:], "\r\n") {
			next++
		}
		leads := end > first
		if s.text[from:end] != "" && s.text[from] != '#' {
			out = append(out, s.parts(line, from, min(end, first), leads)...)
		}
		from = next
	}
	return out
}

// parts parts a line at its signs.
func (s *search) parts(line, from, to int, leads bool) []part {
	toks := token.Lex(nil, s.text, from, to)
	says, rest := parting.Header(s.text, toks)
	labelled := says == label.Name && len(rest) > 0 && len(rest) < len(toks)
	var out []part
	start, at, before, depth := 0, from, "", 0
	if labelled {
		start = len(toks) - len(rest)
		at = rest[0].Start
	}
	add := func(end int, sign string, upTo int) {
		p := part{at: entry.Span{Start: at, End: upTo}, toks: toks[start:end], line: line, before: before, behind: sign, labelled: labelled, leads: leads, inside: depth > 0}
		if n := len(p.toks); s.multiples == 1 && n > 2 && (aside.Multiplies(p.toks, n-1) || aside.Multiplies(p.toks, n-2)) {
			p.toks, p.multiple = p.toks[:n-2], p.toks[n-1].End
		}
		said := serving.Read(p.toks)
		p.serves = says != label.None && says != label.Name || said.States() && len(said.Unknown) == 0 && said.Conflict == nil
		if len(p.toks) > 0 {
			out = append(out, p)
			at = upTo
		} else if len(out) > 0 {
			out[len(out)-1].at.End = upTo
			at = upTo
		}
		before = sign
	}
	for i := start; i < len(toks); i++ {
		if !endsPart(toks, i) {
			continue
		}
		add(i, toks[i].Text, toks[i].End)
		start = i + 1
		switch toks[i].Text {
		case "(":
			depth++
		case ")":
			depth--
		}
	}
	add(len(toks), "", to)
	for i := range out {
		out[i].alone = !slices.ContainsFunc(out, func(p part) bool {
			return p.at != out[i].at && p.before != "(" && p.before != "[" && len(strings.Fields(s.words(p.toks))) > 0
		})
	}
	return out
}

// partingSigns are the signs that part two stretches of a heading.
const partingSigns = `,;:.!?()[]"“”„«»-/|•>=+~`

// endsPart reports whether the sign at i parts two stretches.
func endsPart(toks []token.Token, i int) bool {
	t := &toks[i]
	if t.Kind != token.Mark || !strings.Contains(partingSigns, t.Text) {
		return false
	}
	glued := t.Glued && i+1 < len(toks) && toks[i+1].Glued
	switch t.Text {
	case "-", "/", ".":
		if glued {
			return false // "half-half", "n/a", "p.p"
		}
	}
	shortened := t.Is(".") && i > 0 && i+1 < len(toks) && toks[i+1].Kind == token.Numeral && marked(toks, i+1)
	return !shortened
}

// How surely a part is the name of the drink.
const (
	notName = iota
	perhapsName
	lowerName
	titleName
	aloneName
	quotedName
	labelledName
)

// nameOf returns which of the parts is the name of the drink, below 0 if none is.
func (s *search) nameOf(parts []part) int {
	best, sure := -1, notName
	for i := range parts {
		if k := s.sureness(&parts[i], i+1 == len(parts)); k > sure {
			best, sure = i, k
		}
	}
	return best
}

// mostTitle is the most words of a name.
const mostTitle = 6

// sureness says how surely a part is the name of the drink; last says that the pours follow.
func (s *search) sureness(p *part, last bool) int {
	if s.d.Labelled || p.serves {
		return notName
	}
	words := strings.Fields(s.words(p.toks))
	number := slices.ContainsFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral })
	switch {
	case p.labelled:
		return labelledName
	case closes[p.before] != "" && closes[p.before] == p.behind:
		return quotedName
	case last && p.leads && p.behind == ":" && !number:
		return quotedName
	case slices.ContainsFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral }) && len(s.withoutBatchSize(p.toks)) < len(p.toks):
		return notName
	case p.behind == ":", p.behind == "," && !p.leads && p.line != s.batched, p.before == "(" || p.before == "[", len(words) == 0, len(words) > mostTitle, aside.Spoken(words):
		return notName
	case number || s.resolver.Has(strings.Join(words, " ")):
		return perhapsName
	}
	for _, w := range words {
		if first, _ := utf8.DecodeRuneInString(w); len(w) > longestShort && !unicode.IsUpper(first) {
			return lowerName
		}
	}
	if p.alone {
		return aloneName
	}
	return titleName
}

// closes are the signs that close what is quoted, by those that open it.
var closes = map[string]string{"\"": "\"", "“": "”", "„": "“", "«": "»"}

// keep leaves the name of the drink to be read, and parts it from pours on its line.
func (s *search) keep(p *part, i, first int) {
	at := entry.Span{Start: p.toks[0].Start, End: p.toks[len(p.toks)-1].End}
	if !p.labelled {
		s.blank(p.at.Start, at.Start)
	}
	s.blank(at.End, p.at.End)
	if p.leads && at.End < first {
		s.signs = append(s.signs, at.End)
	}
	if i > 0 {
		s.name = at
	}
}

// blank sets aside what stands between two bytes, if anything does.
func (s *search) blank(from, to int) {
	if from < to && strings.TrimSpace(s.text[from:to]) != "" {
		s.masks = append(s.masks, entry.Span{Start: from, End: to})
	}
}
