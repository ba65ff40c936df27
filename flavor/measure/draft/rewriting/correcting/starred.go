package correcting

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/token"
)

// Whoever corrects a message writes what counts once more with a star before it, or behind it: "*lemon 25".

// mostStarred is the most lines that correct others so: more are a list, with stars for bullets.
const mostStarred = 2

// starSign is what they write for a star.
const starSign = "*"

// stars reports whether lines of a text correct others by a star: few do, and others stand above them.
func stars(text string) bool {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	n := 0
	for i, line := range lines {
		if !starredLine(line) {
			continue
		}
		if n++; i == 0 || n > mostStarred || n > len(lines)/2 {
			return false
		}
	}
	return n > 0
}

// starredLine reports whether a line, or what is said in it behind whose word it is, has one star before or
// behind it.
func starredLine(line string) bool {
	if _, behind, ok := strings.Cut(line, ":"); ok && strings.HasPrefix(strings.TrimSpace(behind), starSign) {
		line = behind
	}
	line = strings.TrimSpace(line)
	begins, ends := strings.HasPrefix(line, starSign), strings.HasSuffix(line, starSign)
	return (begins || ends) && strings.Count(line, starSign) <= 2 && !strings.Contains(line, "**") && !(ends && !begins && strings.Count(line, starSign) > 1)
}

// starred reports whether a clause has such a star.
func (c *corrector) starred(cl *clause) bool {
	before, behind := strings.TrimRight(c.text[:cl.start()], " \t"), strings.TrimLeft(c.text[cl.end():], " \t")
	return c.stars && (strings.HasSuffix(before, starSign) || strings.HasPrefix(behind, starSign))
}

// byStar is what a clause with a star and an amount says: the pour that it names, or the one pour in that unit,
// counts so much. It says nothing where no pour or several are meant.
func (c *corrector) byStar(toks []token.Token, a amountOf) said {
	name := bareWords(toks[:a.from])
	if behind := bareWords(toks[a.to:]); len(name) == 0 {
		name = behind
	} else if len(behind) > 0 {
		return said{}
	}
	s := said{kind: anAmount, armed: true, value: a.value, unit: a.unit, at: a.at, unitAt: a.unitAt}
	var meant []*flavor.Profile
	if len(name) > 0 {
		if s.about = c.named(name); s.about == nil {
			meant = c.means(c.written(name))
		}
	}
	for i := range c.pours {
		p := &c.pours[i]
		same := len(name) == 0 && a.unit != "" && p.unit == a.unit ||
			meant != nil && slices.ContainsFunc(c.means(c.written(p.name)), func(q *flavor.Profile) bool { return slices.Contains(meant, q) })
		if !same {
			continue
		}
		if s.about != nil {
			return said{}
		}
		s.about = p
	}
	if s.about == nil {
		return said{}
	}
	return s
}

// bareWords are tokens without the signs at both ends.
func bareWords(toks []token.Token) []token.Token {
	for len(toks) > 0 && toks[0].Kind == token.Mark {
		toks = toks[1:]
	}
	for len(toks) > 0 && toks[len(toks)-1].Kind == token.Mark {
		toks = toks[:len(toks)-1]
	}
	return toks
}

// unsettledStar is the fault of a pour with such a star that stands for none above it, and is like one of them: it
// may be poured in its place or beside it.
func unsettledStar(text string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	c := &corrector{text: text, resolver: b, stars: stars(text)}
	if !c.stars {
		return nil
	}
	c.clauses = clausesOf(text)
	for i := range c.clauses {
		cl := &c.clauses[i]
		amounts := amountsIn(cl.toks)
		if !c.starred(cl) || len(amounts) != 1 || c.byStar(cl.toks, amounts[0]).about != nil {
			c.pours = append(c.pours, poursOf(cl, i)...)
			continue
		}
		name := bareWords(cl.toks[amounts[0].to:])
		if len(name) == 0 {
			name = bareWords(cl.toks[:amounts[0].from])
		}
		if len(name) == 0 {
			continue
		}
		for _, p := range c.means(c.written(name)) {
			if at := slices.IndexFunc(pours, func(q flavor.Pour) bool { return q.Profile != p && naming.Akin(q.Profile, p) }); at >= 0 {
				said := starSign + c.written(cl.toks)
				return measure.Invalid("text", said, "%q may stand in place of %s or be poured beside it; write only what is poured", said, pours[at].Profile.Name)
			}
		}
	}
	return nil
}
