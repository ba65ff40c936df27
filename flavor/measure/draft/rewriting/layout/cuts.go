package layout

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/pattern"
)

// Where nothing but words leads the pours of a line, each place between them may be the end of the
// name. Only who reads what is left can tell.

// mostCuts is the most places that are tried.
const mostCuts = 8

// leastLeft is the fewest amounts behind the name of a drink.
const leastLeft = 2

var (
	// figured is an amount in figures.
	figured = pattern.Of(amount)
	// bracketed is a bracket behind a name.
	bracketed = pattern.Of(`^[ \t]*\([^()\n]*\)`)
	// signed is what may stand between a name and its pours.
	signed = pattern.Of(`^[ \t]*(?:[,:;|/=!~>]|[-–—]+[ \t]|\.[ \t])[ \t]*`)
)

// Cuts lists the places where the name of the drink may end that leads the pours of the first line,
// those before a sign first, then the longest name first.
func Cuts(text string, b *naming.Resolver) []Set {
	if len(text) > MostText {
		return nil
	}
	s := plain(text)
	from := len(s.Text) - len(strings.TrimLeft(s.Text, " \t\r\n"))
	line, _, _ := strings.Cut(s.Text[from:], "\n")
	var apart, bare []Set
	ends := wordEnds(line)
	for n := min(len(ends)-1, mostTitle); n > 0; n-- {
		t, sure, ok := s.cutAt(from, from+ends[n-1], b)
		switch {
		case !ok:
		case sure:
			apart = append(apart, t)
		default:
			bare = append(bare, t)
		}
	}
	all := slices.Concat(apart, bare)
	return all[:min(len(all), mostCuts)]
}

// cutAt parts text[from:to] as the title from what stands behind it, and a bracket behind it that
// measures nothing as well; sure where a sign or a bracket ends it. It is false if that cannot be.
func (s *Set) cutAt(from, to int, b *naming.Resolver) (t Set, sure, ok bool) {
	name := strings.TrimRight(s.Text[from:to], " \t,:;.-–—|/=!~>")
	next := to
	end := from + len(name)
	if at := signed.FindString(s.Text[end:]); at != "" {
		next, sure = end+len(at), true
		if partsPours(lineAt(s.Text, from), []int{end - from, next - from}) && !Called(name, b) && !inCapitals(name, lineAt(s.Text, next)) {
			return Set{}, false, false
		}
	}
	t = *s
	t.Passed = slices.Clone(s.Passed)
	if at := bracketed.FindString(s.Text[next:]); at != "" && !measured.MatchString(at) {
		t.blank(next, next+len(at))
		next, sure = next+len(at), true
	}
	if next == end {
		next = end + 1
	}
	rest := strings.TrimLeft(lineAt(t.Text, next), " \t")
	if numbersTold(name) || strings.ContainsAny(name, "()[]\"+") || len(figured.FindAllString(rest, leastLeft)) < leastLeft || !beginsPours(rest, b) {
		return Set{}, false, false
	}
	t, ok = t.titled(from, end, next, b)
	t.Bare = true
	return t, sure, ok
}

var (
	// ahead is an amount before its name, and behind one behind it.
	ahead  = pattern.Of(`(?i)^` + amount + `[ \t]*\pL`)
	behind = pattern.Of(`(?i)^(\pL[\pL'’.&-]*(?:[ \t]+\pL[\pL'’.&-]*){0,3})[ \t]*` + amount + `(?:[ \t,;/|]|$)`)
)

// beginsPours reports whether what is left of a line begins with an amount and a name, or with the name
// of something that is poured and its amount.
func beginsPours(rest string, b *naming.Resolver) bool {
	if ahead.MatchString(rest) {
		return true
	}
	m := behind.FindStringSubmatch(rest)
	if m == nil {
		return false
	}
	f := b.Find(m[1], naming.Place{Unit: flavor.Ounce, Amount: 1})
	return f.Firm() && f.Dropped == "" || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid
}

// numbersTold reports whether a name holds a number that may be an amount: one that numbers something
// is none, and a known drink is called by its own.
func numbersTold(name string) bool {
	if !strings.ContainsAny(name, figures) || drinks.Known(name) {
		return false
	}
	m := referred.FindStringSubmatch(strings.TrimSpace(name))
	return m == nil || !title.Numbered(strings.ToLower(m[1]))
}

// lineAt is the rest of the line from a byte on.
func lineAt(text string, at int) string {
	line, _, _ := strings.Cut(text[min(at, len(text)):], "\n")
	return line
}
