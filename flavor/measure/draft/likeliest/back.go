package likeliest

import (
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
