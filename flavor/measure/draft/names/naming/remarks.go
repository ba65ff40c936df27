package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

// describes reports whether words name what an ingredient is made of, or its kind, and
// nothing more.
func describes(words string, p *flavor.Profile) bool {
	key := flavor.NormaliseName(words)
	if key == flavor.NormaliseName(string(p.Class)) {
		return true
	}
	return slices.ContainsFunc(p.Materials, func(m flavor.MaterialShare) bool { return flavor.NormaliseName(m.Material) == key })
}

// tailWords are what bars write behind a name of where a bottle stands, how cold it is and
// when it goes in, none of which changes what is poured.
var tailWords = token.Words(`from fr ex out off the our my in on at freezer fridge siphon syphon tap line gun rail well shelf bar bottle keg v very so really extra cold chilled ice-cold icy warm hot last first finish end to too
again pls please obv obviously ofc if poss possible you have got any will do only just straight kept stored batch today tonight frozen room temp temperature good stuff decent fancy nice proper choice choosing preference liking whatever
vs vsop doc docg dop igp aoc reserva riserva pasada fine chill freddo freddissimo frío fría frais froid fraîche kalt gekühlt`)

// SaysWhere reports whether a word says of a bottle where it stands, how cold it is or when it
// goes in, and not what it is.
func SaysWhere(w string) bool { return tailWords[w] }

// mostBeforeMate is the most mL of something behind which a "mate" is said to somebody, as in "15
// agave mate", and is no tea that it flavours; common practice.
const mostBeforeMate = 45

// withoutTail looks a name up without such words behind it, which are then said to be
// passed over.
func (b *Resolver) withoutTail(name string, pl Place) (Found, bool) {
	words := strings.Fields(name)
	says := func(w string) bool {
		w = strings.ToLower(strings.Trim(w, ",;.!"))
		return tailWords[w] || w == "mate" && pl.ML() <= mostBeforeMate
	}
	for n := len(words) - 1; n > 0 && says(words[n]); n-- {
		f := b.plainly(strings.Join(words[:n], " "), pl)
		if f.Firm() && pl.allows(f.Profile) {
			f.Dropped, f.Inferred = strings.Join(words[n:], " "), true
			return f, true
		}
	}
	return Found{}, false
}
