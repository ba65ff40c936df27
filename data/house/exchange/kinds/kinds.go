// Package kinds finds the ingredient that a bottle on a stock list is, from its row: the
// cell for the ingredient, the heading above it, and its name.
package kinds

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/pattern"
)

// Kind is the ingredient that a bottle is read as.
type Kind struct {
	Profile *flavor.Profile // nil if unknown
	// Supposed means that the row is ambiguous and that this is the most likely
	// ingredient.
	Supposed bool
	Why      string   // the words that it was found by
	Others   []string // names of other candidates, the nearest first
}

// Listed adds a list of all profiles to a finder that cannot list them itself.
type Listed struct {
	naming.Finder
	All []*flavor.Profile
}

// Profiles returns all profiles that may be found.
func (k Listed) Profiles() []*flavor.Profile { return k.All }

// maxOthers is how many other candidates are offered.
const maxOthers = 5

// Finder finds the ingredients of bottles. A specific name decides it; a wider word, such
// as amaro, is read as the usual ingredient of its class and marked as Supposed.
type Finder struct {
	finder   naming.Finder
	profiles []*flavor.Profile
	classes  map[string]flavor.Class // by normalised word
}

// New returns a finder that looks names up with f, which may list its profiles (see
// [Listed]). With a nil f it finds nothing.
func New(f naming.Finder) *Finder {
	k := &Finder{finder: f, classes: map[string]flavor.Class{}}
	for _, c := range flavor.Classes() {
		k.classes[flavor.NormaliseName(string(c))] = c
	}
	// Further words for classes. Common practice, no source.
	for word, c := range map[string]flavor.Class{"whisky": flavor.ClassWhiskey, "amari": flavor.ClassAmaro, "digestif": flavor.ClassAmaro, "agave": flavor.ClassAgaveSpirit,
		"bitters": flavor.ClassCocktailBitters, "cordial": flavor.ClassLiqueur, "mixer": flavor.ClassSoda, "soft drink": flavor.ClassSoda, "sparkling": flavor.ClassSparklingWine, "fortified": flavor.ClassFortifiedWine} {
		k.classes[flavor.NormaliseName(word)] = c
	}
	if all, ok := f.(interface{ Profiles() []*flavor.Profile }); ok {
		k.profiles = all.Profiles()
	}
	if both, ok := f.(Listed); ok {
		k.finder = both.Finder // may implement naming.Placer
	}
	return k
}

// Knows reports whether the finder has any names.
func (k *Finder) Knows() bool { return k.finder != nil }

// Named returns the ingredient whose name or alias is exactly written.
func (k *Finder) Named(written string) (p *flavor.Profile, how flavor.MatchHow, ok bool) {
	if k.finder == nil || strings.TrimSpace(written) == "" {
		return nil, "", false
	}
	if placer, can := k.finder.(naming.Placer); can {
		return placer.Named(written)
	}
	p, m, err := k.finder.Resolve(written)
	return p, m.How, err == nil && m.How != flavor.MatchFuzzy
}

// wide reports whether the name of a profile is also a word for several ingredients of
// its class, so that it does not decide between them.
func (k *Finder) wide(written string, p *flavor.Profile, how flavor.MatchHow) bool {
	if how != flavor.MatchAlias {
		return false
	}
	asked := strings.Fields(flavor.NormaliseName(written))
	kin := 0
	for _, other := range k.profiles {
		if other.Class == p.Class && holdsAll(strings.Fields(flavor.NormaliseName(other.Name)), asked) {
			kin++
		}
	}
	return kin > 1
}

func holdsAll(words, asked []string) bool {
	return !slices.ContainsFunc(asked, func(w string) bool { return !slices.Contains(words, w) })
}

// Stated returns the ingredient that a cell or a user names; nil if there is none.
func (k *Finder) Stated(written string) *Kind {
	p, how, ok := k.Named(written)
	if !ok && k.finder != nil {
		q, m, err := k.finder.Resolve(written)
		p, how, ok = q, m.How, err == nil
	}
	if !ok {
		return nil
	}
	kind := &Kind{Profile: p, Why: written}
	if how == flavor.MatchFuzzy || k.wide(written, p, how) {
		kind.Supposed, kind.Others = true, k.others(written, p)
	}
	return kind
}

// others returns the other ingredients of the class that a word may mean.
func (k *Finder) others(written string, p *flavor.Profile) []string {
	var out []string
	take := func(name string) {
		if name != p.Name && !slices.Contains(out, name) && len(out) < maxOthers {
			out = append(out, name)
		}
	}
	if placer, ok := k.finder.(naming.Placer); ok {
		for _, name := range placer.Suggest(written, func(q *flavor.Profile) bool { return q.Class == p.Class }) {
			take(name)
		}
	}
	asked := strings.Fields(flavor.NormaliseName(written))
	for _, q := range k.profiles {
		if q.Class == p.Class && (k.isClass(written) || holdsAll(strings.Fields(flavor.NormaliseName(q.Name)), asked)) {
			take(q.Name)
		}
	}
	return out
}

var kindMarks = pattern.Of(`[/:;>|,()&+\-–—]+`)

// Find returns the ingredient of a bottle, from the cell for the ingredient, the wider
// word for it or the heading above it, and its name.
func (k *Finder) Find(kind, group, name string) *Kind {
	var within flavor.Class
	var general *Kind
	for _, said := range []string{kind, group} {
		if found := k.ofWords(said); found != nil {
			if !found.Supposed {
				return found
			}
			if general == nil {
				general = found
			}
		}
		if within == "" {
			within = k.ClassOf(said)
		}
	}
	if general != nil && within == "" {
		within = general.Profile.Class
	}
	words := wordsOfName(name)
	if found := k.inName(words, kindWords(kind, group), within); found != nil {
		return found
	}
	if general != nil {
		return general
	}
	if said := strings.TrimSpace(kind); said != "" {
		if found := k.Stated(said); found != nil { // a misspelling
			return found
		}
	}
	return k.foreign(words, kindWords(kind, group), within)
}

// foreign looks for an ingredient in a name of another tongue, put into English: in all that was
// translated of it, since a part of that is another thing, the fruit of a liqueur. It is always
// supposed, and so shown to whoever imports the list.
func (k *Finder) foreign(words, kindWords []string, within flavor.Class) *Kind {
	key := strings.Join(words, " ")
	readings := tongue.Readings(key)
	if name := tongue.Name(key); name != "" {
		readings = append([]string{name}, readings...)
	}
	for _, english := range readings {
		said := strings.Fields(flavor.NormaliseName(english))
		translated := slices.DeleteFunc(slices.Clone(said), func(w string) bool { return slices.Contains(words, w) })
		if found := k.inName(said, kindWords, within); found != nil && holdsAll(strings.Fields(found.Why), translated) {
			found.Supposed, found.Why = true, key
			return found
		}
	}
	return nil
}

// ofWords finds the ingredient that a cell names, as a whole or in one of the parts
// between separators, the last part first: "Spirits / Gin" is gin.
func (k *Finder) ofWords(said string) *Kind {
	if strings.TrimSpace(said) == "" {
		return nil
	}
	parts := append([]string{said, kindMarks.ReplaceAllString(said, " ")}, reversed(kindMarks.Split(said, -1))...)
	for _, part := range parts {
		p, how, ok := k.Named(part)
		if !ok {
			continue
		}
		found := &Kind{Profile: p, Why: strings.TrimSpace(said)}
		if k.wide(part, p, how) || k.isClass(part) && how == flavor.MatchAlias {
			found.Supposed, found.Others = true, k.others(part, p)
		}
		return found
	}
	return nil
}

func reversed(parts []string) []string {
	out := slices.Clone(parts)
	slices.Reverse(out)
	return out
}

func (k *Finder) isClass(word string) bool {
	_, ok := k.classes[flavor.NormaliseName(word)]
	return ok
}

// ClassOf returns the class that a word means, or "".
func (k *Finder) ClassOf(said string) flavor.Class {
	for _, part := range append([]string{said}, reversed(kindMarks.Split(said, -1))...) {
		if c, ok := k.classes[flavor.NormaliseName(part)]; ok {
			return c
		}
		if p, _, ok := k.Named(part); ok {
			return p.Class
		}
	}
	return ""
}

var sizeInName = pattern.Of(`(?i)\b[0-9]+(?:[.,][0-9]+)?\s*(?:ml|cl|l|lt|ltr|litre|liter|oz|g|kg)\b|\b[0-9]+(?:[.,][0-9]+)?\s*%`)

func wordsOfName(name string) []string {
	return strings.Fields(flavor.NormaliseName(sizeInName.ReplaceAllString(name, " ")))
}

func kindWords(cells ...string) []string {
	var out []string
	for _, c := range cells {
		out = append(out, strings.Fields(flavor.NormaliseName(c))...)
	}
	return out
}

// mostWords is the most words of a name that are looked up together.
const mostWords = 5

// inName looks for an ingredient in a name: the longest run of words that names one,
// alone or followed by a word of the ingredient's cell; of equally long runs the last.
// The result is Supposed, since a label can carry any name, unless the whole name is that
// of the ingredient: no label says nothing else.
func (k *Finder) inName(words, kindWords []string, within flavor.Class) *Kind {
	for n := min(len(words), mostWords); n > 0; n-- {
		for from := len(words) - n; from >= 0; from-- {
			stretch := strings.Join(words[from:from+n], " ")
			tries := []string{stretch}
			for _, w := range kindWords {
				if !slices.Contains(words[from:from+n], w) {
					tries = append(tries, stretch+" "+w)
				}
			}
			for _, try := range reversed(tries) {
				p, how, ok := k.Named(try)
				if !ok || within != "" && p.Class != within {
					continue
				}
				if n == len(words) && try == stretch && how == flavor.MatchExact {
					return &Kind{Profile: p, Why: try}
				}
				// A proper name says which ingredient it is; a word for a class only says
				// what kind.
				return &Kind{Profile: p, Supposed: true, Why: try, Others: k.others(try, p)}
			}
		}
	}
	return nil
}

// Says reports whether a name says what kind a bottle is: in a word of a name of the kind.
func Says(name string, kind *flavor.Profile) bool {
	said := wordsOfName(name)
	for _, known := range append([]string{kind.Name}, kind.Aliases...) {
		if sharedWords(known, said, alike) > 0 {
			return true
		}
	}
	return false
}

// Near returns suggestions for a kind that is not known: names that share a word, or a slip of
// one, with what is written or with the name on the bottle, those before that share the most
// with that name. What is only spelt a little alike is another thing: no juice for the word on
// a bottle of liqueur, since whoever taps it is told of the wrong allergens.
func (k *Finder) Near(written, name string) []string {
	placer, ok := k.finder.(naming.Placer)
	if !ok {
		return nil
	}
	var near []string
	for _, said := range []string{written, name} {
		if len(near) == 0 && strings.TrimSpace(said) != "" {
			near = slices.Clone(placer.Suggest(said, nil))
		}
	}
	onLabel := wordsOfName(name)
	said := slices.Concat(onLabel, strings.Fields(flavor.NormaliseName(written)))
	near = slices.DeleteFunc(near, func(n string) bool { return sharedWords(n, said, alike) == 0 })
	near = k.ofStyle(onLabel, near)
	same := func(a, b string) bool { return a == b }
	slices.SortStableFunc(near, func(a, b string) int { return sharedWords(b, onLabel, same) - sharedWords(a, onLabel, same) })
	return near
}

// styles are words on labels of aperitif wines and vermouths that say which of them it is, where
// nothing says that it is one. Common practice, no source.
var styles = []string{"blanc", "bianco", "rosso", "rouge", "rose", "rosato", "americano"}

// ofStyle puts the aperitif wines and vermouths whose own names have a style on the label before
// what is near by its letters.
func (k *Finder) ofStyle(onLabel, near []string) []string {
	var out []string
	for _, p := range k.profiles {
		if p.Class != flavor.ClassAromatisedWine && p.Class != flavor.ClassVermouth || len(out) == maxOthers {
			continue
		}
		if slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(name string) bool {
			words := strings.Fields(flavor.NormaliseName(name))
			return len(words) == 2 && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(styles, w) && slices.Contains(onLabel, w) })
		}) {
			out = append(out, p.Name)
		}
	}
	for _, n := range near {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// sharedWords returns how many words of a suggestion are words of what was said.
func sharedWords(suggested string, said []string, are func(a, b string) bool) (n int) {
	for _, w := range strings.Fields(flavor.NormaliseName(suggested)) {
		if slices.ContainsFunc(said, func(x string) bool { return are(x, w) }) {
			n++
		}
	}
	return n
}

// alike reports whether a word is another or a slip of it.
func alike(word, known string) bool { return word == known || measure.OneSlip(word, known) }
