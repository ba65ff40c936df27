package entry

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Amounts that stand behind a name, amid it, or in brackets beside a vessel.

// amountLast reads an amount after the name: "gin 60", "gin - 2 oz", "gin (60
// ml)", "gin ..... 60 ml".
func (p *Written) amountLast(text string, toks []token.Token) bool {
	if len(toks) > 0 && toks[0].Start > toks[len(toks)-1].Start { // of a row whose amount is told
		return false
	}
	if open := remarkBehind(toks); open > 0 {
		return p.remarkedLast(text, toks, open)
	}
	end := len(toks)
	if end > 0 && toks[end-1].Is(")") {
		if open := token.Opening(toks); open > 1 && p.bracketedLast(text, toks, open) {
			return true
		}
		end--
	}
	at := p.lastAmount(toks[:end])
	if at <= 0 {
		return false
	}
	q := Written{Of: p.Of}
	if !q.wholeAmount(toks[at:end]) {
		return false
	}
	name := withoutLeads(toks[:at])
	if len(name) == 0 || serving.StepVerbs[name[0].Text] && !PouringVerb(name[0].Text) && !(madeSo(name) && (q.Unit == "" || q.Unit.Jigger())) {
		return false
	}
	if rest := p.takeEnd(text, name); len(rest) > 0 {
		name = rest // "red wine float 1/2 oz"
	}
	q.goesOn(p)
	if q.Unit == "" && !strings.Contains(toks[at].Text, "/") && name[0].Start < toks[at].End { // in a row the amount may stand before
		q.Whole = token.OneLine(text[name[0].Start:toks[at].End])
	}
	name = q.unitBefore(withoutHandful(name))
	fixed := q.Unit
	q.TakeNameOnly(text, name)
	q.Unit = fixed
	*p = q
	if p.garnishAsked() {
		p.Shape = ShapeGarnish
		return true
	}
	p.Shape = ShapePour
	p.CheckUnit(name)
	return true
}

// remarkBehind returns where brackets open at the end of a pour that hold no amount, or how it is
// cut; 0 if none do.
func remarkBehind(toks []token.Token) int {
	last := len(toks) - 1
	if last <= 2 || !toks[last].Is(")") {
		return 0
	}
	open := token.Opening(toks)
	if open <= 1 || !pouring.CutVerb(toks[open+1].Text) && slices.ContainsFunc(toks[open:], func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return 0
	}
	return open
}

// remarkedLast reads an amount after the name, with a remark behind it in brackets that open at
// that token.
func (p *Written) remarkedLast(text string, toks []token.Token, open int) bool {
	if !p.amountLast(text, toks[:open]) {
		return false
	}
	if remark := toks[open:]; pouring.CutVerb(remark[1].Text) {
		p.Cut = true
	} else if p.Shape == ShapePour { // what stands in brackets is told with the name
		p.Name += " " + token.OneLine(text[remark[0].Start:remark[len(remark)-1].End])
	}
	return true
}

// bracketedLast reads an amount after the name whose vessel or whose other measure stands in
// brackets behind it: "tonic 1 bottle (200)", "bourbon 50 ml (1 2/3 oz)".
func (p *Written) bracketedLast(text string, toks []token.Token, open int) bool {
	if q := (Written{Of: p.Of}); open > 2 && q.vesselLast(text, toks, open) {
		*p = q
		return true
	}
	if q := (Written{Of: p.Of}); q.amountLast(text, toks[:open]) && q.Stated && q.otherMeasure(text, toks[open+1:len(toks)-1]) {
		*p = q
		return true
	}
	return false
}

// lastAmount returns where the last amount of some tokens begins; 0 if there is none behind a name,
// or it is a price.
func (p *Written) lastAmount(toks []token.Token) int {
	for at := len(toks) - 1; at > 0; at-- {
		if toks[at].Kind != token.Numeral && !(toks[at].Kind == token.Word && p.wordsAmount(toks[at:])) {
			continue
		}
		if before := &toks[at-1]; toks[at].Wrong != "" || gauge.ServedIn(toks, at) || before.Is("£") || before.Is("$") || before.Is("€") {
			return 0
		}
		return at
	}
	return 0
}

// wholeAmount reads tokens that are an amount, perhaps with its unit and "each", and nothing else.
func (p *Written) wholeAmount(toks []token.Token) bool {
	rest, ok := p.takeAmount(toks)
	if !ok {
		return false
	}
	rest = p.takeUnit(rest)
	if len(rest) > 0 && (rest[0].Text == "each" || rest[0].Text == "ea") {
		p.Each = true
		rest = rest[1:]
	}
	return len(TrimMarks(rest)) == 0
}

// withoutLeads returns a name without what leads from it to the amount behind it: signs, "about",
// "a".
func withoutLeads(name []token.Token) []token.Token {
	for n := len(name) - 1; n >= 0; n-- {
		t := &name[n]
		leads := t.Kind == token.Mark && !t.Is(")") || token.LooseWords[t.Text] || n > 0 && (t.Text == "a" || t.Text == "an") || times(t)
		if !leads {
			return name[:n+1]
		}
	}
	return nil
}

// goesOn takes over what was read before the name and behind it.
func (p *Written) goesOn(from *Written) {
	p.After, p.Muddled, p.Squeezed, p.Each = from.After, from.Muddled, from.Squeezed, from.Each || p.Each
	p.Remark, p.refuse, p.Cut, p.Behind = from.Remark, from.refuse, from.Cut, from.Behind
	p.Beside.Merge(&from.Beside, true)
	if p.Unit == "" && from.Unit != "" { // "soda 60 top"
		p.After = true
	}
}

// unitBefore takes the unit of an amount from the end of the name before it, "aromatic drops 3",
// and returns the name without it.
func (p *Written) unitBefore(name []token.Token) []token.Token {
	n := len(name) - 1
	if p.Unit != "" || n < 1 {
		return name
	}
	u, ok := measure.ParseUnit(name[n].Text)
	if !ok || u != flavor.Drop && u != flavor.Dash && !u.Spoon() {
		return name
	}
	p.Unit, p.UnitAt = u, Span{name[n].Start, name[n].End}
	return name[:n]
}

// measuredCount reads a count with its measure in brackets behind it, "juice of half a lemon
// (20 ml)", "white of 1 egg (about 1 oz)": the measure says more exactly how much is poured.
func (p *Written) measuredCount(text string, toks []token.Token) bool {
	last := len(toks) - 1
	if last < 4 || !toks[last].Is(")") {
		return false
	}
	open := token.Opening(toks)
	if open < 2 {
		return false
	}
	inside := toks[open+1 : last]
	for len(inside) > 1 && token.LooseWords[inside[0].Text] {
		inside = inside[1:]
	}
	var o Written
	rest, ok := o.takeAmount(inside)
	if !ok || o.Fault != nil {
		return false
	}
	if rest = o.takeUnit(rest); len(rest) > 0 || !o.Unit.Jigger() {
		return false
	}
	head := Read(text, toks[:open])
	if head.Shape != ShapePour && head.Shape != ShapeImplied || head.Fault != nil || head.Unit != flavor.Piece && !head.Squeezed {
		return false
	}
	of := p.Of
	*p = head
	p.Of, p.Shape, p.Stated, p.NoAmount, p.Times = of, ShapePour, true, false, 0
	p.Amount, p.Unit, p.AmountAt, p.UnitAt, p.Figures = o.Amount, o.Unit, o.AmountAt, o.UnitAt, o.Figures
	return true
}

// mostBehind is the most words behind an amount that say which bottle is meant.
const mostBehind = 3

// amountAmid reads an amount between a kind and which of it: "rum 50 gold", "gin 2 oz
// London dry". The name is written with a comma, as a list of stock has it.
func (p *Written) amountAmid(text string, toks []token.Token) bool {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
	if at < 1 || toks[at].Wrong != "" || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Mark }) ||
		serving.StepVerbs[toks[0].Text] || saysMethod(toks[0].Text) || laid.Verb(toks[0].Text) || token.Joins[toks[at-1].Text] || token.LooseWords[toks[at-1].Text] {
		return false
	}
	q := Written{Of: p.Of}
	behind, ok := q.takeAmount(toks[at:])
	if !ok {
		return false
	}
	if len(behind) > 1 || q.Unit == "" {
		behind = q.takeUnit(behind)
	}
	if len(behind) == 0 || len(behind) > mostBehind || q.Unit != "" && !q.Unit.Jigger() || slices.ContainsFunc(behind, func(t token.Token) bool {
		return t.Kind != token.Word || serving.DegreeWords[t.Text] || laid.Word(t.Text) || serving.OtherMeasures[t.Text]
	}) {
		return false
	}
	warm := len(behind) == 1 && serving.Warmth(behind[0].Text) != "" // "black tea 120 ml hot"
	if !warm && saysServing(behind) {
		return false
	}
	name := toks[:at]
	q.NameAt = Span{name[0].Start, name[len(name)-1].End}
	q.Name = token.OneLine(text[q.NameAt.Start:q.NameAt.End])
	if !warm {
		q.Name += ", " + token.OneLine(text[behind[0].Start:behind[len(behind)-1].End])
	}
	q.Shape, q.Amid = ShapePour, true
	*p = q
	return true
}

// saysMethod reports whether a word is one for a method.
func saysMethod(w string) bool {
	t, n := serving.TermAt([]string{w})
	return n > 0 && t.Method != ""
}

// saysServing reports whether tokens say how a drink is made or served.
func saysServing(toks []token.Token) bool {
	s := serving.Read(toks)
	return len(s.Unknown) == 0 && s.States()
}

// vesselLast reads a name with a vessel behind it whose size stands in the brackets that
// open there.
func (p *Written) vesselLast(text string, toks []token.Token, open int) bool {
	at := open - 1
	for at > 0 && toks[at].Kind == token.Word && (isVessel(toks[at].Text) || token.BiasWords[toks[at].Text]) {
		at--
	}
	if at < 1 || at+1 == open || toks[at].Kind != token.Numeral {
		return false
	}
	rest, ok := p.takeAmount(toks[at:])
	if !ok {
		return false
	}
	if rest, ok = p.sized(rest); !ok || len(rest) > 0 {
		return false
	}
	p.takeName(text, toks[:at])
	p.Shape = ShapePour
	return p.Name != ""
}

// isVessel reports whether a word is a measure whose size may stand beside it.
func isVessel(w string) bool { return serving.OtherMeasures[w] || gauge.Own(w) != "" }

// sized reads a vessel whose size is stated: "1 bottle (75 cl)", "2 cans of 330 ml".
func (p *Written) sized(toks []token.Token) ([]token.Token, bool) {
	if len(toks) < 4 || !isVessel(toks[0].Text) {
		return nil, false
	}
	from, end := 1, len(toks)
	if toks[1].Is("(") {
		from, end = 2, 1+closing(toks[1:])
	} else if toks[1].Text == "of" || toks[1].Text == "à" {
		from = 2
	} else {
		return nil, false
	}
	if end < from || from >= len(toks) {
		return nil, false
	}
	var o Written
	rest, ok := o.takeAmount(toks[from:end])
	if !ok || o.Fault != nil {
		return nil, false
	}
	u, n := UnitAt(rest)
	if n == 0 && len(rest) == 0 && toks[1].Is("(") && o.Amount >= leastVessel { // "1 small bottle (125)"
		u = flavor.Millilitre
	} else if n == 0 || !u.Jigger() || toks[1].Is("(") && n < len(rest) {
		return nil, false
	}
	if p.Measure = toks[0].Text; gauge.Own(p.Measure) != "" {
		p.Many, o.Unit = p.Amount, u
		p.sizeOwn(&o)
	} else {
		p.AddNote("a " + strings.TrimSuffix(p.Measure, "s") + " is taken as " + measure.FormatAmount(o.Amount, u))
		p.Amount, p.Unit = p.Amount*o.Amount, u
	}
	p.UnitAt = Span{toks[0].Start, toks[end-1].End}
	if n > 0 {
		p.UnitAt.End = rest[n-1].End
	}
	if toks[1].Is("(") {
		return toks[end+1:], true
	}
	return rest[n:], true
}

// leastVessel is the smallest number that may be the millilitres of a bottle or a can.
const leastVessel = 50

// PourBefore returns where the pour starts that tokens end with, and where its name does,
// which is their end if it has none yet; below 0 if they end with no pour.
func PourBefore(toks []token.Token) (start, name int) {
	for start = len(toks) - 1; start >= 0; start-- {
		if toks[start].Kind == token.Mark {
			return -1, 0
		}
		if toks[start].Kind != token.Numeral {
			continue
		}
		if n := AmountAt(toks[start:]); n > 0 {
			return start, start + n
		}
		return -1, 0
	}
	return -1, 0
}
