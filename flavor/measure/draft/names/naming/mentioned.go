package naming

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// EndsInName reports whether words end in the name of an ingredient.
func (b *Resolver) EndsInName(text string) bool {
	words := strings.Fields(text)
	for n := 1; n <= LongestName && n < len(words); n++ {
		if f := b.Find(strings.Join(words[len(words)-n:], " "), Place{Unit: flavor.Ounce}); f.Firm() {
			return true
		}
	}
	return false
}

// Mentions reports whether words hold the name of an ingredient.
func (b *Resolver) Mentions(text string) bool {
	words := strings.Fields(text)
	for i := range words {
		for n := 1; n <= LongestName && i+n <= len(words); n++ {
			name := strings.Trim(strings.Join(words[i:i+n], " "), ",;.()+&")
			if _, _, ok := b.Named(name); ok {
				return true
			}
			if key := flavor.NormaliseName(name); tongue.Name(key) != "" || jargon.Usual(key) != "" || len(key) >= shortestHeadless && jargon.Short(key) != "" && !jargon.Quality(key) {
				return true
			}
		}
	}
	return false
}

// Mentioned returns the ingredients that words name, the longest names first.
func (b *Resolver) Mentioned(text string) []*flavor.Profile {
	words := strings.FieldsFunc(text, func(c rune) bool { return unicode.IsSpace(c) || strings.ContainsRune("+&,().;", c) })
	var out []*flavor.Profile
	for i := 0; i < len(words); {
		p, n := b.MentionAt(words[i:])
		if p != nil && !(n == 1 && len(words) > 1 && addresses[strings.ToLower(words[i])]) {
			out = append(out, p)
		}
		i += max(n, 1)
	}
	return out
}

// MentionAt returns the ingredient that some words begin with the name of, the longest name first,
// and how many words that takes; nil and 0 if they begin with none.
func (b *Resolver) MentionAt(words []string) (*flavor.Profile, int) {
	for n := min(LongestName, len(words)); n > 0; n-- {
		name := strings.Join(words[:n], " ")
		key := flavor.NormaliseName(name)
		if n == 1 && english[key] {
			continue
		}
		p, _, ok := b.Named(name)
		if full, changed := jargon.Lengthen(key); !ok && changed {
			p, _, ok = b.Named(full)
		}
		if !ok && tongue.Stem(key) != "" {
			p, _, ok = b.Named(tongue.Stem(key))
		}
		if !ok && tongue.Name(key) != "" {
			p, _, ok = b.Named(tongue.Name(key))
		}
		if !ok && len(key) >= shortestHeadless && !jargon.Quality(key) && jargon.Short(key) != "" {
			p, _, ok = b.Named(jargon.Short(key))
		}
		if !ok && n == 1 {
			p, ok = b.someKind(key)
		}
		if ok {
			return p, n
		}
	}
	return nil, 0
}

// someKind returns the usual one of a kind of alcohol that a list has to name in full: a whisky, a sherry.
func (b *Resolver) someKind(key string) (*flavor.Profile, bool) {
	all := jargon.SeveralByVolume(key)
	if !slices.ContainsFunc(all, func(m string) bool { return strings.HasSuffix(m, " "+key) }) {
		return nil, false
	}
	p, _, ok := b.Named(all[0])
	return p, ok && p.ABV.Value > flavor.NoAlcoholABV
}

// addresses are words by which somebody is spoken to amid others: "cheers mate".
var addresses = token.Words(`mate mates`)

// english are words of English prose that name something in another tongue: Italian
// blackberries.
var english = token.Words(`more`)

// Akin reports whether two ingredients are of one class, or have names that share a word which
// says what they are of: prose names shortly what a list names in full.
func Akin(one, other *flavor.Profile) bool {
	words := strings.Fields(flavor.NormaliseName(other.Name))
	return one.Class == other.Class || slices.ContainsFunc(strings.Fields(flavor.NormaliseName(one.Name)), func(w string) bool { return !formsAlone.Has(w) && slices.Contains(words, w) })
}

// formsAlone are words that say in which form something is, and not of what.
var formsAlone = vocabulary.Words(`juice syrup liqueur bitters cordial puree purée water wine spirit 1 2`)
