package entry

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/pouring"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// readAfterAmount reads unit, name and what follows them.
func (p *Written) readAfterAmount(text string, toks []token.Token) {
	if p.countsMaking(toks) {
		p.Shape, p.Stated = ShapeServing, false
		return
	}
	toks = p.takeUnit(toks)
	if serving.IceOnly(toks) { // "200 g crushed ice"
		p.Shape, p.Stated = ShapeServing, false
		return
	}
	toks = p.takeJoint(text, toks)
	if p.Each && allBelow(toks) {
		toks = nil
	}
	toks = p.takeEnd(text, toks)
	if p.garnishAsked() || p.cutThin(toks) {
		p.Shape = ShapeGarnish
		return
	}
	p.takeName(text, toks)
	if p.Name == "" {
		p.Shape = ShapeAmount
		return
	}
	p.Shape = ShapePour
	p.checkGlued(text, TrimMarks(toks)[0])
	p.CheckUnit(toks)
}

// countsMaking reports whether an amount, with what follows it, is how hot or how long something is
// done, how much ice there is, or how often: "30 sec stir", "one cube", "one lift with a barspoon".
func (p *Written) countsMaking(toks []token.Token) bool {
	if p.asTemperature(toks) || timesMaking(toks) {
		return true
	}
	if i := slices.IndexFunc(p.Of, func(t token.Token) bool { return t.Start >= p.AmountAt.End }); i >= 0 && (serving.IceOnly(p.Of[i:]) || p.words && serving.IceOnly(p.Of)) {
		return true
	}
	return p.words && len(toks) > 0 && serving.Times(toks[0].Text) && !times(&toks[0])
}

// cutThin reports whether a name ends in a thin cut of a fruit that nobody muddles: "1 lime disc".
func (p *Written) cutThin(toks []token.Token) bool {
	last := len(toks) - 1
	return last > 0 && p.Unit == "" && thinCuts.Has(toks[last].Text) && peeled.Has(toks[last-1].Text) && !p.Muddled
}

// checkGlued refuses an amount that runs into what is nearly a unit, or holds a figure: "50mll gin".
func (p *Written) checkGlued(text string, first token.Token) {
	if p.Unit != "" || !p.gluedName() || p.Fault != nil {
		return
	}
	near := measure.NearestUnits(first.Text)
	if len(near) == 0 && !strings.ContainsAny(first.Text, "0123456789") {
		return
	}
	w := text[p.AmountAt.Start:first.End]
	p.Fault = measure.Invalid("unit", w, "%q ends in no unit known here; write the amount, a space and one of %s", w, flavor.JoinOr(measure.Names(measure.Units())))
	p.Fault.Suggest = near
}

// belowWords speak of a list that follows: "20 ml each of the following".
var belowWords = vocabulary.Words(`of the following these those ingredients below all`)

// allBelow reports whether words speak of the list that follows and name nothing.
func allBelow(toks []token.Token) bool {
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Mark && !belowWords.Has(t.Text) })
}

// gluedName reports whether an amount without a unit runs into a name: "20th".
func (p *Written) gluedName() bool {
	return p.UnitAt.Empty() && !p.AmountAt.Empty() && p.NameAt.Start == p.AmountAt.End
}

// timesMaking reports whether what follows a number says how long something is done, "30 sec
// stir", and pours nothing.
func timesMaking(toks []token.Token) bool {
	if len(toks) < 2 || toks[0].Kind != token.Word || !serving.DegreeWords[toks[0].Text] {
		return false
	}
	s := serving.Read(toks[1:])
	return s.Method != "" && len(s.Unknown) == 0 && s.Conflict == nil
}

// asTemperature reports whether an amount is degrees.
func (p *Written) asTemperature(toks []token.Token) bool {
	if len(toks) != 1 || toks[0].Kind != token.Word || !serving.DegreeWords[toks[0].Text] {
		return false
	}
	if _, unit := measure.ParseUnit(toks[0].Text); unit || strings.HasPrefix(toks[0].Text, "s") || strings.HasPrefix(toks[0].Text, "m") {
		return false
	}
	_, hot := serving.Temperature([]token.Token{{Value: p.Amount}, toks[0]})
	return hot
}

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
	if m, ok := measureAt(toks); ok {
		p.Unit, p.Measure = m.unit, toks[0].Text
		p.Amount *= m.Stated
		if m.note != "" {
			p.AddNote(m.note)
		}
		p.UnitAt = Span{toks[0].Start, toks[0].End}
		return toks[1:]
	}
	u, n := UnitAt(toks)
	if n == 0 {
		return toks
	}
	p.Unit, p.UnitAt = u, Span{toks[0].Start, toks[n-1].End}
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

// closing returns the index of the bracket that closes toks[0], below 0 if none
// does.
func closing(toks []token.Token) int {
	for i := range toks {
		if toks[i].Is(")") {
			return i
		}
	}
	return -1
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
	if p.Unit == flavor.PartUnit && o.Unit != flavor.PartUnit && p.Measure == "" { // "equal parts (22.5 ml)"
		p.Amount, p.Unit = o.Amount, o.Unit
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

// takeName takes the name, and a counted unit at its end, as in "mint leaves".
func (p *Written) takeName(text string, toks []token.Token) {
	toks = TrimMarks(toks)
	if len(toks) == 0 {
		return
	}
	if p.Unit == "" && p.Stated {
		toks = p.takeTrailingUnit(toks)
	}
	p.NameAt = Span{toks[0].Start, toks[len(toks)-1].End}
	p.Name = nameOf(text, toks)
}

// nameOf returns the text of the tokens of a name, without what was taken out amid it.
func nameOf(text string, toks []token.Token) string {
	var parts []string
	from := 0
	for i := 1; i <= len(toks); i++ {
		if i < len(toks) && !strings.ContainsFunc(text[toks[i-1].End:max(toks[i-1].End, toks[i].Start)], unicode.IsLetter) {
			continue
		}
		parts = append(parts, token.OneLine(text[toks[from].Start:toks[i-1].End]))
		from = i
	}
	return strings.Join(parts, " ")
}

// thinCuts are slices by another word; of the fruits in peeled they are cut from the
// peel, and laid on the drink.
var (
	thinCuts = vocabulary.Words(`coin coins disc discs disk disks round rounds ring rings`)
	peeled   = vocabulary.Words(`lime orange lemon grapefruit peel zest citrus`)
)

// handled are words for what is done to leaves and slices before they go in.
var handled = vocabulary.Words(`torn clapped slapped bruised spanked crushed muddled fresh washed picked chopped sliced halved peeled large small`)

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

// equalWords say what is equal.
var equalWords = vocabulary.Words(`parts part pts measures amounts`)

// equalParts reads "equal parts a, b and c".
func (p *Written) equalParts(text string, toks []token.Token) bool {
	if len(toks) > 1 && toks[0].Text == "all" && toks[1].Text == "equal" {
		toks = toks[1:]
	}
	if len(toks) < 2 || toks[0].Text != "equal" {
		return false
	}
	p.Amount, p.Unit, p.Stated, p.Each = 1, flavor.PartUnit, true, true
	p.AmountAt = Span{toks[0].Start, toks[0].End}
	if equalWords.Has(toks[1].Text) {
		p.AmountAt.End = toks[1].End
		toks = toks[1:]
	}
	p.UnitAt = Span{toks[0].Start, toks[0].End}
	rest := toks[1:]
	for len(rest) > 0 && rest[0].Kind == token.Mark && !rest[0].Is("(") {
		rest = rest[1:]
	}
	if len(rest) > 3 && rest[0].Is("(") && isNumber(&rest[1]) && rest[2].Is(")") { // "equal parts (30) gin, ..."
		p.Amount, p.Unit, p.AmountAt, p.UnitAt, p.Figures = rest[1].Value, "", Span{rest[1].Start, rest[1].End}, Span{}, true
		p.takeName(text, p.takeTails(text, rest[3:]))
		p.Shape = ShapePour
		return true
	}
	p.readAfterAmount(text, p.takeEqual(rest))
	return true
}

// takeEqual takes the amount that equal parts have, "all equal, 25 ml: ...", "equal parts 25 each -
// gin, ...", and returns what follows it.
func (p *Written) takeEqual(rest []token.Token) []token.Token {
	if len(rest) > 1 && startsMeasure(rest) {
		p.Unit, p.UnitAt = "", Span{}
		rest, _ = p.takeAmount(rest)
	}
	if len(rest) > 1 && isNumber(&rest[0]) && (rest[1].Text == "each" || rest[1].Text == "ea") {
		p.Unit, p.UnitAt = "", Span{}
		rest, _ = p.takeAmount(rest)
		rest = rest[1:]
	}
	return rest
}

// isNumber reports whether a token is a number that can be read.
func isNumber(t *token.Token) bool { return t.Kind == token.Numeral && t.Wrong == "" }

// vague are measures that say nothing beside an amount: "shot of gin (25 ml)".
var vague = vocabulary.Words(`shot measure jigger glass pour slug glug tot nip single double part`)

// withoutHandful drops "big handful of" before a name whose amount is counted.
func withoutHandful(name []token.Token) []token.Token {
	rest := name
	for len(rest) > 1 && token.BiasWords[rest[0].Text] {
		rest = rest[1:]
	}
	if len(rest) > 1 && (rest[0].Text == "single" || rest[0].Text == "double" || rest[0].Text == "half" && rest[1].Kind == token.Word && rest[1].Text != "and" && rest[1].Text != "half") && rest[1].Text != "malt" && rest[1].Text != "cream" && rest[1].Text != "of" { // "single gin (25)"
		return rest[1:]
	}
	if len(rest) < 2 || rest[0].Text != "handful" && rest[0].Text != "bunch" && !(len(rest) > 2 && rest[1].Text == "of" && vague.Has(rest[0].Text)) {
		return name
	}
	if rest = rest[1:]; len(rest) > 1 && rest[0].Text == "of" {
		rest = rest[1:]
	}
	return rest
}

// madeSo reports whether a name begins with how the thing was made, such as
// "blended Scotch", and is no step.
func madeSo(name []token.Token) bool {
	return len(name) > 1 && strings.HasSuffix(name[0].Text, "ed") && name[1].Kind == token.Word && !token.Joins[name[1].Text]
}

// TakeNameOnly takes a name that leads its pour, and a verb before it.
func (p *Written) TakeNameOnly(text string, toks []token.Token) {
	for len(toks) > 1 && toks[0].Kind == token.Word && (PouringVerb(toks[0].Text) || toks[0].Text == "with" || toks[0].Text == "of") {
		p.After = p.After || pouring.AfterVerb(toks[0].Text)
		toks = toks[1:]
	}
	p.NameAt = Span{toks[0].Start, toks[len(toks)-1].End}
	p.Name = token.OneLine(text[p.NameAt.Start:p.NameAt.End])
}

// PouringVerb reports whether a word before a pour says that it is poured.
func PouringVerb(w string) bool { return leadWords.Has(w) || w == "muddle" || pouring.AfterVerb(w) }

// wordsAmount reports whether toks are an amount in words and a unit: "two oz".
func (p *Written) wordsAmount(toks []token.Token) bool {
	if token.NumberWords[toks[0].Text] == 0 && token.FractionWords[toks[0].Text] == 0 || len(toks) < 2 {
		return false
	}
	return UnitWordsAt(toks[1:])
}
