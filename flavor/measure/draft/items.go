package draft

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// piece is a stretch of a line between two separators.
type piece struct {
	toks []token.Token
	sep  string // what parts it from the one before; empty at the start
	pour entry.Written
}

// pieces parts the tokens of a line where entries may be parted.
func (r *reader) pieces(toks []token.Token) []piece {
	out := r.cut[:0]
	depth, from, sep := 0, 0, ""
	add := func(to int, next string) {
		if to > from {
			out = append(out, piece{toks: toks[from:to], sep: sep})
			sep = next
		} else if sep == "" || next == ";" || next == ">" {
			sep = next
		}
	}
	for i := range toks {
		t := &toks[i]
		switch {
		case t.Is("("):
			depth++
		case t.Is(")"):
			depth = max(0, depth-1)
		}
		if i == 0 || i < from || depth > 0 && !(depth == 1 && t.Is("(")) {
			continue
		}
		if s, drop := parting.Separator(toks, i, from); s != "" {
			add(i, s)
			from = i + drop
		}
	}
	add(len(toks), "")
	r.cut = out
	r.slashes = 0
	for i := range out {
		if out[i].sep == "/" {
			r.slashes++
		}
	}
	return out
}

// dashesSoaked is how many dashes of bitters a sugar cube takes; common practice.
const dashesSoaked = 3

// soak takes what a sugar cube is soaked in as dashes.
func (r *reader) soak(n int, p *piece) {
	at := entry.Span{Start: p.toks[0].Start, End: p.toks[len(p.toks)-1].End}
	q := entry.Written{Of: p.toks, Shape: entry.ShapeImplied}
	q.TakeNameOnly(r.text, p.toks)
	q.Amount, q.Unit = dashesSoaked, flavor.Dash
	q.AddNote("what the cube is soaked in is taken as " + measure.FormatAmount(dashesSoaked, flavor.Dash))
	r.takePour(n, at, &q, false)
}

// gather joins pieces that make one entry: a name and its amount, an amount in
// two units, a name and what qualifies it.
func (r *reader) gather(in []piece) []piece {
	out := in[:0]
	for i := range in {
		next := in[i]
		next.pour = entry.Read(r.text, next.toks)
		if len(out) == 0 {
			out = append(out, next)
			continue
		}
		if i+1 < len(in) && listed(&next) && (in[i+1].sep == "-" || in[i+1].sep == ":") && entry.Read(r.text, in[i+1].toks).Shape == entry.ShapeAmount {
			out = append(out, next) // "gin - 45 ml, saline - 4 drops"
			continue
		}
		last := &out[len(out)-1]
		if len(in) == 2 && headed(last, &next) {
			*last = r.both(last, &next)
			continue
		}
		if joined, ok := r.join(last, &next, len(in) == 2); ok {
			*last = joined
			continue
		}
		out = append(out, next)
	}
	r.cut = out
	return out
}

// join makes one piece of two, if they are parts of one entry; alone says that nothing
// else stands on their line.
func (r *reader) join(a, b *piece, alone bool) (piece, bool) {
	if b.sep == parting.Soaked || b.sep == "," && columnRoles[roleOf(b)] && a.pour.Shape == entry.ShapePour && a.pour.AmountAt.Start > a.pour.NameAt.Start {
		return piece{}, false
	}
	if b.sep == ">" {
		if b.pour.Shape == entry.ShapeTail && listed(a) { // "soda -> top"
			return r.both(a, b), true
		}
		if p, ok := r.changed(a, b); ok && spacedOut(a, b) {
			return p, true
		}
	}
	if b.sep == ";" && listed(b) && roleOf(b) == "" && a.pour.Shape == entry.ShapePour && a.pour.Fault == nil && a.pour.AmountAt.Start > a.pour.NameAt.Start && r.piped(b) { // "tequila | 50 ml | blanco"
		out := *a
		out.pour.Name += ", " + token.OneLine(r.text[b.toks[0].Start:b.toks[len(b.toks)-1].End])
		out.toks = append(append([]token.Token(nil), a.toks...), b.toks...)
		out.pour.Of, out.pour.Amid = out.toks, true
		return out, true
	}
	if (b.sep == ";" || b.sep == ">") && !(listed(a) && b.pour.Shape == entry.ShapeAmount || a.pour.Shape == entry.ShapeAmount && listed(b)) {
		return piece{}, false
	}
	named := a.pour.Shape == entry.ShapeName || a.pour.Shape == entry.ShapeGarnish && a.pour.ByNoun || a.pour.Shape == entry.ShapeImplied && a.pour.NoAmount
	switch {
	case a.pour.Shape == entry.ShapeServing && entry.IceOnly(a.toks) && b.pour.Shape == entry.ShapeAmount: // "ice: 1 cup"
		out := *a
		out.toks = append(append([]token.Token(nil), a.toks...), b.toks...)
		return out, true
	case b.sep != ";" && b.sep != "." && a.pour.Shape == entry.ShapeImplied && (a.pour.Unit == flavor.Top || a.pour.Unit == flavor.Float) && b.pour.Shape == entry.ShapeAmount && b.pour.Fault == nil && !b.pour.Each && b.pour.Unit.Jigger(): // "top with soda, 2 oz"
		out := *a
		out.toks = append(append([]token.Token(nil), a.toks...), b.toks...)
		amount := b.pour
		out.pour.Of, out.pour.After, out.pour.NoAmount, out.pour.Stated, out.pour.Shape = out.toks, true, false, true, entry.ShapePour
		out.pour.Amount, out.pour.Unit, out.pour.AmountAt, out.pour.UnitAt, out.pour.Figures = amount.Amount, amount.Unit, amount.AmountAt, amount.UnitAt, amount.Figures
		return out, true
	case b.sep == "," && a.pour.Shape == entry.ShapeName && qualified(&b.pour): // "coffee, hot 120 ml"
		out := *a
		out.pour = b.pour
		out.toks = append(append([]token.Token(nil), a.toks...), b.toks...)
		out.pour.Of, out.pour.Amid = out.toks, true
		out.pour.Name = token.OneLine(r.text[a.toks[0].Start:a.toks[len(a.toks)-1].End]) + ", " + b.pour.Name
		out.pour.NameAt.Start = a.toks[0].Start
		return out, true
	case len(b.toks) == 1 && b.toks[0].Text == "s" && a.pour.Shape == entry.ShapeServing && strings.HasSuffix(a.toks[len(a.toks)-1].Text, "ds"), // "DS / S": shaken dry, and shaken
		a.pour.Shape == entry.ShapeServing && b.sep == "," && timed(b.toks): // "blend, 20 sec"
		out := *a
		out.toks = append(append([]token.Token(nil), a.toks...), b.toks...)
		return out, true
	case named && bracketed(&b.pour): // "grenadine - 1/2 oz (slow pour)"
		amount := slices.Clone(b.toks[:slices.IndexFunc(b.toks, func(t token.Token) bool { return t.Is("(") })])
		out := r.both(a, &piece{toks: amount, sep: b.sep})
		out.pour.AddNote("“" + b.pour.Name + "” is skipped")
		return out, true
	case named && b.pour.Shape == entry.ShapeAmount && !b.pour.Each,
		a.pour.Shape == entry.ShapeAmount && !a.pour.Each && (b.pour.Shape == entry.ShapeName || b.pour.Shape == entry.ShapeImplied && b.pour.NoAmount || b.pour.ByNoun),
		a.pour.Shape == entry.ShapeTail && (b.pour.Shape == entry.ShapeName || b.pour.Shape == entry.ShapeImplied && b.pour.NoAmount) && (b.sep == ":" || b.sep == "-"),
		a.pour.Shape == entry.ShapeTail && b.pour.Shape == entry.ShapePour && b.pour.Fault == nil && b.sep == ":", // "Top: 60 prosecco"
		b.pour.Shape == entry.ShapeTail && a.pour.Shape != entry.ShapeServing && a.pour.Shape != entry.ShapeNothing:
		return r.both(a, b), true
	case a.pour.Shape == entry.ShapeAmount && b.pour.Shape == entry.ShapePour && !a.pour.Each && (b.sep == "/" || b.sep == "=" || b.sep == "-"):
		o := a.pour
		b.pour.Agree(r.text, &o)
		toks := append(append([]token.Token(nil), a.toks...), b.toks...)
		b.pour.Of = toks
		return piece{toks: toks, sep: a.sep, pour: b.pour}, true
	case a.pour.Shape == entry.ShapeAmount && b.pour.Shape == entry.ShapePour && b.sep == "+" && summed(&a.pour) && summed(&b.pour) && a.pour.Unit == b.pour.Unit && a.pour.Measure == "" && b.pour.Measure == "":
		both := b.pour // "1 oz + 1/2 oz rum"
		both.Amount += a.pour.Amount
		both.AmountAt.Start = a.pour.AmountAt.Start
		both.AddNote(token.OneLine(r.text[both.AmountAt.Start:both.AmountAt.End]) + " read as " + token.Decimals(both.Amount))
		both.Of = append(append([]token.Token(nil), a.toks...), b.toks...)
		return piece{toks: both.Of, sep: a.sep, pour: both}, true
	case equalOf(a) && b.pour.Shape == entry.ShapeAmount && b.pour.Fault == nil && (b.pour.Each || !b.pour.UnitAt.Empty()):
		both := b.pour // "all equal, 25 ml: ..."
		both.Each = true
		both.Of = append(append([]token.Token(nil), a.toks...), b.toks...)
		return piece{toks: both.Of, sep: a.sep, pour: both}, true
	case a.pour.Shape == entry.ShapeServing && b.pour.Shape == entry.ShapeName && (b.sep == "," || b.sep == "and") && PourSteps[a.toks[0].Text]:
		return r.both(a, b), true // "muddle lemon, mint and simple"
	case a.pour.Shape == entry.ShapePour && a.pour.Fault == nil && b.sep == "," && (cutTo(b.toks) || shadedBy(a, b, alone)):
		return r.both(a, b), true
	case b.pour.Shape != entry.ShapeName || saltAlone(b) || parting.Seasonings(a.toks) != nil || parting.Seasonings(b.toks) != nil || entry.NamesVessel(b.toks) || b.sep == "." || b.sep == ":" || a.pour.Each || a.pour.Shape == entry.ShapeServing || a.pour.Shape == entry.ShapeGarnish && !a.pour.ByNoun:
		return piece{}, false
	case b.sep == "/" && (spacedOut(a, b) || r.slashes > 1), b.sep == "+", b.sep == "and" && a.pour.AmountAt.Start > a.pour.NameAt.Start:
		return piece{}, false
	case (a.pour.Shape == entry.ShapeImplied && !a.pour.NoAmount || a.pour.Shape == entry.ShapePour) && b.sep == "," && (laidOn(b) || studded(b.toks)): // "top lager, lemon"
		return piece{}, false
	case a.pour.Shape == entry.ShapePour && a.pour.Fault == nil, a.pour.Shape == entry.ShapeImplied && !a.pour.NoAmount, a.pour.Shape == entry.ShapeName && (b.sep == "," || b.sep == "/"):
		both := r.both(a, b)
		return both, b.sep != "," || a.pour.Shape != entry.ShapePour || both.pour.Shape == entry.ShapePour
	}
	return piece{}, false
}

// equalOf reports whether a piece says that what follows is poured in equal parts: "equal
// parts", or "equal" alone.
func equalOf(p *piece) bool {
	if p.pour.Shape == entry.ShapeName {
		return len(p.toks) == 1 && p.toks[0].Text == "equal"
	}
	return p.pour.Shape == entry.ShapeAmount && p.pour.Each && p.pour.Unit == flavor.PartUnit
}

// piped reports whether an upright stroke stands before a piece.
func (r *reader) piped(p *piece) bool {
	return strings.HasSuffix(strings.TrimRight(r.text[:p.toks[0].Start], " \t"), "|")
}

// qualities say which of its kind a thing is, behind its name.
var qualities = token.Words(`dry extra sweet hot cold iced chilled warm dark white light gold golden aged fresh unsweetened sweetened strong weak red blanc bianco pink young old smoky peated navy
overproof spiced plain heated warmed sparkling still whole double single thick raw ripe green black yellow blanco reposado añejo anejo irish london rich diluted filtered brewed`)

// Quality reports whether a word says which of its kind a thing is.
func Quality(w string) bool { return qualities[w] }

// qualified reports whether all that a pour names is which of its kind a thing is, before
// its amount: "extra dry 10 ml".
func qualified(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.AmountAt.Start > p.NameAt.Start && p.Figures &&
		!slices.ContainsFunc(p.NameTokens(), func(t token.Token) bool { return !qualities[t.Text] })
}

// timed reports whether tokens are a number of seconds, minutes or turns.
func timed(toks []token.Token) bool {
	return len(toks) == 2 && toks[0].Kind == token.Numeral && serving.DegreeWords[toks[1].Text]
}

// bracketed reports whether all that follows an amount stands in brackets.
func bracketed(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Figures && strings.HasPrefix(p.Name, "(") && strings.HasSuffix(p.Name, ")")
}

// changed takes what an arrow points at for what stands before it: "lemon -> lime 3/4
// oz", "3/4 oz lemon -> lime", "gin 2 oz -> 1.5 oz".
func (r *reader) changed(a, b *piece) (piece, bool) {
	poured := a.pour.Shape == entry.ShapePour && a.pour.Fault == nil
	out := piece{toks: b.toks, sep: a.sep, pour: b.pour}
	switch {
	case listed(a) && b.pour.Shape == entry.ShapePour, a.pour.Shape == entry.ShapeAmount && b.pour.Shape == entry.ShapePour:
	case poured && listed(b):
		out.pour = r.repeated(a.pour, b.toks)
		out.pour.Shared = false
	case poured && b.pour.Shape == entry.ShapeAmount && b.pour.Fault == nil && !b.pour.Each:
		out = *a
		out.pour.Amount, out.pour.AmountAt = b.pour.Amount, b.pour.AmountAt
		if b.pour.Unit != "" {
			out.pour.Unit, out.pour.UnitAt = b.pour.Unit, b.pour.UnitAt
		}
	default:
		return piece{}, false
	}
	out.pour.AddNote("the arrow changes “" + token.OneLine(r.text[a.toks[0].Start:a.toks[len(a.toks)-1].End]) + "” to what follows it")
	return out, true
}

// summed reports whether a pour states an amount that another can be added to.
func summed(p *entry.Written) bool { return p.Fault == nil && !p.Each && !p.AmountAt.Empty() }

// cutTo reports whether tokens say how far a syrup is thinned, "cut 2:1", which is
// part of its name and no step.
func cutTo(toks []token.Token) bool {
	return len(toks) > 1 && toks[0].Text == "cut" && toks[1].Kind == token.Ratio
}

// spacedOut reports whether there is a space at the slash between two pieces.
func spacedOut(a, b *piece) bool {
	return b.toks[0].Start-a.toks[len(a.toks)-1].End > 1
}

// both reads two pieces as one entry, with what stands between them.
func (r *reader) both(a, b *piece) piece {
	toks := append([]token.Token(nil), a.toks...)
	if b.sep == "," || b.sep == "/" {
		at := a.toks[len(a.toks)-1].End
		toks = append(toks, token.Token{Kind: token.Mark, Start: at, End: at + 1, Text: b.sep, Glued: true})
	}
	toks = append(toks, b.toks...)
	return piece{toks: toks, sep: a.sep, pour: entry.Read(r.text, toks)}
}

// spread gives every name of a list its amount: "1 oz each a, b and c", or "a, b
// and c, 1 oz each".
func (r *reader) spread(in []piece) []piece {
	each := -1
	for i := range in {
		if in[i].pour.Each && in[i].pour.Amount > 0 {
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
		if each > 1 && listed(&in[each-1]) && listed(&in[each-2]) && p.NameAt.Empty() && !slices.ContainsFunc(in[each+1:to+1], func(q piece) bool { return !laidOn(&q) }) {
			to = each // "mezcal, vermouth, bitter, 25 ml each, orange"
		}
	}
	if to == each && (in[each].pour.NameAt.Empty() || in[each].pour.AmountAt.Empty() || in[each].pour.AmountAt.Start > in[each].pour.NameAt.Start) {
		for from > 0 && listed(&in[from-1]) && !(from == 1 && (in[1].sep == ":" || in[1].sep == "-")) { // behind a title
			from--
		}
	}
	var names [][]token.Token
	amount := in[each].pour
	if to+1 < len(in) && amount.Unit == flavor.PartUnit && inBrackets(&in[to+1]) { // "equal parts a, b, c (22 ml)"
		to++
		last := in[to].pour
		amount.Amount, amount.Unit, amount.AmountAt, amount.UnitAt = last.Amount, last.Unit, last.AmountAt, last.UnitAt
		in[to].toks = last.NameTokens()
	}
	for i := from; i <= to; i++ {
		toks := in[i].toks
		if i == each {
			toks = amount.NameTokens()
		}
		names = append(names, entry.PartNames(toks)...)
	}
	if last := len(names) - 1; last > 0 && amount.Unit == flavor.PartUnit { // "equal red bitter & sweet vermouth 25 ml"
		if q := entry.Read(r.text, names[last]); q.Shape == entry.ShapePour && q.Fault == nil && q.Unit.Jigger() && q.AmountAt.Start > q.NameAt.Start {
			amount.Amount, amount.Unit, amount.AmountAt, amount.UnitAt = q.Amount, q.Unit, q.AmountAt, q.UnitAt
			names[last] = q.NameTokens()
		}
	}
	if len(names) == 1 { // "1 each egg white"; an amount alone, "equal parts", is of no one thing
		in[each].pour.Each = in[each].pour.Shape == entry.ShapeAmount
		return in
	}
	out := append([]piece(nil), in[:from]...)
	for _, n := range names {
		n = entry.TrimMarks(n)
		if len(n) == 0 {
			continue
		}
		q := amount
		q.Of, q.Each, q.Shared, q.Shape, q.Whole = n, false, true, entry.ShapePour, ""
		q.TakeNameOnly(r.text, n)
		q.CheckUnit(n)
		out = append(out, piece{toks: n, sep: ";", pour: q})
	}
	return append(out, in[to+1:]...)
}

// inBrackets reports whether a pour states its amount behind its name in brackets.
func inBrackets(p *piece) bool {
	toks := entry.TrimMarks(p.toks)
	return p.pour.Shape == entry.ShapePour && p.pour.Fault == nil && p.pour.Unit.Jigger() && p.pour.AmountAt.Start > p.pour.NameAt.Start && len(toks) > 0 && toks[len(toks)-1].Is(")")
}

// listed reports whether a piece may be a name of a list.
func listed(p *piece) bool {
	s := p.pour.Shape
	return s == entry.ShapeName || s == entry.ShapeImplied && p.pour.NoAmount || s == entry.ShapeGarnish && p.pour.ByNoun
}

// withoutRole drops the first cell of three or more that says what a pour is in its
// drink: "spirit   rye   45 ml".
func (r *reader) withoutRole(toks []token.Token) []token.Token {
	gaps := 0
	for i := 1; i < len(toks); i++ {
		if parting.Apart(r.text, toks, i) {
			gaps++
		}
	}
	if gaps < 2 || !roleWords[toks[0].Text] || toks[1].Kind != token.Word || !parting.Apart(r.text, toks, 1) {
		return toks
	}
	return toks[1:]
}

// PourSteps are verbs of steps that put something into the drink.
var PourSteps = token.Words(`add pour muddle float top squeeze combine mix put drop layer finish fill lengthen rinse measure place`)
