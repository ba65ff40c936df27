package entry

import (
	"slices"

	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// smallMeasures are words for a little of something, beside the units.
var smallMeasures = vocabulary.Words(`splash squeeze spoon spoonful drizzle touch hint pinch`)

// gathers are measures that as often say what a text is about, "batch no. 4", or are other words
// of a sentence, "can someone".
var gathers = vocabulary.Words(`batch bottle glass bottles glasses can cans`)

// TellsToPour reports whether words hold one that tells to pour something, or a measure: what
// else they say may be poured then, though nobody knows it.
func TellsToPour(toks []token.Token) bool {
	return slices.ContainsFunc(toks, func(t token.Token) bool {
		if t.Kind != token.Word {
			return false
		}
		verb := pouring.AfterVerb(t.Text) || pouring.Verbs[t.Text] != "" || t.Text == "muddle" || addVerbs.Has(t.Text)
		return verb || smallMeasures.Has(t.Text) || serving.OtherMeasures[t.Text] && !gathers.Has(t.Text)
	})
}

// addVerbs tell that something goes into a drink.
var addVerbs = vocabulary.Words(`add adds added adding pour pours poured pouring use uses using mix mixed combine float floats muddled squeezed replace replaces swap swaps`)
