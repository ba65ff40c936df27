package speech

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Who dictates, or types as he thinks, takes words back: "two ounces no sorry one and a
// half bourbon", "20 lemon, no wait, 25", "half an ounce of ancho no sorry chilli
// liqueur". What follows such words stands for what they take back.

// takesBack are the words that take back what stands before them, the longest first. A
// single "no" or "sorry" may mean anything, and is none.
var takesBack = phrases(`no sorry make that
no wait call it
no call it
hmm call it
hmm make it
hmm make that
call that
call it
oh wait no
oh wait
oh sorry
hmm no
no no
ah no
ah sorry
make it
scratch that make it
nah scrap that just
scrap that just
nah scrap that
scrap that
no scrap that
nah make it
nah just
scratch that make that
nope
hang on no make that
no wait make that
no hang on
hang on no
no wait make it
no make it
no make that
sorry make that
sorry make it
actually make that
actually make it
wait make that
wait make it
no i mean
sorry i mean
no sorry
sorry no
no wait
wait no
wait sorry
oh no
oops no
no actually
actually no
no scratch that
nah scratch that
no strike that
no sorry scratch that
actually scratch that
actually no scratch that
wait scratch that
scratch that
strike that
correction
make that
i mean
i meant
rather
sorry
oops
wait`)

// phrases parts a text into lines, and each into its words.
func phrases(text string) [][]string {
	var out [][]string
	for line := range strings.SplitSeq(text, "\n") {
		out = append(out, strings.Fields(line))
	}
	slices.SortStableFunc(out, func(a, b []string) int { return len(b) - len(a) })
	return out
}

// takesBackFirst are the words that any of takesBack begins with: most lines hold none.
var takesBackFirst = func() map[string]bool {
	m := map[string]bool{}
	for _, p := range takesBack {
		m[p[0]] = true
	}
	return m
}()

// TakenBackAt returns how many tokens at i take back what stands before them, the signs
// between them and behind them among them; 0 if none do.
func TakenBackAt(toks []token.Token, i int) int {
	if toks[i].Kind != token.Word || !takesBackFirst[toks[i].Text] {
		return 0
	}
	if n := denied(toks, i); n > 0 {
		return n
	}
	for _, phrase := range takesBack {
		at := i
		for k, w := range phrase {
			for k > 0 && at < len(toks) && Pause(&toks[at]) {
				at++
			}
			if at == len(toks) || toks[at].Text != w {
				at = 0
				break
			}
			at++
		}
		if at == 0 {
			continue
		}
		for at < len(toks) && Pause(&toks[at]) {
			at++
		}
		return at - i
	}
	return 0
}

// denied returns how many tokens are a "no" between two pauses that an amount follows,
// "30 lemon - no, 25"; 0 if there is none. Elsewhere a "no" may mean anything.
func denied(toks []token.Token, i int) int {
	if toks[i].Text != "no" && toks[i].Text != "nope" || i == 0 || i+2 >= len(toks) || !Pause(&toks[i-1]) || !Pause(&toks[i+1]) || toks[i+1].Is(":") || entry.AmountAt(toks[i+2:]) == 0 {
		return 0
	}
	return 2
}

// oneWord reports whether tokens hold a single word.
func oneWord(toks []token.Token) bool {
	words := 0
	for i := range toks {
		if toks[i].Kind == token.Word {
			words++
		}
	}
	return words == 1
}

// lacking say that there is none of what stands before them, and standIns that what
// follows was poured in its place.
var (
	lacking  = phrases("don't have\ndont have\ndidn't have\nran out\nall out\nout of stock\nout\nnone left\nno more\nfinished\nmissing\n86")
	standIns = vocabulary.Words(`used use using sub subbed poured instead`)
)

// StandIn returns how many tokens of a line name what there was none of, where what was
// poured in its place follows: "chamomile tincture - don't have, used chamomile bitters 3
// dashes". It is 0 if none do; what stands before must state no amount.
func StandIn(toks []token.Token) int {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return standIns.Has(t.Text) })
	if at < 2 || at+1 == len(toks) || slices.ContainsFunc(toks[:at], func(t token.Token) bool { return t.Kind == token.Numeral || t.Is(":") }) {
		return 0
	}
	lacks := slices.ContainsFunc(lacking, func(phrase []string) bool {
		for i := 1; i+len(phrase) <= at; i++ {
			if slices.EqualFunc(phrase, toks[i:i+len(phrase)], func(w string, t token.Token) bool { return t.Text == w }) {
				return true
			}
		}
		return false
	})
	if !lacks {
		return 0
	}
	return at + 1
}

// amends begin a line that takes back an amount of a line above.
var amends = vocabulary.Words(`edit correction update updated amended revised`)

// Amended returns a line without the words that say that it takes back what stands above; about
// is what the line before it spoke of.
func Amended(toks, about []token.Token) ([]token.Token, bool) {
	if fixed, ok := resetLine(toks, about); ok {
		return fixed, true
	}
	if n := amendsFirst(toks); n > 0 {
		return toks[n:], true
	}
	if last := amendsLast(toks); last > 0 {
		return slices.Concat(toks[:last], toks[last+1:]), true
	}
	if len(toks) < 3 || !amends.Has(toks[0].Text) || !toks[1].Is(":") && !toks[1].Is("-") {
		return toks, false
	}
	rest := toks[2:]
	for len(rest) > 1 && rest[0].Kind == token.Word && takesBackFirst[rest[0].Text] {
		rest = entry.TrimMarks(rest[1:])
	}
	return rest, true
}

// amendsFirst returns how many words begin a line that say that the amount behind them takes back
// one above: "make it 15 simple", "no wait, 25 lime"; 0 if none do.
func amendsFirst(toks []token.Token) int {
	if len(toks) == 0 {
		return 0
	}
	if n := TakenBackAt(toks, 0); n > 0 {
		for n < len(toks) && Pause(&toks[n]) {
			n++
		}
		if n+1 < len(toks) && entry.StartsAmount(toks[n:]) {
			return n
		}
	}
	if len(toks) < 4 || toks[0].Text != "make" && toks[0].Text != "call" || toks[1].Text != "it" && toks[1].Text != "that" || !entry.StartsAmount(toks[2:]) {
		return 0
	}
	return 2
}

// amendsLast returns where a word ends the first pour of a line that says that it takes back
// what stands above, "45 cream then", ".75 lime instead"; 0 if none does.
func amendsLast(toks []token.Token) int {
	if len(toks) < 3 || !entry.StartsAmount(toks) {
		return 0
	}
	for i := 2; i < len(toks) && i <= mostAmended; i++ {
		if ends := i+1 == len(toks) || toks[i+1].Kind == token.Mark; toks[i].Text == "instead" && ends || toks[i].Text == "then" && ends {
			return i
		}
		if toks[i].Kind != token.Word {
			return 0
		}
	}
	return 0
}

// mostAmended is the most words of a pour that takes back another.
const mostAmended = 6

// Pause reports whether a sign is one that stands around second thoughts.
func Pause(t *token.Token) bool {
	return t.Is(",") || t.Is(".") || t.Is("!") || t.Is("…") || t.Is("-") || t.Is("(") || t.Is(")") || t.Is(":") || t.Is(";")
}

// SecondThoughts puts what follows second thoughts in place of what they take back, and
// returns what was taken back, as written; it leaves alone what it cannot tell.
func SecondThoughts(text string, toks []token.Token) (out []token.Token, back []string) {
	out, back = restated(text, toks)
	for i := 1; i+1 < len(out); i++ {
		n := TakenBackAt(out, i)
		if n == 0 || i+n >= len(out) {
			continue
		}
		out = withoutInstead(out, i+n)
		fixed, ok := takenBack(out, i, i+n)
		if !ok {
			continue
		}
		back = append(back, dropped(text, out, fixed))
		out, i = fixed, 0
	}
	return out, back
}

// withoutInstead drops "instead" behind the pour at next: "make it 25 lime instead".
func withoutInstead(toks []token.Token, next int) []token.Token {
	at := next + 1
	for at < len(toks) && toks[at].Kind != token.Mark && toks[at].Text != "instead" {
		at++
	}
	if at >= len(toks) || toks[at].Text != "instead" || at+1 < len(toks) && toks[at+1].Kind != token.Mark {
		return toks
	}
	return slices.Concat(toks[:at], toks[at+1:])
}

// unitTaken is the unit of the pour from start to name where the amount at next, so many
// tokens long, states none of its own: "2 oz gin, make that 1.5".
func unitTaken(toks []token.Token, start, name, next, amount int) []token.Token {
	if amount != 1 || entry.UnitWordsAt(toks[next+1:]) {
		return nil
	}
	for i := start; i < name; i++ {
		if entry.IsUnit(&toks[i]) {
			unit := toks[i]
			unit.Start, unit.End = toks[next].End, toks[next].End
			return []token.Token{unit}
		}
	}
	return nil
}

// dropped returns the text of the tokens that are left out of others.
func dropped(text string, of, kept []token.Token) string {
	var out []string
	for i := range of {
		if !slices.ContainsFunc(kept, func(t token.Token) bool { return t.Start <= of[i].Start && t.End >= of[i].End }) {
			out = append(out, text[of[i].Start:of[i].End])
		}
	}
	return strings.Trim(strings.Join(out, " "), " ,.-(:;")
}

// takenBack is toks where those from i to next take back the amount, the name, or the
// whole of the pour before them; it is false if what follows is none of these.
func takenBack(toks []token.Token, i, next int) ([]token.Token, bool) {
	end := i
	for end > 0 && (Pause(&toks[end-1]) || toks[end-1].Is("?")) {
		end--
	}
	t := taking{toks: inFiguresAt(toks, next), i: i, next: next, end: end}
	if t.start, t.name = entry.PourBefore(toks[:end]); t.start < 0 {
		return nil, false
	}
	t.amount = entry.AmountAt(t.toks[next:])
	t.behind = t.toks[next+t.amount:]
	switch named := t.named(); {
	case t.amount > 0 && t.name == end: // "2 oz, no sorry, 1½ oz bourbon"
		return slices.Concat(t.toks[:t.start], t.toks[next:]), true
	case t.amount > 0 && named: // "20 lemon, no wait, 25 lemon"
		return t.otherPour()
	case t.amount > 0: // "20 lemon, no wait, 25"
		return slices.Concat(t.toks[:t.start], t.toks[t.name:end], t.toks[next:next+t.amount], unitTaken(t.toks, t.start, t.name, next, t.amount), t.behind), true
	case named && t.name == end: // "lemon 20, no wait, lime 20"
		return renamed(t.toks, i, next)
	case named && t.name < end: // "½ oz ancho no sorry chilli liqueur"
		return t.otherName(), true
	}
	return nil, false
}

// taking is a pour that is taken back: the words that take it back stand from i to next.
type taking struct {
	toks             []token.Token
	i, next          int
	start, name, end int           // of the pour before them
	amount           int           // tokens of the amount behind them
	behind           []token.Token // what stands behind that
}

// inFiguresAt are tokens with the amount at a place in figures: "make it one and a half".
func inFiguresAt(toks []token.Token, next int) []token.Token {
	value, n := entry.AmountOf(toks[next:])
	if n == 0 || toks[next].Kind != token.Word {
		return toks
	}
	figure := token.Token{Kind: token.Numeral, Start: toks[next].Start, End: toks[next+n-1].End, Value: value, Text: token.Decimals(value)}
	return slices.Concat(toks[:next], []token.Token{figure}, toks[next+n:])
}

// named reports whether a name stands behind the words that take back, or behind the amount there.
func (t *taking) named() bool {
	if len(t.behind) == 0 {
		return false
	}
	if len(t.behind) > 1 && t.behind[0].Kind == token.Ratio && t.behind[1].Kind == token.Word { // "1:1 simple"
		return true
	}
	first := &t.behind[0]
	return first.Kind == token.Word && !serving.Starts(t.behind) && !serving.StepVerbs[first.Text] && first.Text != "and" && first.Text != "then"
}

// otherPour puts the pour behind in place of the one before; false if one word alone takes it back, which
// says too little to give up a pour of something else.
func (t *taking) otherPour() ([]token.Token, bool) {
	if fixed, ok := saidAgain(t.toks, t.i, t.next, t.amount); ok {
		return fixed, true
	}
	if oneWord(t.toks[t.i:t.next]) && t.behind[0].Text != t.toks[t.name].Text {
		return nil, false
	}
	return slices.Concat(t.toks[:t.start], t.toks[t.next:]), true
}

// otherName puts the name behind in place of the one before, or its pour where the name is said once more
// with an amount: "40 gin, hang on, no, vodka, 40 vodka".
func (t *taking) otherName() []token.Token {
	at := slices.IndexFunc(t.behind, func(t token.Token) bool { return t.Kind == token.Numeral })
	if at > 0 {
		if n := entry.AmountAt(t.behind[at:]); n > 0 && at+n < len(t.behind) && t.behind[at+n].Text == t.behind[0].Text {
			return slices.Concat(t.toks[:t.start], t.behind[at:])
		}
	}
	return slices.Concat(t.toks[:t.name], t.toks[t.next:])
}

// Unsettled returns the first words of a text that stand between two pours and take one back,
// where [SecondThoughts] cannot tell which, and how many amounts the text states; empty if there
// are none: "5 cl gin, no, 4 cl pear spirit".
func Unsettled(text string) (words string, amounts int) {
	toks := token.Lex(nil, text, 0, len(text))
	toks, _ = SecondThoughts(text, toks)
	for i := 0; i < len(toks); i++ {
		if n := entry.AmountAt(toks[i:]); n > 0 {
			amounts++
			i += n - 1
			continue
		}
		n := TakenBackAt(toks, i)
		if words == "" && n > 0 && amounts > 0 && Pause(&toks[i-1]) && i+n < len(toks) && entry.StartsAmount(toks[i+n:]) {
			words = text[toks[i].Start:toks[i].End]
		}
	}
	return words, amounts
}
