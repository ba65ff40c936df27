package title

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/serving"
)

// line is the pieces of a line that may begin with the name of its drink.
type line struct {
	text string
	in   []joining.Piece
}

// Before returns how many pieces of a line of the text are the name of its drink, with its pours
// behind them; 0 if none are: "Halyard: 2 oz gin, ...". It is sure where several pours
// follow a colon, or stops part what is no pour from them.
func Before(text string, in []joining.Piece) (pieces int, sure bool) {
	if len(in) < 2 || len(in[0].Toks) > 1 && tellsMaking(in[0].Toks) || in[0].Pour.Squeezed && in[0].Pour.Shape == entry.ShapePour { // "squeeze of lime, 50 gin, ..."
		return 0, false
	}
	l := line{text, in}
	if l.endsInNumber() {
		return 1, false
	}
	if k := l.sentences(); k > 1 {
		return k, true
	}
	if l.impliesPour() {
		return 1, false
	}
	if k := l.inTwo(); k > 0 {
		return k, false
	}
	if !l.heads() {
		return 0, false
	}
	return 1, in[1].Sep == ":" && l.pours(1) > 1
}

// states reports whether a piece states a pour.
func (l *line) states(k int) bool { return l.in[k].Pour.States(l.text) }

// pours returns how many pieces state pours, from the k-th on.
func (l *line) pours(k int) int {
	n := 0
	for i := k; i < len(l.in); i++ {
		if l.states(i) {
			n++
		}
	}
	return n
}

// parted reports whether one of some signs parts a piece from the one before it.
func (l *line) parted(k int, signs ...string) bool {
	for _, s := range signs {
		if l.in[k].Sep == s {
			return true
		}
	}
	return false
}

// wholeNumber reports whether the first piece is words and a whole number without a unit.
func (l *line) wholeNumber() bool {
	p := &l.in[0].Pour
	return p.Shape == entry.ShapePour && p.Whole != "" && p.Unit == ""
}

// endsInNumber reports whether what stands before a colon is a name that ends in a
// number, "service 1: 45 vodka", and no pour.
func (l *line) endsInNumber() bool {
	return l.in[1].Sep == ":" && l.wholeNumber() && entry.StartsAmount(l.in[1].Toks)
}

// leastPours is the fewest pours behind a title of several sentences.
const leastPours = 2

// sentences returns how many pieces of a line are its title: none states an amount but for a
// number, and a colon or a stop parts them from at least two pours, "Exercise 4. Daiquiri
// variation. White rum 60 ml; ...". It is 0 if none are.
func (l *line) sentences() int {
	k := 0
	for k < len(l.in) && (l.in[k].Untold() || k == 0 && l.wholeNumber()) {
		k++
	}
	if k == 0 || k+1 >= len(l.in) || !l.parted(k, ":", ".") {
		return 0
	}
	for i := 1; i < k; i++ {
		if !l.parted(i, ":", ".", "-", "+") {
			return 0
		}
	}
	if !l.states(k) || l.pours(k) < leastPours {
		return 0
	}
	return k
}

// impliesPour reports whether the name of a line would be a pour if it stood alone: "Vermouth
// spritz: 60 bianco, ...".
func (l *line) impliesPour() bool {
	toks := l.in[0].Toks
	spritzer := len(toks) > 1 && toks[len(toks)-1].Text == "spritzer" // in English a drink and no measure
	return l.in[0].Pour.Shape == entry.ShapeImplied && (l.parted(1, ":", "=") || l.in[1].Sep == "-" && len(l.in) > 2 || spritzer && l.parted(1, "/", ",", ";", "|", ".")) && l.states(1)
}

// inTwo returns how many pieces are a name in two parts, 0 if none are: "NA - Ginger fizz: 1 ginger
// syrup, ...", "soju + yuzu soda! 50 soju, ...".
func (l *line) inTwo() int {
	for k := 1; k+1 < len(l.in) && k < 3; k++ {
		if l.parted(k+1, ":", ".", "=") && l.parted(k, ":", "-", "+", "and") && l.in[0].Untold() && l.in[k].Untold() && l.states(k+1) {
			return k + 1
		}
	}
	return 0
}

// heads reports whether the first piece is a name that a sign parts from pours behind it.
func (l *line) heads() bool {
	first := &l.in[0]
	switch first.Pour.Shape {
	case entry.ShapeName:
		return l.parted(1, ":", "=", "-", ",", ";", ".", "/") && l.pours(1) > 0
	case entry.ShapeServing, entry.ShapeGarnish:
		return l.parted(1, ":", "-") && l.pours(1) > 0 && !l.orders()
	}
	return false
}

// orders reports whether a word of method stands before a colon: "shake: 2 oz gin, ...".
func (l *line) orders() bool {
	first := &l.in[0]
	return first.Pour.Shape == entry.ShapeServing && l.in[1].Sep == ":" && len(first.Toks) == 1 &&
		label.Words[first.Toks[0].Text] == label.None && serving.StartsMethod(first.Toks)
}
