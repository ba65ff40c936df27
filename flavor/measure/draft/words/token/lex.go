package token

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// kind is the kind of a token.
type kind uint8

const (
	Word    kind = iota
	Numeral      // an amount in figures
	Ratio        // "2:1"
	Percent      // "20 %"
	Mark         // anything else that is not a space
)

// Token is a word, a number or a sign of a text, with its place in it.
type Token struct {
	Kind       kind
	Glued      bool    // no space before it
	Guessed    bool    // the note is about how much it is
	Start, End int     // bytes of the text
	Text       string  // in lower case; a mark as it stands
	Value      float64 // of a numeral
	Note       string  // what was assumed in reading a numeral
	Wrong      string  // why a numeral cannot be read; else empty
}

// Is reports whether a token is that sign.
func (t *Token) Is(sign string) bool { return t.Kind == Mark && t.Text == sign }

// bytesOfToken is how long a word with its space is, if it is short.
const bytesOfToken = 4

// Lex appends the tokens of text[from:to], which is one line, to dst.
func Lex(dst []Token, text string, from, to int) []Token {
	if dst == nil {
		dst = make([]Token, 0, 1+(to-from)/bytesOfToken)
	}
	line := text[:to]
	spaced := true
	for i := from; i < to; {
		c, n := utf8.DecodeRuneInString(line[i:])
		var t Token
		switch {
		case unicode.IsSpace(c) || Invisible(c):
			spaced = spaced || unicode.IsSpace(c)
			i += n
			continue
		case ounceTyped(line, i):
			t = Token{Kind: Word, End: i + len("0z"), Text: "oz"}
		case startsNumber(line, i):
			t = lexNumber(line, i)
		case unicode.IsLetter(c) || unicode.Is(unicode.Mn, c) || c == '°':
			t = lexWord(line, i)
		default:
			t = Token{Kind: Mark, End: i + n, Text: signOf(line[i : i+n])}
		}
		t.Start, t.Glued = i, !spaced
		dst = append(dst, t)
		i, spaced = t.End, false
	}
	return dst
}

// ounceTyped reports whether an ounce stands at i that was typed with a nought: "1/2 0z".
func ounceTyped(line string, i int) bool {
	return line[i] == '0' && i > 0 && (line[i-1] == ' ' || Digit(line[i-1])) && i+1 < len(line) && lower(line[i+1:i+2]) == "z" && !letterAt(line, i+2)
}

// signOf gives signs that look alike one form.
func signOf(s string) string {
	switch s {
	case "–", "—", "−", "‒", "-":
		return "-"
	case "⁄":
		return "/"
	case "·", "∙", "●", "▪", "*":
		return "•"
	case "→", "⇒", ">":
		return ">"
	}
	if c, _ := utf8.DecodeRuneInString(s); unicode.Is(unicode.So, c) && c != '°' || unicode.Is(unicode.Sk, c) && c > 0x1F000 {
		return "•" // a picture parts as a bullet does
	}
	return s
}

// lexWord reads a word: letters and digits, and a hyphen or an apostrophe between
// letters. "w/" and "w/o" are words too, and so is a letter joined to a letter,
// as in "n&n" or "n+n".
func lexWord(line string, start int) Token {
	if c := line[start]; (c == 'x' || c == 'X') && start+1 < len(line) && startsNumber(line, start+1) && line[start+1] != ',' {
		return Token{Kind: Word, End: start + 1, Text: "x"}
	}
	if end := joinedLetters(line, start); end > 0 {
		return Token{Kind: Word, End: end, Text: lower(line[start:start+1]) + "&" + lower(line[end-1:end])}
	}
	end := wordEnd(line, start)
	if t, ok := clippedWord(line, start, end); ok {
		return t
	}
	if dotted := dottedWord(line, start, end); dotted > 0 {
		return Token{Kind: Word, End: dotted, Text: lower(line[start:dotted])}
	}
	return Token{Kind: Word, End: end, Text: lower(line[start:end])}
}

// wordEnd is where the letters and digits of a word end that starts at start.
func wordEnd(line string, start int) int {
	i := start
	for i < len(line) && !(Digit(line[i]) && amountRunsOn(line, start, i)) {
		c, n := utf8.DecodeRuneInString(line[i:])
		joins := c == '-' || c == '\'' || c == '’' || c == '‑'
		if !unicode.IsLetter(c) && !unicode.IsDigit(c) && !unicode.Is(unicode.Mn, c) && c != '°' && !(joins && letterAt(line, i+n)) {
			break
		}
		i += n
	}
	return i
}

// clippedWord reads the one-letter words that stand for others: "w/" and "w/o", "e/w" for egg white,
// "q.b." for quanto basta, "T" for a tablespoon.
func clippedWord(line string, start, end int) (Token, bool) {
	behind := line[end:]
	switch word := lower(line[start:end]); {
	case word == "w" && (behind == "/o" || strings.HasPrefix(behind, "/o ")):
		return Token{Kind: Word, End: end + len("/o"), Text: "without"}, true
	case word == "w" && strings.HasPrefix(behind, "/"):
		return Token{Kind: Word, End: end + len("/"), Text: "with"}, true
	case word == "w":
		return Token{Kind: Word, End: end, Text: "with"}, true
	case word == "e" && len(behind) > 1 && strings.EqualFold(behind[:2], "/w") && !letterAt(line, end+len("/w")):
		return Token{Kind: Word, End: end + len("/w"), Text: "ew"}, true
	case word == "q" && len(behind) > 1 && strings.EqualFold(behind[:2], ".b") && !letterAt(line, end+len(".b")):
		if end += len(".b"); end < len(line) && line[end] == '.' {
			end++
		}
		return Token{Kind: Word, End: end, Text: "qb"}, true
	case line[start:end] == "T":
		return Token{Kind: Word, End: end, Text: "tbsp"}, true
	}
	return Token{}, false
}

// leastBehindDot is the fewest letters of a word that one letter and a full stop stand before.
const leastBehindDot = 3

// dottedWord returns where a word ends whose first word is clipped to one letter, "t.sec", nought where none
// stands at start: a unit of one letter has a space behind its full stop.
func dottedWord(line string, start, end int) int {
	if end-start != 1 || end+1 >= len(line) || line[end] != '.' || !letterAt(line, end+1) {
		return 0
	}
	if to := wordEnd(line, end+1); to-end > leastBehindDot && !(to < len(line) && line[to] == '.') {
		return to
	}
	return 0
}

// leastRunOn is the fewest letters of a name that an amount runs into: "gin60". Short
// words with a figure are names: "H2O", "B52".
const leastRunOn = 3

// amountRunsOn reports whether an amount starts at i, right behind the letters of a
// name: at most three figures, and then nothing but a unit.
func amountRunsOn(line string, start, i int) bool {
	if i-start < leastRunOn || strings.ContainsFunc(line[start:i], func(c rune) bool { return !unicode.IsLetter(c) }) {
		return false
	}
	n := i
	for n < len(line) && (Digit(line[n]) || line[n] == '.' && n+1 < len(line) && Digit(line[n+1])) {
		n++
	}
	if n-i > 4 {
		return false
	}
	for _, unit := range []string{"ml", "cl", "oz"} {
		if strings.HasPrefix(strings.ToLower(line[n:]), unit) {
			n += len(unit)
			break
		}
	}
	return !letterAt(line, n) && (n == len(line) || line[n] != '\'' && line[n] != '-')
}

// joinedLetters returns the end of two letters with a sign between them that stand
// alone, such as "n&n" and "h+h"; 0 if there are none.
func joinedLetters(line string, i int) int {
	if i+2 >= len(line) || !strings.ContainsRune("&+", rune(line[i+1])) || line[i] >= utf8.RuneSelf || line[i+2] >= utf8.RuneSelf || !letterAt(line, i+2) {
		return 0
	}
	if i+3 < len(line) {
		if c, _ := utf8.DecodeRuneInString(line[i+3:]); unicode.IsLetter(c) || unicode.IsDigit(c) {
			return 0
		}
	}
	return i + 3
}

func letterAt(line string, i int) bool {
	if i >= len(line) {
		return false
	}
	c, _ := utf8.DecodeRuneInString(line[i:])
	return unicode.IsLetter(c)
}

// lower is strings.ToLower with the typographic apostrophe and hyphen in plain
// form.
func lower(s string) string {
	s = strings.ToLower(s)
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return typographic.Replace(s)
		}
	}
	return s
}

// typographic gives signs of printers the form that keyboards have.
var typographic = strings.NewReplacer("’", "'", "‑", "-")

// Unprintable reports whether no keyboard types a character.
func Unprintable(c rune) bool { return unicode.IsControl(c) && !unicode.IsSpace(c) }

// Invisible reports whether a character is one of those that pasted text carries and nobody sees.
func Invisible(c rune) bool {
	return c == '\u200B' || c == '\u2060' || c == '\uFEFF' || c == '\uFE0F' || c == '\u200D'
}

// OneLine returns s on one line with single spaces, without what cannot be seen.
func OneLine(s string) string {
	if !strings.ContainsFunc(s, func(c rune) bool {
		return c != ' ' && (unicode.IsSpace(c) || Unprintable(c) || Invisible(c) || c == utf8.RuneError)
	}) && !strings.Contains(s, "  ") {
		return strings.TrimSpace(s)
	}
	s = strings.Map(func(c rune) rune {
		switch {
		case unicode.IsSpace(c):
			return ' '
		case Unprintable(c) || Invisible(c):
			return -1
		}
		return c
	}, strings.ToValidUTF8(s, "\uFFFD"))
	return strings.Join(strings.Fields(s), " ")
}

// Words is the set of the words of a text.
func Words(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

// Names is a set of names parted by commas, each as [flavor.NormaliseName] makes it.
func Names(text string) map[string]bool {
	out := map[string]bool{}
	for name := range strings.SplitSeq(text, ",") {
		out[flavor.NormaliseName(name)] = true
	}
	return out
}
