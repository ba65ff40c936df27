package flavor

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// NormaliseName folds a written name to the key it is found under: lower case,
// accents dropped, anything but letters and digits a space, and each word in
// the singular, so that "Crème de Cassis" and "creme de cassis" meet.
func NormaliseName(name string) string {
	if key, ok := normalisePlain(name); ok {
		return key
	}
	var b strings.Builder
	for _, r := range norm.NFKD.String(strings.ToLower(name)) {
		switch {
		case unicode.Is(unicode.Mn, r) || r == '\'' || r == '’':
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		default:
			b.WriteByte(' ')
		}
	}
	words := strings.Fields(b.String())
	for i, w := range words {
		words[i] = singular(w)
	}
	return strings.Join(words, " ")
}

// normalisePlain does the same for a name in plain letters, in one pass; it is
// false for any other.
func normalisePlain(name string) (key string, ok bool) {
	var room [64]byte
	b, from := room[:0], 0
	for i := 0; i <= len(name); i++ {
		c := byte(' ')
		if i < len(name) {
			c = name[i]
		}
		switch {
		case c >= 0x80:
			return "", false
		case 'A' <= c && c <= 'Z':
			b = append(b, c+'a'-'A')
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9':
			b = append(b, c)
		case c == '\'':
		case len(b) > from: // a word ends
			b = append(b[:from+singularLen(b[from:])], ' ')
			from = len(b)
		}
	}
	if from == 0 {
		return "", true
	}
	b = b[:from-1]
	if string(b) == name {
		return name, true
	}
	return string(b), true
}

// singularLen does what singular does, in place, and returns the new length.
func singularLen(w []byte) int {
	n := len(w)
	if n <= 3 || w[n-1] != 's' {
		return n
	}
	s := singular(string(w))
	return copy(w, s)
}

// singular drops a plural ending. It need not be right English, only the same
// for both forms of a word.
func singular(w string) string {
	switch {
	case len(w) > 4 && strings.HasSuffix(w, "ies"):
		return w[:len(w)-3] + "y"
	case w == "leaves":
		return "leaf"
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us") && !strings.HasSuffix(w, "is"):
		return w[:len(w)-1]
	}
	return w
}
