package runon

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/draft/words/token"
)

// A text that runs on, spoken or typed without a sign between one pour and the next,
// is no list of lines. Here it is parted by its amounts alone: an amount, and the words
// behind it up to the next amount, sign, or word of making, are a pour. What is left
// over must say how the drink is made, or nothing that is poured. The parts are read
// again as a list, by the rules of any other draft, so that only the parting is looser.

// leastRunning is how many pours a text that runs on has on one of its lines.
const leastRunning = 2

// mostRunning is how long a text that runs on is at most, in bytes.
const mostRunning = 1000

// restraints are words of second thoughts, of choices and of several drinks at once:
// who reads by amounts alone would miss what they change.
var restraints = token.Words(`no not none sorry instead or sub was were without hang wait actually maybe optional split each equal equally double doubled halve half-half per was except
minus skip less more ratio parts either both same again times x serves batch scale total oh oops correction changed replace swap`)

// asides are words around the pours that change nothing about them.
var asides = token.Words(`and then plus with also that's thats please pls plz cheers thanks ta ok okay so right use do just make it's its it is a an the of to in into on up over for me you your we i go get grab take put pour add
bit little nice like um uh er well hey hi yo mate so that this one some give them him her gets goes going comes`)

// tops begin what is filled up with, without an amount.
var tops = token.Words(`top topped fill filled lengthen lengthened finish finished`)

// running is a text that runs on, while it is parted.
type running struct {
	text     string
	toks     []token.Token
	resolver *naming.Resolver
	name     string
	pours    []string
	making   []string
	laid     []string
	passed   []string
	open     bool // something that says nothing known stands above a pour: it may be one
}

// AsList returns the text of a draft that runs on as a list of lines, and what of it was
// passed over; false if it cannot be parted without a guess.
func AsList(text string, b *naming.Resolver) (list string, passed []string, ok bool) {
	if len(text) > mostRunning {
		return "", nil, false
	}
	r := &running{text: text, resolver: b}
	most, at := 0, 0
	for written := range strings.SplitSeq(text, "\n") {
		r.toks = append(r.toks, token.Token{Kind: token.Mark, Start: at, End: at, Text: ";"})
		before := len(r.toks)
		r.toks = token.Lex(r.toks, text, at, at+len(written))
		line, back := speech.SecondThoughts(text, speech.InFigures(r.toks[before:]))
		r.toks, r.passed = append(r.toks[:before:before], line...), append(r.passed, back...)
		r.ones(before)
		at += len(written) + len("\n")
		n := 0
		for i := before; i < len(r.toks); i++ {
			if r.amountAt(i) {
				n++
			}
		}
		most = max(most, n)
	}
	if most < leastRunning || !r.part() || len(r.pours) < leastRunning {
		return "", nil, false
	}
	lines := r.pours
	if r.name != "" {
		lines = append([]string{draft.NamePrefix + " " + r.name}, lines...)
	}
	if len(r.making) > 0 {
		lines = append(lines, strings.Join(r.making, ", "))
	}
	if len(r.laid) > 0 {
		lines = append(lines, "garnish: "+strings.Join(r.laid, ", "))
	}
	return strings.Join(lines, "\n"), r.passed, true
}

// ones makes an amount of a "one" before the name of an ingredient: "two gin one lemon".
func (r *running) ones(from int) {
	for i := from + 1; i+1 < len(r.toks); i++ {
		t := &r.toks[i]
		if t.Text != "one" || t.Kind != token.Word || token.Joins[r.toks[i-1].Text] || asides[r.toks[i-1].Text] {
			continue
		}
		end := i + 1
		for end < len(r.toks) && end-i <= naming.LongestName && r.toks[end].Kind == token.Word {
			end++
		}
		for ; end > i+1; end-- {
			if f := r.resolver.Find(r.words(r.toks[i+1:end]), naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() {
				t.Kind, t.Value = token.Numeral, 1
				break
			}
		}
	}
}

// amountAt reports whether an amount of something poured stands at i: no count of
// seconds or turns, no ordinal, no strength.
func (r *running) amountAt(i int) bool {
	t := &r.toks[i]
	if t.Kind != token.Numeral || i+1 >= len(r.toks) || r.toks[i+1].Kind != token.Word || entry.IceFollows(r.toks[i+1:]) {
		return false
	}
	next := r.toks[i+1].Text
	if t.Value == halfRim && r.rimFollows(i+1) {
		return false
	}
	return !serving.DegreeWords[next] && !countWords[next] && !(r.toks[i+1].Glued && ordinals[next])
}

var (
	ordinals   = token.Words(`st nd rd th`)
	countWords = token.Words(`x secs turns times lift lifts stirs proof year years yr yo`)
)

// part parts the tokens, one stretch without a sign in it after the other; it is false
// where something is left that may be poured.
func (r *running) part() bool {
	begun := -1 // where the first pour starts
	for from := 0; from < len(r.toks); {
		end := from
		for end < len(r.toks) && r.toks[end].Kind != token.Mark {
			end++
		}
		switch first := r.firstPour(from, end); {
		case from == end || r.amountAgain(from, end):
		case begun >= 0 && r.strength(from, end): // "honey syrup (3:1)"
			r.pours[len(r.pours)-1] += " (" + r.text[r.toks[from].Start:r.toks[from].End] + ")"
		case first < 0 && begun < 0:
		case first == from && from > 0 && r.toks[from-1].Is("("): // "2 oz rum (half white, half dark)"
			return false
		case first < 0:
			if !r.remark(r.toks[from:end]) {
				return false
			}
		default:
			if begun < 0 {
				begun = first
				if r.amountLast(from, end) > from {
					begun = from
				}
			} else if first > from && r.amountLast(from, end) < 0 && !r.remark(r.toks[from:first]) {
				return false
			}
			if !r.stretch(from, first, end) {
				return false
			}
		}
		from = end + 1
	}
	return begun >= 0 && r.lead(r.toks[:begun]) && r.namePoured()
}

// firstPour returns where the first pour starts between two tokens, below 0 if none does.
func (r *running) firstPour(from, end int) int {
	for i := from; i < end; i++ {
		if r.startsPour(i) || i == r.amountLast(from, end) {
			return i
		}
	}
	return -1
}

// amountLast returns where the only amount of a stretch stands that ends with it, "lime
// juice 30 ml"; below 0 if it does not.
func (r *running) amountLast(from, end int) int {
	at := -1
	for i := from; i < end; i++ {
		if r.toks[i].Kind == token.Numeral {
			if t := &r.toks[i]; at >= 0 || !strings.ContainsAny(r.text[t.Start:t.End], "0123456789½¼¾⅓⅔") && t.Value < speech.LeastSpoken {
				return -1
			}
			at = i
		}
	}
	if at <= from {
		return -1
	}
	if _, n := entry.UnitAt(r.toks[at+1 : end]); at+1+n == end {
		return at
	}
	return -1
}

// strength reports whether a stretch in brackets is the ratio in which the syrup before it is made.
func (r *running) strength(from, end int) bool {
	return end == from+1 && from > 0 && len(r.pours) > 0 && r.toks[from].Kind == token.Ratio && r.toks[from-1].Is("(")
}

// amountAgain reports whether a stretch in brackets says an amount in another unit.
func (r *running) amountAgain(from, end int) bool {
	if from == 0 || !r.toks[from-1].Is("(") || end == from || r.toks[from].Kind != token.Numeral {
		return false
	}
	u, n := entry.UnitAt(r.toks[from+1 : end])
	return n > 0 && from+1+n == end && len(r.pours) > 0 && u.Jigger()
}

// stretch takes the pours of a stretch, the first of which starts at first.
func (r *running) stretch(from, first, end int) bool {
	if at := r.amountLast(from, end); at > from {
		name := token.OneLine(r.text[r.toks[from].Start:r.toks[at-1].End])
		r.pours = append(r.pours, token.OneLine(r.text[r.toks[at].Start:r.toks[end-1].End])+" "+name)
		return !r.open
	}
	for i := first; i < end; {
		if !r.startsPour(i) {
			next := i
			for next < end && !r.startsPour(next) {
				next++
			}
			if !r.remark(r.toks[i:next]) {
				return false
			}
			i = next
			continue
		}
		stop := r.pourEnd(i)
		if stop == 0 || r.open {
			return false
		}
		if served := len(r.making) > 0; served && r.laidOn(i, stop) { // "big ice. two orange zests"
			r.laid = append(r.laid, r.written(i, stop))
		} else {
			r.pours = append(r.pours, r.written(i, stop))
		}
		i = stop
	}
	return true
}

// laidOn reports whether an amount and the words up to end are a few of what is laid on a drink:
// it is counted, so that three quarters of a lemon, or an ounce, are poured.
func (r *running) laidOn(i, end int) bool {
	x := r.toks[i].Value
	if u, n := entry.UnitAt(r.toks[i+1 : end]); n > 0 && u.Jigger() {
		return false
	}
	return x <= mostLaid && (x == math.Trunc(x) || x == 0.5) && laid.Ends(r.toks[i+1:end])
}

// startsPour reports whether an amount, or a word that fills up, stands at i with a
// name behind it.
func (r *running) startsPour(i int) bool {
	if r.amountAt(i) {
		return true
	}
	return r.toks[i].Kind == token.Word && tops[r.toks[i].Text] && r.topFrom(i) > 0
}

// topFrom returns where the name begins of what fills a drink up, 0 if none follows.
func (r *running) topFrom(i int) int {
	with := false
	for i++; i < len(r.toks) && r.toks[i].Kind == token.Word; i++ {
		switch w := r.toks[i].Text; {
		case w == "with":
			with = true
		case w == "it" || w == "up" || w == "off" || w == "the" || w == "a" || w == "some":
		default:
			f := r.resolver.Find(w, naming.Place{Unit: "top", Topped: true})
			if with || f.Fault == nil {
				return i
			}
			return 0
		}
	}
	return 0
}

// pourEnd returns where the pour ends that starts at i, 0 if it has no name.
func (r *running) pourEnd(i int) int {
	at := i + 1
	if !r.amountAt(i) {
		at = r.topFrom(i)
	} else if _, n := entry.UnitAt(r.toks[at:]); n > 0 {
		at += n
	} else if _, other := gauge.Measures[r.toks[at].Text]; other {
		at++
	} else if r.toks[at].Glued { // "5Oml"
		return 0
	}
	for at < len(r.toks) && (r.toks[at].Text == "of" || r.toks[at].Text == "the" || r.toks[at].Text == "a") {
		at++
	}
	if at < len(r.toks) && r.toks[at].Kind == token.Word {
		if _, n := serving.TermAt(wordsOf(r.toks[at:])); n > 1 { // "1 dry shake"
			return 0
		}
	}
	end := at
	for end < len(r.toks) && r.toks[end].Kind == token.Word && !(end > at && r.ends(end, at)) {
		end++
	}
	if end == at {
		return 0
	}
	return end
}

// ends reports whether the name that began at from is over before the word at i.
func (r *running) ends(i, from int) bool {
	w := r.toks[i].Text
	if serving.StepVerbs[w] && !serving.Known(w) && i+1 < len(r.toks) && r.toks[i+1].Kind == token.Numeral { // "1 moon dust .75 lemon" tells to dust nothing
		return false
	}
	if asides[w] || restraints[w] || tops[w] || serving.StepVerbs[w] || laid.Served(r.toks[i:]) > 0 {
		return true
	}
	_, n := serving.TermAt(wordsOf(r.toks[i:]))
	if n == 0 {
		return false
	}
	_, _, whole := r.resolver.Named(r.text[r.toks[from].Start:r.toks[i+n-1].End])
	return !whole
}

// written returns the pour from i to end as a line of a list.
func (r *running) written(i, end int) string {
	t := &r.toks[i]
	if !r.amountAt(i) {
		return "top " + token.OneLine(r.text[r.toks[r.topFrom(i)].Start:r.toks[end-1].End])
	}
	amount := token.OneLine(r.text[t.Start:t.End])
	if !strings.ContainsAny(amount, "0123456789½¼¾⅓⅔") {
		amount = token.Decimals(t.Value)
	}
	return amount + " " + r.words(r.toks[i+1:end])
}

// words returns tokens as they are written, without what is taken back amid them.
func (r *running) words(toks []token.Token) string {
	var out []string
	for i := range toks {
		t := &toks[i]
		if t.Start == t.End { // the unit of "an ounce and a half"
			out = append(out, t.Text)
			continue
		}
		out = append(out, r.text[t.Start:t.End])
	}
	return strings.Join(out, " ")
}

// mostLaid is the most things that are laid on one drink; common practice.
const mostLaid = 4
