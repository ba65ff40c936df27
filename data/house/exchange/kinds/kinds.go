// Package kinds finds which ingredient a bottle is, by what a list says of it: the
// cell for its kind, the heading that it stands under, and its name.
package kinds

import (
	"regexp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/naming"
)

// Kind is what a bottle was taken for.
type Kind struct {
	Profile *flavor.Profile // nil if nothing is known
	// Supposed: the file leaves open which kind it is, and this is the likeliest.
	Supposed bool
	Why      string   // what it was taken from
	Others   []string // names of what else it may be, the nearest first
}

// Listed is a finder beside all that it may find, for one that lists nothing.
type Listed struct {
	naming.Finder
	All []*flavor.Profile
}

// Profiles returns all that may be found.
func (k Listed) Profiles() []*flavor.Profile { return k.All }

// maxOthers is how many other kinds are offered for one.
const maxOthers = 5

// Finder finds what bottles are. A name that says which it is settles it; a
// wider word, such as amaro, is taken for the usual one of its kind and marked as
// supposed.
type Finder struct {
	finder   naming.Finder
	profiles []*flavor.Profile
	classes  map[string]flavor.Class // by the normalised word
}

// New returns a finder of kinds over one of names, which may list all that it finds
// (see [Listed]). A nil one knows nothing.
func New(f naming.Finder) *Finder {
	k := &Finder{finder: f, classes: map[string]flavor.Class{}}
	for _, c := range flavor.Classes() {
		k.classes[flavor.NormaliseName(string(c))] = c
	}
	// Other words for a class. Common practice, no source.
	for word, c := range map[string]flavor.Class{"whisky": flavor.ClassWhiskey, "amari": flavor.ClassAmaro, "digestif": flavor.ClassAmaro, "agave": flavor.ClassAgaveSpirit,
		"bitters": flavor.ClassCocktailBitters, "cordial": flavor.ClassLiqueur, "mixer": flavor.ClassSoda, "soft drink": flavor.ClassSoda, "sparkling": flavor.ClassSparklingWine, "fortified": flavor.ClassFortifiedWine} {
		k.classes[flavor.NormaliseName(word)] = c
	}
	if all, ok := f.(interface{ Profiles() []*flavor.Profile }); ok {
		k.profiles = all.Profiles()
	}
	if both, ok := f.(Listed); ok {
		k.finder = both.Finder // which may be a placer
	}
	return k
}

// Knows reports whether there is anything to find.
func (k *Finder) Knows() bool { return k.finder != nil }

// Named returns what is called exactly that, by its name or another.
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

// wide reports whether a word that names a profile is also what several of its
// class are called, so that it does not say which.
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

// Stated is the kind that a cell or a person writes. It is nil if nobody is called
// that.
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

// others offers what else of its class a word may mean.
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

var kindMarks = regexp.MustCompile(`[/:;>|,()&+\-–—]+`)

// Find is what a bottle is by all that its row says: the kind's cell, the wider
// word for it, the heading that it stands under, and its name.
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
		if found := k.Stated(said); found != nil { // a slip of the pen
			return found
		}
	}
	return nil
}

// ofWords is the kind that a cell states: as it stands, or one of the parts that
// marks divide it into, the last first: "Spirits / Gin" is gin.
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

// ClassOf is the class that a wider word means, empty if none.
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

var sizeInName = regexp.MustCompile(`(?i)\b[0-9]+(?:[.,][0-9]+)?\s*(?:ml|cl|l|lt|ltr|litre|liter|oz|g|kg)\b|\b[0-9]+(?:[.,][0-9]+)?\s*%`)

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

// mostWords is the most words of a stretch of a name that is looked up.
const mostWords = 5

// inName looks for a kind in a name: the longest stretch of its words that is one,
// by itself or with a word of the kind's cell after it, and of those the last.
// What a name says is supposed: a label may be called anything.
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
				p, _, ok := k.Named(try)
				if !ok || within != "" && p.Class != within {
					continue
				}
				// A word of one's own says which; a class's word only what kind of thing.
				return &Kind{Profile: p, Supposed: true, Why: try, Others: k.others(try, p)}
			}
		}
	}
	return nil
}

// Near offers names for what nobody is called.
func (k *Finder) Near(written string) []string {
	if placer, ok := k.finder.(naming.Placer); ok && strings.TrimSpace(written) != "" {
		return placer.Suggest(written, nil)
	}
	return nil
}
