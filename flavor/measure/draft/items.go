package draft

import (
	"strings"

	"counterpour/flavor/measure"
)

// piece is a stretch of a line between two separators.
type piece struct {
	toks []token
	sep  string // what parts it from the one before; empty at the start
	pour pour
}

// pieces parts the tokens of a line where entries may be parted.
func (r *reader) pieces(toks []token) []piece {
	out := r.cut[:0]
	depth, from, sep := 0, 0, ""
	add := func(to int, next string) {
		if to > from {
			out = append(out, piece{toks: toks[from:to], sep: sep})
			sep = next
		} else if sep == "" || next == ";" {
			sep = next
		}
	}
	for i := range toks {
		t := &toks[i]
		switch {
		case t.is("("):
			depth++
		case t.is(")"):
			depth = max(0, depth-1)
		}
		if depth > 0 || i == 0 {
			continue
		}
		if s, drop := separator(toks, i, from); s != "" {
			add(i, s)
			from = i + drop
		}
	}
	add(len(toks), "")
	r.cut = out
	return out
}

// separator returns what parts entries at toks[i], and how many tokens it
// takes; empty if nothing does.
func separator(toks []token, i, from int) (string, int) {
	t := &toks[i]
	next := func() *token {
		if i+1 < len(toks) {
			return &toks[i+1]
		}
		return &token{kind: mark}
	}()
	switch {
	case t.kind == numeral && i > from:
		return beforeNumeral(toks, i, from), 0
	case t.kind == word && i > from+1 && pourVerbs[t.text] != "" && (next.text == "with" || next.text == "up" || next.text == "off" || lengtheners[next.text]) && named(toks[from:i]) && startsAmount(toks[from:]):
		return "and", 0 // "45 scotch top w/ ginger ale"
	case t.kind == word && i > from+1 && (amountsLast(toks, i, from) || toppedFrom(toks, i, from) || madeFrom(toks, i, from)), t.kind == word && rimFrom(toks, i, from):
		return ";", 0
	case t.kind == word && (t.text == "and" || t.text == "then") && i > from && !servedFrom(toks, i, from):
		if next.kind == numeral && next.wrong == "" || next.kind == word && (stepVerbs[next.text] || methodWord(toks[i+1:])) {
			return "and", 1
		}
		return "", 0
	case t.kind == word && servedFrom(toks, i, from):
		return ";", 0
	case t.kind != mark:
		return "", 0
	}
	if (t.is(",") || t.is(";")) && t.glued && toks[i-1].kind == numeral && next.kind == word && next.glued && startsUnit(toks[i+1:]) {
		return "", 0 // "gin,45,ml"
	}
	switch t.text {
	case ";", "|", "•", ">":
		return ";", 1
	case ",", "+", "=":
		return t.text, 1
	case ":":
		return ":", 1
	case "/":
		before := &toks[i-1]
		if before.kind == word && next.kind == word && t.glued && next.glued && !methodWord(toks[i-1:]) && !startsUnit(toks[i+1:]) && !slashed(toks) {
			return "", 0 // half/half
		}
		return "/", 1
	case "&":
		if next.kind == numeral || next.kind == word && stepVerbs[next.text] {
			return "and", 1
		}
	case "-":
		if !t.glued || i > 0 && toks[i-1].kind == word && next.kind == numeral {
			return "-", 1
		}
	case ".":
		if i+1 < len(toks) && next.is(".") || toks[i-1].is(".") {
			return "-", 1 // dots that lead to an amount
		}
		if !next.glued && sentenceEnds(toks, i, from) {
			return ".", 1
		}
	case "!":
		return ".", 1
	}
	return "", 0
}

// slashed reports whether slashes part the pours of a line.
func slashed(toks []token) bool {
	for i := range toks[1:] {
		if toks[i].is("/") && toks[i+1].kind == numeral {
			return true
		}
	}
	return false
}

// named reports whether tokens after an amount hold a name beside a unit.
func named(toks []token) bool {
	for i := range toks {
		if t := &toks[i]; t.kind == word && !numberLike(t.text) && !isUnit(t) && t.text != "of" && !looseWords[t.text] && !biasWords[t.text] {
			if _, other := measures[t.text]; !other {
				return true
			}
		}
	}
	return false
}

func methodWord(toks []token) bool {
	t, n := termAt([]string{toks[0].text})
	return n > 0 && t.method != ""
}

// sentenceEnds reports whether the stop at i ends a sentence and not an
// abbreviation.
func sentenceEnds(toks []token, i, from int) bool {
	before := &toks[i-1]
	if before.kind == word && measured(before) && i+1 < len(toks) && toks[i+1].kind == word {
		if i > 1 && toks[i-2].kind == numeral {
			if _, n := termAt([]string{toks[i+1].text}); from > 0 && i-2 == from && n > 0 {
				return true // "saline - 4 drops. Shake."
			}
			return !startsAmount(toks[from:]) // "Bourbon 60 ml. Lemon 20 ml."
		}
		if _, n := termAt([]string{toks[i+1].text}); n > 0 || stepVerbs[toks[i+1].text] {
			return true // "2 basil sprigs. Shake."
		}
	}
	if before.kind != word || i+1 >= len(toks) {
		return before.is(")")
	}
	if u, unit := measure.ParseUnit(before.text); (unit || len(before.text) < 3) && !u.After() {
		return len(before.text) >= 3 && toks[i+1].kind == numeral || len(before.text) == 2 && before.text == "up"
	}
	return !abbreviations[before.text]
}

var abbreviations = set(`approx dbl swt syr verm liq bitt btrs gren cinn med lrg lge frsh org abs maras curac jam dem tsp tbsp bsp`)

// beforeNumeral reports whether a new pour starts at a number amid a line, as in
// "60 gin 30 lemon": one has been started and named, and a name follows.
func beforeNumeral(toks []token, i, from int) string {
	if toks[i].wrong == "" && toks[i-1].kind == word && startsUnit(toks[i+1:]) && orders(toks[from:i]) {
		return "and" // "stir 2 oz gin"
	}
	if !startsAmount(toks[from:]) || !named(toks[from:i]) || toks[i].wrong != "" || i+1 >= len(toks) || toks[i-1].kind != word {
		return ""
	}
	if ageWords[toks[i+1].text] || joins[toks[i-1].text] || isUnit(&toks[i-1]) && !endsName(toks[from:i]) || iceOnly(toks[i+1:]) {
		return ""
	}
	if u, n := unitAt(toks[i+1:]); n > 0 && u != "" && i+1+n >= len(toks) {
		return "" // the amount once more, in another unit
	}
	for _, t := range toks[i+1:] {
		if t.kind == word {
			if _, unit := measure.ParseUnit(t.text); !unit {
				if _, other := measures[t.text]; !other {
					return "and"
				}
			}
		}
	}
	return ""
}

// orders reports whether words say how to mix and nothing else.
func orders(toks []token) bool {
	if stepVerbs[toks[0].text] && pouringVerb(toks[0].text) {
		return false
	}
	s := readServing(toks)
	return s.method != "" && len(s.unknown) == 0 && s.conflict == nil
}

// endsName reports whether the words between an amount and its end hold more
// than a unit.
func endsName(toks []token) bool {
	words := 0
	for i := range toks {
		if toks[i].kind == word && !numberLike(toks[i].text) {
			words++
		}
	}
	return words > 1
}

func numberLike(w string) bool {
	return numberWords[w] > 0 || fractionWords[w] > 0 || w == "a" || w == "an"
}

var (
	ageWords = set(`proof year years yr yrs yo old abv percent month months o'clock st nd rd th`)
	joins    = set(`or to and with of over for about approx than in at into from by the plus x around`)
)

// gather joins pieces that make one entry: a name and its amount, an amount in
// two units, a name and what qualifies it.
func (r *reader) gather(in []piece) []piece {
	out := in[:0]
	for i := range in {
		next := in[i]
		next.pour = r.readPour(next.toks)
		if len(out) == 0 {
			out = append(out, next)
			continue
		}
		if i+1 < len(in) && listed(&next) && (in[i+1].sep == "-" || in[i+1].sep == ":") && r.readPour(in[i+1].toks).shape == shapeAmount {
			out = append(out, next) // "gin - 45 ml, saline - 4 drops"
			continue
		}
		last := &out[len(out)-1]
		if joined, ok := r.join(last, &next); ok {
			*last = joined
			continue
		}
		out = append(out, next)
	}
	r.cut = out
	return out
}

// join makes one piece of two, if they are parts of one entry.
func (r *reader) join(a, b *piece) (piece, bool) {
	if b.sep == ";" && !(listed(a) && b.pour.shape == shapeAmount || a.pour.shape == shapeAmount && listed(b)) {
		return piece{}, false
	}
	named := a.pour.shape == shapeName || a.pour.shape == shapeGarnish && a.pour.byNoun || a.pour.shape == shapeImplied && a.pour.noAmount
	switch {
	case named && b.pour.shape == shapeAmount && !b.pour.each,
		a.pour.shape == shapeAmount && !a.pour.each && (b.pour.shape == shapeName || b.pour.shape == shapeImplied && b.pour.noAmount || b.pour.byNoun),
		a.pour.shape == shapeTail && b.pour.shape == shapeName && b.sep == ":",
		b.pour.shape == shapeTail && a.pour.shape != shapeServing && a.pour.shape != shapeNothing:
		return r.both(a, b), true
	case a.pour.shape == shapeAmount && b.pour.shape == shapePour && !a.pour.each && (b.sep == "/" || b.sep == "=" || b.sep == "-"):
		o := a.pour
		b.pour.agree(r, &o)
		toks := append(append([]token(nil), a.toks...), b.toks...)
		b.pour.of = toks
		return piece{toks: toks, sep: a.sep, pour: b.pour}, true
	case a.pour.shape == shapeAmount && b.pour.shape == shapePour && b.sep == "+" && summed(&a.pour) && summed(&b.pour) && a.pour.Unit == b.pour.Unit && a.pour.measure == "" && b.pour.measure == "":
		both := b.pour // "1 oz + 1/2 oz rum"
		both.Amount += a.pour.Amount
		both.AmountAt.Start = a.pour.AmountAt.Start
		both.addNote(oneLine(r.text[both.AmountAt.Start:both.AmountAt.End]) + " read as " + decimals(both.Amount))
		both.of = append(append([]token(nil), a.toks...), b.toks...)
		return piece{toks: both.of, sep: a.sep, pour: both}, true
	case a.pour.shape == shapeServing && b.pour.shape == shapeName && (b.sep == "," || b.sep == "and") && pourSteps[a.toks[0].text]:
		return r.both(a, b), true // "muddle lemon, mint and simple"
	case a.pour.shape == shapePour && a.pour.fault == nil && b.sep == "," && cutTo(b.toks):
		return r.both(a, b), true
	case b.pour.shape != shapeName || b.sep == "." || b.sep == ":" || a.pour.each || a.pour.shape == shapeServing || a.pour.shape == shapeGarnish && !a.pour.byNoun:
		return piece{}, false
	case b.sep == "/" && spacedOut(a, b), b.sep == "+":
		return piece{}, false
	case a.pour.shape == shapePour && a.pour.fault == nil, a.pour.shape == shapeImplied && !a.pour.noAmount, a.pour.shape == shapeName && (b.sep == "," || b.sep == "/"):
		return r.both(a, b), true
	}
	return piece{}, false
}

// summed reports whether a pour states an amount that another can be added to.
func summed(p *pour) bool { return p.fault == nil && !p.each && !p.AmountAt.Empty() }

// cutTo reports whether tokens say how far a syrup is thinned, "cut 2:1", which is
// part of its name and no step.
func cutTo(toks []token) bool {
	return len(toks) > 1 && toks[0].text == "cut" && toks[1].kind == ratio
}

// spacedOut reports whether there is a space at the slash between two pieces.
func spacedOut(a, b *piece) bool {
	return b.toks[0].start-a.toks[len(a.toks)-1].end > 1
}

// both reads two pieces as one entry, with what stands between them.
func (r *reader) both(a, b *piece) piece {
	toks := append([]token(nil), a.toks...)
	if b.sep == "," || b.sep == "/" {
		at := a.toks[len(a.toks)-1].end
		toks = append(toks, token{kind: mark, start: at, end: at + 1, text: b.sep, glued: true})
	}
	toks = append(toks, b.toks...)
	return piece{toks: toks, sep: a.sep, pour: r.readPour(toks)}
}

// spread gives every name of a list its amount: "1 oz each a, b and c", or "a, b
// and c, 1 oz each".
func (r *reader) spread(in []piece) []piece {
	each := -1
	for i := range in {
		if in[i].pour.each {
			each = i
			break
		}
	}
	if each < 0 {
		return in
	}
	from, to := each, each
	if p := &in[each].pour; p.NameAt.Empty() || p.AmountAt.Start < p.NameAt.Start {
		for to+1 < len(in) && listed(&in[to+1]) {
			to++
		}
	}
	if to == each && (in[each].pour.NameAt.Empty() || in[each].pour.AmountAt.Start > in[each].pour.NameAt.Start) {
		for from > 0 && listed(&in[from-1]) {
			from--
		}
	}
	var names [][]token
	amount := in[each].pour
	for i := from; i <= to; i++ {
		toks := in[i].toks
		if i == each {
			toks = amount.nameTokens()
		}
		names = append(names, partNames(toks)...)
	}
	if len(names) == 1 { // "1 each egg white"
		in[each].pour.each = false
		return in
	}
	out := append([]piece(nil), in[:from]...)
	for _, n := range names {
		n = trimMarks(n)
		if len(n) == 0 {
			continue
		}
		q := amount
		q.of, q.each, q.shared, q.shape, q.whole = n, false, true, shapePour, ""
		q.takeNameOnly(r, n)
		q.checkUnit(n)
		out = append(out, piece{toks: n, sep: ";", pour: q})
	}
	return append(out, in[to+1:]...)
}

// listed reports whether a piece may be a name of a list.
func listed(p *piece) bool {
	s := p.pour.shape
	return s == shapeName || s == shapeImplied && p.pour.noAmount || s == shapeGarnish && p.pour.byNoun
}

// nameTokens are the tokens of the name.
func (p *pour) nameTokens() []token {
	var out []token
	for _, t := range p.of {
		if t.start >= p.NameAt.Start && t.end <= p.NameAt.End {
			out = append(out, t)
		}
	}
	return out
}

// partNames parts names at "and", "&", plus signs and slashes, but for what is
// half and half.
func partNames(toks []token) [][]token {
	var out [][]token
	from := 0
	for i := range toks {
		t := &toks[i]
		sign := t.is("&") || t.is("+") || t.is("/") || t.is(",")
		if i == 0 || !(t.kind == word && t.text == "and" || sign) || toks[i-1].text == "half" {
			continue
		}
		out = append(out, toks[from:i])
		from = i + 1
	}
	return append(out, toks[from:])
}

// header reads a label before a colon at the start of a line, and returns what
// follows it.
func header(toks []token) (label, []token) {
	var words []string
	for i := range toks {
		switch {
		case toks[i].kind == word && i < 3:
			words = append(words, toks[i].text)
		case toks[i].is(":") && i > 0:
			if l := labels[strings.Join(words, " ")]; l != noLabel {
				return l, toks[i+1:]
			}
			return noLabel, toks
		default:
			return noLabel, toks
		}
	}
	return noLabel, toks
}
