package speech

import (
	"slices"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// said is a pour that stands before second thoughts: its tokens from start to end, and
// those of its name.
type said struct {
	start, end int
	name       []token.Token
}

// wordsAt returns how many words tokens begin with.
func wordsAt(toks []token.Token) int {
	n := 0
	for n < len(toks) && toks[n].Kind == token.Word {
		n++
	}
	return n
}

// sameWords reports whether two names are written alike.
func sameWords(a, b []token.Token) bool {
	return slices.EqualFunc(a, b, func(x, y token.Token) bool { return x.Text == y.Text })
}

// amountFirst are the pours of tokens whose amounts stand before their names.
func amountFirst(toks []token.Token) []said {
	var out []said
	for i := 0; i < len(toks); i++ {
		if toks[i].Kind != token.Numeral {
			continue
		}
		if n := entry.AmountAt(toks[i:]); n > 0 {
			if words := wordsAt(toks[i+n:]); words > 0 {
				out = append(out, said{start: i, end: i + n + words, name: toks[i+n : i+n+words]})
			}
			i += n - 1
		}
	}
	return out
}

// nameFirst are the pours of tokens whose names stand before their amounts.
func nameFirst(toks []token.Token) []said {
	var out []said
	for i, from := 0, 0; i < len(toks); i++ {
		switch {
		case toks[i].Kind == token.Mark:
			from = i + 1
		case toks[i].Kind == token.Numeral:
			n := max(entry.AmountAt(toks[i:]), 1)
			if i > from {
				out = append(out, said{start: from, end: i + n, name: toks[from:i]})
			}
			i += n - 1
			from = i + 1
		}
	}
	return out
}

// saidAgain is toks where the pour that follows second thoughts, which end at next, is one
// said before them again: it stands in place of that one, and of all from there on where
// what follows says another of those again, "1 gin, 1 lime, no sorry, 1 gin, ¾ lime".
// Otherwise the pours between the two stay: "20 lemon, 20 simple, no wait, 25 lemon".
func saidAgain(toks []token.Token, i, next, amount int) ([]token.Token, bool) {
	name := toks[next+amount:]
	return inPlace(toks, i, next, name[:wordsAt(name)], amountFirst)
}

// inPlace puts the pour at next in place of the one of the same name before i; it is false
// if none has that name.
func inPlace(toks []token.Token, i, next int, name []token.Token, pours func([]token.Token) []said) ([]token.Token, bool) {
	before := pours(toks[:i])
	at := slices.IndexFunc(before, func(p said) bool { return sameWords(p.name, name) })
	if at < 0 {
		return nil, false
	}
	old := before[at]
	for _, p := range pours(toks[next:]) {
		if slices.ContainsFunc(before[at+1:], func(q said) bool { return sameWords(p.name, q.name) }) {
			return slices.Concat(toks[:old.start], toks[next:]), true
		}
	}
	kept := toks[old.end:i]
	for len(kept) > 0 && Pause(&kept[0]) {
		kept = kept[1:]
	}
	if why := slices.IndexFunc(kept, func(t token.Token) bool { return t.Text == "but" }); why >= 0 { // "but too sour so"
		kept = kept[:why]
	}
	return slices.Concat(toks[:old.start], kept, toks[next:]), true
}

// renamed is [takenBack] where the names stand before their amounts: the pour that follows
// stands in place of the one of the same name, or of the last one: "cucumber gin 60 no wait
// plain gin 60". One word gives up no pour of something else.
func renamed(toks []token.Token, i, next int) ([]token.Token, bool) {
	before, words := nameFirst(toks[:i]), next+wordsAt(toks[next:])
	if len(before) == 0 || words == len(toks) || entry.AmountAt(toks[words:]) == 0 {
		return nil, false
	}
	if fixed, ok := inPlace(toks, i, next, toks[next:words], nameFirst); ok {
		return fixed, true
	}
	if oneWord(toks[i:next]) {
		return nil, false
	}
	return slices.Concat(toks[:before[len(before)-1].start], toks[next:]), true
}
