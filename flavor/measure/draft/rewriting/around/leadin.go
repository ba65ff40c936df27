package around

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/rewriting/everyday"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// What leads up to a list may name what is in it: "swap the lime for lemon: 45 rum, 20 lemon", "the mint goes on
// top, not in it. so: ...", "what did you pour in the pear one? A: ...".

// leastLed is the fewest amounts behind what leads up to them.
const leastLed = 2

// LeadIn returns what stands before the first amount of a text and leads up to it: a sentence in which every
// word is known, and every ingredient that it names is poured behind it with an amount, or is said not to
// be. It is false if the text begins with no such sentence.
func LeadIn(text string, b *naming.Resolver) (everyday.Clause, bool) {
	if len(text) > mostText || strings.HasPrefix(text, "#") {
		return everyday.Clause{}, false
	}
	toks := token.Lex(nil, text, 0, len(text))
	first, amounts := -1, 0
	for i := range toks {
		if toks[i].Kind == token.Numeral && !(first < 0 && ordered(toks, i)) {
			if amounts++; first < 0 {
				first = i
			}
		}
	}
	if first < leastLead || amounts < leastLed {
		return everyday.Clause{}, false
	}
	l := lead{reader: reader{text: text, resolver: b}, toks: toks[:first], rest: toks[first:]}
	end := l.end()
	if end < leastLead || !l.leads(l.toks[:end]) {
		return everyday.Clause{}, false
	}
	return everyday.Clause{At: entry.Span{Start: toks[0].Start, End: toks[end-1].End}, Line: 1 + strings.Count(text[:toks[0].Start], "\n"), Alone: true, Spoken: true}, true
}

// leastLead is the fewest tokens of a sentence that leads up to a list.
const leastLead = 4

// lead is what stands before the first amount of a text, and the rest of it.
type lead struct {
	reader
	toks, rest []token.Token
}

// end is how many tokens before the first amount lead up to it: all, or those before the last sign or
// the line that the amount stands on.
func (l *lead) end() int {
	end := len(l.toks)
	for i := end - 1; i >= 0; i-- { // "For each glass you'll want 60 ml", "rum 60 ml"
		if t := &l.toks[i]; t.Kind == token.Mark && strings.Contains(":.!?,;", t.Text) || t.Kind == token.Mark && strings.Contains("/|-", t.Text) && !t.Glued || strings.Contains(l.text[t.End:l.rest[0].Start], "\n") {
			break
		}
		if !known(&l.toks[i]) || l.names(l.toks[i:i+1]) {
			return 0
		}
	}
	return end
}

// leads reports whether tokens lead up to a list and pour nothing.
func (l *lead) leads(toks []token.Token) bool {
	spoken, away := 0, false
	for i := 0; i < len(toks); {
		t := &toks[i]
		switch {
		case t.Kind == token.Numeral && ordered(toks, i), t.Kind == token.Mark:
			i++
			continue
		case t.Kind != token.Word || entry.StartsMeasure(toks[i:]) || everyday.Allergen(t.Text):
			return false
		}
		if p, n := l.resolver.MentionAt(l.wordsFrom(toks[i:])); n > 0 && !speaking.Has(t.Text) {
			if !l.poured(p) && !away && !l.denied(toks, i, n) && !l.tastesOf(toks, i, n) {
				return false
			}
			i += n
			continue
		}
		if away = away && !joining.Has(t.Text) || leaves.Has(t.Text); speaking.Has(t.Text) {
			spoken++
		}
		if n := l.drink(toks[i:]); n > 0 {
			i += n
			continue
		}
		if !known(t) && !(l.capital(t) && i > 0) {
			return false
		}
		i++
	}
	said := serving.Read(toks)
	return spoken > 0 && !said.States() && !withheld.MatchString(l.text[toks[0].Start:toks[len(toks)-1].End])
}

// withheld are words of a lead that may pour something which nobody here could name.
var withheld = pattern.Of(`(?i)\b(?:usual|same|rest|everything|half|double|twice|mix|blend|batch|base|stuff|instead of)\b`)

// wordsFrom are the words that tokens begin with.
func (l *lead) wordsFrom(toks []token.Token) []string {
	var out []string
	for i := range toks {
		if toks[i].Kind != token.Word || len(out) == naming.LongestName {
			break
		}
		out = append(out, l.text[toks[i].Start:toks[i].End])
	}
	return out
}

// drink returns how many words that tokens begin with are the name of a drink that everybody orders.
func (l *lead) drink(toks []token.Token) int {
	words := l.wordsFrom(toks)
	for n := min(len(words), drinks.MostWords); n > 0; n-- {
		if drinks.Known(strings.Join(words[:n], " ")) {
			return n
		}
	}
	return 0
}

// poured reports whether an ingredient, or one of its kind, is named behind the lead in a clause that holds
// an amount.
func (l *lead) poured(p *flavor.Profile) bool {
	from := 0
	for i := 0; i <= len(l.rest); i++ {
		if i < len(l.rest) && !(l.rest[i].Kind == token.Mark && strings.Contains(",;:/|()", l.rest[i].Text)) {
			continue
		}
		part := l.rest[from:i]
		from = i + 1
		if len(part) == 0 || !holdsNumber(part) {
			continue
		}
		for _, q := range l.resolver.Mentioned(token.OneLine(l.text[part[0].Start:part[len(part)-1].End])) {
			if q == p || naming.Akin(p, q) {
				return true
			}
		}
	}
	return false
}

// denied reports whether the words around a name say that it is poured no more: "swap the lime for lemon",
// "no mint in it".
func (l *lead) denied(toks []token.Token, i, n int) bool {
	for k := i - 1; k >= 0 && k >= i-denialReach && toks[k].Kind == token.Word; k-- {
		if leaves.Has(toks[k].Text) {
			return true
		}
	}
	for k := i + n; k < len(toks) && k < i+n+denialReach+2 && toks[k].Kind == token.Word; k++ {
		if toks[k].Text == "not" && k+1 < len(toks) && toks[k+1].Text == "in" || toks[k].Text == "out" {
			return true
		}
	}
	return false
}

// tastesOf reports whether a name speaks of the drink by what is in it: "the beet one", where beet shrub is
// poured.
func (l *lead) tastesOf(toks []token.Token, i, n int) bool {
	if i == 0 || i+n >= len(toks) || !things.Has(toks[i+n].Text) || !articles.Has(toks[i-1].Text) {
		return false
	}
	for k := range l.rest {
		if l.rest[k].Text == toks[i].Text {
			return true
		}
	}
	return false
}

var (
	things   = vocabulary.Words(`one thing things drink sour version number`)
	articles = vocabulary.Words(`the that this my our your`)
)

// denialReach is how many words may stand between a denial and a name.
const denialReach = 2

var (
	// leaves stand before what is poured no more.
	leaves = vocabulary.Words(`swap swapping swapped no without replace replacing drop dropping lose losing ditch ditching skip skipping`)
	// joining end what such a word denies.
	joining = vocabulary.Words(`for with use and but so`)
	// speaking are words of sentences; no title of a drink is without a name of its own beside them.
	speaking = vocabulary.Words(`i we you u they he she it its it's i'm we're you'll you're i'll we'll my our your me us what which who when where how why is are was were did do does don't can could would
	should will want wants asked ask said says remember please pls changed change swap make as per so lol ok okay yeah hey hi tonight today last from now`)
)

// chat are words of messages that no list of words has.
var chat = vocabulary.Words(`q a u ur lol pls plz thx ok so per yeah whats wheres hows thats`)

// known reports whether a token is a sign, or a word of every day.
func known(t *token.Token) bool {
	return t.Kind == token.Mark || t.Kind == token.Word && (everyday.Word(t.Text) || chat.Has(t.Text) || leaves.Has(t.Text) || joining.Has(t.Text))
}

// capital reports whether a word is written with one.
func (l *lead) capital(t *token.Token) bool {
	c, _ := utf8.DecodeRuneInString(l.text[t.Start:])
	return unicode.IsUpper(c)
}

// mostOrdered is the most drinks that one order is of.
const mostOrdered = 12

// ordered reports whether the number at i counts drinks of which the list is one: "make me 2 sours: per drink
// ...".
func ordered(toks []token.Token, i int) bool {
	t := &toks[i]
	if t.Kind != token.Numeral || t.Value != float64(int(t.Value)) || t.Value > mostOrdered || i == 0 || entry.UnitWordsAt(toks[i+1:]) {
		return false
	}
	for k := i + 1; k+2 < len(toks) && k <= i+4; k++ {
		if toks[k].Is(":") {
			return toks[k-1].Kind == token.Word && strings.HasSuffix(toks[k-1].Text, "s") && (toks[k+1].Text == "per" || toks[k+1].Text == "each")
		}
	}
	return false
}

// holdsNumber reports whether tokens hold a number.
func holdsNumber(toks []token.Token) bool {
	for i := range toks {
		if toks[i].Kind == token.Numeral {
			return true
		}
	}
	return false
}
