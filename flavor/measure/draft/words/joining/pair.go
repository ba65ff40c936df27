package joining

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// pair is a piece of a line and the one behind it, which may be parts of one entry.
type pair struct {
	text    string
	a, b    *Piece
	alone   bool // nothing else stands on their line
	slashes int  // that part the entries of the line
}

// joined makes one piece of two, if they are parts of one entry. The first rule that holds
// decides.
func (p *pair) joined() (Piece, bool) {
	if p.b.Sep == parting.Soaked || p.rolesBehind() {
		return Piece{}, false
	}
	if p.b.Sep == ">" {
		if out, ok := p.pointed(); ok {
			return out, true
		}
	}
	if p.kindInCell() {
		return p.closer(p.a.Pour, p.a.Pour.Name+", "+written(p.text, p.b)), true
	}
	if p.parted() {
		return Piece{}, false
	}
	if out, ok := p.completed(); ok {
		return out, true
	}
	if out, ok := p.named(); ok {
		return out, true
	}
	if out, ok := p.summed(); ok {
		return out, true
	}
	if p.lists() {
		return p.both(), true
	}
	return p.extended()
}

// rolesBehind reports whether the second piece is a column that says what the pour before it is in
// its drink.
func (p *pair) rolesBehind() bool {
	return p.b.Sep == "," && columnRoles[p.b.Role()] && p.a.is(entry.ShapePour) && p.a.amountLast()
}

// kindInCell reports whether the second piece is a cell that says which of its kind the pour before
// it is: "tequila | 50 ml | blanco".
func (p *pair) kindInCell() bool {
	return p.b.Sep == ";" && p.b.Listed() && p.b.Role() == "" && p.a.pours() && p.a.amountLast() && p.piped()
}

// piped reports whether an upright stroke stands between the pieces.
func (p *pair) piped() bool {
	return strings.HasSuffix(strings.TrimRight(p.text[:p.b.Toks[0].Start], " \t"), "|")
}

// parted reports whether a sign stands between the pieces that parts all but a name from its amount.
func (p *pair) parted() bool {
	if p.b.Sep != ";" && p.b.Sep != ">" {
		return false
	}
	return !(p.a.Listed() && p.b.is(entry.ShapeAmount) || p.a.is(entry.ShapeAmount) && p.b.Listed())
}

// pointed joins what an arrow points at with what stands before it.
func (p *pair) pointed() (Piece, bool) {
	if p.b.is(entry.ShapeTail) && p.a.Listed() {
		return p.both(), true // "soda -> top"
	}
	if !spacedOut(p.a, p.b) {
		return Piece{}, false
	}
	return p.changed()
}

// changed takes what an arrow points at for what stands before it: "lemon -> lime 3/4
// oz", "3/4 oz lemon -> lime", "gin 2 oz -> 1.5 oz".
func (p *pair) changed() (Piece, bool) {
	a, b := p.a, p.b
	out := Piece{Toks: b.Toks, Sep: a.Sep, Pour: b.Pour}
	switch {
	case a.Listed() && b.is(entry.ShapePour), a.is(entry.ShapeAmount) && b.is(entry.ShapePour):
	case a.pours() && b.Listed():
		out.Pour = Repeated(p.text, a.Pour, b.Toks)
		out.Pour.Shared = false
	case a.pours() && b.is(entry.ShapeAmount) && b.Pour.Fault == nil && !b.Pour.Each:
		out = *a
		out.Pour.Amount, out.Pour.AmountAt = b.Pour.Amount, b.Pour.AmountAt
		if b.Pour.Unit != "" {
			out.Pour.Unit, out.Pour.UnitAt = b.Pour.Unit, b.Pour.UnitAt
		}
	default:
		return Piece{}, false
	}
	out.Pour.AddNote("the arrow changes “" + written(p.text, a) + "” to what follows it")
	return out, true
}

// completed joins pieces of which the second only completes the first.
func (p *pair) completed() (Piece, bool) {
	a, b := p.a, p.b
	switch {
	case a.is(entry.ShapeServing) && b.is(entry.ShapeAmount) && serving.IceOnly(a.Toks):
		return p.grown(), true // "ice: 1 cup"
	case b.Sep != ";" && b.Sep != "." && p.topsMeasured():
		return p.measured(), true // "top with soda, 2 oz"
	case b.Sep == "," && a.is(entry.ShapeName) && qualified(&b.Pour):
		out := p.closer(b.Pour, written(p.text, a)+", "+b.Pour.Name) // "coffee, hot 120 ml"
		out.Pour.NameAt.Start = a.Toks[0].Start
		return out, true
	case b.Sep == "," && a.is(entry.ShapeName) && a.Listed() && len(b.Toks) == 1 && serving.Warmth(b.Toks[0].Text) != "" && amountNext.MatchString(p.text[b.Toks[0].End:]):
		out := p.grown() // "black tea, cold | 60 ml"
		out.Pour.Of, out.Pour.NameAt.End = out.Toks, b.Toks[0].End
		out.Pour.Name = written(p.text, &out)
		return out, true
	case a.is(entry.ShapeServing) && (p.shakenTwice() || b.Sep == "," && timed(b.Toks)):
		return p.grown(), true // "DS / S", "blend, 20 sec"
	}
	return Piece{}, false
}

// amountNext is an amount in figures behind a sign.
var amountNext = pattern.Of(`^[ \t]*[|:;–—-][ \t]*(?:\d|\.\d|[½¼¾⅓⅔])`)

// shakenTwice reports whether a letter alone says that what is shaken dry is shaken once more: "DS / S".
func (p *pair) shakenTwice() bool {
	return len(p.b.Toks) == 1 && p.b.Toks[0].Text == "s" && strings.HasSuffix(p.a.Toks[len(p.a.Toks)-1].Text, "ds")
}

// topsMeasured reports whether an amount follows what the drink is topped with.
func (p *pair) topsMeasured() bool {
	tops := p.a.is(entry.ShapeImplied) && (p.a.Pour.Unit == flavor.Top || p.a.Pour.Unit == flavor.Float)
	amount := &p.b.Pour
	return tops && p.b.is(entry.ShapeAmount) && amount.Fault == nil && !amount.Each && amount.Unit.Jigger()
}

// measured is the first piece with the amount of the second.
func (p *pair) measured() Piece {
	out, amount := p.grown(), &p.b.Pour
	to := &out.Pour
	to.Of, to.After, to.NoAmount, to.Stated, to.Shape = out.Toks, true, false, true, entry.ShapePour
	to.Amount, to.Unit, to.AmountAt, to.UnitAt, to.Figures = amount.Amount, amount.Unit, amount.AmountAt, amount.UnitAt, amount.Figures
	return out
}

// closer is a pour with a name that both pieces tell.
func (p *pair) closer(pour entry.Written, name string) Piece {
	out := p.grown()
	out.Pour = pour
	out.Pour.Name, out.Pour.Of, out.Pour.Amid = name, out.Toks, true
	return out
}

// named joins a name and its amount, or a name and what is done with it.
func (p *pair) named() (Piece, bool) {
	a, b := p.a, p.b
	switch {
	case a.Listed() && warm(&b.Pour) && (b.Sep == "-" || b.Sep == ":" || b.Sep == ","):
		return both(p.text, a, &Piece{Toks: b.Toks, Sep: "-"}), true // "espresso - 30 ml hot"
	case a.Listed() && bracketed(&b.Pour):
		return p.withoutBrackets(), true // "grenadine - 1/2 oz (slow pour)"
	case a.Listed() && b.is(entry.ShapeAmount) && !b.Pour.Each:
		return p.both(), true // "gin - 45 ml"
	case a.is(entry.ShapeAmount) && !a.Pour.Each && (b.names() || b.Pour.ByNoun):
		return p.both(), true // "45 ml: gin"
	case a.is(entry.ShapeTail) && b.names() && (b.Sep == ":" || b.Sep == "-"):
		return p.both(), true // "Top: prosecco"
	case a.is(entry.ShapeTail) && b.pours() && b.Sep == ":":
		return p.both(), true // "Top: 60 prosecco"
	case b.is(entry.ShapeTail) && !a.is(entry.ShapeServing) && !a.is(entry.ShapeNothing):
		return p.both(), true // "prosecco, top"
	}
	return Piece{}, false
}

// withoutBrackets joins a name with its amount, and skips what stands in brackets behind that.
func (p *pair) withoutBrackets() Piece {
	open := slices.IndexFunc(p.b.Toks, func(t token.Token) bool { return t.Is("(") })
	out := both(p.text, p.a, &Piece{Toks: slices.Clone(p.b.Toks[:open]), Sep: p.b.Sep})
	out.Pour.AddNote("“" + p.b.Pour.Name + "” is skipped")
	return out
}

// summed joins an amount with a pour that states it in another unit, adds to it, or says how much
// each is of equal parts.
func (p *pair) summed() (Piece, bool) {
	a, b := p.a, p.b
	stated := a.is(entry.ShapeAmount) && b.is(entry.ShapePour)
	switch {
	case stated && !a.Pour.Each && (b.Sep == "/" || b.Sep == "=" || b.Sep == "-"):
		other := a.Pour // "60 ml / 2 oz gin"
		b.Pour.Agree(p.text, &other)
		return p.asPour(b.Pour), true
	case stated && b.Sep == "+" && summable(&a.Pour) && summable(&b.Pour) && a.Pour.Unit == b.Pour.Unit && a.Pour.Measure == "" && b.Pour.Measure == "":
		sum := b.Pour // "1 oz + 1/2 oz rum"
		sum.Amount += a.Pour.Amount
		sum.AmountAt.Start = a.Pour.AmountAt.Start
		sum.AddNote(token.OneLine(p.text[sum.AmountAt.Start:sum.AmountAt.End]) + " read as " + token.Decimals(sum.Amount))
		return p.asPour(sum), true
	case equalOf(a) && b.is(entry.ShapeAmount) && b.Pour.Fault == nil && (b.Pour.Each || !b.Pour.UnitAt.Empty()):
		each := b.Pour // "all equal, 25 ml: ..."
		each.Each = true
		return p.asPour(each), true
	}
	return Piece{}, false
}

// asPour is one piece of both, read as a pour.
func (p *pair) asPour(pour entry.Written) Piece {
	pour.Of = slices.Concat(p.a.Toks, p.b.Toks)
	return Piece{Toks: pour.Of, Sep: p.a.Sep, Pour: pour}
}

// lists reports whether a comma or an "and" stands between a step and what it goes on to put into
// the drink, "muddle lemon, mint and simple", or between a pour and its shade, "45 rum, white".
func (p *pair) lists() bool {
	a, b := p.a, p.b
	switch b.Sep {
	case "and":
		return p.addsStep()
	case ",":
		return p.addsStep() || a.pours() && (cutTo(b.Toks) || shadedBy(a, b, p.alone)) // "20 syrup, cut 2:1"
	}
	return false
}

// addsStep reports whether a name follows a step that puts something into the drink.
func (p *pair) addsStep() bool {
	return p.a.is(entry.ShapeServing) && p.b.is(entry.ShapeName) && PourSteps[p.a.Toks[0].Text]
}

// extended joins a pour and what qualifies its name: "2 oz rum, pot still".
func (p *pair) extended() (Piece, bool) {
	a, b := p.a, p.b
	if !p.mayQualify() || p.another() {
		return Piece{}, false
	}
	unsaid := a.is(entry.ShapeImplied) && !a.Pour.NoAmount
	if b.Sep == "," && (unsaid || a.is(entry.ShapePour)) && (b.LaidOn() || Studded(b.Toks)) {
		return Piece{}, false // "top lager, lemon"
	}
	if !unsaid && !a.pours() && !(a.is(entry.ShapeName) && (b.Sep == "," || b.Sep == "/")) {
		return Piece{}, false
	}
	out := p.both()
	return out, b.Sep != "," || !a.is(entry.ShapePour) || out.is(entry.ShapePour)
}

// mayQualify reports whether the second piece is words that may go on with the name of the first.
func (p *pair) mayQualify() bool {
	a, b := p.a, p.b
	switch {
	case !b.is(entry.ShapeName) || b.Sep == "." || b.Sep == ":":
		return false
	case slices.ContainsFunc(b.Toks[1:], func(t token.Token) bool { return t.Text == "to" }): // "lemon to balance" goes in by itself
		return false
	case a.Pour.Each || a.is(entry.ShapeServing) || a.is(entry.ShapeGarnish) && !a.Pour.ByNoun:
		return false
	}
	return !b.SaltAlone() && parting.Seasonings(a.Toks) == nil && parting.Seasonings(b.Toks) == nil && !entry.NamesVessel(b.Toks)
}

// another reports whether the sign between the pieces adds another ingredient.
func (p *pair) another() bool {
	switch p.b.Sep {
	case "/":
		return spacedOut(p.a, p.b) || p.slashes > 1
	case "and":
		return p.a.amountLast()
	}
	return p.b.Sep == "+"
}

// both reads the two pieces as one entry.
func (p *pair) both() Piece { return both(p.text, p.a, p.b) }

// both reads two pieces as one entry, with what stands between them.
func both(text string, a, b *Piece) Piece {
	toks := append([]token.Token(nil), a.Toks...)
	if b.Sep == "," || b.Sep == "/" {
		at := a.Toks[len(a.Toks)-1].End
		toks = append(toks, token.Token{Kind: token.Mark, Start: at, End: at + 1, Text: b.Sep, Glued: true})
	}
	toks = append(toks, b.Toks...)
	return Piece{Toks: toks, Sep: a.Sep, Pour: entry.Read(text, toks)}
}

// grown is the first piece with the words of the second, and read as it was.
func (p *pair) grown() Piece {
	out := *p.a
	out.Toks = slices.Concat(p.a.Toks, p.b.Toks)
	return out
}

// written is a piece to the letter, on one line.
func written(text string, p *Piece) string {
	return token.OneLine(text[p.Toks[0].Start:p.Toks[len(p.Toks)-1].End])
}

// warm reports whether a pour names nothing but how warm it is: "30 ml hot".
func warm(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Unit.Jigger() && p.AmountAt.Start < p.NameAt.Start && serving.Warmth(strings.ToLower(p.Name)) != ""
}
