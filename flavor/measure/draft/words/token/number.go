package token

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// vulgar holds the fractions that have a sign of their own.
var vulgar = map[rune]float64{
	'½': 1.0 / 2, '⅓': 1.0 / 3, '⅔': 2.0 / 3, '¼': 1.0 / 4, '¾': 3.0 / 4,
	'⅕': 1.0 / 5, '⅖': 2.0 / 5, '⅗': 3.0 / 5, '⅘': 4.0 / 5, '⅙': 1.0 / 6, '⅚': 5.0 / 6,
	'⅐': 1.0 / 7, '⅛': 1.0 / 8, '⅜': 3.0 / 8, '⅝': 5.0 / 8, '⅞': 7.0 / 8, '⅑': 1.0 / 9, '⅒': 1.0 / 10,
}

// NumberWords are amounts in words; couple and few are said in a note.
var NumberWords = map[string]float64{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
	"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "couple": 2, "few": 3, "dozen": 12,
	"un": 1, "une": 1, "una": 1, "uno": 1, "ein": 1, "eine": 1, "einen": 1, "ett": 1, "een": 1, "um": 1, "uma": 1,
	"jedna": 1, "jeden": 1, "jedno": 1, "один": 1, "одна": 1, "одну": 1, "ένα": 1, "μία": 1, "μια": 1,
	"dwa": 2, "dwie": 2, "dva": 2, "dvě": 2, "два": 2, "две": 2, "δύο": 2, "δυο": 2, "trzy": 3, "tři": 3, "три": 3, "τρία": 3, "τρεις": 3, "trzech": 3,
	"cztery": 4, "čtyři": 4, "четыре": 4, "τέσσερα": 4, "vier": 4, "quatre": 4, "cuatro": 4, "quattro": 4, "quatro": 4, "fyra": 4,
	"pięć": 5, "pět": 5, "пять": 5, "πέντε": 5, "fünf": 5, "cinq": 5, "cinco": 5, "cinque": 5, "vijf": 5, "fem": 5, "sechs": 6, "seis": 6, "sei": 6, "zes": 6, "sześć": 6, "šest": 6, "шесть": 6, "έξι": 6,
	"deux": 2, "dos": 2, "due": 2, "zwei": 2, "två": 2, "twee": 2, "dois": 2, "duas": 2, "trois": 3, "tres": 3, "tre": 3, "drei": 3, "drie": 3, "três": 3,
}

// FractionWords stand alone before a unit, or follow "and a".
var FractionWords = map[string]float64{"pół": 0.5, "půl": 0.5, "пол": 0.5, "половина": 0.5, "половинка": 0.5, "μισό": 0.5, "μισή": 0.5, "halv": 0.5, "halvt": 0.5, "polovina": 0.5, "połowa": 0.5, "meia": 0.5, "meio": 0.5, "halve": 0.5, "demie": 0.5, "medio": 0.5, "media": 0.5, "mezzo": 0.5, "mezza": 0.5, "demi": 0.5, "halbe": 0.5, "halben": 0.5, "halbes": 0.5, "połowy": 0.5, "půlky": 0.5, "половины": 0.5, "halber": 0.5, "half": 0.5, "quarter": 0.25, "third": 1.0 / 3, "one-half": 0.5, "one-quarter": 0.25, "one-third": 1.0 / 3, "one-fourth": 0.25, "one-fifth": 0.2, "one-sixth": 1.0 / 6, "one-eighth": 0.125,
	"hf": 0.5, "hlf": 0.5, "qtr": 0.25, "qrtr": 0.25, "three-quarter": 0.75, "three-quarters": 0.75, "three-fourths": 0.75, "two-thirds": 2.0 / 3}

// Digit reports whether a byte is a figure.
func Digit(b byte) bool { return '0' <= b && b <= '9' }

// startsNumber reports whether a number starts at i: a digit, a stop or comma
// before a digit, or a fraction.
func startsNumber(s string, i int) bool {
	if Digit(s[i]) {
		return true
	}
	if s[i] == '.' && i > 0 && s[i-1] == '.' {
		return false // dots that lead to an amount
	}
	if s[i] == '.' && i > 0 && letterBefore(s, i) && metricFrom(s, i+1) {
		return false // "6cl gin.3cl lemon"
	}
	if s[i] == '.' && i+1 < len(s) && Digit(s[i+1]) {
		return i == 0 || !Digit(s[i-1])
	}
	if s[i] == ',' && i+1 < len(s) && Digit(s[i+1]) {
		return (i == 0 || strings.IndexByte(" \t\n(", s[i-1]) >= 0) && !commaBehind(s, i+1)
	}
	if s[i] < utf8.RuneSelf {
		return false
	}
	c, _ := utf8.DecodeRuneInString(s[i:])
	return vulgar[c] > 0
}

// commaBehind reports whether digits with a comma right behind them start at i: in "gin ,2,lemon" as in "gin,1 oz"
// and "\"gin\",2" a comma parts a list.
func commaBehind(s string, i int) bool {
	for i < len(s) && Digit(s[i]) {
		i++
	}
	return i < len(s) && s[i] == ','
}

// metricFrom reports whether digits with millilitres or centilitres behind them start
// at i: who measures in those writes no decimals without a nought.
func metricFrom(s string, i int) bool {
	n := i
	for n < len(s) && Digit(s[n]) {
		n++
	}
	at := skipSpaces(s, n)
	if n == i || at+2 > len(s) {
		return false
	}
	unit := strings.ToLower(s[at : at+2])
	return (unit == "ml" || unit == "cl") && !letterAt(s, at+2)
}

func letterBefore(s string, i int) bool {
	c, _ := utf8.DecodeLastRuneInString(s[:i])
	return unicode.IsLetter(c) || c == ')'
}

// lexNumber reads the number at i: a ratio, a percentage, or an amount with its
// range if it has one.
func lexNumber(s string, i int) Token {
	if end := ratioEnd(s, i); end > 0 {
		return Token{Kind: Ratio, End: end, Text: strings.ReplaceAll(s[i:end], " ", "")}
	}
	low, end, ok := readNumber(s, i)
	if _, m := lostSpace(s, i); m > 0 {
		end, ok = m, true
	}
	if !ok || runsOn(s, end) {
		end = i + len(strings.TrimRight(s[i:spaceAfter(s, i)], ":,;"))
		return Token{Kind: Numeral, End: end, Text: s[i:end], Wrong: "cannot be read as an amount; write it such as 2, 0.75, 3/4, 1 1/2 or ¾, then a space and the unit"}
	}
	if at := skipSpaces(s, end); at < len(s) && s[at] == '%' {
		return Token{Kind: Percent, End: at + 1, Text: s[i : at+1]}
	}
	t := Token{Kind: Numeral, End: end, Value: low}
	if v, m := lostSpace(s, i); m > 0 {
		t.Value, t.End, t.Guessed = v, m, true
		t.Note = "“" + s[i:m] + "” is read as " + Decimals(v)
		t.Text = s[i:m]
		return t
	}
	if from, tight := rangeEnd(s, end); from > 0 && !titleNumber(s, i, end, from) {
		high, m, ok := readNumber(s, from)
		switch {
		case ok && !tight && high > widest*low: // "1.0 - 50 ml gin": the number of a list
		case ok && high > low && ratioEnd(s, from) == 0:
			t.Value, t.End = (low+high)/2, m
			t.Note = OneLine(s[i:m]) + " read as " + Decimals(t.Value) + ", the middle"
		case ok && tight:
			t.End = m
			t.Wrong = "is two amounts; write one, such as \"2\", or \"1 1/2\" for one and a half"
		}
	}
	t.Text = s[i:t.End]
	return t
}

// lostSpace reads a whole number and a proper fraction of a jigger that run into
// each other, as "11/2", "1.1/2" and "1.½" do; its end is 0 for anything else.
func lostSpace(s string, i int) (value float64, end int) {
	n := i + 1
	if n >= len(s) || !Digit(s[i]) || s[i] == '0' {
		return 0, 0
	}
	dot := s[n] == '.'
	if dot {
		n++
		if n < len(s) {
			if c, size := utf8.DecodeRuneInString(s[n:]); vulgar[c] > 0 {
				return whole(s[i:i+1]) + vulgar[c], n + size
			}
		}
	}
	if n+2 >= len(s) || !Digit(s[n]) || s[n+1] != '/' || !Digit(s[n+2]) || n+3 < len(s) && (Digit(s[n+3]) || s[n+3] == '/') {
		return 0, 0
	}
	top, over := whole(s[n:n+1]), whole(s[n+2:n+3])
	if top == 0 || top >= over || over != 2 && over != 3 && over != 4 && over != 8 {
		return 0, 0
	}
	return whole(s[i:i+1]) + top/over, n + 3
}

// ratioEnd returns the end of a ratio such as 2:1 that starts at i, else 0. A
// time or a temperature has two digits after the colon.
func ratioEnd(s string, i int) int {
	parts := 0
	for {
		n := i
		for n < len(s) && Digit(s[n]) {
			n++
		}
		if n == i || n-i > 2 {
			return 0
		}
		parts++
		if n+1 >= len(s) || s[n] != ':' || !Digit(s[n+1]) {
			if parts < 2 {
				return 0
			}
			return n
		}
		i = n + 1
	}
}

// readNumber reads one number at i and says where it ends. It is false for a
// number that could mean two things, or nothing.
func readNumber(s string, i int) (value float64, end int, ok bool) {
	if i >= len(s) {
		return 0, i, false
	}
	if c, n := utf8.DecodeRuneInString(s[i:]); vulgar[c] > 0 {
		return vulgar[c], i + n, true
	}
	n := i
	for n < len(s) && Digit(s[n]) {
		n++
	}
	if n+1 < len(s) && (s[n] == '.' || s[n] == ',') && Digit(s[n+1]) {
		m := n + 1
		for m < len(s) && Digit(s[m]) {
			m++
		}
		if s[n] == ',' && m-n == 4 && n > i && s[i] != '0' && n-i <= 3 {
			return 0, m, false // 1,000 is a thousand to one reader and one to the next
		}
		v, err := strconv.ParseFloat(s[i:n]+"."+s[n+1:m], 64)
		return v, m, err == nil
	}
	if n == i {
		return 0, i, false
	}
	w := whole(s[i:n])
	if over, m, ok := overAt(s, n, w); ok { // 3/4
		return w / over, m, over > 0
	}
	if f, m := fractionAfter(s, n); m > 0 { // 1 1/2, 1½, 1-1/2
		return w + f, m, true
	}
	return w, n, true
}

// whole reads digits.
func whole(digits string) float64 {
	v, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return math.Inf(1) // too many digits; refused later
	}
	return v
}

// leastWhole is a number from which a slash behind it parts two amounts: nobody pours
// twenty eighths, "simple 20/8 mint".
const leastWhole = 10

// overAt reads "/4" at i, after the number over it; with spaces around the slash
// only where it makes one of the fractions of a jigger. The parts are those
// that hands pour, so that 60/30 is no two.
func overAt(s string, i int, top float64) (over float64, end int, ok bool) {
	at := skipSpaces(s, i)
	slash := slashAt(s, at)
	if slash == 0 {
		return 0, 0, false
	}
	from := skipSpaces(s, at+slash)
	n := from
	for n < len(s) && Digit(s[n]) {
		n++
	}
	if n == from || n-from > 2 {
		return 0, 0, false
	}
	over = whole(s[from:n])
	if top >= leastWhole && top > over {
		return 0, 0, false
	}
	if spaced := at > i || from > at+slash; spaced && (top >= over || over > 8 || over == 5 || parts(s) || n < len(s) && (s[n] == '.' || s[n] == '/')) {
		return 0, 0, false
	}
	switch over {
	case 0, 2, 3, 4, 5, 6, 8, 10, 12, 16:
		return over, n, true
	}
	return 0, 0, false
}

// parts reports whether slashes with spaces around them part the entries of the line that
// s ends with: "lime .75 / simple .75 / cachaça 2 / 3 blackberries".
func parts(s string) bool {
	return strings.Count(s[strings.LastIndexByte(s, '\n')+1:], " / ") > 1
}

func slashAt(s string, i int) int {
	if strings.HasPrefix(s[i:], "/") {
		return 1
	}
	if strings.HasPrefix(s[i:], "⁄") {
		return len("⁄")
	}
	return 0
}

// fractionAfter reads a proper fraction that goes with the whole number before
// it: "½", " 1/2", "-1/2", " & 1/2". Its end is 0 if there is none.
func fractionAfter(s string, i int) (value float64, end int) {
	at := skipSpaces(s, i)
	if at < len(s) && (s[at] == '-' && at == i || s[at] == '&' && at > i) {
		at = skipSpaces(s, at+1)
	} else if strings.HasPrefix(s[at:], "and ") && at > i {
		at += len("and ")
	}
	if at >= len(s) {
		return 0, 0
	}
	if c, n := utf8.DecodeRuneInString(s[at:]); vulgar[c] > 0 {
		return vulgar[c], at + n
	}
	n := at
	for n < len(s) && Digit(s[n]) {
		n++
	}
	if n == at || at == i || n >= len(s) || slashAt(s, n) == 0 {
		return 0, 0
	}
	top := whole(s[at:n])
	over, m, ok := overAt(s, n, top)
	if ok && over > 0 && top > 0 && top < over {
		return top / over, m
	}
	return 0, 0
}

// runsOn reports whether what follows a number makes it none: another stop,
// slash or digit, as in 1.2.3.
func runsOn(s string, i int) bool {
	if i >= len(s) {
		return false
	}
	if s[i] == '.' || s[i] == ',' {
		return i+1 < len(s) && Digit(s[i+1])
	}
	c, _ := utf8.DecodeRuneInString(s[i:])
	return (c == '/' || c == '⁄') && i+1 < len(s) && Digit(s[i+1]) || vulgar[c] > 0 || unicode.IsDigit(c)
}

func skipSpaces(s string, i int) int {
	for i < len(s) {
		c, n := utf8.DecodeRuneInString(s[i:])
		if !unicode.IsSpace(c) {
			break
		}
		i += n
	}
	return i
}

func spaceAfter(s string, i int) int {
	for i < len(s) {
		c, n := utf8.DecodeRuneInString(s[i:])
		if unicode.IsSpace(c) {
			break
		}
		i += n
	}
	return i
}

// Decimals rounds v to two decimals, or to two digits below 0.01.
func Decimals(v float64) string {
	if a := math.Abs(v); a > 0 && a < 0.01 {
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 2, 64), 64)
		return Number(v)
	}
	return Number(math.Round(v*100) / 100)
}

// Number prints v with as many digits as it needs.
func Number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
