package draft

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// shape is what a stretch of a line looks like before anybody knows the
// ingredients.
type shape uint8

const (
	shapeNothing shape = iota
	shapeName          // words that may be an ingredient
	shapeAmount        // an amount without a name
	shapePour          // an amount and a name
	shapeImplied       // a name whose amount goes without saying: "top soda", "egg white"
	shapeTail          // words that belong to the pour before: "to top", "muddled"
	shapeServing
	shapeGarnish
	shapeRim
)

// pour is a pour in the making.
type pour struct {
	Line
	shape  shape
	amount bool // one is written
	words  bool // the amount is written in words
	each   bool // stands for every name that follows
	of     []token
	fault  *flavor.Fault
	remark string
	refuse bool
	// byNoun is true of a garnish that is one only by its last word.
	byNoun bool
}

// readPour reads the tokens of one entry as a pour, as far as it is one.
func (r *reader) readPour(toks []token) pour {
	p := pour{of: toks}
	toks = trimMarks(toks)
	if len(toks) == 0 {
		return p
	}
	if p.rim(toks) || p.garnish(toks) || p.juiced(r, toks) {
		return p
	}
	toks = bare(toks)
	rest := p.skipLead(toks)
	if after, ok := p.takeAmount(rest); ok {
		if q := (pour{of: p.of}); !unitWordsAt(after) && q.amountLast(r, q.takeTails(r, rest)) && q.Unit != "" {
			return q // "151 rum 1 oz"
		}
		p.readAfterAmount(r, after)
		return p
	}
	if p.fault == nil {
		p.fault = noNumber(rest)
	}
	if p.fault != nil {
		p.shape = shapePour
		return p
	}
	if p.unitFirst(r, rest) || p.equalParts(r, rest) || p.fromFruit(r, rest) || p.pouredOn(r, rest) {
		return p
	}
	name := p.takeTails(r, rest)
	if !p.amountLast(r, name) {
		p.readWithoutAmount(r, name)
	}
	return p
}

// bare takes an amount that leads out of its brackets: "(2 oz) gin".
func bare(toks []token) []token {
	end := -1
	if toks[0].is("(") {
		end = closing(toks)
	}
	if end == 2 && strings.HasPrefix(toks[1].text, "opt") && len(toks) > 3 {
		return toks[3:] // "(opt) 1 egg white"
	}
	if end < 2 || end+1 == len(toks) || toks[1].kind != numeral || end > 2 && !startsUnit(toks[2:end]) {
		return toks
	}
	return append(append([]token(nil), toks[1:end]...), toks[end+1:]...)
}

// noNumber refuses what a computer writes for an amount that is none.
func noNumber(toks []token) *flavor.Fault {
	for len(toks) > 0 && (toks[0].is("+") || toks[0].is("-")) {
		toks = toks[1:]
	}
	if len(toks) < 2 || toks[0].text != "nan" && toks[0].text != "inf" && toks[0].text != "infinity" || !startsUnit(toks[1:]) {
		return nil
	}
	return invalid("amount", toks[0].text, "%q is not an amount; write a number, such as \"2 oz\"", toks[0].text)
}

// trimMarks drops marks at both ends, but for brackets and stops that mean
// something.
func trimMarks(toks []token) []token {
	for len(toks) > 0 && toks[0].kind == mark && !toks[0].is("(") && !toks[0].is("~") && !(toks[0].is("-") && len(toks) > 1 && toks[1].glued && toks[1].kind == numeral) {
		toks = toks[1:]
	}
	for len(toks) > 0 {
		last := &toks[len(toks)-1]
		if last.kind != mark || last.is(")") {
			break
		}
		toks = toks[:len(toks)-1]
	}
	return toks
}

// skipLead drops words that begin a pour and say nothing of it, or that it is
// muddled, where an amount follows.
func (p *pour) skipLead(toks []token) []token {
	rest, muddled := toks, false
	for len(rest) > 1 && rest[0].kind == word && (leadWords[rest[0].text] || strings.HasPrefix(rest[0].text, "muddle") || rest[0].text == "the") {
		muddled = muddled || strings.HasPrefix(rest[0].text, "muddle")
		rest = trimMarks(rest[1:])
	}
	if len(rest) == 0 {
		return toks
	}
	if len(rest) < len(toks) && len(rest) == 2 && strings.HasPrefix(rest[0].text, "egg") && eggs[rest[1].text] {
		p.of = rest // "add egg white"
		return rest
	}
	if len(rest) < len(toks) && !startsAmount(rest) {
		if muddled && !stepLike(rest) {
			p.muddled = true
			return rest
		}
		return toks
	}
	p.muddled = muddled
	return rest
}

// stepLike reports whether words read like a sentence rather than a name.
func stepLike(toks []token) bool {
	for i := range toks {
		switch toks[i].text {
		case "the", "with", "in", "into", "gently", "lightly", "together", "all", "and", "until", "&":
			return true
		}
	}
	return len(toks) > 4
}

// startsAmount reports whether toks start with an amount, whatever its form.
func startsAmount(toks []token) bool {
	var p pour
	_, ok := p.takeAmount(toks)
	return ok || p.fault != nil
}

// takeAmount reads an amount at the start of toks and returns what follows it.
func (p *pour) takeAmount(toks []token) ([]token, bool) {
	i := p.skipLoose(toks, 0)
	if i >= len(toks) {
		return nil, false
	}
	t := &toks[i]
	if t.is("-") && i+1 < len(toks) && toks[i+1].glued && toks[i+1].kind == numeral {
		w := "-" + toks[i+1].text
		p.fault = invalid("amount", w, "%q is below zero; write an amount above zero, such as \"2 oz\"", w)
		return nil, false
	}
	switch {
	case t.kind == numeral:
		if t.wrong != "" {
			p.fault = invalid("amount", t.text, "%q %s", t.text, t.wrong)
			return nil, false
		}
		p.Amount, p.amount = t.value, true
		if t.note != "" {
			p.addNote(t.note)
		}
		p.AmountAt = Span{t.start, t.end}
		p.guessed = t.guessed
		p.figures, p.comma = true, strings.Contains(t.text, ",")
		i++
		if n := p.andAHalf(toks[i:]); n > 0 {
			i += n
		}
		i += p.fractionsOf(toks[i:])
	case t.kind == word:
		n := p.takeWords(toks[i:])
		if n == 0 {
			return nil, false
		}
		p.amount, p.words = true, true
		p.AmountAt = Span{t.start, toks[i+n-1].end}
		i += n
	default:
		return nil, false
	}
	if i < len(toks) && times(&toks[i]) {
		i++ // "2 x"
		if i+1 < len(toks) && toks[i].kind == numeral && toks[i].wrong == "" && toks[i].note == "" && startsUnit(toks[i+1:]) {
			p.Amount *= toks[i].value // "2 x 25 ml"
			p.AmountAt.End = toks[i].end
			i++
		}
	}
	return toks[p.skipLoose(toks, i):], true
}

// skipLoose passes over words such as "about" and "scant" that stand before an
// amount or a unit. Those that change it are noted.
func (p *pour) skipLoose(toks []token, i int) int {
	for i+1 < len(toks) {
		t, next := &toks[i], &toks[i+1]
		if t.kind == word && biasWords[t.text] && next.kind == word && biasWords[next.text] && i+2 < len(toks) && toks[i+2].kind == numeral { // "just under"
			p.addNote("“" + t.text + " " + next.text + "” is not measured: taken as written")
			i += 2
			continue
		}
		if (t.kind == word || t.is("~")) && looseWords[t.text] && (next.kind == numeral || isUnit(next)) {
			i++
			continue
		}
		if t.is(".") && t.glued { // "approx."
			i++
			continue
		}
		if t.kind == word && biasWords[t.text] && (next.kind == numeral || isUnit(next) || unitWordsAt(toks[i+1:])) {
			p.addNote("“" + t.text + "” is not measured: taken as written")
			i++
			continue
		}
		break
	}
	return i
}

// times reports whether a token multiplies: "2 x", "gin x 2 oz".
func times(t *token) bool { return t.text == "x" || t.text == "×" }

func isUnit(t *token) bool {
	_, ok := measure.ParseUnit(t.text)
	return t.kind == word && ok
}

func unitWordsAt(toks []token) bool { _, n := unitAt(toks); return n > 0 }

func (p *pour) addNote(note string) {
	if p.Note != "" {
		p.Note += "; "
	}
	p.Note += note
}

// andAHalf adds "and a half" where it follows, and says how many tokens it takes.
func (p *pour) andAHalf(toks []token) int {
	if len(toks) >= 3 && toks[0].text == "and" && toks[1].text == "a" && fractionWords[toks[2].text] > 0 {
		p.Amount += fractionWords[toks[2].text]
		p.AmountAt.End = toks[2].end
		return 3
	}
	return 0
}

// fractionsOf reads "quarters of an" before a unit, after a number of them, and says
// how many tokens it takes.
func (p *pour) fractionsOf(toks []token) int {
	if len(toks) > 2 && p.Amount < 1 && toks[0].text == "of" && (toks[1].text == "a" || toks[1].text == "an") && startsUnit(toks[2:]) {
		p.AmountAt.End = toks[1].end // "3/4 of an ounce"
		return 2
	}
	if len(toks) < 4 || toks[1].text != "of" || toks[2].text != "a" && toks[2].text != "an" || !startsUnit(toks[3:]) {
		return 0
	}
	f := fractionWords[strings.TrimSuffix(toks[0].text, "s")]
	if f == 0 {
		return 0
	}
	p.Amount *= f
	p.AmountAt.End = toks[2].end
	return 3
}

// takeWords reads an amount in words: "two", "half an", "a", "three quarters of
// an". It returns how many tokens it takes.
func (p *pour) takeWords(toks []token) int {
	at := func(i int) string {
		if i < len(toks) && toks[i].kind == word {
			return toks[i].text
		}
		return ""
	}
	first := at(0)
	switch {
	case first == "a" || first == "an":
		if n, v := countWords(at(1)), numberWords[at(1)]; n && v > 0 {
			p.Amount = v
			return p.said(1+1, at(1), at)
		}
		if f := fractionWords[at(1)]; f > 0 {
			p.Amount = f
			return skipOf(at, 2)
		}
		p.Amount = 1
		return 1
	case fractionWords[first] > 0:
		if at(1) == "and" || len(toks) > 1 && toks[1].is("&") {
			return 0 // half and half
		}
		p.Amount = fractionWords[first]
		return skipOf(at, 1)
	case numberWords[first] > 0:
		p.Amount = numberWords[first]
		next := at(1)
		single := strings.TrimSuffix(next, "s")
		if f := fractionWords[single]; f > 0 && next != "halves" {
			p.Amount *= f
			return skipOf(at, 2)
		}
		if next == "and" && at(2) == "a" && fractionWords[at(3)] > 0 {
			p.Amount += fractionWords[at(3)]
			return 4
		}
		return p.said(1, first, at)
	}
	return 0
}

func countWords(w string) bool { return w == "couple" || w == "few" }

// said notes an amount that is only roughly one, and drops an "of" after it.
func (p *pour) said(n int, w string, at func(int) string) int {
	if countWords(w) {
		p.addNote("“a " + w + "” is taken as " + number(p.Amount))
		if at(n) == "of" {
			n++
		}
	}
	return n
}

// skipOf drops "of a", "an" and the like after half or quarter.
func skipOf(at func(int) string, n int) int {
	if at(n) == "of" && (at(n+1) == "a" || at(n+1) == "an") {
		return n + 2
	}
	if at(n) == "a" || at(n) == "an" {
		return n + 1
	}
	return n
}

// unitAt reads a unit of one or two words at the start of toks, and says how
// many tokens it takes, stops included.
func unitAt(toks []token) (flavor.Unit, int) {
	if len(toks) == 0 || toks[0].kind != word {
		return "", 0
	}
	skip := func(i int) int {
		if i < len(toks) && toks[i].is(".") && toks[i].glued {
			i++
		}
		return i
	}
	one := toks[0].text
	second := skip(1)
	if second < len(toks) && toks[second].kind == word {
		if u, ok := measure.ParseUnit(one + " " + toks[second].text); ok {
			return u, skip(second + 1)
		}
	}
	if u, ok := measure.ParseUnit(one); ok {
		return u, skip(1)
	}
	return "", 0
}
