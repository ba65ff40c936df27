package entry

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Shape is what a stretch of a line looks like before anybody knows the
// ingredients.
type Shape uint8

const (
	ShapeNothing Shape = iota
	ShapeName          // words that may be an ingredient
	ShapeAmount        // an amount without a name
	ShapePour          // an amount and a name
	ShapeImplied       // a name whose amount goes without saying: "top soda", "egg white"
	ShapeTail          // words that belong to the pour before: "to top", "muddled"
	ShapeServing
	ShapeGarnish
	ShapeRim
)

// Written is a pour in the making.
type Written struct {
	Line
	Shape  Shape
	Stated bool // one is written
	words  bool // the amount is written in words
	Each   bool // stands for every name that follows
	Of     []token.Token
	Fault  *flavor.DataFault
	Remark string
	refuse bool
	Beside serving.Said // what it says of the glass
	// ByNoun is true of a garnish that is one only by its last word.
	ByNoun bool
}

// Read reads the tokens of one entry as a pour, as far as it is one.
func Read(text string, toks []token.Token) Written {
	p := Written{Of: toks}
	toks = TrimMarks(toks)
	if len(toks) == 0 {
		return p
	}
	toks = begun(toks)
	if p.rim(toks) || p.garnish(toks) || p.placesIn(toks) || p.juiced(text, toks) || p.measuredCount(text, toks) {
		return p
	}
	if intoGlass(toks) || Portioned(toks) || measuredIce(toks) {
		p.Shape = ShapeServing
		return p
	}
	toks = bare(toks)
	rest := p.skipLead(toks)
	if len(rest) > 2 && rest[0].Text == "a" && (rest[1].Text == "squeeze" || rest[1].Text == "squirt") && rest[2].Text == "of" {
		rest = rest[1:] // "a squeeze of lime"
	}
	if len(rest) > 1 && (rest[0].Text == "all" || rest[0].Text == "each" || rest[0].Text == "ea") && startsMeasure(rest[1:]) {
		p.Each, rest = true, rest[1:]
	}
	after, stated := p.takeAmount(rest)
	if !stated && p.Fault == nil {
		p.Fault = noNumber(rest)
	}
	switch {
	case stated:
		if q := (Written{Of: p.Of}); q.strengthFirst(text, toks, rest, after) {
			return q
		}
		if p.squeezes(text, after) {
			return p
		}
		p.readAfterAmount(text, after)
	case p.Fault != nil:
		p.Shape = ShapePour
	case p.unitFirst(text, rest) || p.equalParts(text, rest) || p.fromFruit(text, rest) || p.pouredOn(text, rest):
	default:
		name := p.takeTails(text, rest)
		if !p.amountLast(text, name) && !p.amountAmid(text, name) {
			p.readWithoutAmount(text, name)
		}
	}
	p.decorates(rest)
	return p
}

// leastOfName is the least number that belongs to the name of a bottle before it: an age or a strength.
const leastOfName = 4

// strengthFirst reads an entry whose first number, with after behind it, belongs to the name, and the
// amount with its unit stands behind that: "151 rum 1 oz". What is poured by the ounce belongs to none:
// "½ dry 2 dashes" are two pours.
func (p *Written) strengthFirst(text string, toks, rest, after []token.Token) bool {
	if first := &rest[0]; first.Kind == token.Numeral && (first.Value < leastOfName || first.Value != math.Trunc(first.Value)) {
		return false
	}
	return !UnitWordsAt(after) && !toks[len(toks)-1].Is(")") && p.amountLast(text, p.takeTails(text, rest)) && p.Unit != ""
}

// startsMeasure reports whether toks start with a number and its unit.
func startsMeasure(toks []token.Token) bool {
	return toks[0].Kind == token.Numeral && toks[0].Wrong == "" && UnitWordsAt(toks[1:])
}

// bare takes an amount that leads out of its brackets: "(2 oz) gin".
func bare(toks []token.Token) []token.Token {
	end := -1
	if toks[0].Is("(") {
		end = closing(toks)
	}
	if end == 2 && strings.HasPrefix(toks[1].Text, "opt") && len(toks) > 3 {
		return toks[3:] // "(opt) 1 egg white"
	}
	if end < 2 || end+1 == len(toks) || toks[1].Kind != token.Numeral || end > 2 && !UnitWordsAt(toks[2:end]) {
		return toks
	}
	return append(append([]token.Token(nil), toks[1:end]...), toks[end+1:]...)
}

// noNumber refuses what a computer writes for an amount that is none.
func noNumber(toks []token.Token) *flavor.DataFault {
	for len(toks) > 0 && (toks[0].Is("+") || toks[0].Is("-")) {
		toks = toks[1:]
	}
	if len(toks) < 2 || toks[0].Text != "nan" && toks[0].Text != "inf" && toks[0].Text != "infinity" || !UnitWordsAt(toks[1:]) {
		return nil
	}
	return measure.Invalid("amount", toks[0].Text, "%q is not an amount; write a number, such as \"2 oz\"", toks[0].Text)
}

// TrimMarks drops marks at both ends, but for brackets and stops that mean
// something.
func TrimMarks(toks []token.Token) []token.Token {
	for len(toks) > 0 && toks[0].Kind == token.Mark && !toks[0].Is("(") && !toks[0].Is("~") && !(toks[0].Is("-") && len(toks) > 1 && toks[1].Glued && toks[1].Kind == token.Numeral) {
		toks = toks[1:]
	}
	for len(toks) > 0 {
		last := &toks[len(toks)-1]
		if last.Kind != token.Mark || last.Is(")") {
			break
		}
		toks = toks[:len(toks)-1]
	}
	return toks
}

// placeVerbs begin what tells where an amount goes, and placeWords stand between.
var (
	placeVerbs = vocabulary.Words(`pour put add place tip build in into to measure get take start begin drop squeeze`)
	placeWords = vocabulary.Words(`in into to your the a an tin tins shaker glass mixing large small cocktail goes go comes with we you`)
)

// mostPlace is the most words that tell where an amount goes.
const mostPlace = 7

// placed returns how many words tell where a pour goes that states its amount and its unit behind
// them: "pour in 60 ml gin", "into a shaker go 40 ml vodka". It is 0 if none do.
func placed(toks []token.Token) int {
	if toks[0].Kind != token.Word || !placeVerbs.Has(toks[0].Text) {
		return 0
	}
	n := 1
	for n < len(toks) && n <= mostPlace && toks[n].Kind == token.Word && placeWords.Has(toks[n].Text) {
		n++
	}
	if n > 1 && n+2 < len(toks) && toks[n].Kind == token.Numeral && StartsMeasure(toks[n:]) {
		return n
	}
	return 0
}

// skipLead drops words that begin a pour and say nothing of it, or that it is
// muddled, where an amount follows.
func (p *Written) skipLead(toks []token.Token) []token.Token {
	if n := placed(toks); n > 0 {
		return toks[n:]
	}
	rest, muddled := toks, false
	if len(rest) > 2 && leadRoles.Has(rest[0].Text) && rest[1].Kind == token.Numeral && rest[1].Wrong == "" && rest[len(rest)-1].Kind != token.Numeral && len(rest)-1 > AmountAt(rest[1:]) { // "base 2 blanco"
		rest = rest[1:]
	}
	for len(rest) > 1 && rest[0].Kind == token.Word && (leadWords.Has(rest[0].Text) || strings.HasPrefix(rest[0].Text, "muddle") || rest[0].Text == "the") {
		muddled = muddled || strings.HasPrefix(rest[0].Text, "muddle")
		rest = TrimMarks(rest[1:])
	}
	if len(rest) == 0 {
		return toks
	}
	if len(rest) < len(toks) && len(rest) == 2 && strings.HasPrefix(rest[0].Text, "egg") && eggs.Has(rest[1].Text) {
		p.Of = rest // "add egg white"
		return rest
	}
	if len(rest) < len(toks) && !StartsAmount(rest) {
		if muddled && !stepLike(rest) {
			p.Muddled = true
			return rest
		}
		return toks
	}
	p.Muddled = muddled
	return rest
}

// stepLike reports whether words read like a sentence rather than a name.
func stepLike(toks []token.Token) bool {
	for i := range toks {
		switch toks[i].Text {
		case "the", "with", "in", "into", "gently", "lightly", "together", "all", "and", "until", "&":
			return true
		}
	}
	return len(toks) > 4
}

// StartsAmount reports whether toks start with an amount, whatever its form.
func StartsAmount(toks []token.Token) bool {
	if len(toks) > 0 && toks[0].Kind == token.Numeral {
		return true // as nearly always, and asked of each word of a line
	}
	var p Written
	_, ok := p.takeAmount(toks)
	return ok || p.Fault != nil
}

// StartsMeasure reports whether toks start with an amount, in figures or words, and its
// unit.
func StartsMeasure(toks []token.Token) bool {
	var p Written
	rest, ok := p.takeAmount(toks)
	return ok && p.Fault == nil && (UnitWordsAt(rest) || len(rest) > 0 && rest[0].Kind == token.Word && gauge.Measures[rest[0].Text].Stated > 0)
}

// AmountAt returns how many tokens an amount takes with its unit and an "of" behind it,
// 0 if toks start with none.
func AmountAt(toks []token.Token) int {
	var p Written
	rest, ok := p.takeAmount(toks)
	if !ok || p.Fault != nil {
		return 0
	}
	if rest = p.takeUnit(rest); len(rest) > 0 && rest[0].Text == "of" {
		rest = rest[1:]
	}
	return len(toks) - len(rest)
}

// AmountOf returns the amount that toks start with, without its unit, and how many tokens
// it takes, 0 if they start with none.
func AmountOf(toks []token.Token) (value float64, n int) {
	var p Written
	rest, ok := p.takeAmount(toks)
	if !ok || p.Fault != nil {
		return 0, 0
	}
	return p.Amount, len(toks) - len(rest)
}

// IsUnit reports whether a token is a word for a unit.
func IsUnit(t *token.Token) bool {
	_, ok := measure.ParseUnit(t.Text)
	return t.Kind == token.Word && ok
}

// UnitWordsAt reports whether tokens start with a unit.
func UnitWordsAt(toks []token.Token) bool { _, n := UnitAt(toks); return n > 0 }

// UnitIn reports whether tokens hold a number with its unit.
func UnitIn(toks []token.Token) bool {
	for i := range toks[:len(toks)-1] {
		if toks[i].Kind == token.Numeral && UnitWordsAt(toks[i+1:]) {
			return true
		}
	}
	return false
}

// AddNote adds to what was assumed in reading a pour.
func (p *Written) AddNote(note string) {
	if p.Note != "" {
		p.Note += "; "
	}
	p.Note += note
}

// UnitAt reads a unit of one or two words at the start of toks, and says how
// many tokens it takes, stops included.
func UnitAt(toks []token.Token) (flavor.Unit, int) {
	if len(toks) == 0 || toks[0].Kind != token.Word {
		return "", 0
	}
	skip := func(i int) int {
		if i < len(toks) && toks[i].Is(".") && toks[i].Glued {
			i++
		}
		return i
	}
	one := toks[0].Text
	second := skip(1)
	if second < len(toks) && toks[second].Kind == token.Word && measure.BeginsLongUnit(one) {
		if third := skip(second + 1); third < len(toks) && toks[third].Kind == token.Word { // "cuillère à café"
			if u, ok := measure.ParseUnit(one + " " + toks[second].Text + " " + toks[third].Text); ok {
				return u, skip(third + 1)
			}
		}
		if u, ok := measure.ParseUnit(one + " " + toks[second].Text); ok {
			return u, skip(second + 1)
		}
	}
	if u, ok := measure.ParseUnit(one); ok {
		return u, skip(1)
	}
	return "", 0
}

// CheckAmount returns a fault if nobody pours that much or that little.
func CheckAmount(amount float64, u flavor.Unit, written string) *flavor.DataFault {
	return measure.CheckAmount(amount, u, strings.TrimSpace(written))
}

// mostBare is the largest number without a unit that may be millilitres of one
// pour; common practice.
const mostBare = 1000.0

// Mostly is the unit by which the size of an amount is checked before the names
// are known: a bare number may be millilitres.
func (p *Written) Mostly() flavor.Unit {
	if p.Unit == "" && p.Amount <= mostBare {
		return flavor.Millilitre
	}
	return p.Unit
}

// NameTokens are the tokens of the name.
func (p *Written) NameTokens() []token.Token {
	var out []token.Token
	for _, t := range p.Of {
		if t.Start >= p.NameAt.Start && t.End <= p.NameAt.End {
			out = append(out, t)
		}
	}
	return out
}

// PartNames parts names at "and", "&", plus signs and slashes, but for what is
// half and half.
func PartNames(toks []token.Token) [][]token.Token {
	var out [][]token.Token
	from := 0
	for i := range toks {
		t := &toks[i]
		sign := t.Is("&") || t.Is("+") || t.Is("/") || t.Is(",") || t.Is("|") || t.Is(";")
		if i == 0 || !(t.Kind == token.Word && t.Text == "and" || sign) || toks[i-1].Text == "half" {
			continue
		}
		out = append(out, toks[from:i])
		from = i + 1
	}
	return append(out, toks[from:])
}

// States reports whether a stretch of the first line is a pour and no part of a
// name.
func (p *Written) States(text string) bool {
	if p.Shape != ShapePour && !(p.Shape == ShapeAmount && p.Unit != "" && !p.words) {
		return p.Fault != nil && p.Shape == ShapePour
	}
	if p.Fault != nil {
		return !p.words && !p.gluedName()
	}
	written := text[p.AmountAt.Start:p.AmountAt.End]
	switch {
	case p.words && (written == "a" || written == "A" || strings.EqualFold(written, "an")):
		return p.Unit != "" && !p.UnitAt.Empty() && !p.Unit.Counted()
	case !p.UnitAt.Empty() && p.UnitAt.Start < p.NameAt.Start:
		return true
	case p.Unit == "" && p.Amount > mostBare:
		return false
	}
	return !p.gluedName()
}
