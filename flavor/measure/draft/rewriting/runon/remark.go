package runon

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// toTheTop ends what a drink is filled up with: "cola to the brim".
var toTheTop = [][]string{{"to", "the", "top"}, {"to", "the", "brim"}, {"to", "the", "rim"}, {"to", "top"}, {"to", "fill"}, {"on", "top"}, {"to", "finish"}, {"top", "up"}, {"top"}}

// filled takes a stretch that says what fills the drink up, and is false if none does:
// "and ginger beer to top in the mug".
func (r *running) filled(toks []token.Token) bool {
	for len(toks) > 1 && asides[toks[0].Text] {
		toks = toks[1:]
	}
	for i := 1; i < len(toks); i++ {
		for _, end := range toTheTop {
			n := len(end)
			if i+n > len(toks) || !slices.EqualFunc(end, toks[i:i+n], func(w string, t token.Token) bool { return t.Text == w }) {
				continue
			}
			r.pours = append(r.pours, "top "+r.words(toks[:i]))
			return i+n == len(toks) || r.remark(toks[i+n:])
		}
	}
	return false
}

// squeezed takes a stretch that says which fruit is squeezed, and is false if none does:
// "with half a lime squeezed", "juice of half a lemon".
func (r *running) squeezed(toks []token.Token) bool {
	for len(toks) > 1 && (toks[0].Text == "with" || toks[0].Text == "and" || toks[0].Text == "plus") {
		toks = toks[1:]
	}
	if len(toks) > 1 && toks[0].Text == "the" && toks[1].Text == "juice" {
		toks = toks[1:]
	}
	juice := toks[0].Text == "juice" && len(toks) > 2 && (toks[1].Text == "of" || toks[1].Text == "from")
	if juice && len(toks) <= mostSqueezed && len(r.resolver.Mentioned(r.words(toks))) > 0 {
		r.pours = append(r.pours, token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End]))
		return true
	}
	if len(toks) < 2 || len(toks) > mostSqueezed || toks[len(toks)-1].Text != "squeezed" || len(r.resolver.Mentioned(r.words(toks))) == 0 {
		return false
	}
	r.pours = append(r.pours, r.words(toks))
	return true
}

// lengthened takes a stretch that names what fills a glass up and nothing else, and is false
// if it does not: "sifón".
func (r *running) lengthened(toks []token.Token) bool {
	for len(toks) > 1 && asides[toks[0].Text] {
		toks = toks[1:]
	}
	p, _, ok := r.resolver.Named(r.words(toks))
	if !ok || !p.Carbonated || r.resolver.Find(r.words(toks), naming.Place{Unit: flavor.Top, Topped: true}).Fault != nil {
		return false
	}
	r.pours = append(r.pours, "top "+r.words(toks))
	return true
}

// mostSqueezed is the most words that say which fruit is squeezed, and how much of it.
const mostSqueezed = 5

// amountAlone reports whether a stretch is an amount, perhaps with its unit, of which the name is
// missing or cannot be read, or of a syrup that is named by its ratio: "15 2:1".
func amountAlone(toks []token.Token) bool {
	if toks[0].Kind != token.Numeral {
		return false
	}
	if len(toks) > 1 && toks[1].Kind == token.Ratio {
		return true
	}
	_, n := entry.UnitAt(toks[1:])
	return len(toks) == 1+n
}

// remark takes words that state no amount: words of making, what is laid on the drink,
// and words that say nothing. It is false where they may speak of a pour.
func (r *running) remark(toks []token.Token) bool {
	switch inBrackets := toks[0].Start > 0 && strings.IndexByte("([", r.text[toks[0].Start-1]) >= 0; {
	case amountAlone(toks):
		return false
	case len(r.pours) > 0 && len(r.making) == 0 && floats(toks): // "15 vanilla anise liq float"
		r.pours[len(r.pours)-1] += " float"
		return true
	case inBrackets && r.saysMore(toks):
		return true
	case r.filled(toks) || r.squeezed(toks) || !inBrackets && r.lengthened(toks): // "gaseosa (lemon lime soda)" is one pour
		return true
	case restrained(toks) || balances(toks) || serving.MixedWith(toks) > 0 && len(r.resolver.Mentioned(r.words(toks[serving.MixedWith(toks):]))) > 0: // "blend with frozen mango"
		return false
	}
	written := strings.Trim(token.OneLine(r.text[toks[0].Start:toks[len(toks)-1].End]), " .,:;-")
	toks = r.rimmed(toks)
	s := serving.Read(toks)
	if s.Conflict != nil {
		return false
	}
	unknown, left := unknownOf(&s)
	if len(unknown) > 0 && !r.onlyLaid(left, len(r.making) > 0 || s.Begins && s.States()) {
		return false
	}
	if s.States() {
		r.making = append(r.making, saidBy(&s))
	}
	if len(unknown) == 0 {
		return true
	}
	mentioned := len(r.resolver.Mentioned(left)) > 0
	switch {
	case mentioned && slices.ContainsFunc(toks, func(t token.Token) bool { return serving.OtherMeasures[t.Text] }): // "mint handful"
		return false
	case mentioned || laid.Ends(unknown):
		r.laid = append(r.laid, left)
		return true
	case parting.Measured(&toks[0]) || someOf(toks) || goesIn(toks): // "barspoon of something", "and a bit of moon dust"
		return false
	}
	r.passed = append(r.passed, written)
	r.open = true
	return true
}

// floats reports whether words say no more than that the pour before them is floated.
func floats(toks []token.Token) bool {
	return (toks[0].Text == "float" || toks[0].Text == "floated") && (len(toks) == 1 || len(toks) == 3 && toks[1].Text == "on" && toks[2].Text == "top")
}

// restrained reports whether words hold one that bounds how much of something is poured.
func restrained(toks []token.Token) bool {
	for i := range toks {
		if restraints[toks[i].Text] {
			if _, n := serving.TermAt(wordsOf(toks[i:])); n < 2 {
				return true
			}
		}
	}
	return false
}

// unknownOf are the words of a remark that say nothing of making and serving, and the text of them.
func unknownOf(s *serving.Said) (unknown []token.Token, text string) {
	var words []string
	for _, t := range s.Unknown {
		if !asides[t.Text] && (!serving.StepVerbs[t.Text] || laid.Ends([]token.Token{t})) && !token.Joins[t.Text] {
			unknown = append(unknown, t)
			words = append(words, t.Text)
		}
	}
	return unknown, strings.Join(words, " ")
}

// onlyLaid reports whether all that words mention is solid, and no fruit that may be meant for its
// juice, unless the drink is served by then.
func (r *running) onlyLaid(words string, served bool) bool {
	return !slices.ContainsFunc(r.resolver.Mentioned(words), func(p *flavor.Profile) bool {
		return !p.Class.Solid() || !served && jargon.Pressed(words) != ""
	})
}

// saysMore puts a bracket back behind the pour that it follows if it names another ingredient, or
// what was done to the bottle, so that the name is looked up with it: "simple (hazelnut)".
func (r *running) saysMore(toks []token.Token) bool {
	n, end := len(r.pours), toks[len(toks)-1].End
	if n == 0 || len(r.making) > 0 || laid.Ends(toks) || end == len(r.text) || strings.IndexByte(")]", r.text[end]) < 0 {
		return false
	}
	said := r.words(toks)
	s := serving.Read(toks)
	styles := len(toks) <= mostStyle && len(s.Unknown) == len(toks) // "syrup (agave)"
	if !styles && !r.resolver.Mentions(said) && !jargon.ChangesBottle(said) {
		return false
	}
	r.pours[n-1] += " (" + said + ")"
	return true
}

// mostStyle is the most words in brackets that say which of several bottles is poured.
const mostStyle = 2

// someWords say how much of something goes in, without an amount.
var someWords = token.Words(`bit touch little some lick hint splash drop dash drizzle spoon squeeze lug glug swig tad shot slug`)

// someOf reports whether words speak of some of a thing: it may be poured.
func someOf(toks []token.Token) bool {
	for i := range toks[:len(toks)-1] {
		if someWords[toks[i].Text] && toks[i+1].Text == "of" {
			return true
		}
	}
	return false
}

// balances reports whether words say what something is poured for, and not how much of it: "lemon to balance".
func balances(toks []token.Token) bool {
	n, t := pouring.TailAt(toks)
	return n > 1 && n < len(toks) && toks[len(toks)-n].Text == "to" && t == (pouring.Tail{})
}

// goesIn reports whether words say of something nobody knows that it goes into the drink: "zorbel float",
// "zorbel-rinsed coupe".
func goesIn(toks []token.Token) bool {
	n, t := pouring.TailAt(toks)
	return n > 0 && n < len(toks) && t.Unit != "" || slices.ContainsFunc(toks, func(t token.Token) bool { return strings.HasSuffix(t.Text, "rinsed") })
}

// rimmed takes what dresses the rim from the end of a stretch, "chilli salt on the rim",
// and returns the rest.
func (r *running) rimmed(toks []token.Token) []token.Token {
	end := len(toks) - 1
	if end < 1 || toks[end].Text != "rim" {
		return toks
	}
	for end > 0 && asides[toks[end-1].Text] {
		end--
	}
	from := end
	for from > 0 && parting.DressesRim(toks[from-1].Text) {
		from--
	}
	if from == end {
		return toks
	}
	dress := r.words(toks[from:end]) + " rim"
	if from > 0 && toks[from-1].Kind == token.Numeral && toks[from-1].Value == halfRim {
		from--
		dress = "half " + dress
	}
	r.making = append(r.making, dress)
	return toks[:from]
}

// halfRim is how far round the glass a rim may go: "1/2 salt rim" pours no half ounce of salt.
const halfRim = 0.5

// rimFollows reports whether words from i on say what a rim is dressed with, and nothing else.
func (r *running) rimFollows(i int) bool {
	from := i
	for i < len(r.toks) && r.toks[i].Kind == token.Word && (parting.DressesRim(r.toks[i].Text) || asides[r.toks[i].Text]) {
		i++
	}
	return i > from && i < len(r.toks) && r.toks[i].Text == "rim"
}

// saidBy returns what was understood of words of making.
func saidBy(s *serving.Said) string {
	var out []string
	service := string(s.Service)
	if of := serving.Of(s.Glass); s.Weak && of.Service == s.Service {
		service = "" // the glass says it again
	}
	for _, w := range []string{string(s.Method), service, s.Glass} {
		if w != "" {
			out = append(out, w)
		}
	}
	return strings.Join(out, ", ")
}

// wordsOf returns the words that tokens begin with, as many as may say how a drink is made.
func wordsOf(toks []token.Token) []string {
	var out []string
	for i := range toks {
		if toks[i].Kind != token.Word || len(out) == serving.LongestTerm {
			break
		}
		out = append(out, toks[i].Text)
	}
	return out
}
