package draft

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// kind is the kind of a token.
type kind uint8

const (
	word    kind = iota
	numeral      // an amount in figures
	ratio        // "2:1"
	percent      // "20 %"
	mark         // anything else that is not a space
)

// token is a word, a number or a sign of a text, with its place in it.
type token struct {
	kind       kind
	start, end int     // bytes of the text
	text       string  // in lower case; a mark as it stands
	value      float64 // of a numeral
	glued      bool    // no space before it
	note       string  // what was assumed in reading a numeral
	guessed    bool    // the note is about how much it is
	wrong      string  // why a numeral cannot be read; else empty
}

func (t *token) is(sign string) bool { return t.kind == mark && t.text == sign }

// lex appends the tokens of text[from:to], which is one line, to dst.
func lex(dst []token, text string, from, to int) []token {
	line := text[:to]
	spaced := true
	for i := from; i < to; {
		c, n := utf8.DecodeRuneInString(line[i:])
		var t token
		switch {
		case unicode.IsSpace(c) || invisible(c):
			spaced = spaced || unicode.IsSpace(c)
			i += n
			continue
		case startsNumber(line, i):
			t = lexNumber(line, i)
		case unicode.IsLetter(c) || unicode.Is(unicode.Mn, c) || c == '°':
			t = lexWord(line, i)
		default:
			t = token{kind: mark, end: i + n, text: signOf(line[i : i+n])}
		}
		t.start, t.glued = i, !spaced
		dst = append(dst, t)
		i, spaced = t.end, false
	}
	return dst
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
	return s
}

// lexWord reads a word: letters and digits, and a hyphen or an apostrophe between
// letters. "w/" and "w/o" are words too, and so is a letter joined to a letter,
// as in "n&n" or "n+n".
func lexWord(line string, i int) token {
	start := i
	if c := line[i]; (c == 'x' || c == 'X') && i+1 < len(line) && startsNumber(line, i+1) && line[i+1] != ',' {
		return token{kind: word, end: i + 1, text: "x"}
	}
	if end := joinedLetters(line, i); end > 0 {
		return token{kind: word, end: end, text: lower(line[i:i+1]) + "&" + lower(line[end-1:end])}
	}
	for i < len(line) {
		c, n := utf8.DecodeRuneInString(line[i:])
		if unicode.IsLetter(c) || unicode.IsDigit(c) || unicode.Is(unicode.Mn, c) || c == '°' ||
			(c == '-' || c == '\'' || c == '’' || c == '‑') && letterAt(line, i+n) {
			i += n
			continue
		}
		break
	}
	if short := lower(line[start:i]); short == "w" && i < len(line) && line[i] == '/' {
		i++
		if strings.HasPrefix(line[i:], "o ") || line[i:] == "o" {
			return token{kind: word, end: i + 1, text: "without"}
		}
		return token{kind: word, end: i, text: "with"}
	} else if short == "w" {
		return token{kind: word, end: i, text: "with"}
	}
	return token{kind: word, end: i, text: lower(line[start:i])}
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
	if strings.ContainsAny(s, "’‑") {
		s = strings.NewReplacer("’", "'", "‑", "-").Replace(s)
	}
	return s
}

func unprintable(c rune) bool { return unicode.IsControl(c) && !unicode.IsSpace(c) }

// invisible are characters that pasted text carries and nobody sees.
func invisible(c rune) bool { return c == '\u200B' || c == '\u2060' || c == '\uFEFF' }

// oneLine returns s on one line with single spaces, without what cannot be seen.
func oneLine(s string) string {
	if !strings.ContainsFunc(s, func(c rune) bool {
		return c != ' ' && (unicode.IsSpace(c) || unprintable(c) || invisible(c) || c == utf8.RuneError)
	}) && !strings.Contains(s, "  ") {
		return strings.TrimSpace(s)
	}
	s = strings.Map(func(c rune) rune {
		switch {
		case unicode.IsSpace(c):
			return ' '
		case unprintable(c) || invisible(c):
			return -1
		}
		return c
	}, strings.ToValidUTF8(s, "\uFFFD"))
	return strings.Join(strings.Fields(s), " ")
}
