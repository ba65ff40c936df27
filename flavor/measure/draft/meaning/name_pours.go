package meaning

import (
	"counterpour/flavor/measure/draft/names/counting"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// poursIn reports whether a name holds an amount with its unit and an ingredient behind
// it: what stands there is a pour, whatever sign ends the name.
func (r *resolver) poursIn(name string) bool {
	toks := token.Lex(nil, name, 0, len(name))
	bare := 0 // numbers before a name that may be shortened
	for i := range toks {
		if toks[i].Kind == token.Ratio && r.partsAt(name, toks, i) {
			return true
		}
		if toks[i].Kind != token.Numeral || toks[i].Wrong != "" {
			continue
		}
		if r.measuredAt(name, toks, i) || r.listedAt(name, toks, i) {
			return true
		}
		end := nameEnd(toks, i+1)
		if end == i+1 || r.measureless(name[toks[i+1].Start:toks[end-1].End], true) == nil {
			continue
		}
		if bare++; bare > 1 || toks[i].Value >= counting.LeastMillis && end < len(toks) && toks[end].Kind == token.Numeral { // "wine cooler 100 red wine 100"
			return true
		}
	}
	return false
}

// nameEnd is where the words end that stand at from.
func nameEnd(toks []token.Token, from int) int {
	for from < len(toks) && toks[from].Kind == token.Word {
		from++
	}
	return from
}

// partsAt reports whether several ingredients stand behind a ratio: "2:1 rye sweet vermouth".
func (r *resolver) partsAt(name string, toks []token.Token, i int) bool {
	return i+1 < len(toks) && toks[i+1].Kind == token.Word && len(r.resolver.Mentioned(name[toks[i+1].Start:])) > 1
}

// measuredAt reports whether the number at i has a unit, or is one of each of what follows, and an
// ingredient stands behind it: "15 each gin vodka rum".
func (r *resolver) measuredAt(name string, toks []token.Token, i int) bool {
	if i+2 < len(toks) && (toks[i+1].Text == "each" || toks[i+1].Text == "ea") && r.resolver.Mentions(name[toks[i+2].Start:]) {
		return true
	}
	_, n := entry.UnitAt(toks[i+1:])
	return n > 0 && i+1+n < len(toks) && toks[i+1+n].Kind == token.Word && r.resolver.Mentions(name[toks[i+1+n].Start:])
}

// listedAt reports whether so large a number stands before an ingredient and behind a sign that it is
// millilitres of it: "A - 50 gin, B".
func (r *resolver) listedAt(name string, toks []token.Token, i int) bool {
	end := nameEnd(toks, i+1)
	return toks[i].Value >= counting.LeastMillis && end > i+1 && (i == 0 || toks[i-1].Kind == token.Mark) && r.measureless(name[toks[i+1].Start:toks[end-1].End], false) != nil
}
