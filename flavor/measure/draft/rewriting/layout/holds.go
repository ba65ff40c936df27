package layout

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/likeliest"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// Holds reports whether a way to set a text anew says what is so, of what is read then: its title is
// the name of that drink, what is passed over names nothing that is not poured, and nothing but
// amounts parts the title from the pours only where it can be none of them.
func (s *Set) Holds(text string, read *flavor.Spec, b *naming.Resolver) bool {
	for _, w := range slices.Concat(s.Passed, s.Steps) {
		if slices.ContainsFunc(b.Mentioned(w), func(p *flavor.Profile) bool { return !poursLike(p, read.Pours) }) {
			return false
		}
		if f := b.Find(firstWord(w), naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() && !poursLike(f.Profile, read.Pours) {
			return false
		}
	}
	if s.Title == "" {
		return true
	}
	if s.Bare && !Called(s.Title, b) {
		f := b.Find(s.Title, naming.Place{Unit: flavor.Ounce, Amount: 1})
		at := strings.Index(text, s.Title)
		if f.Profile != nil || f.Fault.Kind == flavor.ErrInvalid || at < 0 || likeliest.MayPour(text, entry.Span{Start: at, End: at + len(s.Title)}, len(read.Pours), b) {
			return false
		}
	}
	return entitled(s.Title, read, b)
}

// firstWord is the first word of what is passed over: "OJ first" speaks of orange juice.
func firstWord(words string) string {
	first, _, _ := strings.Cut(words, " ")
	return first
}

// poursLike reports whether an ingredient is poured, or one like it.
func poursLike(p *flavor.Profile, pours []flavor.Pour) bool {
	return slices.ContainsFunc(pours, func(q flavor.Pour) bool { return naming.Akin(p, q.Profile) })
}

// entitled reports whether a drink is called what its title says, and pours what that names: "rum
// punch" pours some rum.
func entitled(title string, read *flavor.Spec, b *naming.Resolver) bool {
	if !strings.EqualFold(token.OneLine(strings.Trim(read.Name, " :")), title) {
		return false
	}
	return Called(title, b) || !slices.ContainsFunc(b.Mentioned(title), func(p *flavor.Profile) bool { return !poursLike(p, read.Pours) })
}
