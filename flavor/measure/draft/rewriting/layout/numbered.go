package layout

import (
	"strings"

	"counterpour/flavor/measure/draft/words/title"
	"counterpour/flavor/measure/pattern"
)

// What stands above the name of a drink may be the number of a card, a round or a version, and a date.

// month is one as a date has it, cut to three letters or not.
const month = `(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)`

var (
	// date is a day of a month, or one in figures: "11 March", "Mar 3rd 2024", "3/11/24".
	date = pattern.Of(`(?i)^(?:(?:mon|tue|wed|thu|fri|sat|sun)\pL*[ \t]+)?(?:\d{1,2}(?:st|nd|rd|th)?[ \t]+` + month + `|` + month + `[ \t]+\d{1,2}(?:st|nd|rd|th)?|\d{1,2}[./-]\d{1,2}[./-]\d{2,4})(?:,?[ \t]+(?:\d{2}|\d{4}))?$`)
	// referred is a word before a number that refers: "Recipe 5.1", "ROUND 2".
	referred = pattern.Of(`^(\pL+)\.?[ \t]*#?[ \t]?\d{1,3}(?:\.\d{1,2})?[a-z]?$`)
	// page is where a scan was taken from: "scan p.41".
	page = pattern.Of(`(?i)^(?:(?:scan(?:ned)?|photo|copy|card|book|menu)[ \t]+(?:of[ \t]+|from[ \t]+)?)?(?:pp?|pg|page)\.?[ \t]?\d{1,3}$`)
	// between parts two of them, and what precedes from the name of the drink.
	between = pattern.Of(`[ \t]+[-–—/|·•][ \t]+|[ \t]*[,:|][ \t]*|[ \t]{2,}`)
)

// numbered sets aside numbers and dates at the start of the first line, if a name follows them on it or
// on the next, or one is a date. A number behind them may be that of a pour.
func (s *Set) numbered() {
	start := len(s.Text) - len(strings.TrimLeft(s.Text, " \t\r\n"))
	end := len(s.Text)
	if n := strings.IndexByte(s.Text[start:], '\n'); n >= 0 {
		end = start + n
	}
	at, dated := start, false
	for at < end {
		stop, next := end, end
		if m := between.FindStringIndex(s.Text[at:end]); m != nil {
			stop, next = at+m[0], at+m[1]
		}
		words := strings.TrimSpace(s.Text[at:stop])
		if !refers(words) {
			break
		}
		dated = dated || date.MatchString(words)
		at = next
	}
	if at == start || strings.ContainsAny(s.Text[at:end], figures) && !named(s.Text[at:end]) || at == end && !dated && !namedBelow(s.Text[end:]) {
		return
	}
	s.blank(start, at)
}

// lettered begins with the words of a name, which a sign parts from pours.
var lettered = pattern.Of(`^\pL[\pL'’& \t]*[ \t]*(?:[-–—:|/][ \t]|:)`)

// named reports whether a line goes on with a name and its pours: the number before it is none of
// theirs.
func named(line string) bool { return lettered.MatchString(line) }

// figures are those of amounts.
const figures = "0123456789½¼¾⅓⅔"

// namedBelow reports whether the next line is the name of the drink and cannot be a pour that is not
// known: it is written in capitals or parted from what follows, and measures nothing.
func namedBelow(text string) bool {
	name, behind, ok := strings.Cut(strings.TrimLeft(text, " \t\r\n"), "\n")
	if !ok || strings.ContainsAny(name, figures) || strings.TrimSpace(name) == "" {
		return false
	}
	return strings.ToUpper(name) == name || strings.HasPrefix(strings.TrimLeft(behind, " \t\r"), "\n")
}

// refers reports whether words are a date, or something numbered and its number.
func refers(words string) bool {
	if date.MatchString(words) || page.MatchString(words) {
		return true
	}
	m := referred.FindStringSubmatch(words)
	return m != nil && title.Numbered(strings.ToLower(m[1]))
}
