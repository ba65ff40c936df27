package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

var (
	// sayers are words by which somebody or something tells how to mix: "the card says shake".
	sayers = vocabulary.Words(`says say said reads read wrote writes`)
	// forbids are words that forbid it: "do not shake".
	forbids = vocabulary.Words(`not don't dont never no`)
	// aroundMixing are words that may stand beside a way of mixing that is all a clause tells.
	aroundMixing = vocabulary.Words(`do does please ever it this that them hard well long and strain just gently`)
)

// mixing is a way of mixing that a clause tells, and how.
type mixing struct {
	method flavor.Method
	said   string
	denied bool
	told   bool // somebody says so
}

// ToldTwice is the fault of a text in which two tell two ways to mix, or that forbids one and asks for it afterwards:
// "one pen says shaken, the other says stirred", "do not shake. Shake hard".
func ToldTwice(text string) *flavor.DataFault {
	var all []mixing
	for i, line := range strings.Split(text, "\n") {
		toks := token.Lex(nil, line, 0, len(line))
		for len(toks) > 0 {
			end := slices.IndexFunc(toks, endsManner)
			if end < 0 {
				end = len(toks)
			}
			if anyOf(toks[:end], corrections) {
				return nil
			}
			if m, ok := mixingOf(line, toks[:end]); ok {
				if f := m.against(all); f != nil {
					f.Location = measure.LineLocation(i + 1)
					return f
				}
				all = append(all, m)
			}
			toks = toks[min(end+1, len(toks)):]
		}
	}
	return nil
}

// corrections take back what was said before them.
var corrections = vocabulary.Words(`wait sorry actually scratch correction edit ignore`)

// mixingOf reads the way of mixing that is all a clause tells, or that somebody tells in it.
func mixingOf(line string, toks []token.Token) (mixing, bool) {
	var m mixing
	rest := toks
	if at := slices.IndexFunc(toks, func(t token.Token) bool { return sayers.Has(t.Text) }); at > 0 {
		m.told, rest = true, toks[at+1:]
	}
	rest = slices.DeleteFunc(slices.Clone(rest), func(t token.Token) bool {
		denied := forbids.Has(t.Text)
		m.denied = m.denied || denied
		return denied || t.Kind == token.Mark || aroundMixing.Has(t.Text)
	})
	if len(rest) != 1 {
		return m, false
	}
	s := serving.Read(rest)
	if s.Method == "" || len(s.Unknown) > 0 {
		return m, false
	}
	m.method, m.said = s.Method, token.OneLine(line[toks[0].Start:toks[len(toks)-1].End])
	return m, true
}

// against is the fault of a way of mixing that does not agree with those told before.
func (m *mixing) against(before []mixing) *flavor.DataFault {
	for _, was := range before {
		switch {
		case m.told && was.told && mixTwice(was.method, m.method), was.denied && !m.denied && was.method == m.method:
			return measure.Invalid("method", m.said, "%q does not agree with %q; keep one", m.said, was.said)
		}
	}
	return nil
}
