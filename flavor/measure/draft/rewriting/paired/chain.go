package paired

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/vocabulary"
)

// link is one of a chain: an amount or a name, and the sign before it.
type link struct {
	amount   *amount
	from, to int // tokens
	gap      int // how far it stands from the one before
}

// How far two links stand apart: side by side, with a comma or a word between them, or at the end of a
// clause.
const (
	beside = iota
	comma
	apart
)

// chain reads a text in which amounts and names take turns.
func (s *script) chain() (string, bool) {
	var lines []string
	pours, behind := 0, false
	for i := 0; i < len(s.toks); {
		end := s.clauseEnd(i)
		if !s.counts(i, end) || i == 0 && s.entitles(i, end) {
			if w := strings.Trim(s.written(i, end), " ,;"); w != "" {
				lines = append(lines, w)
			}
			i = end + 1
			continue
		}
		links, rest, ok := s.links(i, end, pours == 0)
		if !ok {
			return "", false
		}
		pairs, ok := s.pairs(links)
		if !ok {
			return "", false
		}
		behind = behind || links[0].amount == nil
		lines = append(lines, pairs...)
		pours += len(pairs)
		if w := strings.Trim(s.written(rest, end), " ,;"); w != "" {
			lines = append(lines, w)
		}
		i = end + 1
	}
	return strings.Join(lines, "\n"), pours >= leastPours && behind
}

// entitles reports whether a clause is the name of the drink, with a number that is part of it: "WARD EIGHT".
func (s *script) entitles(i, end int) bool {
	for k := i; k < end; k++ {
		if !s.word(k) {
			return false
		}
	}
	return end-i <= mostName && len(s.resolver.Mentioned(s.written(i, end))) == 0
}

// clauseEnd is where the clause ends that starts at i: with its line, at a stop or at a semicolon.
func (s *script) clauseEnd(i int) int {
	for k := i; k < len(s.toks); k++ {
		t := &s.toks[k]
		if t.Text == "\n" || t.Is(";") || t.Is("!") || t.Is(".") && (k+1 == len(s.toks) || !s.toks[k+1].Glued) {
			return k
		}
	}
	return len(s.toks)
}

// counts reports whether some tokens hold an amount.
func (s *script) counts(from, end int) bool {
	for i := from; i < end; i++ {
		if _, ok := s.amountAt(i); ok {
			return true
		}
	}
	return false
}

var (
	// joins may stand between two links, and say nothing.
	joins = vocabulary.Words(`and then with plus also the a of is are at only just some please also exactly about around`)
	// refuses take something back, or leave it open: a text with one of them is no chain.
	refuses = vocabulary.Words(`no not without instead or but was were never less more except minus skip sub each half-half double if maybe optional hold sans swap sub subs replace out off`)
)

// links reads the links of a clause, up to where it tells how the drink is made; rest is where that is.
// The first clause may begin with words that name nothing.
func (s *script) links(i, end int, first bool) (out []link, rest int, ok bool) {
	gap := apart
	for i < end {
		if len(out) > 0 && s.made(i, end) {
			break
		}
		switch a, isAmount := s.amountAt(i); {
		case isAmount && a.to <= end:
			out = append(out, link{amount: &a, from: i, to: a.to, gap: gap})
			i, gap = a.to, beside
			if strings.HasSuffix(s.written(a.to-1, a.to), ".") { // "rye, 2. amaro, 1."
				gap = apart
			}
			continue
		case s.toks[i].Is(",") || s.toks[i].Is(":") || s.toks[i].Is("-") || s.toks[i].Is("="):
			gap = max(gap, comma)
		case !s.word(i) || refuses.Has(s.toks[i].Text):
			return nil, 0, false
		case joins.Has(s.toks[i].Text) && s.nameAt(i, s.unitBefore(out)) == i:
			if s.toks[i].Text != "of" {
				gap = max(gap, comma)
			}
		default:
			to := s.nameAt(i, s.unitBefore(out))
			if to == i && len(out) == 0 && first && s.idle(i) {
				break
			}
			if to == i || to > end {
				return nil, 0, false
			}
			to = s.bracketEnd(to)
			out = append(out, link{from: i, to: to, gap: gap})
			i, gap = to, beside
			continue
		}
		i++
	}
	return out, i, len(out) > 0
}

// mostInBracket is the most words of a bracket that is part of a name.
const mostInBracket = 3

// bracketEnd is where a bracket of words ends behind a name, "grenadine (real)"; i if none stands there.
func (s *script) bracketEnd(i int) int {
	if i >= len(s.toks) || !s.toks[i].Is("(") {
		return i
	}
	for k := i + 1; k < len(s.toks) && k <= i+1+mostInBracket; k++ {
		switch {
		case s.toks[k].Is(")"):
			return k + 1
		case !s.word(k) || refuses.Has(s.toks[k].Text):
			return i
		}
	}
	return i
}

// unitBefore is the unit of the last link, if it is an amount.
func (s *script) unitBefore(all []link) flavor.Unit {
	if n := len(all); n > 0 && all[n-1].amount != nil {
		return all[n-1].amount.unit
	}
	return ""
}

// made reports whether words at i tell how the drink is made or served.
func (s *script) made(i, end int) bool {
	if s.toks[i].Is(",") || s.word(i) && s.toks[i].Text == "and" {
		i++
	}
	return i < end && s.word(i) && serving.Starts(s.toks[i:end]) && s.nameAt(i, "") == i
}

// idle reports whether a word leads up to the first pour, and says nothing of the drink.
func (s *script) idle(i int) bool { return leads.Has(s.toks[i].Text) }

// leads lead up to the first pour.
var leads = vocabulary.Words(`for this that the drink cocktail one i i'm am we we're are use uses using make making take put in it it's its is my our you so ok okay right well now today here here's`)

// pairs are the lines of a chain: its links two by two, an amount and a name. It is none if a comma parts
// the two of a pair and not a pair from the next.
func (s *script) pairs(all []link) ([]string, bool) {
	if len(all)%2 != 0 {
		return nil, false
	}
	var out []string
	for i := 0; i < len(all); i += 2 {
		a, name := &all[i], &all[i+1]
		within := name.gap
		if a.amount == nil {
			a, name = name, a
		}
		if a.amount == nil || name.amount != nil {
			return nil, false
		}
		if within > beside && (i > 0 && all[i].gap < within || i+2 < len(all) && all[i+2].gap < within) {
			return nil, false
		}
		if a.amount.unit != "" && s.nameAt(name.from, a.amount.unit) == name.from {
			return nil, false
		}
		out = append(out, a.amount.written()+" "+s.written(name.from, name.to))
	}
	return out, true
}
