package naming

import (
	"strings"
	"unicode"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// denial is what a name is said not to be, with the sign before it: "lime NOT lemon", "gin
// (the floral one, not the navy)".
var denial = pattern.Of(`(?i)[\s,–—-]*(?:^|[\s(,])(?:not|never|nicht|pas de|pas du)\s+[\p{L}\d' -]+`)

// denies reports whether a name holds a word that a denial begins with: hardly any does,
// and the expression takes longer to tell.
func denies(name string) bool {
	for w := range strings.FieldsFuncSeq(name, func(c rune) bool { return unicode.IsSpace(c) || c == '(' || c == ',' }) {
		for _, no := range [...]string{"not", "never", "nicht", "pas"} {
			if strings.EqualFold(w, no) {
				return true
			}
		}
	}
	return false
}

// emptyBracket is what is left of a bracket that held a denial and nothing else.
var emptyBracket = pattern.Of(`\(\s*\)`)

// withoutDenial looks a name up without what it is said not to be, which is then said to be
// passed over.
func (b *Resolver) withoutDenial(name string, pl Place) (Found, bool) {
	if !denies(name) {
		return Found{}, false
	}
	at := denial.FindStringIndex(name)
	if at == nil || at[0] == 0 {
		return Found{}, false
	}
	rest := name[:at[0]]
	if strings.HasPrefix(name[at[1]:], ")") && !strings.Contains(rest, "(") {
		rest += name[at[1]+1:]
	} else {
		rest += name[at[1]:]
	}
	f := b.Find(token.OneLine(emptyBracket.ReplaceAllString(rest, " ")), pl)
	if !f.Firm() {
		return Found{}, false
	}
	f.Dropped, f.Inferred = strings.Trim(name[at[0]:at[1]], " ,(-–—"), true
	return f, true
}
