package entry

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// What is counted and goes on top decorates the drink, and is not poured: "a sprig of thyme on top".

// onWords begin what says that something lies on top: "on top", "over the top".
var onWords = vocabulary.Words(`on over across floated`)

// chunks are pieces behind the name of what they are of: "walnut half".
var chunks = vocabulary.Words(`half halves chunk chunks piece pieces`)

// OnTop returns the tokens before the words that say that what they name is laid on top; false if none
// do, or if they do not end in what is laid on a drink.
func OnTop(toks []token.Token) ([]token.Token, bool) {
	toks = TrimMarks(toks)
	n, t := pouring.TailAt(toks)
	floats := t.Unit == flavor.Float && toks[len(toks)-1].Text == "float" // "a thin lemon slice to float"
	if n < 2 || n >= len(toks) || !t.After || !onWords.Has(toks[len(toks)-n].Text) && !floats {
		return nil, false
	}
	rest := toks[:len(toks)-n]
	last := rest[len(rest)-1]
	if k := len(rest) - 1; k > 0 && last.Kind == token.Numeral && last.Value == 0.5 && last.End-last.Start == len("half") && (laid.Nut(rest[k-1].Text) || laid.Halved(rest[k-1].Text)) { // "walnut half on top"
		return rest, true
	}
	if first := &rest[0]; (first.Value == 0.5 || first.Text == "half") && len(rest) > 1 && laid.Halved(last.Text) { // "half a passion fruit on top"
		return rest, true
	}
	if pouring.Verbs[rest[0].Text] != "" || last.Kind != token.Word || !laid.Noun(last.Text) && !laid.Nut(last.Text) && !(len(rest) > 1 && chunks.Has(last.Text)) {
		return nil, false
	}
	return rest, true
}

// decorates reads what is counted, or has no amount, and goes on top.
func (p *Written) decorates(toks []token.Token) bool {
	if _, ok := OnTop(toks); !ok {
		return false
	}
	switch p.Unit {
	case "", flavor.Piece, flavor.Slice, flavor.Wedge, flavor.Sprig, flavor.Leaf, flavor.Top, flavor.Float:
	default:
		return false
	}
	if p.Muddled || p.Fault != nil || p.Shape != ShapePour && p.Shape != ShapeImplied {
		return false
	}
	of := p.Of
	*p = Written{Of: of, Shape: ShapeGarnish, ByNoun: true}
	return true
}

// places are verbs of laying something in or on a drink, ofPlace the words behind them that say where.
var (
	places  = vocabulary.Words(`drop sink nestle perch hang tuck plop rest balance place lay`)
	ofPlace = vocabulary.Words(`in into on onto over it the a an one your some`)
)

// placesIn reads a sentence that lays something in a drink: "drop a cherry in".
func (p *Written) placesIn(toks []token.Token) bool {
	if len(toks) < 3 || !places.Has(toks[0].Text) || !ofPlace.Has(toks[1].Text) && toks[1].Kind != token.Numeral {
		return false
	}
	rest := toks[1:]
	for len(rest) > 0 && (ofPlace.Has(rest[0].Text) || rest[0].Kind == token.Numeral) {
		rest = rest[1:]
	}
	for len(rest) > 0 && (ofPlace.Has(rest[len(rest)-1].Text) || rest[len(rest)-1].Kind == token.Mark) {
		rest = rest[:len(rest)-1]
	}
	if len(rest) == 0 || !laid.Ends(rest) || AmountAt(rest) > 0 {
		return false
	}
	p.Shape, p.ByNoun = ShapeGarnish, true
	p.Of = rest
	return true
}
