package joining

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// Piece is a stretch of a line between two separators.
type Piece struct {
	Toks []token.Token
	Sep  string // what parts it from the one before; empty at the start
	Pour entry.Written
}

// is reports whether a piece was read in that shape.
func (p *Piece) is(s entry.Shape) bool { return p.Pour.Shape == s }

// names reports whether a piece is a name without an amount.
func (p *Piece) names() bool {
	return p.is(entry.ShapeName) || p.is(entry.ShapeImplied) && p.Pour.NoAmount
}

// Listed reports whether a piece may be a name of a list.
func (p *Piece) Listed() bool { return p.names() || p.is(entry.ShapeGarnish) && p.Pour.ByNoun }

// pours reports whether a piece is a pour without a fault.
func (p *Piece) pours() bool { return p.is(entry.ShapePour) && p.Pour.Fault == nil }

// amountLast reports whether the amount of a piece stands behind its name.
func (p *Piece) amountLast() bool { return p.Pour.AmountAt.Start > p.Pour.NameAt.Start }

// Untold reports whether a piece states no amount.
func (p *Piece) Untold() bool { return p.Listed() || p.Pour.Shape == entry.ShapeServing }

// LaidOn reports whether an entry that follows the service on its line is a fruit
// laid on the drink: "stir, up, lemon".
func (p *Piece) LaidOn() bool {
	toks := entry.TrimMarks(p.Toks)
	return p.Pour.Shape == entry.ShapeName && len(toks) > 0 && len(toks) <= 2 && toks[0].Text != "not" && laid.Ends(toks)
}

// Studded reports whether words without an amount name a fruit with spices stuck into it,
// which is laid on a drink: "clove studded lemon".
func Studded(toks []token.Token) bool {
	i := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "studded" || strings.HasSuffix(t.Text, "-studded") })
	return i >= 0 && i+2 == len(toks) && laid.Ends(toks)
}

// Dressed reports whether an entry that follows the service on its line is what the
// rim is dressed with: "rocks, salt".
func Dressed(before, p *Piece) bool {
	toks := entry.TrimMarks(p.Toks)
	if p.Pour.Shape != entry.ShapeName || len(toks) != 1 || toks[0].Text != "salt" && toks[0].Text != "sugar" || before.Pour.Shape != entry.ShapeServing {
		return false
	}
	s := serving.Read(before.Toks)
	return s.Service != "" || s.Glass != ""
}

// SaltAlone reports whether an entry is bare salt, which dresses the rim: who pours it
// states how much.
func (p *Piece) SaltAlone() bool {
	toks := entry.TrimMarks(p.Toks)
	n := len(toks)
	return p.Pour.Shape == entry.ShapeName && (n == 1 || n == 2 && parting.DressesRim(toks[0].Text)) && salts[toks[n-1].Text]
}

// salts are words for salt, which dresses the rim where no amount is written.
var salts = token.Words(`salt sal salz sel sale`)

// Roles are what a column says that a pour is in its drink.
var Roles = token.Words(`texture seasoning fortified aromatic length mod mods liq bitter bitters spirits liqueurs base sour sweet strong weak modifier float top citrus lengthener spirit mixer bitter sweetener acid split accent liqueur bitters juice syrup`)

// columnRoles are those that are no names of ingredients: a last column says them behind a
// comma too.
var columnRoles = token.Words(`sour sweet base modifier mod citrus lengthener length spirit sweetener split accent acid strong weak`)

// Role is the role that a piece names, and nothing else; empty if it names none.
func (p *Piece) Role() string {
	if toks := entry.TrimMarks(p.Toks); len(toks) == 1 && Roles[toks[0].Text] {
		return toks[0].Text
	}
	return ""
}

// poursOne reports whether a piece states an amount of one thing.
func (p *Piece) poursOne() bool {
	return p.pours() && !p.Pour.Each
}

// spacedOut reports whether there is a space at the slash between two pieces.
func spacedOut(a, b *Piece) bool {
	return b.Toks[0].Start-a.Toks[len(a.Toks)-1].End > 1
}

// InColumn reports whether a role is told in a column, and names no ingredient.
func InColumn(role string) bool { return columnRoles[role] }

// WithoutRole drops the first cell of three or more that says what a pour is in its
// drink: "spirit   rye   45 ml", "texture | egg white | 20 ml".
func WithoutRole(text string, toks []token.Token) []token.Token {
	if ruled := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("|") }); ruled == 1 && Roles[toks[0].Text] && slices.ContainsFunc(toks[2:], func(t token.Token) bool { return t.Is("|") }) {
		return toks[2:]
	}
	gaps := 0
	for i := 1; i < len(toks); i++ {
		if parting.Apart(text, toks, i) {
			gaps++
		}
	}
	if gaps < 2 || !Roles[toks[0].Text] || toks[1].Kind != token.Word || !parting.Apart(text, toks, 1) {
		return toks
	}
	return toks[1:]
}
