package pattern_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor/measure/pattern"
)

// expressions are of every kind that a tree of syntax has: literals that fold and do not,
// classes of few and of many, alternatives with and without a common beginning, repeats from
// none and from one on, anchors, groups, and what is in no alphabet.
var expressions = []string{
	`(?i)\b(?:leave out|leave off|skip|omit)[ \t]+(?:the[ \t]+)?(\pL+)`,
	`(?i)(?:[\d½¼]|\b(?:ml|oz|dash))[ \t]+\?{2,}|(?:^|[ \t])\?{2,}[ \t]+\pL`,
	`(?i)k(?:ilo)?s`, `Kelvin|[kK]\d`, `(?i)straße|été`, `[€£$][ \t]?\d+`, `(?i)[xé×](?:\d|a{0,2}b)`,
	`^\d\s*:\s*\d$`, `(?:no)?thing`, `(?:|or) so`, `a{2}b+`, `(?m)^[ \t]*-[ \t]`, `[^\n]\x{FFFD}`, ``, `(?s)a.b`, `(?i:oz)|cl`,
}

// pieces are what the expressions look for, and what nearly is.
var pieces = []string{
	"leave", "LEAVE OUT", "Skip", "omit", " ", "\t", "\n", "the", "oz", "OZ", "ml", "dash", "??", "?", "1", "½", "k", "K", "ſ", "\u212a", "kilos", "KILOſ",
	"Kelvin", "straße", "STRASSE", "STRAẞE", "été", "ÉTÉ", "€", "$", "x", "×", "é", "É", ":", "nothing", "thing", "or so", " so", "aab", "b", "a", "-", "\xff", "\ufffd", "cl", "–", "’", "\xc5", "\xbf",
}

// A pattern answers as the expression does that is compiled at once.
func TestAnswersAsTheExpressionDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 8).Draw(t, "pieces"), "")
		for _, e := range expressions {
			exp, p := regexp.MustCompile(e), pattern.Of(e)
			assert.Equal(t, exp.MatchString(text), p.MatchString(text), "%s in %q", e, text)
			assert.Equal(t, exp.FindString(text), p.FindString(text), "%s in %q", e, text)
			assert.Equal(t, exp.FindStringIndex(text), p.FindStringIndex(text), "%s in %q", e, text)
			assert.Equal(t, exp.FindStringSubmatch(text), p.FindStringSubmatch(text), "%s in %q", e, text)
			assert.Equal(t, exp.FindStringSubmatchIndex(text), p.FindStringSubmatchIndex(text), "%s in %q", e, text)
			assert.Equal(t, exp.FindAllString(text, -1), p.FindAllString(text, -1), "%s in %q", e, text)
			assert.Equal(t, exp.FindAllStringIndex(text, -1), p.FindAllStringIndex(text, -1), "%s in %q", e, text)
			assert.Equal(t, exp.FindAllStringSubmatch(text, 2), p.FindAllStringSubmatch(text, 2), "%s in %q", e, text)
			assert.Equal(t, exp.FindAllStringSubmatchIndex(text, -1), p.FindAllStringSubmatchIndex(text, -1), "%s in %q", e, text)
			assert.Equal(t, exp.ReplaceAllString(text, "<$0>"), p.ReplaceAllString(text, "<$0>"), "%s in %q", e, text)
			assert.Equal(t, exp.Split(text, -1), p.Split(text, -1), "%s in %q", e, text)
		}
	})
}

// BenchmarkLacking is a line that lacks what the pattern looks for.
func BenchmarkLacking(b *testing.B) {
	const line = "22.5 ml freshly squeezed lemon juice"
	p, exp := pattern.Of(expressions[0]), regexp.MustCompile(expressions[0])
	b.Run("pattern", func(b *testing.B) {
		for b.Loop() {
			p.MatchString(line)
		}
	})
	b.Run("expression", func(b *testing.B) {
		for b.Loop() {
			exp.MatchString(line)
		}
	})
}
