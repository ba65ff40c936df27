package joining

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/parting"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// Joiner finds the entries of lines. It keeps the memory that it needs for one line for the
// next, so that what it returns holds until it is called again.
type Joiner struct {
	Text    string // in which the tokens stand
	cut     []Piece
	slashes int // that part the entries of the line
}

// Entries are the entries of a line, each name of a list with its amount.
func (j *Joiner) Entries(toks []token.Token) []Piece { return j.Spread(j.Gathered(toks)) }

// Gathered are the entries of a line, the amount of a list once.
func (j *Joiner) Gathered(toks []token.Token) []Piece { return j.gather(j.pieces(toks)) }

// pieces parts the tokens of a line where entries may be parted.
func (j *Joiner) pieces(toks []token.Token) []Piece {
	out := j.cut[:0]
	depth, from, sep := 0, 0, ""
	add := func(to int, next string) {
		if to > from {
			out = append(out, Piece{Toks: toks[from:to], Sep: sep})
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
	j.cut = out
	j.slashes = 0
	for i := range out {
		if out[i].Sep == "/" {
			j.slashes++
		}
	}
	return out
}

// gather joins pieces that make one entry: a name and its amount, an amount in
// two units, a name and what qualifies it.
func (j *Joiner) gather(in []Piece) []Piece {
	out := in[:0]
	for i := range in {
		next := in[i]
		next.Pour = entry.Read(j.Text, next.Toks)
		if len(out) == 0 {
			out = append(out, next)
			continue
		}
		if i+1 < len(in) && next.Listed() && (in[i+1].Sep == "-" || in[i+1].Sep == ":") && entry.Read(j.Text, in[i+1].Toks).Shape == entry.ShapeAmount {
			out = append(out, next) // "gin - 45 ml, saline - 4 drops"
			continue
		}
		last := &out[len(out)-1]
		if len(in) == 2 && headed(last, &next) {
			*last = j.both(last, &next)
			continue
		}
		if joined, ok := j.join(last, &next, len(in) == 2); ok {
			*last = joined
			continue
		}
		out = append(out, next)
	}
	j.cut = out
	return out
}

// join makes one piece of two, if they are parts of one entry; alone says that nothing
// else stands on their line.
func (j *Joiner) join(a, b *Piece, alone bool) (Piece, bool) {
	if b.Sep == parting.Soaked || b.Sep == "," && columnRoles[b.Role()] && a.Pour.Shape == entry.ShapePour && a.Pour.AmountAt.Start > a.Pour.NameAt.Start {
		return Piece{}, false
	}
	if b.Sep == ">" {
		if b.Pour.Shape == entry.ShapeTail && a.Listed() { // "soda -> top"
			return j.both(a, b), true
		}
		if p, ok := j.changed(a, b); ok && spacedOut(a, b) {
			return p, true
		}
	}
	if b.Sep == ";" && b.Listed() && b.Role() == "" && a.Pour.Shape == entry.ShapePour && a.Pour.Fault == nil && a.Pour.AmountAt.Start > a.Pour.NameAt.Start && j.piped(b) { // "tequila | 50 ml | blanco"
		out := *a
		out.Pour.Name += ", " + token.OneLine(j.Text[b.Toks[0].Start:b.Toks[len(b.Toks)-1].End])
		out.Toks = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		out.Pour.Of, out.Pour.Amid = out.Toks, true
		return out, true
	}
	if (b.Sep == ";" || b.Sep == ">") && !(a.Listed() && b.Pour.Shape == entry.ShapeAmount || a.Pour.Shape == entry.ShapeAmount && b.Listed()) {
		return Piece{}, false
	}
	named := a.Pour.Shape == entry.ShapeName || a.Pour.Shape == entry.ShapeGarnish && a.Pour.ByNoun || a.Pour.Shape == entry.ShapeImplied && a.Pour.NoAmount
	switch {
	case a.Pour.Shape == entry.ShapeServing && entry.IceOnly(a.Toks) && b.Pour.Shape == entry.ShapeAmount: // "ice: 1 cup"
		out := *a
		out.Toks = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		return out, true
	case b.Sep != ";" && b.Sep != "." && a.Pour.Shape == entry.ShapeImplied && (a.Pour.Unit == flavor.Top || a.Pour.Unit == flavor.Float) && b.Pour.Shape == entry.ShapeAmount && b.Pour.Fault == nil && !b.Pour.Each && b.Pour.Unit.Jigger(): // "top with soda, 2 oz"
		out := *a
		out.Toks = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		amount := b.Pour
		out.Pour.Of, out.Pour.After, out.Pour.NoAmount, out.Pour.Stated, out.Pour.Shape = out.Toks, true, false, true, entry.ShapePour
		out.Pour.Amount, out.Pour.Unit, out.Pour.AmountAt, out.Pour.UnitAt, out.Pour.Figures = amount.Amount, amount.Unit, amount.AmountAt, amount.UnitAt, amount.Figures
		return out, true
	case b.Sep == "," && a.Pour.Shape == entry.ShapeName && qualified(&b.Pour): // "coffee, hot 120 ml"
		out := *a
		out.Pour = b.Pour
		out.Toks = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		out.Pour.Of, out.Pour.Amid = out.Toks, true
		out.Pour.Name = token.OneLine(j.Text[a.Toks[0].Start:a.Toks[len(a.Toks)-1].End]) + ", " + b.Pour.Name
		out.Pour.NameAt.Start = a.Toks[0].Start
		return out, true
	case len(b.Toks) == 1 && b.Toks[0].Text == "s" && a.Pour.Shape == entry.ShapeServing && strings.HasSuffix(a.Toks[len(a.Toks)-1].Text, "ds"), // "DS / S": shaken dry, and shaken
		a.Pour.Shape == entry.ShapeServing && b.Sep == "," && timed(b.Toks): // "blend, 20 sec"
		out := *a
		out.Toks = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		return out, true
	case named && warm(&b.Pour) && (b.Sep == "-" || b.Sep == ":" || b.Sep == ","): // "espresso - 30 ml hot"
		return j.both(a, &Piece{Toks: b.Toks, Sep: "-"}), true
	case named && bracketed(&b.Pour): // "grenadine - 1/2 oz (slow pour)"
		amount := slices.Clone(b.Toks[:slices.IndexFunc(b.Toks, func(t token.Token) bool { return t.Is("(") })])
		out := j.both(a, &Piece{Toks: amount, Sep: b.Sep})
		out.Pour.AddNote("“" + b.Pour.Name + "” is skipped")
		return out, true
	case named && b.Pour.Shape == entry.ShapeAmount && !b.Pour.Each,
		a.Pour.Shape == entry.ShapeAmount && !a.Pour.Each && (b.Pour.Shape == entry.ShapeName || b.Pour.Shape == entry.ShapeImplied && b.Pour.NoAmount || b.Pour.ByNoun),
		a.Pour.Shape == entry.ShapeTail && (b.Pour.Shape == entry.ShapeName || b.Pour.Shape == entry.ShapeImplied && b.Pour.NoAmount) && (b.Sep == ":" || b.Sep == "-"),
		a.Pour.Shape == entry.ShapeTail && b.Pour.Shape == entry.ShapePour && b.Pour.Fault == nil && b.Sep == ":", // "Top: 60 prosecco"
		b.Pour.Shape == entry.ShapeTail && a.Pour.Shape != entry.ShapeServing && a.Pour.Shape != entry.ShapeNothing:
		return j.both(a, b), true
	case a.Pour.Shape == entry.ShapeAmount && b.Pour.Shape == entry.ShapePour && !a.Pour.Each && (b.Sep == "/" || b.Sep == "=" || b.Sep == "-"):
		o := a.Pour
		b.Pour.Agree(j.Text, &o)
		toks := append(append([]token.Token(nil), a.Toks...), b.Toks...)
		b.Pour.Of = toks
		return Piece{Toks: toks, Sep: a.Sep, Pour: b.Pour}, true
	case a.Pour.Shape == entry.ShapeAmount && b.Pour.Shape == entry.ShapePour && b.Sep == "+" && summed(&a.Pour) && summed(&b.Pour) && a.Pour.Unit == b.Pour.Unit && a.Pour.Measure == "" && b.Pour.Measure == "":
		both := b.Pour // "1 oz + 1/2 oz rum"
		both.Amount += a.Pour.Amount
		both.AmountAt.Start = a.Pour.AmountAt.Start
		both.AddNote(token.OneLine(j.Text[both.AmountAt.Start:both.AmountAt.End]) + " read as " + token.Decimals(both.Amount))
		both.Of = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		return Piece{Toks: both.Of, Sep: a.Sep, Pour: both}, true
	case equalOf(a) && b.Pour.Shape == entry.ShapeAmount && b.Pour.Fault == nil && (b.Pour.Each || !b.Pour.UnitAt.Empty()):
		both := b.Pour // "all equal, 25 ml: ..."
		both.Each = true
		both.Of = append(append([]token.Token(nil), a.Toks...), b.Toks...)
		return Piece{Toks: both.Of, Sep: a.Sep, Pour: both}, true
	case a.Pour.Shape == entry.ShapeServing && b.Pour.Shape == entry.ShapeName && (b.Sep == "," || b.Sep == "and") && PourSteps[a.Toks[0].Text]:
		return j.both(a, b), true // "muddle lemon, mint and simple"
	case a.Pour.Shape == entry.ShapePour && a.Pour.Fault == nil && b.Sep == "," && (cutTo(b.Toks) || shadedBy(a, b, alone)):
		return j.both(a, b), true
	case b.Pour.Shape != entry.ShapeName || b.SaltAlone() || parting.Seasonings(a.Toks) != nil || parting.Seasonings(b.Toks) != nil || entry.NamesVessel(b.Toks) || b.Sep == "." || b.Sep == ":" || a.Pour.Each || a.Pour.Shape == entry.ShapeServing || a.Pour.Shape == entry.ShapeGarnish && !a.Pour.ByNoun:
		return Piece{}, false
	case b.Sep == "/" && (spacedOut(a, b) || j.slashes > 1), b.Sep == "+", b.Sep == "and" && a.Pour.AmountAt.Start > a.Pour.NameAt.Start:
		return Piece{}, false
	case (a.Pour.Shape == entry.ShapeImplied && !a.Pour.NoAmount || a.Pour.Shape == entry.ShapePour) && b.Sep == "," && (b.LaidOn() || Studded(b.Toks)): // "top lager, lemon"
		return Piece{}, false
	case a.Pour.Shape == entry.ShapePour && a.Pour.Fault == nil, a.Pour.Shape == entry.ShapeImplied && !a.Pour.NoAmount, a.Pour.Shape == entry.ShapeName && (b.Sep == "," || b.Sep == "/"):
		both := j.both(a, b)
		return both, b.Sep != "," || a.Pour.Shape != entry.ShapePour || both.Pour.Shape == entry.ShapePour
	}
	return Piece{}, false
}

// warm reports whether a pour names nothing but how warm it is: "30 ml hot".
func warm(p *entry.Written) bool {
	return p.Shape == entry.ShapePour && p.Fault == nil && p.Unit.Jigger() && p.AmountAt.Start < p.NameAt.Start && serving.Warmth(strings.ToLower(p.Name)) != ""
}

// both reads two pieces as one entry, with what stands between them.
func (j *Joiner) both(a, b *Piece) Piece {
	toks := append([]token.Token(nil), a.Toks...)
	if b.Sep == "," || b.Sep == "/" {
		at := a.Toks[len(a.Toks)-1].End
		toks = append(toks, token.Token{Kind: token.Mark, Start: at, End: at + 1, Text: b.Sep, Glued: true})
	}
	toks = append(toks, b.Toks...)
	return Piece{Toks: toks, Sep: a.Sep, Pour: entry.Read(j.Text, toks)}
}

// changed takes what an arrow points at for what stands before it: "lemon -> lime 3/4
// oz", "3/4 oz lemon -> lime", "gin 2 oz -> 1.5 oz".
func (j *Joiner) changed(a, b *Piece) (Piece, bool) {
	poured := a.Pour.Shape == entry.ShapePour && a.Pour.Fault == nil
	out := Piece{Toks: b.Toks, Sep: a.Sep, Pour: b.Pour}
	switch {
	case a.Listed() && b.Pour.Shape == entry.ShapePour, a.Pour.Shape == entry.ShapeAmount && b.Pour.Shape == entry.ShapePour:
	case poured && b.Listed():
		out.Pour = Repeated(j.Text, a.Pour, b.Toks)
		out.Pour.Shared = false
	case poured && b.Pour.Shape == entry.ShapeAmount && b.Pour.Fault == nil && !b.Pour.Each:
		out = *a
		out.Pour.Amount, out.Pour.AmountAt = b.Pour.Amount, b.Pour.AmountAt
		if b.Pour.Unit != "" {
			out.Pour.Unit, out.Pour.UnitAt = b.Pour.Unit, b.Pour.UnitAt
		}
	default:
		return Piece{}, false
	}
	out.Pour.AddNote("the arrow changes “" + token.OneLine(j.Text[a.Toks[0].Start:a.Toks[len(a.Toks)-1].End]) + "” to what follows it")
	return out, true
}
