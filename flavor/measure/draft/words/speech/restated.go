package speech

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Who changes an amount names what it is of: "make the coconut water 2", "bump the simple to 15",
// or says first what he thinks of it: "simple seems low", "ok make it 15".

var (
	resets  = vocabulary.Words(`make bump change bring push set drop cut raise lower pull knock take up move`)
	theirs  = vocabulary.Words(`the that ur your my our`)
	leadsTo = vocabulary.Words(`ok okay so yeah yep yes ye then and but well right actually pls please let's lets just can could should we you i'd`)
	closing = vocabulary.Words(`instead then pls please though tho`)
)

// mostReset is the most words of a name whose amount is set anew.
const mostReset = 4

// reset is an amount that is set anew: the tokens of the name, of the amount, and where all ends.
type reset struct {
	name, amount []token.Token
	end          int
}

// resetAt is the amount that is set anew at i; false if none is.
func resetAt(toks []token.Token, i int) (reset, bool) {
	if toks[i].Kind != token.Word || !resets.Has(toks[i].Text) || i+2 >= len(toks) {
		return reset{}, false
	}
	from := i + 1
	if theirs.Has(toks[from].Text) {
		from++
	}
	to := min(from+1, len(toks))
	for to < len(toks) && toks[to].Kind == token.Word && amountAlone(toks[to:]) == 0 {
		to++
	}
	led := to > from && toks[to-1].Text == "to"
	name := toks[from:to]
	if led {
		name = name[:len(name)-1]
		for len(name) > 1 && ways.Has(name[len(name)-1].Text) { // "down to"
			name = name[:len(name)-1]
		}
	}
	if len(name) == 0 || len(name) > mostReset || to == len(toks) || name[0].Text == "it" || name[0].Text == "that" || entry.IsUnit(&name[0]) {
		return reset{}, false
	}
	if from == i+1 && !led && toks[i].Text != "make" { // "drop lime 20"
		return reset{}, false
	}
	n := amountAlone(toks[to:])
	if n == 0 {
		return reset{}, false
	}
	end := to + n
	if end < len(toks) && closing.Has(toks[end].Text) {
		end++
	}
	if end < len(toks) && toks[end].Kind != token.Mark {
		return reset{}, false
	}
	return reset{name: name, amount: toks[to : to+n], end: end}, true
}

// amountAlone returns how many tokens an amount takes with its unit, without a stop behind it.
func amountAlone(toks []token.Token) int {
	n := entry.AmountAt(toks)
	for n > 0 && toks[n-1].Kind == token.Mark {
		n--
	}
	return n
}

// restated puts amounts that are set anew in place of those of the pours before them on the line,
// and says what it put away.
func restated(text string, toks []token.Token) (out []token.Token, back []string) {
	out = toks
	for i := 1; i < len(out); i++ {
		r, ok := resetAt(out, i)
		if !ok {
			continue
		}
		start, n, ok := amountNamed(out[:i], r.name)
		if !ok {
			continue
		}
		now := slices.Concat(r.amount, unitTaken(slices.Concat(out[:start+n], r.amount), start, start+n, start+n, len(r.amount)))
		for k := range now { // it stands where the other stood
			now[k].Start, now[k].End = out[start].Start, out[start+n-1].End
		}
		end := i
		for end > 0 && Pause(&out[end-1]) {
			end--
		}
		back = append(back, dropped(text, out[start:start+n], nil))
		out = slices.Concat(out[:start], now, out[start+n:end], out[r.end:])
	}
	return out, back
}

// amountNamed is where the amount stands, and how many tokens it has, of the one pour of tokens
// that has every word of a name; false if none or several have.
func amountNamed(toks []token.Token, name []token.Token) (start, n int, ok bool) {
	pours := amountFirst(toks)
	if behind(toks) {
		pours = nameFirst(toks)
	}
	for _, p := range pours {
		if slices.ContainsFunc(name, func(w token.Token) bool {
			return !slices.ContainsFunc(p.name, func(t token.Token) bool { return t.Text == w.Text })
		}) {
			continue
		}
		if ok {
			return 0, 0, false
		}
		ok = true
		for start = p.start; toks[start].Kind != token.Numeral; {
			start++
		}
		n = max(1, amountAlone(toks[start:]))
	}
	return start, n, ok
}

// behind reports whether the last amount of tokens stands behind its name.
func behind(toks []token.Token) bool {
	for i := len(toks) - 1; i >= 0; i-- {
		if toks[i].Kind != token.Numeral {
			continue
		}
		next := i + max(1, amountAlone(toks[i:]))
		return next >= len(toks) || toks[next].Kind == token.Mark
	}
	return false
}

// resetLine is a line that sets an amount of a line above anew, as a pour; false if it is none.
// About is what was spoken of before it.
func resetLine(toks, about []token.Token) ([]token.Token, bool) {
	for len(toks) > 2 && (leadsTo.Has(toks[0].Text) || toks[0].Kind == token.Mark) {
		toks = toks[1:]
	}
	if len(toks) < 3 {
		return nil, false
	}
	r, ok := resetAt(toks, 0)
	if !ok && len(about) > 0 && resets.Has(toks[0].Text) && (toks[1].Text == "it" || toks[1].Text == "that") {
		at := 2
		if toks[at].Text == "to" && at+1 < len(toks) {
			at++
		}
		n := amountAlone(toks[at:])
		end := at + n
		if n > 0 && end < len(toks) && closing.Has(toks[end].Text) {
			end++
		}
		if ok = n > 0 && (end == len(toks) || toks[end].Kind == token.Mark); ok {
			r = reset{name: about, amount: toks[at : at+n], end: end}
		}
	}
	if n := wordsAt(toks); !ok && n > 1 && n <= mostReset && toks[n-1].Text == "to" && !serving.StepVerbs[toks[0].Text] && pouring.Verbs[toks[0].Text] == "" { // "lemon to 25"
		many := amountAlone(toks[n:])
		if ok = many > 0 && n+many == len(toks); ok {
			r = reset{name: toks[:n-1], amount: toks[n : n+many], end: len(toks)}
		}
	}
	if !ok {
		return nil, false
	}
	return slices.Concat(r.name, inFigures(r.amount), toks[r.end:]), true
}

// Resets reports whether a line sets an amount anew and does not say of what: "make it 15".
func Resets(toks []token.Token) bool {
	for len(toks) > 2 && leadsTo.Has(toks[0].Text) {
		toks = toks[1:]
	}
	if len(toks) < 3 || !resets.Has(toks[0].Text) || toks[1].Text != "it" && toks[1].Text != "that" {
		return false
	}
	if toks = toks[2:]; toks[0].Text == "to" {
		toks = toks[1:]
	}
	n := amountAlone(toks)
	return n > 0 && len(entry.TrimMarks(toks[n:])) == 0
}

// inFigures writes an amount in figures: "half an oz".
func inFigures(amount []token.Token) []token.Token {
	value, n := entry.AmountOf(amount)
	if n == 0 || amount[0].Kind != token.Word {
		return amount
	}
	rest := amount[n:]
	for len(rest) > 0 && (articles.Has(rest[0].Text) || rest[0].Text == "of") {
		rest = rest[1:]
	}
	figure := token.Token{Kind: token.Numeral, Start: amount[0].Start, End: amount[n-1].End, Value: value, Text: token.Decimals(value)}
	return slices.Concat([]token.Token{figure}, rest)
}

var (
	looks  = vocabulary.Words(`is are was seems seem looks feels sounds tastes`)
	scarce = vocabulary.Words(`low high light heavy little much short`)
	degree = vocabulary.Words(`too a bit kinda way very quite still rather tad`)
)

// About is the name of what somebody finds too much or too little, without an amount: "simple
// seems low", "more simple?"; none if nobody does.
func About(toks []token.Token) []token.Token {
	toks = entry.TrimMarks(toks)
	n := wordsAt(toks)
	if n < len(toks) || n < 2 {
		return nil
	}
	at := slices.IndexFunc(toks, func(t token.Token) bool { return looks.Has(t.Text) })
	if at < 1 || at > mostReset {
		return nil
	}
	rest := toks[at+1:]
	for len(rest) > 1 && degree.Has(rest[0].Text) {
		rest = rest[1:]
	}
	if len(rest) != 1 || !scarce.Has(rest[0].Text) {
		return nil
	}
	name := toks[:at]
	if theirs.Has(name[0].Text) {
		name = name[1:]
	}
	return name
}
