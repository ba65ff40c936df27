package entry

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
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
	if p.garnishAsked() || p.cutThin(toks) || p.words && p.Unit == "" && len(toks) == 1 && laid.Nut(toks[0].Text) { // "a hazelnut"
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

// ThinCut reports whether words are a number and such a cut, which is laid on the drink.
func ThinCut(toks []token.Token) bool {
	last := len(toks) - 1
	return last > 1 && toks[0].Kind == token.Numeral && thinCuts.Has(toks[last].Text) && peeled.Has(toks[last-1].Text)
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
