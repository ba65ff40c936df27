package likeliest

import (
	"strings"

	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/token"
)

// standIns are bottles that everybody knows in their place.
var standIns = []string{"vodka", "gin"}

// MayPour reports whether a word that leads the pours of a line and names nothing known may be
// poured as well: "tq 2 gf soda 4 lime .5 pinch salt" is a drink called tq, or its amounts stand
// behind the names. With a bottle in its place the text holds more pours then.
func MayPour(text string, name entry.Span, pours int, b *naming.Book) bool {
	word := text[name.Start:name.End]
	if strings.ContainsAny(word, " \t\n") || len(b.Mentioned(word)) > 0 {
		return false
	}
	for _, known := range standIns {
		list, ok := parted(text[:name.Start]+known+text[name.End:], b)
		if ok && len(list.pours) > pours {
			return true
		}
	}
	return false
}

// led is where the name of the drink stands if it leads the pours of its line without a sign.
func (s *script) led(r *reading) (entry.Span, bool) {
	t := r.titled
	if t == nil || s.ends(t.to) || s.toks[t.to].Kind == token.Mark || s.sign(t.from-1, "\"“„«") {
		return entry.Span{}, false
	}
	return s.at(t.from, t.to), true
}
