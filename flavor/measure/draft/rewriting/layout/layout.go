package layout

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/paired"
	"counterpour/flavor/measure/draft/rewriting/phrasing"
	"counterpour/flavor/measure/pattern"
)

// Set is a text that is set anew.
type Set struct {
	Text   string
	Title  string   // the name of the drink, on a line of its own; empty: it is where it was
	Bare   bool     // nothing but the amounts behind it parts the title from the pours
	Passed []string // what is passed over, which must name nothing but what is poured
	Denied []string // what is taken back
	Steps  []string // what is kept as steps, which must name nothing but what is poured
	Aside  []string // what is passed over whatever it names
	Told   []string // what was taken for granted in setting it
}

// MostText is the most bytes of a text that is set anew: a longer one is no card of one drink.
const MostText = 2000

// Ways lists how a text with faults may be set anew, the likeliest first.
func Ways(text string, b *naming.Resolver) []Set {
	if len(text) > MostText {
		return nil
	}
	plain := plain(text)
	var out []Set
	if plain.Text != text {
		out = append(out, plain)
	}
	if t, told, ok := paired.Of(plain.Text, b); ok {
		p := plain
		p.Text, p.Told = t, slices.Concat(p.Told, told)
		out = append(append(out, p), p.titles(b)...)
	}
	return append(out, plain.titles(b)...)
}

// plain is a text without what sets its lines in another way than others do.
func plain(text string) Set {
	p := phrasing.Of(text)
	s := Set{Text: p.Text, Aside: p.Aside, Steps: p.Steps, Told: p.Told}
	for _, rule := range []func(*Set){(*Set).scanned, (*Set).bitters, (*Set).boxes, (*Set).spelledOut, (*Set).leaders, (*Set).rows, (*Set).fields, (*Set).cells, (*Set).prices, (*Set).numbered, (*Set).announced, (*Set).spoken, (*Set).counted, (*Set).changes, (*Set).restatements, (*Set).served, (*Set).roles, (*Set).idle, (*Set).verbs, (*Set).equals, (*Set).answers, (*Set).commas} {
		rule(&s)
	}
	return s
}

// blank puts blanks in place of text[from:to], and says so.
func (s *Set) blank(from, to int) {
	if w := strings.Trim(s.Text[from:to], " \t\n-–—,;:|!()[]."); w != "" {
		s.Passed = append(s.Passed, w)
	}
	s.clear(from, to)
}

// clear puts blanks in place of text[from:to], which tells nothing of the drink.
func (s *Set) clear(from, to int) {
	s.Text = s.Text[:from] + strings.Repeat(" ", to-from) + s.Text[to:]
}

// breaks ends a line in place of text[from:to], which says nothing.
func (s *Set) breaks(from, to int) {
	s.Text = s.Text[:from] + strings.Repeat(" ", to-from-1) + "\n" + s.Text[to:]
}

// price is what a line of a menu ends in: an amount with a sign of money, or one of two decimals
// behind a dash, which no hand pours.
var price = pattern.Of(`(?im)[ \t]*(?:[-–—|,·…/.]+[ \t]*)?(?:[€£$][ \t]?\d{1,3}(?:[.,]\d\d)?|\b\d{1,3}(?:[.,]\d\d)?[ \t]?(?:[€£$]|eur|euros?|gbp|usd|chf|kr|sek|nok|dkk|zł|pln)|[ \t][-–—|][ \t]*(?:[4-9]|[1-3]\d)[.,]\d[05])[ \t]*$`)

// prices sets aside a price at the end of a line that holds more than it.
func (s *Set) prices() {
	for _, at := range price.FindAllStringIndex(s.Text, -1) {
		start := strings.LastIndexByte(s.Text[:at[0]], '\n') + 1
		if strings.TrimSpace(s.Text[start:at[0]]) != "" {
			s.blank(at[0], at[1])
		}
	}
}

// announcement is what a menu shouts before the name of a drink.
var announcement = pattern.Of(`(?i)^\s*(?:\*+\s*)?(?:new|special|feature|featured|seasonal|neu|nuevo|nouveau|nuovo|back|limited)(?:\s+(?:on|to)\s+the\s+menu)?\s*(?:[!*]+|:)\s*`)

// runOut is what a board says at its top has run out: "86: mint, oat milk.".
var runOut = pattern.Of(`(?i)^\s*86(?:'?d)?[ \t]*:[^.;!\n\d]+[.;!\n][ \t]*`)

// code is the number of a card before a name in capitals: "MC-11 RED BREEZER".
var code = pattern.Of(`^\s*[A-Z]{1,4}-\d{1,3}[A-Z]?[ \t]+(?:[A-Z]{2})`)

// attempt is which of several goes at a drink this is: "Spring list #4, third go.".
var attempt = pattern.Of(`(?i)(?:[ \t]*#\d+|,?[ \t]*\b(?:first|second|third|fourth|fifth|last|final|new|\d+(?:st|nd|rd|th))[ \t]+(?:go|try|attempt|take|round|version|draft|pass|stab))\b`)

// announced sets aside what a menu shouts before the name, the number of its card, and which go at
// the drink it is.
func (s *Set) announced() {
	if at := code.FindStringIndex(s.Text); at != nil {
		s.blank(at[0], at[1]-len("AB"))
	}
	for _, at := range attempt.FindAllStringIndex(s.Text, -1) {
		if s.Text[at[0]] != '#' || at[0] > 0 {
			s.blank(at[0], at[1])
		}
	}
	if at := runOut.FindStringIndex(s.Text); at != nil {
		s.Aside = append(s.Aside, strings.TrimSpace(s.Text[at[0]:at[1]]))
		s.clear(at[0], at[1])
	}
	if at := announcement.FindStringIndex(s.Text); at != nil && at[1] < len(s.Text) {
		s.blank(at[0], at[1])
	}
}
