package parting

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/gauge"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
)

// The rules for a number that may begin an entry.

// numbersItem reports whether the number counts the items of a list, and an amount follows it.
func (p *place) numbersItem() bool {
	if !p.next.Is(")") || !p.next.Glued {
		return false
	}
	item := tokenAt(p.toks, p.i+2)
	return item.Kind == token.Numeral && !item.Glued
}

// numbersStep reports whether the number counts a step of what is to be done, behind another.
func (p *place) numbersStep() bool {
	if p.t.Wrong != "" || p.t.Value != float64(int(p.t.Value)) || !p.next.Is(".") || !p.next.Glued {
		return false
	}
	step := tokenAt(p.toks, p.i+2)
	if step.Kind != token.Word || step.Glued || !serving.Starts(p.toks[p.i+2:]) && !serving.StepVerbs[step.Text] {
		return false
	}
	return len(serving.Read(p.entry()).Unknown) == 0
}

// beginsPour reports whether the number begins another pour: one has been started and named, or
// it was told how to mix, and a name follows.
func (p *place) beginsPour() bool {
	switch {
	case p.next.Glued && serving.Times(p.next.Text) && serving.Starts(p.toks[max(p.from, p.i-1):]):
		return false // "shake 2x", "dry shake 1st"
	case p.t.Wrong != "":
		return false
	case p.beginsOrdered():
		return true
	case !p.endsNamed() || p.i+1 >= len(p.toks):
		return false
	case entry.AgeWords[p.next.Text] || serving.IceOnly(p.behindNext()) || p.restates():
		return false // "rum 12 years", "shake with 5 ice cubes", "1 oz, 30 ml,"
	}
	return p.dashes() || slices.ContainsFunc(p.behindNext(), namesBesideMeasure)
}

// dashes reports whether dashes of nothing named follow: "½ dry 2 dashes", which are of the bitters of
// the well.
func (p *place) dashes() bool {
	u, n := entry.UnitAt(p.behindNext())
	return n > 0 && u == flavor.Dash && (p.i+1+n >= len(p.toks) || p.toks[p.i+1+n].Is(",") || p.toks[p.i+1+n].Is(";"))
}

// beginsOrdered reports whether pours follow words that tell how to mix: "stir 2 oz gin", "shake
// 45 gin 20 lemon".
func (p *place) beginsOrdered() bool {
	return p.before.Kind == token.Word && (entry.UnitWordsAt(p.behindNext()) && orders(p.entry()) || orders(p.entry()) && poursFollow(p.toks[p.i:]))
}

// endsNamed reports whether the entry is an amount and a name, but for words in brackets, and no
// word at its end goes on.
func (p *place) endsNamed() bool {
	end := nameEnd(p.toks, p.i)
	if !p.startsAmount() || end <= p.from || !Named(p.toks[p.from:end]) {
		return false
	}
	last := &p.toks[end-1]
	return last.Kind == token.Word && !token.Joins[last.Text] && (!entry.IsUnit(last) || wordsBesideNumbers(p.toks[p.from:end]) > 1)
}

// restates reports whether the number is the amount before it once more, in another unit.
func (p *place) restates() bool {
	u, n := entry.UnitAt(p.behindNext())
	if n == 0 || u == "" || u == flavor.Dash {
		return false
	}
	behind := tokenAt(p.toks, p.i+1+n)
	return p.i+1+n >= len(p.toks) || behind.Is(",") || behind.Is(";")
}

// namesBesideMeasure reports whether a token is a word and no measure.
func namesBesideMeasure(t token.Token) bool {
	if t.Kind != token.Word {
		return false
	}
	if _, unit := measure.ParseUnit(t.Text); unit {
		return false
	}
	_, other := gauge.Measures[t.Text]
	return !other
}

// nameEnd returns where the name ends that stands before i, without words in brackets behind
// it: "20 aquafaba (vegan!!) 2 dashes bitters".
func nameEnd(toks []token.Token, i int) int {
	if !toks[i-1].Is(")") {
		return i
	}
	for k := i - 2; k >= 0; k-- {
		switch {
		case toks[k].Is("("):
			return k
		case toks[k].Kind != token.Word && !toks[k].Is("!") && !toks[k].Is("?") && !toks[k].Is(","):
			return i
		}
	}
	return i
}

// poursFollow reports whether bare numbers with their names follow, two at least, and no
// count of turns or seconds.
func poursFollow(toks []token.Token) bool {
	n := 0
	for i := range toks {
		if i+1 < len(toks) && toks[i].Kind == token.Numeral && toks[i].Wrong == "" && toks[i+1].Kind == token.Word && !serving.DegreeWords[toks[i+1].Text] && !entry.AgeWords[toks[i+1].Text] && !serving.IceOnly(toks[i+1:]) {
			n++
		}
	}
	return n > 1 && !serving.DegreeWords[toks[1].Text]
}

// wordsBesideNumbers is how many words some tokens hold that are no numbers.
func wordsBesideNumbers(toks []token.Token) int {
	n := 0
	for i := range toks {
		if toks[i].Kind == token.Word && !numberLike(toks[i].Text) {
			n++
		}
	}
	return n
}

func numberLike(w string) bool {
	return token.NumberWords[w] > 0 || token.FractionWords[w] > 0 || w == "a" || w == "an"
}

// counts reports whether the number at i counts something that is named, and neither ice nor
// turns, seconds or degrees.
func counts(toks []token.Token, i int) bool {
	counted := tokenAt(toks, i+1)
	if counted.Kind != token.Word || serving.DegreeWords[counted.Text] || serving.Times(counted.Text) {
		return false
	}
	return !entry.IceFollows(toks[i+1:]) && Named(upToMark(toks[i+1:]))
}

// orders reports whether words say how to mix and nothing else, and begin no pour.
func orders(toks []token.Token) bool {
	return !(serving.StepVerbs[toks[0].Text] && entry.PouringVerb(toks[0].Text)) && mixes(toks)
}

// mixes reports whether words say how to mix and nothing else.
func mixes(toks []token.Token) bool {
	s := serving.Read(toks)
	return (s.Method != "" || s.Muddle) && len(s.Unknown) == 0 && s.Conflict == nil
}
