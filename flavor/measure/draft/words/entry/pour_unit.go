package entry

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// The unit of a pour: behind its amount, behind its name, in one word with another, or missing.

// takeUnit reads the unit after an amount.
func (p *Written) takeUnit(toks []token.Token) []token.Token {
	for len(toks) > 0 && (toks[0].Is(".") || toks[0].Is(":") || toks[0].Is("?") || (toks[0].Is(",") || toks[0].Is(";") || toks[0].Is("-") && UnitWordsAt(toks[1:])) && toks[0].Glued) {
		if toks[0].Is("?") {
			p.AddNote("“?” is skipped")
		}
		toks = toks[1:]
	}
	if len(toks) == 0 {
		return toks
	}
	if rest, ok := p.sized(toks); ok {
		return rest
	}
	if m, ok := gauge.At(toks); ok {
		p.Unit, p.Measure = m.Unit, toks[0].Text
		if gauge.Own(p.Measure) != "" {
			p.Many = p.Amount
		}
		p.Amount *= m.Stated
		if m.Note != "" {
			p.AddNote(m.Note)
		}
		p.UnitAt = Span{toks[0].Start, toks[0].End}
		return toks[1:]
	}
	u, n := UnitAt(toks)
	if n == 0 {
		return toks
	}
	p.Unit, p.UnitAt = u, Span{toks[0].Start, toks[n-1].End}
	p.Pt = toks[0].Text == "pt" || toks[0].Text == "pts"
	if n < len(toks) {
		n += p.andAHalf(toks[n:]) // "an ounce and a half of gin"
	}
	if u == flavor.Piece && (toks[0].Text == "each" || toks[0].Text == "ea") {
		p.Unit = flavor.Piece
	}
	return toks[n:]
}

// takeJoint passes over what joins a unit and a name: "of", "each", another
// measure of the same pour, "float of".
func (p *Written) takeJoint(text string, toks []token.Token) []token.Token {
	for len(toks) > 0 {
		t := &toks[0]
		switch {
		case t.Text == "of" || (t.Text == "de" || t.Text == "di") && len(toks) > 1 || t.Is(":") || t.Is("-") || t.Is(",") || t.Is("."):
			toks = toks[1:]
		case t.Text == "each" || t.Text == "ea":
			p.Each = true
			toks = toks[1:]
		case t.Is("("):
			end := closing(toks)
			if end < 0 || !p.otherMeasure(text, toks[1:end]) {
				return toks
			}
			toks = toks[end+1:]
		case (t.Text == "float" || t.Text == "top" || t.Text == "rinse") && len(toks) > 1 && p.Unit != "":
			p.After = true
			toks = toks[1:]
		case (t.Text == "muddled") && len(toks) > 1:
			p.Muddled = true
			toks = toks[1:]
		default:
			return toks
		}
	}
	return toks
}

// otherMeasure reports whether toks state the same amount in another unit, as in
// "2 oz (60 ml)". One that differs is a fault.
func (p *Written) otherMeasure(text string, toks []token.Token) bool {
	var o Written
	rest, ok := o.takeAmount(toks)
	if !ok {
		return false
	}
	rest = o.takeUnit(rest)
	if p.Many > 0 && o.Unit.Jigger() && len(rest) == 1 && perOne.Has(rest[0].Text) {
		p.holdEach(&o)
		return true
	}
	if len(rest) > 0 || o.Unit == "" {
		return false
	}
	p.Agree(text, &o)
	return true
}

// agreement is how far two measures of one pour may lie apart: an ounce is 30
// mL behind most bars.
const agreement = 0.12

// dosed is the same where one of the two is a dash, a drop or a barspoon: these are shaken and
// scooped by hand, and "1 dash (1 ml)" is how cards write them. Common practice, no source.
const dosed = 0.4

// apartBy is how far two measures of one pour may lie apart, as a share of the greater.
func apartBy(u, v flavor.Unit) float64 {
	for _, w := range []flavor.Unit{u, v} {
		if w == flavor.Dash || w == flavor.Drop || w == flavor.Barspoon {
			return dosed
		}
	}
	return agreement
}

// Agree checks another measure of the same pour.
func (p *Written) Agree(text string, o *Written) {
	if p.Many > 0 && o.Unit.Jigger() { // "2 measures gin (50 ml)"
		p.sizeOwn(o)
		return
	}
	if p.Unit == flavor.PartUnit && o.Unit != flavor.PartUnit && p.Measure == "" { // "equal parts (22.5 ml)"
		p.Parts, p.Amount, p.Unit = p.Amount, o.Amount, o.Unit
		return
	}
	if p.Unit == "" && p.Stated && o.Unit.Jigger() { // "1 lager (330 ml)"
		p.Amount, p.Unit, p.AmountAt, p.UnitAt = o.Amount, o.Unit, o.AmountAt, o.UnitAt
		return
	}
	a, okA := measure.MLPerUnit(p.Unit, nil)
	b, okB := measure.MLPerUnit(o.Unit, nil)
	if !okA || !okB {
		return
	}
	if x, y := a*p.Amount, b*o.Amount; math.Abs(x-y) > apartBy(p.Unit, o.Unit)*max(x, y) {
		w := text[p.AmountAt.Start:max(p.AmountAt.End, p.UnitAt.End)]
		p.Fault = measure.Invalid("amount", w, "%q and %q are not the same amount; keep one", w, text[o.AmountAt.Start:max(o.AmountAt.End, o.UnitAt.End)])
	}
}

// takeTrailingUnit reads a counted unit, or a part of a fruit, at the end.
func (p *Written) takeTrailingUnit(toks []token.Token) []token.Token {
	if n := len(toks) - 2; n > 1 && toks[n].Is(",") && handled.Has(toks[n+1].Text) { // "2 basil leaves, torn"
		if rest := p.takeTrailingUnit(toks[:n]); len(rest) < n {
			return rest
		}
	}
	last := len(toks) - 1
	if rest, ok := p.takeCompound(toks); ok {
		return rest
	}
	if last == 0 || toks[last].Kind != token.Word {
		return toks
	}
	if u, ok := measure.ParseUnit(toks[last].Text); ok && u.Counted() {
		p.Unit, p.UnitAt = u, Span{toks[last].Start, toks[last].End}
		return toks[:last]
	}
	if thinCuts.Has(toks[last].Text) && !peeled.Has(toks[last-1].Text) { // "2 jalapeño coins"
		p.Unit, p.UnitAt = flavor.Slice, Span{toks[last].Start, toks[last].End}
		return toks[:last]
	}
	if share := partsOfFruit[toks[last].Text]; share > 0 {
		p.Unit, p.UnitAt, p.Times = flavor.Piece, Span{toks[last].Start, toks[last].End}, share
		p.AddNote("“" + toks[last].Text + "” is taken as " + measure.FormatAmount(share, "") + " of one")
		return toks[:last]
	}
	return toks
}

// compounds end words that are put together of a fruit or a herb and a part of it, by the
// unit that the part is and its share of one: "Limettenviertel", "muntblaadjes".
var compounds = []struct {
	end   string
	unit  flavor.Unit
	share float64
}{
	{"viertel", flavor.Piece, 0.25}, {"achtel", flavor.Piece, 0.125},
	{"scheiben", flavor.Slice, 0}, {"scheibe", flavor.Slice, 0}, {"schijfjes", flavor.Slice, 0}, {"schijfje", flavor.Slice, 0}, {"plakjes", flavor.Slice, 0}, {"skivor", flavor.Slice, 0}, {"skiver", flavor.Slice, 0},
	{"spalten", flavor.Wedge, 0}, {"spalte", flavor.Wedge, 0}, {"partjes", flavor.Wedge, 0}, {"partje", flavor.Wedge, 0}, {"klyftor", flavor.Wedge, 0},
	{"blätter", flavor.Leaf, 0}, {"blatt", flavor.Leaf, 0}, {"blaadjes", flavor.Leaf, 0}, {"blad", flavor.Leaf, 0},
	{"zweige", flavor.Sprig, 0}, {"zweig", flavor.Sprig, 0}, {"takjes", flavor.Sprig, 0}, {"takje", flavor.Sprig, 0}, {"kvist", flavor.Sprig, 0},
}

// leastOfCompound is the letters of the first part of such a word.
const leastOfCompound = 4

// takeCompound reads the part at the end of a word that is put together.
func (p *Written) takeCompound(toks []token.Token) ([]token.Token, bool) {
	last := len(toks) - 1
	if toks[last].Kind != token.Word {
		return toks, false
	}
	for _, c := range compounds {
		first, ok := strings.CutSuffix(toks[last].Text, c.end)
		if !ok || len(first) < leastOfCompound {
			continue
		}
		whole := toks[last]
		rest := slices.Clone(toks)
		rest[last].Text, rest[last].End = first, whole.End-len(c.end)
		p.Unit, p.UnitAt = c.unit, Span{rest[last].End, whole.End}
		if p.Times = c.share; c.share > 0 {
			p.AddNote("“" + whole.Text + "” is taken as " + measure.FormatAmount(c.share, "") + " of one")
		}
		return rest, true
	}
	return toks, false
}

// CheckUnit finds what is wrong between an amount and a name.
func (p *Written) CheckUnit(name []token.Token) {
	name = TrimMarks(name)
	switch {
	case p.Fault != nil || len(name) == 0:
	case p.Unit == "" && name[0].Kind == token.Word && serving.OtherMeasures[name[0].Text] && len(name) > 1:
		w := name[0].Text
		p.Fault = measure.Invalid("unit", w, "%q is no unit of the bar; write the amount in oz, ml or cl", w)
		p.Fault.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre)}
	case p.refuse:
		p.Fault = measure.Invalid("amount", p.Name, "%q states no amount; write one, such as \"1 dash\"", p.Name)
	case name[0].Kind == token.Numeral && UnitWordsAt(name[1:]):
		w := token.Number(p.Amount) + " " + name[0].Text
		p.Fault = measure.Invalid("amount", w, "%q is two amounts; keep one", w)
	case name[0].Kind == token.Mark && !name[0].Is("(") && !name[0].Is("\"") && !name[0].Is("'") || name[0].Kind == token.Percent && len(name) == 1:
		p.Fault = measure.Invalid("amount", p.Name, "%q cannot be read; write an amount, a space, the unit and the name", p.Name)
	case utf8.RuneCountInString(p.Name) > MostName:
		p.Fault = measure.Invalid("", string([]rune(p.Name)[:40]), "the name is longer than %d characters; write one pour a line", MostName)
	}
}

// measuredIce reports whether words name ice with its amount behind it: "ice 12 oz", "crushed
// ice - 1 cup".
func measuredIce(toks []token.Token) bool {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
	if at < 1 || toks[at].Wrong != "" || !serving.IceOnly(toks[:at]) {
		return false
	}
	rest := toks[at+1:]
	if _, n := UnitAt(rest); n > 0 {
		rest = rest[n:]
	}
	rest = TrimMarks(rest)
	return len(rest) == 0 || len(rest) == 1 && (serving.OtherMeasures[rest[0].Text] || strings.HasPrefix(rest[0].Text, "scoop"))
}

// unitFirst reads a unit before its amount: "oz 2 gin".
func (p *Written) unitFirst(text string, toks []token.Token) bool {
	u, n := UnitAt(toks)
	if n == 0 || n >= len(toks) || toks[n].Kind != token.Numeral || toks[n].Wrong != "" || u.After() { // "float .5 rum" floats half of what the draft is poured in
		return false
	}
	p.Unit, p.UnitAt = u, Span{toks[0].Start, toks[n-1].End}
	rest, ok := p.takeAmount(toks[n:])
	if !ok || len(rest) == 0 {
		*p = Written{Of: p.Of}
		return false
	}
	p.readAfterAmount(text, rest)
	return true
}

// vague are measures that say nothing beside an amount: "shot of gin (25 ml)".
var vague = vocabulary.Words(`shot measure jigger glass pour slug glug tot nip single double part`)

// measureAlone reads a measure that bars name without a number for one of it: "jigger rye".
func (p *Written) measureAlone(text string, toks []token.Token) bool {
	if !gauge.Alone(toks) || serving.IceOnly(toks) {
		return false
	}
	p.Amount, p.Shape = 1, ShapeImplied
	p.takeName(text, p.takeJoint(text, p.takeUnit(toks)))
	return true
}
