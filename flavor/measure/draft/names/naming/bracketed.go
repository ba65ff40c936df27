package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// What stands in brackets behind a name says it by another word, "caraway (kümmel)", or
// what to take for it, "house cordial (treat as lime cordial)".

// pointsAt begins what is to be taken for the name before the bracket.
var pointsAt = pattern.Of(`(?i)^(?:out|not in|no longer|finished|86)?[,:;]?\s*(?:just\s+|so\s+)?(?:sub(?:bed|bing)?(?:\s+(?:with|for|in))?|use|using|used|treat(?:ed)?\s+(?:it\s+)?as|count(?:ed)?\s+as|read\s+as|take\s+as|swap(?:ped)?\s+for|same\s+as|basically|really|i\.?e\.?|aka|=)\s+(.+)$`)

// offers begins what would do as well as the name before the bracket.
var offers = pattern.Of(`(?i)^(?:or|of|oder|ou|eller)\s+(.+)$`)

// bracketed looks up a name that a bracket says by another word; false if it does not.
func (b *Resolver) bracketed(name string, pl Place) (Found, bool) {
	open, end := strings.IndexByte(name, '('), strings.LastIndexByte(name, ')')
	if open < 0 || end < open {
		return Found{}, false
	}
	inside, behind := strings.TrimSpace(name[open+1:end]), strings.TrimSpace(name[end+1:])
	rest := token.OneLine(name[:open] + " " + behind)
	if inside == "" || rest == "" || pinnedBy(inside) {
		return Found{}, false
	}
	if m := pointsAt.FindStringSubmatch(inside); m != nil {
		return b.instead(m[1], rest, pl)
	}
	if m := offers.FindStringSubmatch(inside); m != nil {
		f, other := b.Find(rest, pl), b.Find(m[1], pl)
		if !f.Firm() || !other.Firm() {
			return Found{}, false
		}
		f.Dropped = "(" + inside + ")"
		return f, true
	}
	if behind != "" { // "lapsang (smoked tea) syrup"
		if p, _, ok := b.Named(inside + " " + behind); ok && pl.allows(p) {
			return Found{Profile: p, How: flavor.MatchAlias, As: inside + " " + behind, Inferred: true, Dropped: strings.TrimSpace(name[:open])}, true
		}
		return Found{}, false
	}
	if !saysLittle(inside) {
		if f, ok := b.turned(rest, inside, pl); ok { // "purée (papaya)"
			return f, true
		}
	}
	if f, ok := b.saidAgain(rest, inside, pl); ok {
		return f, true
	}
	p, _, ok := b.Named(inside)
	if full := jargon.Short(flavor.NormaliseName(inside)); !ok && full != "" {
		p, _, ok = b.Named(full)
	}
	if !ok || !pl.allows(p) {
		return Found{}, false
	}
	f := b.Find(rest, pl)
	switch {
	case f.Firm() && f.Profile == p:
		return Found{Profile: p, How: flavor.MatchAlias, As: inside}, true
	case f.Firm() && f.Profile.Class == p.Class && explains(rest, f.Profile, p):
		return b.instead(inside, rest, pl)
	case f.Firm(), jargon.ChangesBottle(rest), f.Fault != nil && f.Fault.Kind != flavor.ErrUnknown:
		return Found{}, false
	}
	return b.instead(inside, rest, pl)
}

// saidAgain looks up a name of another tongue that a bracket says in one more word: "jugo de limón
// verde (lima)", or of which it says which fruit is meant, "limón (lime)".
func (b *Resolver) saidAgain(rest, inside string, pl Place) (Found, bool) {
	key := flavor.NormaliseName(rest)
	fruits := tongue.Fruits(key)
	if tongue.Name(key) == "" && fruits == nil {
		return Found{}, false
	}
	g := b.Find(inside, pl)
	if !g.Firm() || g.Fault != nil {
		return Found{}, false
	}
	if f := b.Find(rest, pl); f.Firm() && f.Profile == g.Profile {
		return f, true
	}
	if slices.Contains(fruits, g.Profile.Name) {
		return b.instead(inside, rest, pl)
	}
	return Found{}, false
}

// explains reports whether a bracket says in English what is written before it in another tongue, or
// which of the sodas is meant: "gaseosa (lemon lime soda)", "limonade (sparkling lemonade)".
func explains(rest string, before, inside *flavor.Profile) bool {
	_, foreign := tongue.English(flavor.NormaliseName(rest))
	return foreign || tongue.Name(flavor.NormaliseName(rest)) != "" || before.Carbonated && inside.Carbonated && flavor.NormaliseName(rest) != flavor.NormaliseName(before.Name)
}

// pinnedBy reports whether brackets say a class, or that the name is meant as it stands.
func pinnedBy(inside string) bool {
	_, class := pin("x (" + inside + ")")
	return class != ""
}

// instead looks up what a bracket says is to be taken for the name before it.
func (b *Resolver) instead(inside, rest string, pl Place) (Found, bool) {
	f := b.Find(strings.TrimSpace(inside), pl)
	if !f.Firm() {
		return Found{}, false
	}
	f.Dropped, f.Inferred = rest, true
	return f, true
}
