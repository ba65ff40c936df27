package entry

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// PouredIn returns the first amount with its unit in words that are no pour, empty
// if they hold none: an amount is never passed over.
func PouredIn(toks []token.Token) string {
	for i := range toks {
		if w := measuredIn(toks[i:]); w != "" {
			return w
		}
		if toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
			continue
		}
		if IceFollows(toks[i+1:]) || i > 0 && serving.IceOnly(toks[:i]) {
			continue
		}
		if u, n := UnitAt(toks[i+1:]); n > 0 && i+1+n < len(toks) && toks[i+1+n].Kind == token.Word && !serving.SizeOfGlass(toks[i:]) && (u.Jigger() || u.Spoon() || u == flavor.Dash || u == flavor.PartUnit) {
			return toks[i].Text + " " + toks[i+1].Text + " " + toks[i+1+n].Text
		}
	}
	return ""
}

// measuredIn returns a measure that is no unit, with its number and "of", at the start of words; empty if
// none stands there: "1½ wine-glass of port", "a quart of water".
func measuredIn(toks []token.Token) string {
	if len(toks) < 4 || toks[0].Kind != token.Numeral && toks[0].Text != "a" && toks[0].Text != "an" || IceFollows(toks[1:]) {
		return ""
	}
	if m, ok := gauge.At(toks[1:]); !ok || m.Unit == "" || gauge.Little(toks[1].Text) || toks[2].Text != "of" || toks[3].Kind != token.Word {
		return ""
	}
	return toks[0].Text + " " + toks[1].Text + " of " + toks[3].Text
}

// mostOfIce is the most words that say how much ice there is.
const mostOfIce = 4

// IceFollows reports whether the words behind a number say how much ice it is: "1 scoop
// of ice", "120 g ice". Ice is no pour.
func IceFollows(toks []token.Token) bool {
	for n := 1; n <= min(mostOfIce, len(toks)) && toks[n-1].Kind == token.Word; n++ {
		words := toks[:n]
		if _, unit := UnitAt(words); unit > 0 {
			words = words[unit:]
		}
		if len(words) > 0 && serving.IceOnly(words) {
			return true
		}
	}
	return false
}

// CountedIn returns the first number before a word that is not known, or behind one with
// nothing that it may count, empty if there is none.
func CountedIn(toks []token.Token, unknown []token.Token) string {
	if w := saidBehind(toks, unknown); w != "" {
		return w
	}
	if w := namedBefore(toks, unknown); w != "" {
		return w
	}
	for i := range toks[1:] {
		if toks[i].Kind == token.Numeral && !IceFollows(toks[i+1:]) && !(i > 0 && serving.IceOnly(toks[:i])) && !serving.Times(toks[i+1].Text) && slices.ContainsFunc(unknown, func(t token.Token) bool { return t.Start == toks[i+1].Start }) {
			return toks[i].Text + " " + toks[i+1].Text
		}
	}
	return ""
}

// saidBehind returns the first number that stands behind a word that is not known and counts
// nothing: "prosecco maybe 90 in a wine glass".
func saidBehind(toks []token.Token, unknown []token.Token) string {
	for i := 1; i+1 < len(toks); i++ {
		if toks[i].Kind != token.Numeral || toks[i].Value < leastSaid || toks[i+1].Kind == token.Word && !token.Joins[toks[i+1].Text] {
			continue
		}
		at := i - 1
		if at > 0 && (token.LooseWords[toks[at].Text] || toks[at].Text == "maybe") {
			at--
		}
		if !token.Joins[toks[at].Text] && slices.ContainsFunc(unknown, func(t token.Token) bool { return t.Start == toks[at].Start }) {
			return toks[at].Text + " " + toks[i].Text
		}
	}
	return ""
}

// namedBefore returns the first number that stands right behind a word that is not known, and
// before what says how the drink is served: "hot wtr 4 mug".
func namedBefore(toks []token.Token, unknown []token.Token) string {
	for i := 1; i+1 < len(toks); i++ {
		if toks[i].Kind == token.Numeral && toks[i-1].Kind == token.Word && toks[i+1].Kind == token.Word && serving.Known(toks[i+1].Text) && !serving.Times(toks[i+1].Text) &&
			slices.ContainsFunc(unknown, func(t token.Token) bool { return t.Start == toks[i-1].Start }) {
			return toks[i-1].Text + " " + toks[i].Text
		}
	}
	return ""
}

// leastSaid is the smallest number of millilitres of what is poured last; common practice.
const leastSaid = 15
