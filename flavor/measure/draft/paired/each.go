package paired

import (
	"strings"

	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/vocabulary"
)

// apiece are words behind an amount that is each of the pours' that follow.
var apiece = vocabulary.Words(`each ea everything all apiece`)

// leastEach is the fewest pours that one amount is of, where no sign parts them.
const leastEach = 3

// each reads an amount that is that of each name behind it, where no sign parts the names: ".5 each vodka
// gin rum, .75 lemon".
func (s *script) each() (string, bool) {
	for i := range s.toks {
		a, ok := s.amountAt(i)
		if !ok || !s.word(a.to) || !apiece.Has(s.toks[a.to].Text) {
			continue
		}
		names, end := s.run(a.to+1, a)
		if len(names) < leastEach || end < len(s.toks) && s.toks[end].Kind != token.Mark {
			return "", false
		}
		var out strings.Builder
		out.WriteString(strings.TrimRight(s.text[:s.toks[i].Start], " \t,-–—"))
		for _, name := range names {
			out.WriteString("\n" + a.written() + " " + name)
		}
		if end < len(s.toks) {
			out.WriteString("\n" + strings.TrimLeft(s.text[s.toks[end].Start:], " \t,;"))
		}
		return strings.TrimLeft(out.String(), "\n"), true
	}
	return "", false
}

// run returns the names that stand one behind another from a token on, and where they end.
func (s *script) run(i int, a amount) (names []string, end int) {
	for i < len(s.toks) && (s.toks[i].Text == "of" || s.toks[i].Is(":")) {
		i++
	}
	for {
		to := s.nameAt(i, a.unit)
		if to == i {
			return names, i
		}
		names, i = append(names, s.written(i, to)), to
	}
}
