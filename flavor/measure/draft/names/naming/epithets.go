package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/pattern"
)

// Words that bars write around the name of a bottle are passed over with a note where they say how fine or
// how old it is, how it is made, where it comes from or of which colour it is, and no bottle of that name is told
// apart by it. What may be tasted, or may harm a guest, is no such word: a name with it is asked.

// beside is a word of a name, or several that belong together, and what it says of a bottle.
type beside struct {
	text string
	says jargon.Epithet
}

// mostJoined is how many words one epithet has at most: "new make", "top of the line".
const mostJoined = 3

// parts parts a name into epithets and other words.
func parts(name string) []beside {
	words := strings.Fields(strings.ToLower(name))
	out := make([]beside, 0, len(words))
	for i := 0; i < len(words); {
		n := min(mostJoined, len(words)-i)
		for n > 1 && jargon.EpithetOf(strings.Join(words[i:i+n], "-")) == jargon.NoEpithet {
			n--
		}
		says := jargon.EpithetOf(strings.Trim(strings.Join(words[i:i+n], "-"), ",;."))
		if says == jargon.NoEpithet && origins[words[i]] {
			says = jargon.Origin
		}
		out = append(out, beside{strings.Join(words[i:i+n], " "), says})
		i += n
	}
	return out
}

// withoutEpithets looks a name up without the words of it that tell its bottle apart least: one after the other, as
// few of them as lead to an ingredient. Of two words that contradict one another the one that tells more is kept: an
// "aged white rum" is a white rum.
func (b *Resolver) withoutEpithets(name string, pl Place) (Found, bool) {
	name, place := fromPlace(name)
	if f, ok := b.ofPlace(name, place, pl); ok {
		return f, true
	}
	words := parts(name)
	if f, ok := b.shaded(words, pl); ok {
		return f, true
	}
	if place != "" {
		return b.barely(name, beside{"from " + place, jargon.Origin}, pl)
	}
	for _, kind := range jargon.Epithets {
		for i, w := range words {
			if w.says != kind || len(words) == 1 {
				continue
			}
			rest := make([]string, 0, len(words))
			for _, o := range slices.Concat(words[:i], words[i+1:]) {
				rest = append(rest, o.text)
			}
			f, ok := b.barely(strings.Join(rest, " "), w, pl)
			if ok && kind == jargon.Colour && f.Infusion != "" {
				f, ok = b.ofColour(words, i, &f, pl)
			}
			if ok {
				return f, true
			}
		}
	}
	return Found{}, false
}

// ofColour returns what is poured where a colour stands beside what was put into a bottle, so that no bottle of
// another colour is: of a "dark & spicy rum" the rum is dark. Without a sign between them the colour may be of what
// was put in, "black pepper rum", and where a bottle of that colour is another one it is asked.
func (b *Resolver) ofColour(words []beside, at int, f *Found, pl Place) (Found, bool) {
	colour := words[at].text
	if shade := jargon.Shade(colour); shade != "" {
		colour = shade
	}
	p, _, ok := b.Named(colour + " " + words[len(words)-1].text)
	if !ok || p == f.Profile {
		return *f, true
	}
	if !pl.allows(p) || at+2 >= len(words) || words[at+1].text != "&" && words[at+1].text != "and" {
		return Found{}, false
	}
	said := make([]string, 0, len(words))
	for i, w := range words[:len(words)-1] {
		if i != at && i != at+1 {
			said = append(said, w.text)
		}
	}
	with, bottle := strings.Join(said, " "), words[len(words)-1].text
	if q, _, ok := b.Named(with + " " + bottle); ok && pl.allows(q) { // "dark and spiced rum"
		return Found{Profile: q, How: flavor.MatchAlias, As: with + " " + bottle, Inferred: true, Dropped: words[at].text + " " + words[at+1].text}, true
	}
	return Found{Profile: p, How: flavor.MatchAlias, As: colour + " " + bottle, Inferred: true, Infusion: with}, true
}

// barely looks up what is left of a name without an epithet. What then may mean several things is asked, and a whole
// kind is not named by its age or origin.
func (b *Resolver) barely(rest string, passed beside, pl Place) (Found, bool) {
	whole := broad[flavor.NormaliseName(rest)]
	f := b.Find(rest, pl)
	if f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid && len(f.Fault.Suggest) > 1 && passed.says <= jargon.Origin && (!whole || strings.Contains(rest, " ")) {
		return Found{Fault: f.Fault}, true
	}
	if !f.Firm() || !pl.allows(f.Profile) || whole && passed.says > jargon.Fineness || !passable(passed, &f) {
		return Found{}, false
	}
	f.Dropped, f.Inferred = strings.TrimSpace(passed.text+" "+f.Dropped), true
	return f, true
}

// passable reports whether an epithet tells no bottle of the class apart from one that was found.
func passable(w beside, f *Found) bool {
	p := f.Profile
	wine := slices.Contains([]flavor.Class{flavor.ClassWine, flavor.ClassSparklingWine, flavor.ClassFortifiedWine, flavor.ClassVinegar}, p.Class)
	switch w.says {
	case jargon.Fineness:
		return true
	case jargon.Making, jargon.Age:
		return p.Base() || wine || w.says == jargon.Age && p.Class == flavor.ClassLiqueur
	case jargon.Origin:
		if p.Class == flavor.ClassRum {
			return jargon.Anywhere(strings.ReplaceAll(strings.TrimPrefix(w.text, "from "), " ", "-"))
		}
		return p.Class != flavor.ClassWhiskey || !f.Inferred
	case jargon.Colour:
		return p.Base()
	case jargon.NoEpithet:
	}
	return false
}

// shaded looks a name up with the words for colours that names of bottles have: "golden tequila".
func (b *Resolver) shaded(words []beside, pl Place) (Found, bool) {
	changed := false
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = w.text
		if shade := jargon.Shade(w.text); shade != "" {
			out[i], changed = shade, true
		}
	}
	if !changed {
		return Found{}, false
	}
	name := strings.Join(out, " ")
	p, _, ok := b.Named(name)
	if !ok || !pl.allows(p) || !p.Base() {
		return Found{}, false
	}
	return Found{Profile: p, How: flavor.MatchAlias, As: name, Inferred: true}, true
}

// comesFrom is where a bottle comes from, behind its name.
var comesFrom = pattern.Of(`(?i)^(.+?)\s+from\s+(?:the\s+)?([\p{L}]+(?:\s+[\p{L}]+)?)$`)

// fromPlace parts a name from the place behind it; empty if there is none.
func fromPlace(name string) (rest, place string) {
	if !strings.Contains(name, " from ") {
		return name, ""
	}
	m := comesFrom.FindStringSubmatch(name)
	if m == nil || jargon.OfPlace(m[2]) == "" {
		return name, ""
	}
	return m[1], m[2]
}

// ofPlace looks up the bottle that is named by the place it comes from: "rum from Jamaica".
func (b *Resolver) ofPlace(name, place string, pl Place) (Found, bool) {
	if place == "" {
		return Found{}, false
	}
	words := strings.Fields(name)
	for i := range words {
		for _, from := range []string{jargon.OfPlace(place), strings.ToLower(place)} {
			n := strings.Join(slices.Concat(words[:i], []string{from}, words[i:]), " ")
			if f := b.plainly(n, pl); f.Firm() && pl.allows(f.Profile) {
				f.Inferred = true
				return f, true
			}
		}
	}
	return Found{}, false
}
