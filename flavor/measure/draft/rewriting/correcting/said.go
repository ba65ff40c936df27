package correcting

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/everyday"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// kind is what a clause does in a correction.
type kind uint8

const (
	aNothing  kind = iota // it is no part of one
	aFiller               // "ok"
	aSignal               // "no wait"
	anAmount              // "go 15"
	aRejected             // "20 was cloying"
	aName                 // "pineapple gum"
	aDenied               // "not lime"
	aSame                 // "same amount"
	aComment              // "the mango was too much"
	aFactor               // "double that"
	aRemoval              // "took it out"
	aPour                 // "gold rum 20", behind a signal
)

// said is what a clause says in a correction.
type said struct {
	kind   kind
	armed  bool // it has a signal of its own
	former bool // the amount that does not count may be none of the pour
	about  *pour
	value  float64
	unit   flavor.Unit
	unitAt entry.Span
	at     entry.Span // of the amount, or of the name
}

// corrector is a text while what it corrects is carried out.
type corrector struct {
	text     string
	resolver *naming.Resolver
	clauses  []clause
	stars    bool   // lines correct others by a star
	pours    []pour // those that stand before the clause that is read
}

// read says what a clause does in a correction.
func (c *corrector) read(cl *clause) said {
	toks, armed, denied := withoutLeads(cl.toks)
	if len(toks) == 0 {
		if armed {
			return said{kind: aSignal, armed: true}
		}
		return said{kind: aFiller}
	}
	if s, ok := c.whole(toks); ok {
		return s
	}
	amounts := amountsIn(toks)
	if len(amounts) == 1 && c.starred(cl) {
		return c.byStar(toks, amounts[0])
	}
	switch {
	case is(toks, same):
		return said{kind: aSame}
	case len(amounts) > 1:
		return said{}
	case len(amounts) == 1:
		s := c.amount(toks, amounts[0], armed, denied)
		if strings.HasSuffix(cl.before, arrow) && s.kind == anAmount && s.about == nil {
			s.armed = true
		}
		if s.kind == anAmount && cl.after == "?" && s.about == nil { // "25? no 20"
			s.kind, s.former = aRejected, true
		}
		return s
	case toks[0].Text == "not":
		if p := c.named(toks[1:]); p != nil {
			return said{kind: aDenied, about: p, armed: true}
		}
		return said{}
	case !denied && c.names(toks):
		return said{kind: aName, armed: armed, at: entry.Span{Start: toks[0].Start, End: toks[len(toks)-1].End}}
	}
	return c.comment(toks)
}

// withoutLeads drops the words that begin what is said; armed if one of them is a signal, denied if
// the last denies what stands right behind it.
func withoutLeads(toks []token.Token) (rest []token.Token, armed, denied bool) {
	rest = toks
	for len(rest) > 0 {
		t := rest[0].Text
		if rest[0].Kind == token.Mark {
			rest = rest[1:]
			continue
		}
		if n := beginsWith(rest, sets); n > 0 && !leads.Has(t) && !signals.Has(t) {
			break
		}
		if !leads.Has(t) && !signals.Has(t) || len(rest) > 1 && (t == "that" || t == "scratch" || t == "strike") && !allSignals(rest) {
			break
		}
		armed = armed || sure.Has(t) || t == "scratch" || t == "strike" || t == "rather"
		denied = denies.Has(t)
		rest = rest[1:]
	}
	return rest, armed, denied
}

// allSignals reports whether tokens are nothing but signals: "scratch that".
func allSignals(toks []token.Token) bool {
	for i := range toks {
		if !signals.Has(toks[i].Text) && !leads.Has(toks[i].Text) {
			return false
		}
	}
	return true
}

// whole reads a clause that changes a whole pour: "double that", "took it out".
func (c *corrector) whole(toks []token.Token) (said, bool) {
	first := strings.ToLower(c.text[toks[0].Start:toks[0].End])
	if f := factors[first]; f > 0 && len(toks) > 1 && (theirs.Has(toks[1].Text) || pronouns.Has(toks[1].Text)) {
		if p, ok := c.spokenOf(toks[1:]); ok {
			return said{kind: aFactor, armed: true, value: f, about: p}, true
		}
	}
	for _, form := range removals {
		if what, ok := match(toks, form); ok {
			if p, ok := c.spokenOf(what); ok {
				return said{kind: aRemoval, armed: true, about: p}, true
			}
		}
	}
	return said{}, false
}

// match returns the tokens that stand where the star of a form does; false if the rest differs.
func match(toks []token.Token, form []string) ([]token.Token, bool) {
	star := 0
	for form[star] != "*" {
		star++
	}
	tail := len(form) - star - 1
	if len(toks) < len(form) {
		return nil, false
	}
	for i := range form {
		t := i
		if i > star {
			t = len(toks) - (len(form) - i)
		}
		if i != star && toks[t].Text != form[i] {
			return nil, false
		}
	}
	return toks[star : len(toks)-tail], true
}

// spokenOf is the pour that a pronoun or a name speaks of: nil for the one before.
func (c *corrector) spokenOf(toks []token.Token) (*pour, bool) {
	if len(toks) == 1 && pronouns.Has(toks[0].Text) {
		return nil, true
	}
	p := c.named(toks)
	return p, p != nil
}

// named is the one pour so far that has every word of a name, nil if none or several have; of
// several the one that is called just so.
func (c *corrector) named(toks []token.Token) *pour {
	for len(toks) > 0 && theirs.Has(toks[0].Text) {
		toks = toks[1:]
	}
	var hit *pour
	for i := range c.pours {
		p := &c.pours[i]
		if !p.has(toks) {
			continue
		}
		if len(p.name) == len(toks) {
			return p
		}
		if hit != nil {
			return nil
		}
		hit = p
	}
	return hit
}

// amount reads a clause with one amount.
func (c *corrector) amount(toks []token.Token, a amountOf, armed, denied bool) said {
	s := said{kind: anAmount, armed: armed, value: a.value, unit: a.unit, at: a.at, unitAt: a.unitAt}
	pre, post := toks[:a.from], toks[a.to:]
	if c.rejects(pre, post) {
		s.kind, s.former = aRejected, len(pre) > 0
		return s
	}
	if n := beginsWith(pre, sets); n > 0 {
		pre, s.armed = pre[n:], true
	}
	if n := endsIn(post, settled); n > 0 {
		post, s.armed = post[:len(post)-n], true
	}
	told := len(pre) > 1 && copulas.Has(pre[len(pre)-1].Text) // "lemon is 25"
	if told {
		pre = pre[:len(pre)-1]
	}
	reset := len(pre) > 1 && resets.Has(pre[0].Text)
	if reset {
		pre = pre[1:]
	}
	for len(pre) > 0 && ways.Has(pre[len(pre)-1].Text) {
		pre, s.armed = pre[:len(pre)-1], s.armed || reset
	}
	if len(pre) == 0 && len(post) == 0 {
		return s
	}
	name := pre
	if len(name) == 0 {
		name = post
	} else if len(post) > 0 {
		return said{}
	}
	switch s.about = c.named(name); {
	case denied:
		return said{}
	case s.about == nil && c.names(name):
		return said{kind: aPour, armed: armed, at: entry.Span{Start: name[0].Start, End: name[len(name)-1].End}, value: a.value}
	case s.about == nil, math.Abs(s.about.value-s.value) < sameAmount && s.about.unit == s.unit: // told once more
		return said{}
	}
	s.armed = s.armed || reset || told && len(s.about.name) == len(name)
	return s
}

// rejects reports whether the words around an amount say that it does not count.
func (c *corrector) rejects(pre, post []token.Token) bool {
	if len(post) > 1 && rejected.Has(post[0].Text) && endsIn(post, settled) == 0 {
		return c.spoken(post[1:])
	}
	if len(post) > 1 && post[0].Text == "too" {
		return c.spoken(post)
	}
	return len(pre) == 1 && before.Has(pre[0].Text) && len(post) == 0
}

// spoken reports whether words tell how something was, and no more: none is one of making, and none
// names an ingredient that is not poured.
func (c *corrector) spoken(toks []token.Token) bool {
	for i := range toks {
		w := toks[i].Text
		if _, n := serving.TermAt([]string{w}); toks[i].Kind != token.Word || n > 0 || thinks.Has(w) {
			return false
		}
		if everyday.Word(w) || degrees.Has(w) || c.word(w) {
			continue
		}
		if f := c.resolver.Find(w, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Profile != nil || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid {
			return false
		}
	}
	return true
}

// word reports whether a word is one of the name of a pour.
func (c *corrector) word(w string) bool {
	for i := range c.pours {
		if c.pours[i].has([]token.Token{{Text: w}}) {
			return true
		}
	}
	return false
}

// comment reads what is thought of a pour: "the mango was too much".
func (c *corrector) comment(toks []token.Token) said {
	at := 0
	for at < len(toks) && !tells.Has(toks[at].Text) {
		at++
	}
	if at == len(toks) || !c.spoken(toks) {
		return said{}
	}
	s := said{kind: aComment}
	if at > 0 && !pronouns.Has(toks[0].Text) {
		if s.about = c.named(toks[:at]); s.about == nil {
			return said{}
		}
	}
	return s
}

// mostName is the most words of a name that stands in place of another.
const mostName = 5

// names reports whether words are the name of an ingredient and nothing else.
func (c *corrector) names(toks []token.Token) bool {
	if len(toks) > mostName {
		return false
	}
	for i := range toks {
		if toks[i].Kind != token.Word || serving.StepVerbs[toks[i].Text] {
			return false
		}
	}
	f := c.resolver.Find(c.written(toks), naming.Place{Unit: flavor.Ounce, Amount: 1})
	return f.Firm() && f.Dropped == "" || f.Fault != nil && f.Fault.Kind == flavor.ErrInvalid && len(f.Fault.Suggest) > 1
}

// written are tokens as they are written.
func (c *corrector) written(toks []token.Token) string {
	return strings.Join(strings.Fields(c.text[toks[0].Start:toks[len(toks)-1].End]), " ")
}

// copulas stand between a name and the amount that it has.
var copulas = vocabulary.Words(`is are gets`)

// contrasts reports whether behind clause i the amount is denied that a pour has: "lemon is 25, not 30".
func (c *corrector) contrasts(i int, p *pour) bool {
	if i+1 >= len(c.clauses) {
		return false
	}
	next := c.read(&c.clauses[i+1])
	return next.kind == aRejected && next.about == nil && math.Abs(next.value-p.value) < sameAmount
}
