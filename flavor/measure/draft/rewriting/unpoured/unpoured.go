// Package unpoured tells which stretches of a draft pour nothing, where the rest of the draft
// proves it: a heading above the first pour, a number that counts or refers, a remark beside
// or behind the pours.
//
// The proof is the same for all: the draft states the amounts of what it pours, and the
// stretch states none and names nothing that is not poured elsewhere. What stands between
// pours may be poured without an amount, so that it has to say more to be a remark. The
// package proposes; package reading reads the draft anew without these stretches and keeps
// what it has proposed only if that lets the rest be read.
package unpoured

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Aside is a draft as it is to be read without what pours nothing.
type Aside struct {
	Text  string       // of the draft, each byte that is passed over a blank, or a sign that parts the name from the pours
	Spans []entry.Span // what is passed over, in order
	Name  entry.Span   // what is taken as the name of the drink instead of the first line; empty: nothing is
}

// mostText is how long a draft is at most, in bytes, that is searched: a longer one is no note of
// one drink, and every stretch is looked up.
const mostText = 4000

// leastStated is the fewest pours with an amount that make an amount the habit of a draft.
const leastStated = 2

// pour is a line of a draft whose ingredient is known.
type pour struct {
	line    *entry.Line
	profile *flavor.Profile
	tail    entry.Span // behind a comma in its name, without which alone it is known: "2 oz rye, guest wants rye"
	head    entry.Span // before its name on the first line, without which alone it is known: "mule w/ rye 2 oz"
}

// search looks for what pours nothing.
type search struct {
	d         *draft.Draft
	resolver  *naming.Resolver
	text      string
	pours     []pour
	bare      int     // pours by the jigger without a unit
	most      float64 // of their numbers
	multiples int     // numbers that multiply: where there are several they may be the amounts
	based     bool    // some pour is a spirit
	bracketed bool    // what is looked at stands in brackets
	quoted    bool    // what is looked at stands in quotes: "Third Bell" is no third
	batched   int     // the line that says how much all lines below it come to
	ahead     bool    // every amount stands before its name, and what is poured has its unit
	masks     []entry.Span
	signs     []int // bytes at which a colon parts the name from the pours
	name      entry.Span
}

// Of returns what of a draft with faults pours nothing; false if nothing is proved to.
func Of(d *draft.Draft, faults flavor.DataFaults, b *naming.Resolver) (Aside, bool) {
	s := &search{d: d, resolver: b, text: d.String()}
	if len(s.text) > mostText || d.PoursOnly() || !s.gather() {
		return Aside{}, false
	}
	at := map[int]bool{}
	for _, f := range faults {
		at[f.Place().Line] = true
	}
	s.heading(at)
	s.remarks(at)
	if len(s.masks) == 0 {
		return Aside{}, false
	}
	s.merge()
	return Aside{Text: s.masked(), Spans: s.masks, Name: s.name}, true
}

// masked is the text with blanks in place of what is set aside.
func (s *search) masked() string {
	text := []byte(s.text)
	for _, m := range s.masks {
		for i := m.Start; i < m.End; i++ {
			text[i] = ' '
		}
	}
	for _, i := range s.signs {
		text[i] = ':'
	}
	return string(text)
}

// merge puts stretches in order, and makes one of those that at most a sign stands between.
func (s *search) merge() {
	slices.SortFunc(s.masks, func(a, b entry.Span) int { return cmp.Or(a.Start-b.Start, a.End-b.End) })
	out := s.masks[:1]
	for _, m := range s.masks[1:] {
		last := &out[len(out)-1]
		if m.Start <= last.End || strings.Trim(s.text[last.End:m.Start], " \t,;.") == "" {
			last.End = max(last.End, m.End)
			continue
		}
		out = append(out, m)
	}
	s.masks = out
}

// gather finds the ingredients of the pours, and is false if too few state their amounts.
func (s *search) gather() bool {
	if s.amountsApart() {
		return false
	}
	stated, figures := 0, false
	s.ahead = true
	for i := range s.d.Lines {
		l := &s.d.Lines[i]
		toks := token.Lex(nil, s.text, l.Span.Start, l.Span.End)
		if len(withoutReferences(toks)) == 0 { // "CARD 22"
			continue
		}
		p, known := s.pourOf(l, toks, i == 0)
		switch {
		case known:
			s.add(p)
			figures = figures || !l.AmountAt.Empty()
			if !l.AmountAt.Empty() || !l.UnitAt.Empty() {
				stated++
			}
		case i == 0 && s.poursNone(l):
		case portion(toks) > 0 && servedSo(l.Name): // "pour 90 ml up"
		case !l.AmountAt.Empty() && !l.UnitAt.Empty() && l.Unit.Jigger() && unicode.IsLetter(rune(s.text[l.UnitAt.Start])):
			return false // so much of something unknown is poured, whatever it is
		}
	}
	slices.SortStableFunc(s.pours, func(a, b pour) int { return a.line.Span.Start - b.line.Span.Start })
	s.ahead = s.ahead && s.bare == 0
	return figures && stated >= leastStated
}

// servedSo reports whether the name of a line says how a drink is served, and names nothing.
func servedSo(name string) bool {
	said := serving.Of(name)
	return said.Service != "" && len(said.Unknown) == 0
}

// amountsApart reports whether amounts stand on lines of their own, apart from the names; else it
// counts the numbers that multiply.
func (s *search) amountsApart() bool {
	for line := range strings.Lines(s.text) {
		toks := token.Lex(nil, line, 0, len(line))
		if len(toks) > 1 && entry.AmountAt(toks) == len(toks) && entry.UnitWordsAt(toks[1:]) {
			return true
		}
		for i := range toks {
			if toks[i].Kind == token.Numeral && aside.Multiplies(toks, i) {
				s.multiples++
			}
		}
	}
	return false
}

// pourOf finds the ingredient of a line, with what stands behind the comma of its name if that is no
// part of it, and on the first line what stands before it. It is false if no ingredient is known.
func (s *search) pourOf(l *entry.Line, toks []token.Token, first bool) (pour, bool) {
	p := pour{line: l}
	f := s.found(l, l.Name)
	if name, _, ok := strings.Cut(s.text[l.NameAt.Start:l.NameAt.End], ","); ok && !f.Firm() {
		f, p.tail = s.found(l, name), entry.Span{Start: l.NameAt.Start + len(name), End: l.NameAt.End}
	}
	if first && (!f.Firm() || f.Fault != nil) {
		if g, at := s.behindHead(l, toks); !at.Empty() {
			f, p.head = g, at
		}
	}
	p.profile = f.Profile
	return p, f.Firm() && f.Fault == nil
}

// poursNone reports whether the first line pours nothing that is known, since it says how much all lines
// below come to, or speaks to colleagues: "portion = 90 ml. don't use for single".
func (s *search) poursNone(l *entry.Line) bool {
	if s.headsBatch(l) {
		s.batched = l.Number
		return true
	}
	return aside.Said(token.Lex(nil, l.Name, 0, len(l.Name)))
}

// add takes a pour among those that are known, with what its amount tells of the habits of the text.
func (s *search) add(p pour) {
	s.based = s.based || p.profile.Base()
	s.pours = append(s.pours, p)
	l := p.line
	if l.AmountAt.Empty() {
		return
	}
	if l.Unit == "" && !p.profile.Class.Solid() {
		s.bare++
		s.most = max(s.most, l.Amount)
	}
	s.ahead = s.ahead && l.AmountAt.Start < l.NameAt.Start
}

// nearBatch is how near the pours of a batch come to the size in its heading, as a share.
const nearBatch = 0.1

// headsBatch reports whether the first line says how much all lines below come to: "Night
// Porter - 1 L".
func (s *search) headsBatch(l *entry.Line) bool {
	per, ok := measure.MLPerUnit(l.Unit, nil)
	if !ok || per*l.Amount < leastBatchML || len(s.d.Lines) <= leastInBatch || s.d.Lines[1].Number == l.Number {
		return false
	}
	below := 0.0
	for i := range s.d.Lines[1:] {
		o := &s.d.Lines[1+i]
		if ml, ok := measure.MLPerUnit(cmp.Or(o.Unit, flavor.Millilitre), nil); ok {
			below += ml * o.Amount
		}
	}
	return len(s.resolver.Mentioned(l.Name)) == 0 || math.Abs(below-per*l.Amount) <= nearBatch*below
}

// behindHead is what the end of a name means that stands behind a "with" or a bracket, and what
// stands before that: "mule variation w/ aquavit 1.5 oz".
func (s *search) behindHead(l *entry.Line, toks []token.Token) (naming.Found, entry.Span) {
	for i := len(toks) - 2; i > 0; i-- {
		if toks[i+1].Start >= l.NameAt.End || toks[i].Start < l.NameAt.Start || toks[i].Text != "with" && !toks[i].Is(")") {
			continue
		}
		if f := s.found(l, s.text[toks[i+1].Start:l.NameAt.End]); f.Firm() && f.Fault == nil {
			return f, entry.Span{Start: l.NameAt.Start, End: toks[i].End}
		}
		break
	}
	return naming.Found{}, entry.Span{}
}

// found is what a name means in the place of a line, by the piece where it has no unit and is
// not poured.
func (s *search) found(l *entry.Line, name string) naming.Found {
	f := s.resolver.Find(name, naming.PlaceOf(cmp.Or(l.Unit, flavor.Millilitre), l.Amount, l.After))
	if !f.Firm() && l.Unit == "" {
		f = s.resolver.Find(name, naming.Place{Unit: flavor.Piece, Amount: l.Amount})
	}
	return f
}

// opens reports whether words may name something that is not poured elsewhere.
func (s *search) opens(toks []token.Token) bool {
	words := s.words(toks)
	if words == "" {
		return false
	}
	if n := len(strings.Fields(words)); n <= naming.LongestName {
		switch f := s.resolver.Find(words, naming.Place{Unit: flavor.Splash}); {
		case f.Profile != nil && (s.pouredAs(f.Profile) || n > 1 && !s.resolver.Has(words) && s.tastesOf(f.Profile, words)): // "Smoked Pear", above a pear liqueur
			return false
		case f.Profile != nil:
			return true
		case f.Fault.Kind != flavor.ErrUnknown:
			return true
		}
	}
	return slices.ContainsFunc(s.resolver.Mentioned(words), func(p *flavor.Profile) bool { return !s.kin(p) && !s.tastesOf(p, words) })
}

// tastesOf reports whether words name no more of an ingredient than what it is made of, and
// something that is poured is made of that too: a "rhubarb collins" pours rhubarb syrup.
func (s *search) tastesOf(p *flavor.Profile, words string) bool {
	made, form, _ := strings.Cut(flavor.NormaliseName(p.Name), " ")
	written := " " + flavor.NormaliseName(words) + " "
	if !strings.Contains(written, " "+made+" ") || form != "" && strings.Contains(written, " "+form+" ") {
		return false
	}
	return slices.ContainsFunc(s.pours, func(q pour) bool {
		return strings.Contains(" "+flavor.NormaliseName(q.profile.Name)+" ", " "+made+" ")
	})
}

// words are the words of tokens, parted by single blanks, but for initials and whose something
// is: "Tom's" is no tomato.
func (s *search) words(toks []token.Token) string {
	var out []string
	for i := range toks {
		w := toks[i].Text
		if toks[i].Kind == token.Word && len(w) > 1 && !strings.HasSuffix(w, "'s") && !strings.HasSuffix(w, "’s") {
			out = append(out, s.text[toks[i].Start:toks[i].End])
		}
	}
	return strings.Join(out, " ")
}

// pouredAs reports whether a draft pours exactly an ingredient.
func (s *search) pouredAs(p *flavor.Profile) bool {
	return slices.ContainsFunc(s.pours, func(q pour) bool { return q.profile == p && !q.line.AmountAt.Empty() })
}

// kin reports whether a draft pours an ingredient, one of its class, or one that is made of
// it: a "rum punch" pours some rum, and a "ginger sour" ginger syrup.
func (s *search) kin(p *flavor.Profile) bool {
	key := flavor.NormaliseName(p.Name)
	return slices.ContainsFunc(s.pours, func(q pour) bool {
		return q.profile == p || q.profile.Class == p.Class || strings.Contains(" "+flavor.NormaliseName(q.profile.Name)+" ", " "+key+" ")
	})
}
