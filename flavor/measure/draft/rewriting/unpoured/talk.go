package unpoured

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// A message to colleagues holds sentences around the pours: greetings, what somebody did, what
// leads up to the first amount. Here the text itself is searched for them, since a draft that
// is read as a list may have taken such a sentence and its pours together for a name.

// leastPoured is the fewest pours of a text that is searched for talk, and mostMessage the most
// bytes: every number of it is looked up with the words around it.
const (
	leastPoured = 2
	mostMessage = 1000
)

// Talk returns a text without what is said to colleagues around its pours; false if nothing
// is. A stretch is talk where it uses words that only talk uses, states no amount, does not
// tell how the drink is made, and names nothing that is not poured elsewhere.
func Talk(text string, b *naming.Resolver) (Aside, bool) {
	if len(text) > mostMessage {
		return Aside{}, false
	}
	s := &search{resolver: b, text: text}
	lines := stretches(text)
	for _, l := range lines {
		s.pourings(l)
	}
	if len(s.pours) < leastPoured {
		return Aside{}, false
	}
	for i, l := range lines {
		s.talkIn(l, i == 0 && len(lines) > 1)
	}
	if len(s.masks) == 0 {
		return Aside{}, false
	}
	s.merge()
	return Aside{Text: s.masked(), Spans: s.masks}, true
}

// stretches are the tokens of every line that is not empty, parted at the signs that end a
// stretch.
func stretches(text string) [][]part {
	s := &search{text: text}
	var out [][]part
	at := 0
	for line := range strings.Lines(text) {
		end := at + len(strings.TrimRight(line, "\r\n"))
		if strings.TrimSpace(text[at:end]) != "" && text[at] != '#' {
			out = append(out, s.parts(1+strings.Count(text[:at], "\n"), at, end, false))
		}
		at += len(line)
	}
	return out
}

// pourings gathers what the amounts of a line are amounts of.
func (s *search) pourings(line []part) {
	for _, p := range line {
		for i := range p.toks {
			if !s.amountAt(p.toks, i) {
				continue
			}
			if q := s.named(p.toks, i); q != nil {
				s.pours = append(s.pours, pour{line: &entry.Line{AmountAt: entry.Span{Start: p.toks[i].Start, End: p.toks[i].End}}, profile: q})
			}
		}
	}
}

// amountAt reports whether a number stands at i that may be how much is poured.
func (s *search) amountAt(toks []token.Token, i int) bool {
	if toks[i].Kind != token.Numeral || i+1 < len(toks) && serving.DegreeWords[toks[i+1].Text] {
		return false
	}
	if i > 0 && i+1 == len(toks) && when.Has(toks[i-1].Text) && s.before(toks, i) == nil { // "see you at 5"
		return false
	}
	return s.behindAmount(toks, i) != nil || !s.refers(toks, i)
}

// named is the ingredient behind the amount at i, or before it where none is; nil if there is
// none.
func (s *search) named(toks []token.Token, i int) *flavor.Profile {
	return cmp.Or(s.behindAmount(toks, i), s.before(toks, i))
}

// behindAmount is the ingredient behind the amount at i, nil if there is none.
func (s *search) behindAmount(toks []token.Token, i int) *flavor.Profile {
	from := i + 1
	if _, n := entry.UnitAt(toks[from:]); n > 0 {
		from += n
	}
	for from < len(toks) && toks[from].Text == "of" {
		from++
	}
	for end := min(len(toks), from+naming.LongestName); end > from; end-- {
		if p, ok := s.firmly(toks[from:end]); ok {
			return p
		}
	}
	return nil
}

// before is the ingredient before the number at i, nil if there is none.
func (s *search) before(toks []token.Token, i int) *flavor.Profile {
	for start := max(0, i-naming.LongestName); start < i; start++ {
		if p, ok := s.firmly(toks[start:i]); ok {
			return p
		}
	}
	return nil
}

// firmly is the ingredient that words name in a jigger.
func (s *search) firmly(toks []token.Token) (*flavor.Profile, bool) {
	if slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return nil, false
	}
	f := s.resolver.Find(s.words(toks), naming.Place{Unit: flavor.Millilitre})
	return f.Profile, f.Firm() && f.Fault == nil
}

// talkIn sets aside what is said in a line; titled says that the line may be the name of the
// drink.
func (s *search) talkIn(line []part, titled bool) {
	for i := range line {
		p := &line[i]
		first := slices.IndexFunc(p.toks, func(t token.Token) bool { return t.Kind == token.Numeral })
		for first >= 0 && first < len(p.toks) && !s.amountAt(p.toks, first) {
			next := slices.IndexFunc(p.toks[first+1:], func(t token.Token) bool { return t.Kind == token.Numeral })
			if next < 0 {
				first = -1
				break
			}
			first += 1 + next
		}
		switch {
		case first > 0:
			s.leadIn(p.toks[:first])
		case first == 0 || titled && len(line) == 1 && !aside.Greets(p.toks):
		case deniesPour(p.toks) && i > 0:
		case s.talk(p.toks):
			s.passOverSaid(p)
		}
	}
}

// endsSaid are the signs that end what is said, and part nothing else.
const endsSaid = `.,:;!?"”`

// passOverSaid sets a stretch aside with the sign that ends it.
func (s *search) passOverSaid(p *part) {
	s.passOver(p.toks)
	if p.behind != "" && strings.Contains(endsSaid, p.behind) || p.behind == "" {
		s.masks = append(s.masks, p.at)
	}
}

// leadIn sets aside what leads up to an amount.
func (s *search) leadIn(toks []token.Token) {
	if !aside.LeadsIn(toks) || entry.TellsToPour(toks[:len(toks)-1]) || s.opens(toks) || s.instructs(toks) {
		return
	}
	s.passOver(toks)
}

// talk reports whether a stretch without an amount is said to somebody, or counts and refers.
func (s *search) talk(toks []token.Token) bool {
	switch {
	case len(toks) > 1 && toks[0].Text == "i" && (toks[1].Text == "mean" || toks[1].Text == "meant"): // what follows stands for what is poured before
		return false
	case aside.Forbids(toks) && !entry.TellsToPour(toks[1:]):
		return s.forbidsAside(toks)
	case measures(toks) || entry.TellsToPour(toks) || s.instructs(toks):
		return false
	case slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) && !serving.Starts(toks):
		above := toks[0].Start < s.pours[0].line.AmountAt.Start
		return (above || aside.Talks(toks)) && !s.opens(withoutReferences(toks))
	}
	toks = aside.WithoutMessages(toks)
	switch {
	case aside.Hails(toks): // whom it greets is no ingredient: "hiya Tom"
		return true
	case aside.Greets(toks):
		return len(s.resolver.Mentioned(s.words(toks))) == 0
	}
	return aside.Talks(toks) && !s.opens(toks)
}

// forbidsAside reports whether what is forbidden says something beside how the drink is made:
// "no ice" and "don't shake" are read where they stand.
func (s *search) forbidsAside(toks []token.Token) bool {
	said := serving.Read(toks)
	return len(said.Unknown) > 1
}

// instructs reports whether a stretch tells how the drink is made or served: it begins with
// that, but for who is told to.
func (s *search) instructs(toks []token.Token) bool {
	if said := serving.Read(toks); len(said.Unknown) == 0 {
		return said.States() || said.Words > 0 && !aside.Greets(toks)
	}
	for len(toks) > 0 && tellsTo.Has(toks[0].Text) {
		toks = toks[1:]
	}
	return len(toks) > 0 && (serving.Starts(toks) || serving.StepVerbs[toks[0].Text])
}

// tellsTo stand before what somebody is told to do.
var tellsTo = vocabulary.Words(`we i you they it it's its is are please pls plz just then and so but now also always only still again as before with`)
