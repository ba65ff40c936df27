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

// Where a text tells two ways of mixing a drink, or of serving it, and not one after the other: common practice,
// no source.

// manners is what a text has told so far of how its drink is mixed and served.
type manners struct {
	mixed      flavor.Method
	mixedAs    string
	bare, iced string // what says that no ice is in the glass, and that some is
	stem, tall string // what names a glass that no ice goes into, and one that some does
	cup, cubed string // what names a glass that only cold drinks without ice fit, and what tells of ice in it
	between    bool   // something is done or poured since the drink was mixed
	choice     bool   // what follows stands behind "or"
	ofIce      bool   // what follows stands behind the label of the ice
}

// TwoManners is the fault of a text that mixes a drink in two ways, or serves it in two, that are no steps of
// one.
func TwoManners(text, name string) *flavor.DataFault {
	var m manners
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' || strings.HasPrefix(line, "//") || isName(line, name) {
			continue
		}
		toks := token.Lex(nil, line, 0, len(line))
		for len(toks) > 0 {
			end := slices.IndexFunc(toks, endsManner)
			if end < 0 {
				end = len(toks)
			}
			if f := m.take(line, toks[:end]); f != nil {
				f.Location = measure.LineLocation(i + 1)
				return f
			}
			m.ofIce = end == 1 && toks[0].Text == "ice"
			m.choice = end < len(toks) && toks[end].Text == "or"
			toks = toks[min(end+1, len(toks)):]
		}
	}
	return nil
}

// isName reports whether a line is the name of the drink and nothing else, with a label or without.
func isName(line, name string) bool {
	_, behind, _ := strings.Cut(line, ":")
	return name != "" && (strings.EqualFold(line, name) || strings.EqualFold(strings.TrimSpace(behind), name))
}

// endsManner reports whether a token parts what is told of one step from the next.
func endsManner(t token.Token) bool {
	return t.Kind == token.Mark && t.Text != "'" && t.Text != "’" && t.Text != "-" && t.Text != "&" && t.Text != "°" || t.Text == "and" || t.Text == "or"
}

var (
	// orderWords say that a step is one of several, or that it is not done to all of the drink.
	orderWords = vocabulary.Words(`then before after until till first last finally finish again while once twice second next two three four rest others both all-but but except without to combine dissolve
		minus less not no don't dont never wait sorry actually scratch instead rather meant correction edit was used`)
	// helpers say nothing of how a drink is served.
	helpers = vocabulary.Words(`it this that them we i you please your my just`)
	// amidSteps do something to a drink after it was mixed, so that it may be mixed a second time.
	amidSteps = vocabulary.Words(`top topped fill filled add added pour poured float lengthen charge dump dumped muddle churn roll transfer`)
)

// take takes what one clause tells, and returns the fault of what does not agree with what was told before.
func (m *manners) take(line string, toks []token.Token) *flavor.DataFault {
	toks = slices.DeleteFunc(slices.Clone(toks), func(t token.Token) bool { return helpers.Has(t.Text) })
	if len(toks) == 0 {
		return nil
	}
	said := token.OneLine(line[toks[0].Start:toks[len(toks)-1].End])
	s := serving.Read(toks)
	ordered := !s.NoIce && anyOf(toks, orderWords)
	if len(s.Unknown) > 0 || s.Conflict != nil || ordered || s.Muddle {
		m.between = m.between || len(s.Unknown) == 0 || ordered || anyOf(toks, amidSteps)
		return nil
	}
	if s.Method != "" {
		return m.mix(&s, said)
	}
	m.between = m.between || s.OnIce || anyOf(toks, amidSteps)
	return m.serve(&s, toks, said)
}

// anyOf reports whether one of some words is among tokens.
func anyOf(toks []token.Token, words *vocabulary.Set) bool {
	return slices.ContainsFunc(toks, func(t token.Token) bool { return words.Has(t.Text) })
}

// mix takes a clause that mixes all of the drink.
func (m *manners) mix(s *serving.Said, said string) *flavor.DataFault {
	if s.Touch && m.mixed != "" {
		return nil
	}
	m.iced, m.stem, m.tall, m.cubed = "", "", "", "" // it was mixed on that ice, and in that glass
	built := m.mixed == flavor.Build || s.Method == flavor.Build
	if m.mixed != "" && (!m.between && !built && mixTwice(m.mixed, s.Method) || m.choice && built && m.mixed != s.Method) {
		return measure.Invalid("method", said, "%q is a second way to mix the drink beside %q; keep one, or write \"then\" between them", said, m.mixedAs)
	}
	m.mixed, m.mixedAs, m.between = s.Method, said, false
	return nil
}

// mixTwice reports whether who does the one and then the other to all of a drink mixes it twice.
func mixTwice(a, b flavor.Method) bool {
	shaken := func(m flavor.Method) bool { return m == flavor.Shake || m == flavor.DryShake }
	return a != b && !(shaken(a) && shaken(b))
}

// serve takes a clause that tells how the drink is served.
func (m *manners) serve(s *serving.Said, toks []token.Token, said string) *flavor.DataFault {
	if anyOf(toks, notInGlass) {
		return nil
	}
	stated := s.Service != "" && !s.Weak
	if s.NoIce || stated && (s.Service == flavor.Up || s.Service == flavor.Neat || s.Service == flavor.Hot) {
		m.bare = said
	}
	if s.OnIce && (m.mixed != "" || anyOf(toks, serves)) || stated && s.Service == flavor.Rocks && (m.choice || anyOf(toks, onIt)) { // "rocks, no ice" is a glass
		m.iced = said
		if s.Service != flavor.Crushed { // a frappé is served in a coupe
			m.cubed = said
		}
	}
	if stemmed.Has(s.Glass) && s.Weak {
		m.cup = said
		if s.OnIce && s.Service == flavor.Up { // "coupe over ice"
			m.cubed = said
		}
	}
	if m.ofIce && stated && s.Service == flavor.Rocks { // "ice: rocks"
		m.cubed = said
	}
	if m.mixed != "" && s.Glass != "" {
		if s.Service == flavor.Up {
			m.stem = said
		} else if s.Service == flavor.Rocks || s.Service == flavor.Long {
			m.tall = said
		}
	}
	switch {
	case m.bare != "" && m.iced != "":
		return measure.Invalid("service", said, "%q tells that the drink is served without ice, and %q that there is some; keep one", m.bare, m.iced)
	case m.stem != "" && m.tall != "" && m.stem != m.tall:
		return measure.Invalid("service", said, "%q and %q are two glasses; keep one", m.stem, m.tall)
	case m.cup != "" && m.cubed == m.cup:
		return measure.Invalid("service", said, "%q names a glass for drinks without ice, and ice in it; keep one", said)
	case m.cup != "" && m.cubed != "":
		return measure.Invalid("service", said, "%q is a glass for drinks without ice, and %q tells that there is some; keep one", m.cup, m.cubed)
	}
	return nil
}

var (
	// notInGlass tell of ice that is not in the glass, and of filling a glass up.
	notInGlass = vocabulary.Words(`side shaker tin top fill mixing water bucket bowl chill pint`)
	// stemmed are glasses that hold no ice: common practice.
	stemmed = vocabulary.SetOf("coupe", "Nick-and-Nora glass", "cocktail glass", "flute")
	// onIt tell that "rocks" is ice and no glass.
	onIt = vocabulary.Words(`on over otr`)
	// serves tell of the drink in its glass.
	serves = vocabulary.Words(`serve served serving strain strained`)
)
