package layout

import (
	"strconv"
	"strings"

	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// spelled is an amount in words behind a name, "gin sixty, dry vermouth ten", with millilitres or
// without a unit: what bars say in words is poured in millilitres.
var spelled = pattern.Of(`(?i)\pL,?[ \t]+((?:(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[- ](?:two|five|seven))?|five|six|seven|eight|ten|twelve|fifteen|eighteen)(?:[ \t]+(?:mils?|mls?|millilit(?:re|er)s?))?)` + ends)

// spells is a number of millilitres in words behind a sign.
var spells = pattern.Of(`(?i)[,.].*\b(?:fifteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)\b`)

// Spells reports whether a text says an amount in words, behind a name or a sign, or in another
// tongue.
func Spells(text string) bool {
	return Figures(text) != text || spells.MatchString(text) || speech.Foreign(text)
}

// Figures writes the amounts in words behind the names of a text as figures; the text stays as long.
func Figures(text string) string {
	for {
		at := spelled.FindStringSubmatchIndex(text)
		if at == nil {
			return text
		}
		text = text[:at[2]] + inFigures(text[at[2]:at[3]]) + text[at[3]:]
	}
}

// inFigures is an amount in words in figures, with blanks behind it.
func inFigures(words string) string {
	n := 0.0
	for _, t := range speech.InFigures(token.Lex(nil, words, 0, len(words))) {
		if n == 0 {
			n = t.Value + token.NumberWords[t.Text]
		}
	}
	out := strconv.Itoa(int(n))
	if strings.Contains(strings.ToLower(words), "m") && strings.ContainsAny(words, " \t") {
		out += " ml"
	}
	return out + strings.Repeat(" ", max(0, len(words)-len(out)))
}

// spelledOut writes amounts in words behind names as figures.
func (s *Set) spelledOut() { s.Text = Figures(s.Text) }
