package speech

import (
	"slices"

	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// openings begin what is said before the first pour of a line, and chatter goes on with
// it: none of it is the name of a drink.
var (
	// addresses begin what is said to somebody, as a greeting does; a whole sentence of it pours nothing.
	addresses = vocabulary.Words(`ok okay you your so team chef guys`)
	openings  = vocabulary.Words(`you your ok okay so its it's it this that thats that's try trying heres here's um uh well lets let's my can could i im i'm i'd please pls we were we're going gonna just think thinking maybe new write remember note me`)
	chatter   = vocabulary.Words(`the one is was be been do does make makes making made for version take on in put down write you me to have has had got want wanna would like of a an then with start starts started use using now really about goes go it's its so = : , - at tonight today down remember note`)
)

// hesitations are sounds of thinking.
var hesitations = vocabulary.Words(`um uh er erm hmm`)

// WithoutHesitation drops the sounds of thinking that stand between signs or before a number:
// "the stirred one, um, two ounces". Elsewhere "um" is a Portuguese one.
func WithoutHesitation(toks []token.Token) []token.Token {
	alone := func(i int) bool { return i < 0 || i >= len(toks) || toks[i].Kind == token.Mark }
	for i := range toks {
		if !hesitations.Has(toks[i].Text) {
			continue
		}
		if i+1 < len(toks) && (toks[i+1].Kind == token.Numeral || token.NumberWords[toks[i+1].Text] > 0) {
			return WithoutHesitation(slices.Concat(toks[:i], toks[i+1:]))
		}
		if alone(i-1) && alone(i+1) {
			return WithoutHesitation(slices.Concat(toks[:i], toks[min(i+2, len(toks)):]))
		}
	}
	return toks
}

// Lengthened reads "up" behind what fills a glass, and nothing else, as topping it up:
// "soda up", "Soda auf". Elsewhere it says how the drink is served.
func Lengthened(toks []token.Token) []token.Token {
	alone := func(i int) bool { return i < 0 || i >= len(toks) || toks[i].Kind == token.Mark }
	for i := range toks {
		if toks[i].Text != "up" && toks[i].Text != "auf" || i == 0 || !alone(i+1) || toks[i].Kind != token.Word {
			continue
		}
		one := entry.Lengtheners[toks[i-1].Text] && alone(i-2)
		two := i > 1 && alone(i-3) && entry.Lengtheners[toks[i-2].Text+" "+toks[i-1].Text]
		if one || two {
			toks = slices.Clone(toks)
			toks[i].Text = "top"
			return toks
		}
	}
	return toks
}

// Chatter reports whether a word is one that talk goes on with before it comes to a pour.
func Chatter(w string) bool { return chatter.Has(w) }

// opens reports whether a word begins what is said before the first pour.
func opens(w string) bool { return openings.Has(w) || aside.Hail(w) }

// Opening returns how many tokens of a line are talk before its first pour; 0 if it
// begins with none.
func Opening(toks []token.Token) int {
	if len(toks) < 3 || toks[0].Kind != token.Word || !opens(toks[0].Text) || !amountIn(toks) {
		return 0
	}
	i := greeting(toks)
	for i < len(toks) && (opens(toks[i].Text) || chatter.Has(toks[i].Text) || toks[i].Is("!") || toks[i].Is(".") && toks[i-1].Kind == token.Word && !(i+1 < len(toks) && toks[i+1].Glued)) && !entry.StartsMeasure(toks[i:]) {
		i++
	}
	if i == len(toks) || toks[i].Kind == token.Numeral && i+1 < len(toks) && toks[i+1].Kind == token.Mark { // "Well 3 (late)"
		return 0
	}
	return i
}

// greeting returns how many tokens are sentences that are said to somebody, at least one word:
// "sorry wrong msg before. correct is 40 calvados".
func greeting(toks []token.Token) int {
	n := 1
	for n < len(toks) && (aside.Hail(toks[n-1].Text) || addresses.Has(toks[n-1].Text)) {
		end := n - 1
		for end < len(toks) && toks[end].Kind == token.Word {
			end++
		}
		if end+1 >= len(toks) || !toks[end].Is(".") && !toks[end].Is("!") || toks[end+1].Glued {
			break
		}
		n = end + 2
	}
	if n > 1 && n <= len(toks) { // at the first word behind them
		return n - 1
	}
	return 1
}

// amountIn reports whether a line holds a figure with a word or a sign behind it that an
// amount may have.
func amountIn(toks []token.Token) bool {
	for i := range toks {
		if toks[i].Kind == token.Numeral && toks[i].Wrong == "" && (i+1 == len(toks) || !toks[i+1].Is(")")) {
			return true
		}
	}
	return false
}
