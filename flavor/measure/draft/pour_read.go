package draft

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// readAfterAmount reads unit, name and what follows them.
func (p *pour) readAfterAmount(r *reader, toks []token) {
	if c, ok := p.asTemperature(toks); ok {
		r.said.hotC, p.shape, p.amount = c, shapeServing, false
		return
	}
	if i := slices.IndexFunc(p.of, func(t token) bool { return t.start >= p.AmountAt.End }); i >= 0 && iceOnly(p.of[i:]) {
		p.shape, p.amount = shapeServing, false
		return
	}
	toks = p.takeUnit(toks)
	toks = p.takeJoint(r, toks)
	toks = p.takeTails(r, toks)
	if p.garnishAsked() {
		p.shape = shapeGarnish
		return
	}
	p.takeName(r, toks)
	if p.Name == "" {
		p.shape = shapeAmount
		return
	}
	p.shape = shapePour
	if first := trimMarks(toks)[0]; p.Unit == "" && p.gluedName() && p.fault == nil &&
		(len(measure.NearestUnits(first.text)) > 0 || strings.ContainsAny(first.text, "0123456789")) {
		w := r.text[p.AmountAt.Start:first.end]
		p.fault = invalid("unit", w, "%q ends in no unit known here; write the amount, a space and one of %s", w, flavor.JoinOr(names(measure.Units())))
		p.fault.Suggest = measure.NearestUnits(first.text)
	}
	p.checkUnit(toks)
}

// gluedName reports whether an amount without a unit runs into a name: "20th".
func (p *pour) gluedName() bool {
	return p.UnitAt.Empty() && !p.AmountAt.Empty() && p.NameAt.Start == p.AmountAt.End
}

// asTemperature reports whether an amount is degrees.
func (p *pour) asTemperature(toks []token) (float64, bool) {
	if len(toks) == 0 || toks[0].kind != word || !degreeWords[toks[0].text] || len(toks) > 1 {
		return 0, false
	}
	if _, unit := measure.ParseUnit(toks[0].text); unit || strings.HasPrefix(toks[0].text, "s") || strings.HasPrefix(toks[0].text, "m") {
		return 0, false
	}
	return temperature([]token{{value: p.Amount}, toks[0]})
}

// takeUnit reads the unit after an amount.
func (p *pour) takeUnit(toks []token) []token {
	for len(toks) > 0 && (toks[0].is(".") || toks[0].is(":") || toks[0].is("?") || (toks[0].is(",") || toks[0].is(";") || toks[0].is("-") && startsUnit(toks[1:])) && toks[0].glued) {
		if toks[0].is("?") {
			p.addNote("“?” is passed over")
		}
		toks = toks[1:]
	}
	if len(toks) == 0 {
		return toks
	}
	if m, ok := measures[toks[0].text]; ok && toks[0].kind == word {
		p.Unit, p.measure = m.unit, toks[0].text
		p.Amount *= m.amount
		if m.note != "" {
			p.addNote(m.note)
		}
		p.UnitAt = Span{toks[0].start, toks[0].end}
		return toks[1:]
	}
	u, n := unitAt(toks)
	if n == 0 {
		return toks
	}
	p.Unit, p.UnitAt = u, Span{toks[0].start, toks[n-1].end}
	if u == flavor.Piece && (toks[0].text == "each" || toks[0].text == "ea") {
		p.Unit = flavor.Piece
	}
	return toks[n:]
}

// takeJoint passes over what joins a unit and a name: "of", "each", another
// measure of the same pour, "float of".
func (p *pour) takeJoint(r *reader, toks []token) []token {
	for len(toks) > 0 {
		t := &toks[0]
		switch {
		case t.text == "of" || p.Unit != "" && (t.text == "de" || t.text == "di") && len(toks) > 1 || t.is(":") || t.is("-") || t.is(",") || t.is("."):
			toks = toks[1:]
		case t.text == "each" || t.text == "ea":
			p.each = true
			toks = toks[1:]
		case t.is("("):
			end := closing(toks)
			if end < 0 || !p.otherMeasure(r, toks[1:end]) {
				return toks
			}
			toks = toks[end+1:]
		case (t.text == "float" || t.text == "top" || t.text == "rinse") && len(toks) > 1 && p.Unit != "":
			p.After = true
			toks = toks[1:]
		case (t.text == "muddled") && len(toks) > 1:
			p.muddled = true
			toks = toks[1:]
		default:
			return toks
		}
	}
	return toks
}

// closing returns the index of the bracket that closes toks[0], below 0 if none
// does.
func closing(toks []token) int {
	for i := range toks {
		if toks[i].is(")") {
			return i
		}
	}
	return -1
}

// otherMeasure reports whether toks state the same amount in another unit, as in
// "2 oz (60 ml)". One that differs is a fault.
func (p *pour) otherMeasure(r *reader, toks []token) bool {
	var o pour
	rest, ok := o.takeAmount(toks)
	if !ok {
		return false
	}
	rest = o.takeUnit(rest)
	if len(rest) > 0 || o.Unit == "" {
		return false
	}
	p.agree(r, &o)
	return true
}

// agreement is how far two measures of one pour may lie apart: an ounce is 30
// mL behind most bars.
const agreement = 0.12

// agree checks another measure of the same pour.
func (p *pour) agree(r *reader, o *pour) {
	if p.Unit == flavor.PartUnit && o.Unit != flavor.PartUnit && p.measure == "" { // "equal parts (22.5 ml)"
		p.Amount, p.Unit = o.Amount, o.Unit
		return
	}
	a, okA := measure.MLPerUnit(p.Unit, nil)
	b, okB := measure.MLPerUnit(o.Unit, nil)
	if !okA || !okB {
		return
	}
	if x, y := a*p.Amount, b*o.Amount; math.Abs(x-y) > agreement*max(x, y) {
		w := r.text[p.AmountAt.Start:max(p.AmountAt.End, p.UnitAt.End)]
		p.fault = invalid("amount", w, "%q and %q are not the same amount; keep one", w, r.text[o.AmountAt.Start:max(o.AmountAt.End, o.UnitAt.End)])
	}
}

// takeTails takes the words after a name that say how it goes in.
func (p *pour) takeTails(r *reader, toks []token) []token {
	for len(toks) > 0 {
		last := len(toks) - 1
		if toks[last].is(",") || toks[last].is(".") || toks[last].is("-") || toks[last].is(":") || toks[last].is("!") || last > 1 && toks[last].is("&") {
			toks = toks[:last]
			continue
		}
		if toks[last].is(")") {
			open := opening(toks)
			if open < 0 {
				return toks
			}
			inside := toks[open+1 : last]
			if n, t := tailAt(inside); n > 0 && n == len(inside) {
				p.apply(t)
				toks = toks[:open]
				continue
			}
			if p.amount && p.otherMeasure(r, inside) {
				toks = toks[:open]
				continue
			}
			return toks
		}
		if n := cutAt(toks); n > 0 {
			p.cut = true
			toks = toks[:len(toks)-n]
			continue
		}
		if n := vesselAt(toks); n > 0 {
			s := readServing(toks[len(toks)-n:])
			r.said.merge(&s, true)
			toks = toks[:len(toks)-n]
			continue
		}
		n, t := tailAt(toks)
		if n == 0 || n == len(toks) && !(t.garnish || t.each) {
			return toks
		}
		if t.garnish && len(toks) > n && toks[len(toks)-n-1].text == "bitters" {
			t = tail{unit: flavor.Top, after: true} // "bitters to garnish"
		}
		p.apply(t)
		toks = toks[:len(toks)-n]
	}
	return toks
}

func (p *pour) apply(t tail) {
	p.After = p.After || t.after
	p.muddled = p.muddled || t.muddled
	p.squeezed = p.squeezed || t.squeezed
	p.each = p.each || t.each
	p.refuse = p.refuse || t.refuse
	if t.garnish {
		p.remark = "garnish"
	}
	if t.remark != "" {
		p.addNote(t.remark)
	}
	if t.unit != "" && !p.amount && p.Unit == "" {
		p.Unit = t.unit
	}
}

func (p *pour) garnishAsked() bool { return p.remark == "garnish" }

func opening(toks []token) int {
	for i := len(toks) - 2; i >= 0; i-- {
		if toks[i].is("(") {
			return i
		}
	}
	return -1
}

// tailAt returns the longest tail at the end of toks.
func tailAt(toks []token) (int, tail) {
	best, found := 0, tail{}
	for i := range tails {
		w := tails[i].words
		if len(w) <= best || len(w) > len(toks) || toks[len(toks)-1].text != w[len(w)-1] {
			continue
		}
		if slices.EqualFunc(w, toks[len(toks)-len(w):], func(a string, t token) bool { return t.kind == word && t.text == a }) {
			best, found = len(w), tails[i].tail
		}
	}
	return best, found
}

// takeName takes the name, and a counted unit at its end, as in "mint leaves".
func (p *pour) takeName(r *reader, toks []token) {
	toks = trimMarks(toks)
	if len(toks) == 0 {
		return
	}
	if p.Unit == "" && p.amount {
		toks = p.takeTrailingUnit(toks)
	}
	p.NameAt = Span{toks[0].start, toks[len(toks)-1].end}
	p.Name = oneLine(r.text[p.NameAt.Start:p.NameAt.End])
}

// takeTrailingUnit reads a counted unit, or a part of a fruit, at the end.
func (p *pour) takeTrailingUnit(toks []token) []token {
	last := len(toks) - 1
	if last == 0 || toks[last].kind != word {
		return toks
	}
	if u, ok := measure.ParseUnit(toks[last].text); ok && u.Counted() {
		p.Unit, p.UnitAt = u, Span{toks[last].start, toks[last].end}
		return toks[:last]
	}
	if share := partsOfFruit[toks[last].text]; share > 0 {
		p.Unit, p.UnitAt, p.times = flavor.Piece, Span{toks[last].start, toks[last].end}, share
		p.addNote("“" + toks[last].text + "” is taken as " + measure.FormatAmount(share, "") + " of one")
		return toks[:last]
	}
	return toks
}

// checkUnit finds what is wrong between an amount and a name.
func (p *pour) checkUnit(name []token) {
	name = trimMarks(name)
	switch {
	case p.fault != nil || len(name) == 0:
	case p.Unit == "" && name[0].kind == word && otherMeasures[name[0].text] && len(name) > 1:
		w := name[0].text
		p.fault = invalid("unit", w, "%q is no unit of the bar; write the amount in oz, ml or cl", w)
		p.fault.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre)}
	case p.refuse:
		p.fault = invalid("amount", p.Name, "%q states no amount; write one, such as \"1 dash\"", p.Name)
	case name[0].kind == numeral && startsUnit(name[1:]):
		w := number(p.Amount) + " " + name[0].text
		p.fault = invalid("amount", w, "%q is two amounts; keep one", w)
	case name[0].kind == mark && !name[0].is("(") && !name[0].is("\"") && !name[0].is("'") || name[0].kind == percent && len(name) == 1:
		p.fault = invalid("amount", p.Name, "%q cannot be read; write an amount, a space, the unit and the name", p.Name)
	case utf8.RuneCountInString(p.Name) > MaxLine:
		p.fault = invalid("", string([]rune(p.Name)[:40]), "the name is longer than %d characters; write one pour a line", MaxLine)
	}
}

func startsUnit(toks []token) bool { _, n := unitAt(toks); return n > 0 }

// iceOnly reports whether toks name ice and nothing else.
func iceOnly(toks []token) bool {
	ice := false
	words := make([]string, 0, 6)
	for i := range toks {
		if toks[i].kind == word {
			words = append(words, toks[i].text)
		}
	}
	for i := 0; i < len(words); {
		t, n := termAt(words[i:min(len(words), i+longestTerm)])
		switch {
		case n > 0 && t.ice:
			ice = true
			i += n
		case fillers[words[i]] || otherMeasures[words[i]] || biasWords[words[i]] || words[i] == "scoop" || words[i] == "little" || words[i] == "some" || words[i] == "clear" || words[i] == "fresh":
			i++
		default:
			return false
		}
	}
	return ice
}

// unitFirst reads a unit before its amount: "oz 2 gin".
func (p *pour) unitFirst(r *reader, toks []token) bool {
	u, n := unitAt(toks)
	if n == 0 || n >= len(toks) || toks[n].kind != numeral || toks[n].wrong != "" || u.After() { // "float .5 rum" floats half of what the draft is poured in
		return false
	}
	p.Unit, p.UnitAt = u, Span{toks[0].start, toks[n-1].end}
	rest, ok := p.takeAmount(toks[n:])
	if !ok || len(rest) == 0 {
		*p = pour{of: p.of}
		return false
	}
	p.readAfterAmount(r, rest)
	return true
}

// equalParts reads "equal parts a, b and c".
func (p *pour) equalParts(r *reader, toks []token) bool {
	if len(toks) < 2 || toks[0].text != "equal" || toks[1].text != "parts" && toks[1].text != "part" {
		return false
	}
	p.Amount, p.Unit, p.amount, p.each = 1, flavor.PartUnit, true, true
	p.AmountAt = Span{toks[0].start, toks[1].end}
	p.UnitAt = Span{toks[1].start, toks[1].end}
	p.readAfterAmount(r, toks[2:])
	return true
}

// amountLast reads an amount after the name: "gin 60", "gin - 2 oz", "gin (60
// ml)", "gin ..... 60 ml".
func (p *pour) amountLast(r *reader, toks []token) bool {
	if last := len(toks) - 1; last > 2 && toks[last].is(")") {
		if open := opening(toks); open > 1 && (cutVerbs[toks[open+1].text] || !slices.ContainsFunc(toks[open:], func(t token) bool { return t.kind == numeral })) {
			remark := toks[open:]
			if !p.amountLast(r, toks[:open]) {
				return false
			}
			if cutVerbs[remark[1].text] {
				p.cut = true
			} else if p.shape == shapePour { // what stands in brackets is told with the name
				p.Name += " " + oneLine(r.text[remark[0].start:remark[len(remark)-1].end])
			}
			return true
		}
	}
	end := len(toks)
	if end > 0 && toks[end-1].is(")") {
		end--
	}
	at := -1
	for i := end - 1; i > 0; i-- {
		if toks[i].kind == numeral || toks[i].kind == word && p.wordsAmount(toks[i:end]) {
			at = i
			break
		}
	}
	if at <= 0 || toks[at].wrong != "" || toks[at-1].is("£") || toks[at-1].is("$") || toks[at-1].is("€") {
		return false
	}
	q := pour{of: p.of}
	rest, ok := q.takeAmount(toks[at:end])
	if !ok {
		return false
	}
	rest = q.takeUnit(rest)
	if len(rest) > 0 && (rest[0].text == "each" || rest[0].text == "ea") {
		q.each = true
		rest = rest[1:]
	}
	if len(trimMarks(rest)) > 0 {
		return false
	}
	name := toks[:at]
	for len(name) > 0 && (name[len(name)-1].kind == mark && !name[len(name)-1].is(")") || looseWords[name[len(name)-1].text] || times(&name[len(name)-1])) {
		name = name[:len(name)-1]
	}
	if len(name) == 0 || stepVerbs[name[0].text] && !pouringVerb(name[0].text) && !(madeSo(name) && (q.Unit == "" || q.Unit.Jigger())) {
		return false
	}
	if rest := p.takeTails(r, name); len(rest) > 0 {
		name = rest // "red wine float 1/2 oz"
	}
	q.After, q.muddled, q.squeezed, q.each = p.After, p.muddled, p.squeezed, p.each || q.each
	q.remark, q.refuse = p.remark, p.refuse
	if q.Unit == "" && p.Unit != "" { // "soda 60 top"
		q.After = true
	}
	if q.Unit == "" {
		q.whole = oneLine(r.text[name[0].start:toks[at].end])
	}
	name = withoutHandful(name)
	fixed := q.Unit
	q.takeNameOnly(r, name)
	q.Unit = fixed
	*p = q
	if p.garnishAsked() {
		p.shape = shapeGarnish
		return true
	}
	p.shape = shapePour
	p.checkUnit(name)
	return true
}

// withoutHandful drops "big handful of" before a name whose amount is counted.
func withoutHandful(name []token) []token {
	rest := name
	for len(rest) > 1 && biasWords[rest[0].text] {
		rest = rest[1:]
	}
	if len(rest) < 2 || rest[0].text != "handful" && rest[0].text != "bunch" {
		return name
	}
	if rest = rest[1:]; len(rest) > 1 && rest[0].text == "of" {
		rest = rest[1:]
	}
	return rest
}

// madeSo reports whether a name begins with how the thing was made, such as
// "blended Scotch", and is no step.
func madeSo(name []token) bool {
	return len(name) > 1 && strings.HasSuffix(name[0].text, "ed") && name[1].kind == word && !joins[name[1].text]
}

// takeNameOnly takes a name that leads its pour, and a verb before it.
func (p *pour) takeNameOnly(r *reader, toks []token) {
	for len(toks) > 1 && toks[0].kind == word && (pouringVerb(toks[0].text) || toks[0].text == "with" || toks[0].text == "of") {
		p.After = p.After || pouredAfterVerb(toks[0].text)
		toks = toks[1:]
	}
	p.NameAt = Span{toks[0].start, toks[len(toks)-1].end}
	p.Name = oneLine(r.text[p.NameAt.Start:p.NameAt.End])
}

func pouringVerb(w string) bool { return leadWords[w] || w == "muddle" || pouredAfterVerb(w) }

func pouredAfterVerb(w string) bool {
	return w == "top" || w == "float" || w == "rinse" || w == "fill" || w == "spritz" || w == "layer" || w == "topped"
}

// wordsAmount reports whether toks are an amount in words and a unit: "two oz".
func (p *pour) wordsAmount(toks []token) bool {
	if numberWords[toks[0].text] == 0 && fractionWords[toks[0].text] == 0 || len(toks) < 2 {
		return false
	}
	return startsUnit(toks[1:])
}
