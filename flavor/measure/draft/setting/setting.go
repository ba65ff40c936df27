package setting

import (
	"regexp"
	"strings"

	"counterpour/flavor/measure/draft/naming"
)

// Set is a text that is set anew.
type Set struct {
	Text  string
	Title string   // the name of the drink, on a line of its own; empty: it is where it was
	Notes []string // what is passed over
}

// MostText is the most bytes of a text that is set anew: a longer one is no card of one drink.
const MostText = 2000

// Ways lists how a text with faults may be set anew, the likeliest first.
func Ways(text string, b *naming.Book) []Set {
	if len(text) > MostText {
		return nil
	}
	plain := Set{Text: text}
	for _, rule := range []func(*Set){(*Set).cells, (*Set).prices, (*Set).announced, (*Set).deniedAmounts} {
		rule(&plain)
	}
	var out []Set
	if plain.Text != text {
		out = append(out, plain)
	}
	return append(out, plain.titles(b)...)
}

// blank puts blanks in place of text[from:to], and says so.
func (s *Set) blank(from, to int) {
	if w := strings.Trim(s.Text[from:to], " \t\n-–—,;:|!("); w != "" {
		s.Notes = append(s.Notes, "“"+w+"” is skipped")
	}
	s.Text = s.Text[:from] + strings.Repeat(" ", to-from) + s.Text[to:]
}

// breaks ends a line in place of text[from:to], which says nothing.
func (s *Set) breaks(from, to int) {
	s.Text = s.Text[:from] + strings.Repeat(" ", to-from-1) + "\n" + s.Text[to:]
}

// price is what a line of a menu ends in: an amount with a sign of money, or one of two decimals
// behind a dash, which no hand pours.
var price = regexp.MustCompile(`(?im)[ \t]*(?:[-–—|,·…/.]+[ \t]*)?(?:[€£$][ \t]?\d{1,3}(?:[.,]\d\d)?|\b\d{1,3}(?:[.,]\d\d)?[ \t]?(?:[€£$]|eur|euros?|gbp|usd|chf|kr|sek|nok|dkk|zł|pln)|[ \t][-–—|][ \t]*(?:[4-9]|[1-3]\d)[.,]\d[05])[ \t]*$`)

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
var announcement = regexp.MustCompile(`(?i)^\s*(?:\*+\s*)?(?:new|special|seasonal|neu|nuevo|nouveau|nuovo|back|limited)(?:\s+(?:on|to)\s+the\s+menu)?\s*(?:[!*]+|:)\s*`)

// announced sets aside what a menu shouts before the name.
func (s *Set) announced() {
	if at := announcement.FindStringIndex(s.Text); at != nil && at[1] < len(s.Text) {
		s.blank(at[0], at[1])
	}
}

// deniedAmount is an amount that is said not to be poured, behind the one that is: "10 dry vermouth
// not 15".
var deniedAmount = regexp.MustCompile(`(?i)[,(]?[ \t]+\(?not[ \t]+(?:at |the |a )?\d+(?:[.,/:]\d+)*(?:[ \t]?(?:ml|oz|cl))?\)?(?:[ \t]*(?:[.,;)\n]|$))`)

// deniedAmounts sets aside amounts that are denied.
func (s *Set) deniedAmounts() {
	for _, at := range deniedAmount.FindAllStringIndex(s.Text, -1) {
		end := at[1]
		if c := s.Text[end-1]; strings.IndexByte(".,;\n", c) >= 0 {
			end--
		}
		s.blank(at[0], end)
	}
}
