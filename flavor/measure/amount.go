package measure

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// amount is a quantity as it stands at the start of a line.
type amount struct {
	value   float64
	text    string // as written
	note    string
	spelled bool // in words: "two"
	article bool // only "a" or "an"
}

// vulgar holds the fractions that have a sign of their own.
var vulgar = map[rune]float64{
	'½': 1.0 / 2, '⅓': 1.0 / 3, '⅔': 2.0 / 3, '¼': 1.0 / 4, '¾': 3.0 / 4,
	'⅕': 1.0 / 5, '⅖': 2.0 / 5, '⅗': 3.0 / 5, '⅘': 4.0 / 5, '⅙': 1.0 / 6, '⅚': 5.0 / 6,
	'⅐': 1.0 / 7, '⅛': 1.0 / 8, '⅜': 3.0 / 8, '⅝': 5.0 / 8, '⅞': 7.0 / 8, '⅑': 1.0 / 9, '⅒': 1.0 / 10,
}

const vulgarClass = `[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]`

// The forms of a number, tried in this order.
var (
	glyphForm   = regexp.MustCompile(`^([0-9]+)?\s*(` + vulgarClass + `)`)
	slashForm   = regexp.MustCompile(`^(?:([0-9]+)\s+)?([0-9]+)\s*[/⁄]\s*([0-9]+)`)
	decimalForm = regexp.MustCompile(`^(?:[0-9]*[.,][0-9]+|[0-9]+)`)

	thousandsForm = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
	rangeForm     = regexp.MustCompile(`^(?:\s*[-–—]\s*|\s+to\s+)`)
	signForm      = regexp.MustCompile(`^[-−–—]`)
	numberStart   = regexp.MustCompile(`^(?:[.,]?[0-9]|` + vulgarClass + `)`)
)

var numberWords = map[string]float64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
	"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}

// fractionWords follow "and a", or stand alone before a unit.
var fractionWords = map[string]float64{"half": 0.5, "quarter": 0.25}

var notNumbers = map[string]bool{"nan": true, "inf": true, "infinity": true}

// readAmount reads the amount at the start of s and returns what follows it. It
// returns nil if s does not start with one. The rest begins with a space
// unless the unit is written without one.
func readAmount(s string) (*amount, string, *flavor.Fault) {
	if loc := signForm.FindString(s); loc != "" && numberStart.MatchString(s[len(loc):]) {
		return nil, s, invalid("amount", firstWord(s), "%q is below zero; write an amount above zero, such as \"2 oz\"", firstWord(s))
	}
	if w := strings.ToLower(strings.TrimLeft(firstWord(s), "+-−")); notNumbers[w] {
		if _, _, ok := leadingUnit(strings.TrimSpace(s[len(firstWord(s)):])); ok {
			return nil, s, invalid("amount", firstWord(s), "%q is not an amount; write a number, such as \"2 oz\"", firstWord(s))
		}
	}
	if !numberStart.MatchString(s) {
		a, rest := readWords(s)
		return a, rest, nil
	}
	low, n, ok := readNumber(s)
	if !ok {
		return nil, s, unreadable(s)
	}
	a := &amount{value: low, text: s[:n]}
	rest := s[n:]
	if sep := rangeForm.FindString(rest); sep != "" && numberStart.MatchString(rest[len(sep):]) {
		high, m, ok := readNumber(rest[len(sep):])
		if !ok {
			return nil, s, unreadable(s)
		}
		a.text = s[:n+len(sep)+m]
		rest = s[len(a.text):]
		if high <= low {
			return nil, s, invalid("amount", a.text, "%q does not run upwards; write the smaller amount first, such as \"2-3\", or \"1 1/2\" for one and a half", a.text)
		}
		a.value = (low + high) / 2
		a.note = a.text + " read as " + decimals(a.value) + ", the middle"
	}
	rest = a.addFraction(s, rest)
	if r, _ := utf8.DecodeRuneInString(rest); rest != "" && r != ' ' && !unicode.IsLetter(r) {
		return nil, s, unreadable(s)
	}
	return a, rest, nil
}

// readNumber reads one number at the start of s and says how many bytes it
// takes. It is false for a number that could mean two things, or nothing.
func readNumber(s string) (value float64, n int, ok bool) {
	if m := glyphForm.FindStringSubmatch(s); m != nil {
		r, _ := utf8.DecodeRuneInString(m[2])
		return whole(m[1]) + vulgar[r], len(m[0]), true
	}
	if m := slashForm.FindStringSubmatch(s); m != nil {
		over := whole(m[3])
		return whole(m[1]) + whole(m[2])/over, len(m[0]), over > 0
	}
	m := decimalForm.FindString(s)
	if m == "" || thousandsForm.MatchString(m) {
		return 0, 0, false // 1,000 is a thousand to one reader and one to the next
	}
	v, err := strconv.ParseFloat(strings.Replace(m, ",", ".", 1), 64)
	return v, len(m), err == nil
}

// whole reads digits; none are zero.
func whole(digits string) float64 {
	if digits == "" {
		return 0
	}
	v, _ := strconv.ParseFloat(digits, 64) // too many digits give infinity, which is refused later
	return v
}

func unreadable(s string) *flavor.Fault {
	w := firstWord(s)
	return invalid("amount", w, "%q cannot be read as an amount; write it such as 2, 0.75, 3/4, 1 1/2, ¾ or 2-3, then a space and the unit", w)
}

// readWords reads an amount written in words: "two", "half an", "a".
func readWords(s string) (*amount, string) {
	w := firstWord(s)
	rest := s[len(w):]
	a := &amount{text: w, spelled: true}
	switch lower := strings.ToLower(w); {
	case numberWords[lower] > 0:
		a.value = numberWords[lower]
		next := strings.ToLower(firstWord(strings.TrimSpace(rest)))
		if lower == "three" && (next == "quarter" || next == "quarters") {
			a.value = 0.75
			return a.finish(s, skipArticle(skipWord(rest)))
		}
		return a.finish(s, a.addFraction(s, rest))
	case fractionWords[lower] > 0:
		if strings.HasPrefix(strings.ToLower(strings.TrimSpace(rest)), "and ") {
			return nil, s // half and half
		}
		a.value = fractionWords[lower]
		return a.finish(s, skipArticle(rest))
	case lower == "a" || lower == "an":
		if f := fractionWords[strings.ToLower(firstWord(strings.TrimSpace(rest)))]; f > 0 {
			a.value = f
			return a.finish(s, skipArticle(skipWord(rest)))
		}
		a.value, a.article = 1, true
		return a.finish(s, rest)
	}
	return nil, s
}

func (a *amount) finish(s, rest string) (*amount, string) {
	a.text = strings.TrimSpace(s[:len(s)-len(rest)])
	return a, rest
}

// addFraction adds "and a half" where it follows.
func (a *amount) addFraction(s, rest string) string {
	f := strings.Fields(strings.ToLower(rest))
	if len(f) < 3 || f[0] != "and" || f[1] != "a" || fractionWords[f[2]] == 0 || !strings.HasPrefix(rest, " ") {
		return rest
	}
	a.value += fractionWords[f[2]]
	rest = skipWord(skipWord(skipWord(rest)))
	a.text = strings.TrimSpace(s[:len(s)-len(rest)])
	return rest
}

// skipArticle drops "a", "an" or "of a" after half or quarter.
func skipArticle(rest string) string {
	if strings.EqualFold(firstWord(strings.TrimSpace(rest)), "of") {
		rest = skipWord(rest)
	}
	if w := strings.ToLower(firstWord(strings.TrimSpace(rest))); w == "a" || w == "an" {
		return skipWord(rest)
	}
	return rest
}

// skipWord drops the first word and the spaces before it.
func skipWord(s string) string {
	s = strings.TrimLeft(s, " ")
	return s[len(firstWord(s)):]
}

// firstWord returns s up to the first space.
func firstWord(s string) string {
	w, _, _ := strings.Cut(s, " ")
	return w
}
