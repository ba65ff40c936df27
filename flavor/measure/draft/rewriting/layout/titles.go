package layout

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/pattern"
)

// A title is the name of a drink that stands on the line of its pours. A sign parts it from them, or
// it is told apart by its words: everybody orders a drink by that name, or it alone is written in
// capitals.

// mostTitle is the most words of a title.
const mostTitle = 7

// sign is what may part a title from the pours behind it. Where both a colon and a stop stand there
// the surest is tried first.
var sign = pattern.Of(`[ \t]*(?:[:=;]|[.!](?:[ \t]|$)|[ \t][-–—~>|/][ \t]|[-–—][ \t]|\([ \t]*|,[ \t])[ \t]*`)

// amounted is the beginning of a pour: an amount.
var amounted = pattern.Of(`^[ \t(]*(?:\d|[½¼¾⅓⅔]|\.\d)`)

// titles lists the ways to part the name of the drink from the pours on the first line.
func (s *Set) titles(b *naming.Resolver) []Set {
	start := len(s.Text) - len(strings.TrimLeft(s.Text, " \t\r\n"))
	end := len(s.Text)
	if n := strings.IndexByte(s.Text[start:], '\n'); n >= 0 {
		end = start + n
	}
	line := s.Text[start:end]
	var out []Set
	for _, at := range sign.FindAllStringIndex(line, -1) {
		if at[0] == 0 || inRatio(line, at) || partsPours(line, at) && !Called(line[:at[0]], b) && !inCapitals(line[:at[0]], line[at[1]:]) {
			continue
		}
		if t, ok := s.titled(start, start+at[0], start+at[1], b); ok {
			out = append(out, t)
		}
		if len(strings.Fields(line[:at[0]])) > mostProse {
			break
		}
	}
	if to := byWords(line, b); to > 0 {
		if t, ok := s.titled(start, start+to, start+to+1, b); ok {
			out = append([]Set{t}, out...)
		}
	}
	if to, ratio := byAmounts(line); to > 0 {
		if t, ok := s.titled(start, start+to, start+to+1, b); ok {
			t.Bare = !ratio
			out = append(out, t)
		}
	}
	return out
}

// listed is a list of pours below the line of the name: two lines that begin with amounts.
var listed = pattern.Of(`(?s)\n[ \t•*–—-]*(?:\d|[½¼¾⅓⅔]|\.\d)[^\n]*\n(?:.*\n)?[ \t•*–—-]*(?:\d|[½¼¾⅓⅔]|\.\d)`)

// wordsAlone reports whether the rest of a line states no amount: above a list it pours nothing, "whiskey sour,
// egg".
func wordsAlone(rest string) bool { return !strings.ContainsAny(rest, "0123456789½¼¾⅓⅔") }

// inRatio reports whether the sign at a place stands between two figures, "2:1", and parts nothing.
func inRatio(line string, at []int) bool {
	return at[1] < len(line) && at[0]+1 == at[1] && figure(line[at[0]-1]) && figure(line[at[1]])
}

// partsPours reports whether the sign at a place parts the pours as well: what stands before it is
// an entry as the others are.
func partsPours(line string, at []int) bool {
	own := strings.TrimSpace(line[at[0]:at[1]])
	switch own {
	case ":", "=", ".", "!", "(":
		return false
	}
	for _, next := range sign.FindAllStringIndex(line[at[1]:], -1) {
		if strings.TrimSpace(line[at[1]+next[0]:at[1]+next[1]]) == own {
			return true
		}
	}
	return false
}

// figure reports whether a byte is one.
func figure(c byte) bool { return c >= '0' && c <= '9' }

// mostProse is the most words before the sign that ends a title, with what leads up to it.
const mostProse = 16

// titled parts text[from:to] as the title from what stands behind next. What leads up to the name of
// a known drink is passed over.
func (s *Set) titled(from, to, next int, b *naming.Resolver) (Set, bool) {
	if !strings.ContainsFunc(s.Text[from:to], unicode.IsLetter) || strings.TrimSpace(s.Text[next:]) == "" {
		return Set{}, false
	}
	if rest, below, ok := strings.Cut(s.Text[next:], "\n"); ok && strings.Contains(s.Text[from:next], ",") && wordsAlone(rest) && listed.MatchString("\n"+below) {
		return Set{}, false
	}
	t := Set{Text: s.Text, Passed: slices.Clone(s.Passed), Denied: s.Denied, Steps: s.Steps, Aside: s.Aside, Told: s.Told}
	name := s.Text[from:to]
	if lead, tail, ok := within(name, b); ok {
		t.blank(from, from+lead)
		t.blank(to-tail, to)
		from, to = from+lead, to-tail
		name = s.Text[from:to]
	}
	if len(strings.Fields(name)) > mostTitle || amounted.MatchString(name) && !drinks.Known(name) {
		return Set{}, false
	}
	if open := strings.LastIndexByte(s.Text[to:next], '('); open >= 0 { // "Sloe gin fizz (45 sloe gin / 25 lemon)"
		if closing := strings.LastIndexByte(t.Text, ')'); closing > next {
			t.Text = t.Text[:closing] + " " + t.Text[closing+1:]
		}
	}
	t.breaks(to, next)
	t.Title = strings.Join(strings.Fields(name), " ")
	return t, true
}

// leadIns lead up to the name of a drink, and behinds follow it: "mate new house spritz spec".
var (
	leadIns = pattern.Of(`(?i)^.*(?:[.!?:;,]|\b(?:our|the|my|a|an|new|wants|want|for|is|ordered|likes|remember|mate|chef|boss|guys|team|hi|hey|hello|yo|ok|okay|so|and|tonight|today))[ \t]+`)
	behinds = pattern.Of(`(?i)[ \t]+(?:spec|specs|recipe|recipes|build|is|are|ratio|goes|again|now|gets|has|=)[ \t]*$`)
)

// within finds the name of a known drink at the end of what leads up to it: how many bytes stand
// before it and behind it. It is false if none does, or if what leads up to it may be poured.
func within(words string, b *naming.Resolver) (lead, tail int, ok bool) {
	name := words
	for at := behinds.FindStringIndex(name); at != nil; at = behinds.FindStringIndex(name) {
		name = name[:at[0]]
	}
	tail = len(words) - len(name)
	if at := leadIns.FindStringIndex(name); at != nil {
		lead = at[1]
	}
	if lead+tail == 0 || !Called(name[lead:], b) || len(b.Mentioned(words[:lead])) > 0 || measured.MatchString(words[:lead]) {
		return 0, 0, false
	}
	return lead, tail, true
}

// measured is an amount with its unit amid words.
var measured = pattern.Of(`(?i)(?:\d|[½¼¾⅓⅔])[ \t]?(?:ml|cl|oz|dash|dashes|bsp|tsp)\b`)

// Called reports whether a name is that of a drink and of nothing that is poured.
func Called(name string, b *naming.Resolver) bool {
	words := strings.Fields(flavor.NormaliseName(name))
	switch {
	case drinks.Short(name):
		return true
	case len(words) == 0 || !drinks.Called(name):
		return false
	}
	return drinks.Known(name) && len(words) > 1 || !pours(words[len(words)-1], b) && (len(words) == 1 || !pours(strings.Join(words, " "), b))
}

// pours reports whether a name is what an ingredient is called for itself: "gin", and not the
// "bramble" that a blackberry liqueur is known by too.
func pours(name string, b *naming.Resolver) bool {
	f := b.Find(name, naming.Place{Unit: flavor.Ounce, Amount: 1})
	if !f.Firm() {
		return f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid // a kind, "tequila"
	}
	return !drinks.Known(name) || strings.Contains(" "+flavor.NormaliseName(f.Profile.Name)+" ", " "+flavor.NormaliseName(name)+" ")
}

// byWords is where the name of a drink ends that no sign parts from the pours of its line, 0 for
// none: the longest that everybody orders by, or what alone is written in capitals.
func byWords(line string, b *naming.Resolver) int {
	ends := wordEnds(line)
	for n := min(len(ends), drinks.MostWords); n > 0; n-- {
		if n < len(ends) && Called(line[:ends[n-1]], b) {
			return ends[n-1]
		}
	}
	n := 0
	for n < len(ends) && capitals(line[start(ends, n):ends[n]]) {
		n++
	}
	if n == 0 || n == len(ends) || n > mostTitle || strings.ToLower(line[ends[n-1]:]) != line[ends[n-1]:] || strings.ContainsFunc(line[:1], unicode.IsNumber) {
		return 0
	}
	return ends[n-1]
}

// led is a few words before amounts that stand before the names: "wine cooler 100 red wine 100 cola";
// a ratio needs no second amount.
var (
	led   = pattern.Of(`^(\pL[\pL'’&-]*(?:[ \t]+\pL[\pL'’&-]*){0,3})[ \t]+` + amount + `[ \t]+\pL[^\d½¼¾⅓⅔]*[ \t]` + amount + `[ \t]+\pL`)
	rated = pattern.Of(`^(\pL[\pL'’&-]*(?:[ \t]+\pL[\pL'’&-]*){0,4})[ \t]+(?:\d*\.?\d+[/:]){2,}\d*\.?\d+[ \t]`)
)

// byAmounts is where the words before the amounts of a line end, 0 if none lead them; ratio is true
// where the amounts are one.
func byAmounts(line string) (end int, ratio bool) {
	if at := rated.FindStringSubmatchIndex(line); at != nil {
		return at[3], true
	}
	if at := led.FindStringSubmatchIndex(line); at != nil {
		return at[3], false
	}
	return 0, false
}

// inCapitals reports whether a name is written in capitals, and what follows it is not: "MC-11 BAY
// BREEZER | 3 cl dark rum | ...".
func inCapitals(name, behind string) bool {
	for w := range strings.FieldsSeq(name) {
		if !capitals(w) {
			return false
		}
	}
	return name != "" && strings.ToLower(behind) == behind && !strings.ContainsFunc(name[:1], unicode.IsNumber)
}

// wordEnds are where the words of a line end.
func wordEnds(line string) []int {
	var out []int
	for i := range len(line) {
		if line[i] != ' ' && line[i] != '\t' && (i+1 == len(line) || line[i+1] == ' ' || line[i+1] == '\t') {
			out = append(out, i+1)
		}
	}
	return out
}

// start is where the n-th word starts whose end is listed, with the blanks before it.
func start(ends []int, n int) int {
	if n == 0 {
		return 0
	}
	return ends[n-1]
}

// leastCapitals is the fewest letters of a word in capitals.
const leastCapitals = 2

// capitals reports whether a word is written in capitals: "FR75", "FROZEN".
func capitals(word string) bool {
	letters := 0
	for _, c := range word {
		switch {
		case unicode.IsUpper(c):
			letters++
		case unicode.IsLower(c):
			return false
		}
	}
	return letters >= leastCapitals
}
