package unpoured

import (
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// A number in a stretch that pours nothing counts or refers. That is told by how it stands: its
// signs, what it stands behind, or that nobody would pour so much beside the amounts below.

// countsOrRefers reports whether every number of a stretch does, and none measures.
func (s *search) countsOrRefers(toks []token.Token) bool {
	costs := len(toks) > 0 && aside.Costs(toks[0].Text)
	for i := 0; i < len(toks); i++ {
		if _, to := aside.Price(toks, i); to > 0 {
			i = to - 1
			continue
		}
		switch t := &toks[i]; {
		case t.Kind == token.Ratio && clock.MatchString(t.Text):
		case t.Kind == token.Percent || t.Kind == token.Ratio:
			return false
		case t.Kind == token.Numeral && !costs && !s.refers(toks, i):
			return false
		}
	}
	return true
}

// refers reports whether the number at i counts or refers.
func (s *search) refers(toks []token.Token, i int) bool {
	if refers, settled := s.refersByForm(toks, i); settled {
		return refers
	}
	last := i+1 == len(toks)
	switch {
	case !last && entry.UnitWordsAt(toks[i+1:]) || toks[i].Value != float64(int(toks[i].Value)):
		return false
	case marked(toks, i):
		return true
	case i == 0 || toks[i-1].Kind != token.Word: // "2 umeboshi" may be poured
		return false
	case last: // "Finalist heat 2", where no amount stands behind a name
		return s.ahead || s.bracketed && s.offScale(toks[i].Value)
	}
	told := when.Has(toks[i-1].Text) || dated(toks[i-1].Text) || dated(toks[i+1].Text) || aside.Spoken(words(toks))
	return s.bare == 0 && told // "the guest at 9 had"
}

// refersByForm reports whether the form of a number, or a word that counts behind it, settles that it
// refers: "x10", "ticket 0231", "2nd", "11pm", "keeps 3 days", "spec as of 3/11".
func (s *search) refersByForm(toks []token.Token, i int) (refers, settled bool) {
	t, last := &toks[i], i+1 == len(toks)
	if hour(t.Text) || coded(t.Text) || aside.Multiplies(toks, i) && s.multiples == 1 {
		return true, true
	}
	if !last {
		next := &toks[i+1]
		counts := ordinals.Has(next.Text) && next.Glued || counted.Has(next.Text)
		return counts, counts
	}
	switch {
	case !strings.Contains(t.Text, "/"):
		return false, false
	case i > 0 && (when.Has(toks[i-1].Text) || dateLike(t.Text)):
		return true, true
	}
	return s.ahead, i > leastTold // "approved by Lena 4/10"
}

// coded reports whether figures begin with a nought that no amount begins with: "0231".
func coded(written string) bool {
	return strings.HasPrefix(written, "0") && len(written) > 1 && !strings.ContainsAny(written, ".,/")
}

// when are words before the hour, the place or the number of which something is told.
var when = vocabulary.Words(`at by until till til since`)

// dated reports whether a word is a day of the week or a month, cut to three letters or not.
func dated(w string) bool { return dates.MatchString(w) }

var dates = pattern.Of(`^(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day|s)?|jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|(?:nov|dec)(?:ember)?)$`)

// clock is an hour with its minutes: "14:02".
var clock = pattern.Of(`^\d{1,2}:\d\d$`)

// leastBatchML is the least mL that a heading may say that all of a draft comes to.
const leastBatchML = 500

// leastInBatch is the fewest pours of a draft that is headed so.
const leastInBatch = 3

// batchSize returns how many tokens at i say how much all of a draft comes to; 0 if none do:
// "1 L", "700 ml".
func (s *search) batchSize(toks []token.Token, i int) int {
	if len(s.pours) < leastInBatch || toks[i].Kind != token.Numeral || toks[i].Wrong != "" || i+1 == len(toks) {
		return 0
	}
	amount := entry.Read(s.text, toks[i:i+2])
	per, ok := measure.MLPerUnit(amount.Unit, nil)
	if amount.Shape != entry.ShapeAmount || amount.Fault != nil || !ok || per*amount.Amount < leastBatchML {
		return 0
	}
	return 2
}

// withoutBatchSize returns tokens without what says how much all of a draft comes to.
func (s *search) withoutBatchSize(toks []token.Token) []token.Token {
	for i := range toks {
		if n := s.batchSize(toks, i); n > 0 {
			return slices.Concat(toks[:i], toks[i+n:])
		}
	}
	return toks
}

// hour reports whether a number is one of the clock: "11pm", "7:30".
func hour(w string) bool {
	return strings.HasSuffix(w, "pm") || strings.HasSuffix(w, "am") || strings.HasSuffix(w, "h") && len(w) > 1
}

// leastMillis is the smallest bare number that may be millilitres of a pour beside others that
// are; common practice.
const leastMillis = 5

// leastBareML is a bare number above which all bare numbers are millilitres; common practice.
const leastBareML = 10

// offScale reports whether nobody would pour so much by a bare number, beside those of the
// draft, which are millilitres.
func (s *search) offScale(v float64) bool {
	return s.bare > 1 && s.most >= leastBareML && v < leastMillis
}

// marked reports whether the number at i has a sign of a reference before it: "#3", "no. 7",
// "p. 12", "Table 14".
func marked(toks []token.Token, i int) bool {
	if i == 0 {
		return false
	}
	before := &toks[i-1]
	if before.Is("#") && toks[i].Glued || before.Kind == token.Word && (title.Numbered(before.Text) || len(before.Text) == 1 && before.Text != "x" && toks[i].Glued) { // "v2"
		return true
	}
	return before.Is(".") && before.Glued && i > 1 && toks[i-2].Kind == token.Word && len(toks[i-2].Text) <= longestShort // "p. 12", "vol. 2"
}

// referring are words that a stop shortens before the number of a page or a picture, and that
// may name something poured without it.
var referring = vocabulary.Words(`fig pg p pp ch art vol no nr pl`)

// withoutReferences returns tokens without numbers that refer and the words that they stand
// behind: the table of "Table 14" is no table sugar, nor "Fig. 4" fruit.
func withoutReferences(toks []token.Token) []token.Token {
	var out []token.Token
	for i := range toks {
		if toks[i].Kind != token.Numeral || !marked(toks, i) {
			out = append(out, toks[i])
			continue
		}
		switch n := len(out); {
		case n > 0 && out[n-1].Kind == token.Word && title.Numbered(out[n-1].Text):
			out = out[:n-1]
		case n > 1 && out[n-1].Is(".") && (referring.Has(out[n-2].Text) || title.Numbered(out[n-2].Text)):
			out = out[:n-2]
		}
	}
	return out
}

// longestShort is the most letters of a word that a stop shortens.
const longestShort = 4

// words are the words of tokens.
func words(toks []token.Token) []string {
	var out []string
	for i := range toks {
		if toks[i].Kind == token.Word {
			out = append(out, toks[i].Text)
		}
	}
	return out
}

// dateLike reports whether a fraction is a day and a month, and none that anybody pours.
func dateLike(w string) bool {
	_, month, _ := strings.Cut(w, "/")
	n, err := strconv.Atoi(month)
	return err == nil && n > 8
}

// leastTold is the fewest words before a number at the end of a remark: "umeboshi 3" is a pour.
const leastTold = 2

// counted are what a number counts beside the pours: hours, guests.
var counted = vocabulary.Words(`day days night nights week weeks wk wks month months year years hour hours hr hrs min mins minute minutes pax covers guests people ppl persons heads tables orders rounds portion portions serving servings`)

var ordinals = vocabulary.Words(`st nd rd th am pm h hrs`)
