package likeliest

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/vocabulary"
)

// Words that take a pour back, in the turns of speech that say clearly which.

// cutWords say behind a pour that it is no longer one.
var cutWords = vocabulary.Words(`cut dropped removed struck scrapped deleted omit omitted gone`)

// mostCut is the most tokens of a line that is cut.
const mostCut = 16

// takenBack are lines that are cut, "tincture 2 dashes -- CUT, not in final", and pours that
// replace one before them, "make it .75 lime instead".
func (s *script) takenBack(i int) []stretch {
	var out []stretch
	if s.starts(i) {
		end := s.end(i)
		for k := i + 2; k < end && end-i <= mostCut; k++ {
			if s.word(k) && cutWords.Has(s.toks[k].Text) && s.sign(k-1, "-(•>=") && s.onePour(i, k-1) {
				out = append(out, stretch{kind: aRemark, from: i, to: end, cost: costBack})
			}
		}
	}
	at := i
	switch {
	case s.word(i, "make", "call") && s.word(i+1, "it", "that", "the"):
		at = i + 2
	case s.word(i, "use", "do", "go", "try") && s.word(i+1):
		at = i + 1
	case s.word(i, "make", "use", "do", "go", "try"):
		at = i + 1
	}
	if at == i {
		return out
	}
	for _, p := range append(s.poured(at), s.pouredBehind(at)...) {
		if s.word(p.to, "instead") && p.pours[0] != nil {
			p.kind, p.from, p.to, p.cost = aReplaced, i, p.to+1, p.cost+costBack
			out = append(out, p)
		}
	}
	return out
}

// regrets may stand behind a pour that corrects one.
var regrets = vocabulary.Words(`sorry oops soz sry pardon whoops`)

// corrected is a pour that replaces one before it as messages are corrected, with a star before
// it: "*10 lime sorry".
func (s *script) corrected(i int) []stretch {
	if s.text[s.toks[i].Start:s.toks[i].End] != "*" || i+1 >= len(s.toks) || !s.toks[i+1].Glued || s.sign(i+1, "•") || !s.starts(i) && !s.sign(i-1, ":") {
		return nil
	}
	var out []stretch
	for _, p := range append(s.poured(i+1), s.pouredBehind(i+1)...) {
		if len(p.pours) != 1 || p.pours[0] == nil {
			continue
		}
		p.kind, p.from, p.cost = aReplaced, i, p.cost+costBack
		if s.word(p.to) && regrets.Has(s.toks[p.to].Text) {
			p.to++
		}
		if s.ends(p.to) {
			out = append(out, p)
		}
	}
	return out
}

// besides are words of making that name what goes in after it, or is poured all the same: "shake
// w/o the float", "all but the soda".
func (s *script) besides(i int) []stretch {
	if s.word(i) && lasts.Has(s.toks[i].Text) && s.bounded(i) && (s.ends(i+1) || s.sign(i+1, ".,;")) { // "shake, strain, top"
		return []stretch{{kind: aRemark, from: i, to: i + 1, cost: costTalk, last: true}}
	}
	if !s.word(i, "without", "except", "but") || !s.word(i-1) {
		return nil
	}
	if !serving.Known(s.toks[i-1].Text) && !s.word(i-1, "all", "everything", "ingredients") {
		return nil
	}
	k := i + 1
	for s.word(k, "the", "for", "its", "a") {
		k++
	}
	if s.word(k) && lasts.Has(s.toks[k].Text) {
		return []stretch{{kind: aRemark, from: i, to: k + 1, cost: costTalk, last: true}}
	}
	var out []stretch
	for _, to := range s.named(k) {
		if n := s.nameAt(k, to, flavor.Ounce, 1); n.ok && n.profile != nil {
			out = append(out, stretch{kind: aRemark, from: i, to: to, cost: costTalk, about: n.profile})
		}
	}
	return out
}

// lasts are what goes into a drink last, by how it does.
var lasts = vocabulary.Words(`float top topper fizz bubbles bubbly sparkler garnish`)

// onePour reports whether tokens state one amount at most.
func (s *script) onePour(from, to int) bool {
	n := 0
	for k := from; k < to; k++ {
		if _, ok := s.amountAt(k); ok {
			n++
		}
	}
	return n <= 1
}
