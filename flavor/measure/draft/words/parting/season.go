package parting

import (
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// Seasoning is one of the seasonings that stand in a row, of which nobody says how much.
type Seasoning struct {
	Name string
	At   entry.Span
}

// seasonings are what seasons a savoury drink by the pinch, by the words for it.
var seasonings = map[string][]string{
	"salt": {"salt"}, "sea salt": {"salt"}, "celery salt": {"celery salt"}, "pepper": {"black pepper"}, "black pepper": {"black pepper"}, "cracked pepper": {"black pepper"},
	"white pepper": {"white pepper"}, "ground pepper": {"black pepper"}, "s&p": {"salt", "black pepper"}, "cayenne": {"cayenne"}, "cayenne pepper": {"cayenne"}, "paprika": {"paprika"}, "smoked paprika": {"smoked paprika"},
}

// Seasonings returns the seasonings that tokens name, in a row or with signs between them,
// and nil if they name anything else.
func Seasonings(toks []token.Token) []Seasoning {
	var out []Seasoning
	for i := 0; i < len(toks); {
		t := &toks[i]
		if t.Kind == token.Mark && len(out) > 0 || t.Text == "and" || t.Text == "&" {
			i++
			continue
		}
		n := 1
		names := seasonings[t.Text]
		if i+1 < len(toks) {
			if two := seasonings[t.Text+" "+toks[i+1].Text]; two != nil {
				names, n = two, 2
			}
		}
		if names == nil {
			return nil
		}
		for _, name := range names {
			out = append(out, Seasoning{name, entry.Span{Start: t.Start, End: toks[i+n-1].End}})
		}
		i += n
	}
	return out
}

// seasonedFrom reports whether several seasonings in a row follow a pour without a sign: "3
// hot sauce celery salt pepper".
func seasonedFrom(toks []token.Token, i, from int) bool {
	if i < from+2 || toks[i-1].Kind == token.Mark || !endsAmount(toks, i, from) && !(entry.StartsAmount(toks[from:]) && Named(toks[from:i])) {
		return false
	}
	return len(Seasonings(upToMark(toks[i:]))) > 1
}
