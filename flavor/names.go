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
