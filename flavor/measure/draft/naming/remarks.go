package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
)

// explained looks up a name that brackets say once more, in other words or to the point:
// "crème de pêche (peach liqueur)", "lapsang (smoked tea) syrup", "amaretto (almond)". A
// name that is not known means what its brackets name. Two things that are known and
// differ are no explanation.
func (b *Book) explained(before, inside, after string, pl Place) (Found, bool) {
	before, after = strings.TrimSpace(before), strings.TrimSpace(after)
	if changesBottle(inside) || changesBottle(before) {
		return Found{}, false
	}
	outer := b.Find(strings.TrimSpace(before+" "+after), pl)
	if outer.Firm() && after == "" && describes(inside, outer.Profile) {
		outer.Inferred = true
		return outer, true
	}
	inner := b.plainly(strings.TrimSpace(inside+" "+after), pl)
	if !inner.Firm() || !pl.allows(inner.Profile) {
		return Found{}, false
	}
	switch {
	case outer.Firm() && outer.Infusion == "" && outer.Profile != inner.Profile:
		return Found{}, false
	case !outer.Firm() && (outer.Fault == nil || outer.Fault.Kind != flavor.ErrUnknown || b.Mentions(before)):
		return Found{}, false
	}
	inner.How, inner.Inferred = flavor.MatchAlias, true
	return inner, true
}

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
var tailWords = token.Words(`from fr ex out off the our my in on at freezer fridge siphon syphon tap gun rail well shelf bar bottle keg v very so really extra cold chilled ice-cold icy warm hot last first finish end to too
again pls please obv obviously ofc if poss possible you have got any will do only just straight kept stored batch today tonight frozen room temp temperature good stuff decent fancy nice proper
chill freddo freddissimo frío fría frais froid fraîche kalt gekühlt`)

// withoutTail looks a name up without such words behind it, which are then said to be
// passed over.
func (b *Book) withoutTail(name string, pl Place) (Found, bool) {
	words := strings.Fields(name)
	for n := len(words) - 1; n > 0 && tailWords[strings.ToLower(strings.Trim(words[n], ",;.!"))]; n-- {
		f := b.plainly(strings.Join(words[:n], " "), pl)
		if f.Firm() && pl.allows(f.Profile) {
			f.Dropped, f.Inferred = strings.Join(words[n:], " "), true
			return f, true
		}
	}
	return Found{}, false
}
