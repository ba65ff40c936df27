package likeliest

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

// kind is what a stretch of a text is.
type kind uint8

const (
	aPour     kind = iota
	aReplaced      // a pour in place of one before it: "make it .75 lime instead"
	aMaking
	aLaid    // what is laid on the drink
	aNone    // what the drink has none of
	aTitle   // the name of the drink
	aHeading // of a card, above the pours
	aRemark
	aLabel // "method:"
	aSign
)

// stretch is a part of a text and what it may be.
type stretch struct {
	kind     kind
	from, to int // tokens
	cost     float64
	lines    []string          // as they are to be read again
	pours    []*flavor.Profile // for each line of a pour, nil: it is asked for
	said     string            // what is passed over or mended
	behind   bool              // the amount stands behind the name
	bare     bool              // the amount has no unit
	about    *flavor.Profile   // what a remark speaks of, which must be poured
	named    bool              // what is passed over is an ingredient by itself
	open     bool              // what is passed over runs on into what follows
	unsaid   bool              // a pour of which neither an amount is told nor that it is poured
	again    bool              // a pour that may tell how one that was told goes in
	last     bool              // it speaks of what goes in last, which must be poured
	free     bool              // it says that the drink has no alcohol
	told     bool              // a sentence of its own, which may stand before the pours
	runsOn   bool              // it runs on from a word that nothing is called by
	plain    bool              // nothing shows that what is passed over is no pour
}

// key tells apart what is poured.
func (t *stretch) key() string {
	switch t.kind {
	case aPour:
		return "\n" + strings.Join(t.lines, "\n")
	case aReplaced:
		return "\n=" + strings.Join(t.lines, "\n")
	}
	return ""
}

// partingSigns may stand between two stretches, and say nothing. A question mark may ask for
// what stands before it.
const partingSigns = lineEnd + ",;/|•+>-&.:!()[]\"“”„«»=…~'’_#<€$£"

// at lists what may start at a token.
func (s *script) stretches(i int) []stretch {
	if s.sign(i, partingSigns) {
		out := []stretch{{kind: aSign, from: i, to: i + 1}}
		return append(append(out, s.headings(i)...), s.corrected(i)...)
	}
	var out []stretch
	for _, list := range []func(int) []stretch{s.takenBack, s.each, s.poured, s.pouredBehind, s.implied, s.making, s.laid, s.none, s.forbidden, s.labels, s.titles, s.headings, s.fields, s.remarks, s.plainRemarks, s.ledIn, s.numbered, s.besides} {
		out = append(out, list(i)...)
	}
	return out
}

// mostPours is how many pours are spoken of together at most: "the first three".
const mostPours = 6

// explained reports whether the number at i counts or refers, in words that pour nothing.
func (s *script) explained(i int) bool {
	t := &s.toks[i]
	switch {
	case t.Kind == token.Ratio:
		return clock.MatchString(t.Text)
	case t.Kind != token.Numeral:
		return t.Kind != token.Percent
	}
	return s.signed(i) || s.makesOne(i) || s.countsPours(i) || s.countsOther(i) || hourly.MatchString(t.Text) || s.isNumber(i)
}

// signed reports whether a sign says what the number at i is: a price, a number, a year.
func (s *script) signed(i int) bool {
	return s.sign(i-1, "#$€£") || s.sign(i+1, "$€£") || s.sign(i-1, "'’") && s.toks[i].Glued && len(s.toks[i].Text) == 2
}

// entryEnds reports whether an entry ends at i.
func (s *script) entryEnds(i int) bool { return s.ends(i) || s.sign(i, partingSigns) }

// makesOne reports whether the number at i says that the list is for one drink: "serves 1".
func (s *script) makesOne(i int) bool {
	return s.word(i-1, "serves", "serving", "makes", "yields", "yield", "servings") && s.toks[i].Value == 1 && s.entryEnds(i+1)
}

// countsPours reports whether the number at i counts pours of the list: "shake the first three".
func (s *script) countsPours(i int) bool {
	if !s.word(i-1, "first", "last", "other", "all", "these", "those", "remaining") || s.toks[i].Value > mostPours {
		return false
	}
	return s.entryEnds(i+1) || s.word(i+1) && leadsWith.Has(s.toks[i+1].Text) || s.word(i+1, "ingredients")
}

// countsOther reports whether the number at i counts what pours nothing, or is an ordinal: "40 covers", "2nd".
func (s *script) countsOther(i int) bool {
	return s.word(i+1) && (counted.Has(s.toks[i+1].Text) || s.toks[i+1].Glued && ordinals.Has(s.toks[i+1].Text))
}

// isNumber reports whether the number at i is one of a card, a sheet or a version: "no. 4", "v2".
func (s *script) isNumber(i int) bool {
	for k := i - 1; k >= max(0, i-2); k-- {
		if s.word(k) && numbering(s.toks[k].Text) {
			return true
		}
		if !s.sign(k, ".:") {
			break
		}
	}
	return s.word(i-1) && s.toks[i].Glued && len(s.toks[i-1].Text) == 1
}
