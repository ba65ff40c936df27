package title

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// mostHeading is the most words of the heading of a remark.
const mostHeading = 3

// HeadsRemark reports whether a line has a heading that says nothing of making or pouring,
// and no number: "common mistake: too much ice".
func HeadsRemark(toks []token.Token) bool {
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(":") })
	if colon < 1 || colon > mostHeading || colon+1 == len(toks) || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return false
	}
	if eggs := toks[colon+1:]; slices.ContainsFunc(eggs, func(t token.Token) bool { return t.Text == "egg" || t.Text == "ew" }) && len(eggs) <= mostEgg { // "Sam: and an egg white"
		return false
	}
	if n, _ := pouring.TailAt(toks); n > 0 { // "mulberry liqueur: drizzle"
		return false
	}
	return !slices.ContainsFunc(toks[:colon], func(t token.Token) bool {
		return t.Kind != token.Word || serving.Known(t.Text) || serving.StepVerbs[t.Text] || serving.Fillers[t.Text] || pouring.Verbs[t.Text] != "" || entry.PouringVerb(t.Text) ||
			joining.Roles[t.Text] || label.Words[t.Text] != label.None || entry.UnitWordsAt([]token.Token{t})
	})
}

// Notes reports whether a line is a note by its heading, "bowl note: x12 in the silver one", and
// pours nothing.
func Notes(toks []token.Token) bool {
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(":") })
	if colon == 2 && label.Words[toks[0].Text+" "+toks[1].Text] != label.None { // "top note: rose water mist"
		return false
	}
	return colon > 1 && colon <= mostHeading && label.Words[toks[colon-1].Text] == label.Remark && !entry.UnitIn(toks[colon:]) && !entry.TellsToPour(toks[colon:])
}

// mostEgg is the most words that say to put an egg in, and no more.
const mostEgg = 4
