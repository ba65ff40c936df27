package pouring

import (
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// WasWords begin a note on what an amount or a name was before.
var WasWords = vocabulary.Words(`sub subs alt alternatively substitute was were formerly previously originally orig prev old before used not instead replaces replaced down`)

// cutWords say in what a fruit is cut, after "in" or "into": it is the same fruit.
var cutWords = vocabulary.Words(`kawałki kawałkach ćwiartki plastry kousky čtvrtky kolečka кусочки дольки ломтики κομμάτια biter bitar både klyftor Stücke stücke viertel achtel pedaços rodelas trozos pezzi stukken spicchi fette morceaux wedges wedge quarters quarter halves half slices chunks cubes pieces wheels eighths rounds
gajos cuartos trozos rodajas pezzi spicchi dadi cubetti quartiers morceaux tranches rondelles partjes stukjes plakjes pedaços quartos rodelas achtel viertel stücke spalten scheiben`)

// cutInto stand between a fruit and what it is cut in.
var cutInto = vocabulary.Words(`in into en em à a w na на σε i`)

// cutVerbs say that a fruit is cut.
var cutVerbs = vocabulary.Words(`pokrojona pokrojony pokrojone nakrájená nakrájený нарезанный нарезанная κομμένο skåret skuren geachtelt geviertelt halbiert coupé coupée tagliato tagliata cortado cortada troceado troceada gesneden geschnitten cut quartered halved sliced chopped diced`)

// cutLast say behind a fruit that it is cut.
var cutLast = vocabulary.Words(`cut quartered halved chopped diced`)

// CutAt returns how many tokens at the end say how a fruit is cut: "cut in wedges".
func CutAt(toks []token.Token) int {
	n := len(toks)
	if n > 2 && (toks[n-1].Text == "ths" || toks[n-1].Text == "th") && toks[n-2].Kind == token.Numeral { // "cut into 8ths"
		n--
	}
	if n > 2 && toks[n-1].Kind == token.Numeral && (toks[n-2].Text == "in" || toks[n-2].Text == "into") && (n == 3 || cutVerbs.Has(toks[n-3].Text)) {
		return len(toks) - n + min(n-1, 3)
	}
	if n > 1 && cutLast.Has(toks[n-1].Text) && toks[n-2].Kind == token.Word { // "½ lime cut"
		return len(toks) - n + 1
	}
	if n < 3 || !cutWords.Has(toks[n-1].Text) || !cutInto.Has(toks[n-2].Text) {
		return 0
	}
	if n > 3 && cutVerbs.Has(toks[n-3].Text) {
		return 3
	}
	return 2
}

// EndsTopping reports whether a word behind one that tops the drink belongs to it: "top up", "top
// off", which say nothing of how it is served.
func EndsTopping(t *token.Token) bool { return t.Text == "up" || t.Text == "off" }

// VesselAt returns how many tokens at the end say with which ice, or into which
// vessel, a pour goes: "with ice", "to a tin", "over ice in a rocks glass".
func VesselAt(toks []token.Token) int {
	for i := 1; i < len(toks); i++ {
		if last := toks[i-1].Text; i > 1 && (last == "top" || last == "topped" || last == "float" || last == "rinse") && !EndsTopping(&toks[i]) { // "gingr beer top copper mug"
			if s := serving.Read(toks[i:]); len(s.Unknown) == 0 && s.Method == "" && s.States() && s.Conflict == nil {
				return len(toks) - i
			}
		}
		if i == len(toks)-1 {
			break
		}
		switch toks[i].Text {
		case "with", "over", "to", "in", "into", "on":
			rest := toks[i:]
			s := serving.Read(rest)
			last := rest[len(rest)-1].Text
			if len(s.Unknown) == 0 && s.Method == "" && (serving.IceOnly(rest) || s.Glass != "" || last == "tin" || last == "shaker" || last == "glass") {
				return len(rest)
			}
		}
	}
	return 0
}

// FillsUp reports whether a word ends the name of what fills a glass up and is not served up
// itself: "soda up".
func FillsUp(t *token.Token) bool { return t.Kind == token.Word && fillers.Has(t.Text) }

var fillers = vocabulary.Words(`soda tonic cola ale beer lemonade ginger`)

// CutVerb reports whether a word says that a fruit is cut.
func CutVerb(w string) bool { return cutVerbs.Has(w) }
