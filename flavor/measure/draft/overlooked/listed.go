package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// A list of names with bare numbers pours as much of everything in it: "lime 15, dem 15". What stands in such a
// list and is not poured was taken for something else, whatever it is.

// From so many entries of a line that are poured on the line is such a list: of a name that is known, and of a word
// that is not.
const leastPoured, leastForUnknown = 1, 2

// numbers are words before or behind a number that measures nothing.
var numbers = vocabulary.Words(`no not number nr step table tbl seat serves serve makes yields yield recipe card page ticket order batch round day week month shake stir dry wet hard strain swizzle muddle blend build chill
rest steep infuse sec secs second seconds min mins minute minutes hour hours x about total vol abv proof cost price sell version vers spec v round rounds covers pax guests ppl people drinks for at btl btls can cans deg degrees c f rim rims`)

// bareEntry is an entry of a list: some words, and a number without a unit before or behind them.
type bareEntry struct {
	name   []token.Token
	number *token.Token
}

// unlisted is the fault of an entry of a line that is a name and a bare number as most of the line is, and is not
// among the pours.
func unlisted(text string, toks []token.Token, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	entries := bareEntries(toks)
	for i := range entries {
		e := &entries[i]
		listed, beside := 0, 0
		for k := range entries {
			if o := entries[k].number.Value; o == e.number.Value {
				listed++
			}
			if k != i && poured(entries[k].number.Value, pours) > 0 {
				beside++
			}
		}
		if listed <= poured(e.number.Value, pours) || !mayBePoured(text, e, beside, pours, b) {
			continue
		}
		said := token.OneLine(text[min(e.name[0].Start, e.number.Start):max(e.name[len(e.name)-1].End, e.number.End)])
		return measure.Invalid("amount", said, "%q stands among what is poured and is not; write its name in full on a line of its own, or leave it out", said)
	}
	return nil
}

// poured counts the pours of an amount.
func poured(amount float64, pours []flavor.Pour) (n int) {
	for i := range pours {
		if pours[i].Amount == amount {
			n++
		}
	}
	return n
}

// mayBePoured reports whether an entry beside so many poured ones has the name of an ingredient, or is a word that
// nobody knows, and nothing of it is poured. Such a word stands before its number: "3 beans" are laid on the drink.
func mayBePoured(text string, e *bareEntry, beside int, pours []flavor.Pour, b *naming.Resolver) bool {
	if beside < leastPoured || heads(text, e) || slices.ContainsFunc(e.name, func(t token.Token) bool { return numbers.Has(t.Text) || speaks.Has(t.Text) }) {
		return false
	}
	written := text[e.name[0].Start:e.name[len(e.name)-1].End]
	if f := b.Find(written, naming.Place{Unit: flavor.Ounce, Amount: 1}); f.Firm() && f.Dropped == "" {
		return drunk(f.Profile) && !named(f.Profile, written, pours)
	}
	if p, n := b.MentionAt(wordsFrom(text, e.name)); n == len(e.name) {
		return drunk(p) && !named(p, written, pours)
	}
	return beside >= leastForUnknown && len(e.name) == 1 && e.name[0].Start < e.number.Start && lexicon.Of(e.name[0].Text) == 0 &&
		!slices.ContainsFunc(pours, func(q flavor.Pour) bool { return flavor.NormaliseName(q.Match.Asked) == flavor.NormaliseName(written) })
}

// heads reports whether an entry is the heading of its line and no ingredient, such as "Highball 19:"
// before the pours: a drink that is known by that name, or one of a kind that nobody would pour.
func heads(text string, e *bareEntry) bool {
	from := e.name[0].Start
	before := text[strings.LastIndex(text[:from], "\n")+1 : from]
	if e.number.Start < from || strings.TrimSpace(before) != "" {
		return false
	}
	if behind := strings.TrimLeft(text[e.number.End:], " "); !strings.HasPrefix(behind, ":") {
		return strings.IndexAny(behind, ",;|/-–—") == 0 && drinks.Known(text[from:e.number.End]) // "French 75, gin 30"
	}
	return drinks.Known(text[from:e.number.End]) || drinks.Called(text[from:e.name[len(e.name)-1].End])
}

// bareEntries lists the entries of a line between its signs, without what stands in brackets.
func bareEntries(toks []token.Token) []bareEntry {
	var out []bareEntry
	from := 0
	for i := 0; i <= len(toks); i++ {
		if i < len(toks) && toks[i].Is(")") {
			from = i + 1
			continue
		}
		if i < len(toks) && !parts(&toks[i]) && !toks[i].Is("+") && !(toks[i].Is("-") && !toks[i].Glued) {
			continue
		}
		if e, ok := bareEntryOf(toks[from:i]); ok {
			out = append(out, e)
		}
		from = i + 1
	}
	return out
}

func bareEntryOf(toks []token.Token) (bareEntry, bool) {
	last := len(toks) - 1
	if last < 1 || last > mostWords {
		return bareEntry{}, false
	}
	var e bareEntry
	switch {
	case toks[0].Kind == token.Numeral && toks[0].Wrong == "":
		e = bareEntry{toks[1:], &toks[0]}
	case toks[last].Kind == token.Numeral && toks[last].Wrong == "":
		e = bareEntry{toks[:last], &toks[last]}
	default:
		return e, false
	}
	alone := len(e.name) == 1 && e.name[0].Start < e.number.Start // a unit behind nothing is none: "g 45"
	return e, !slices.ContainsFunc(e.name, func(t token.Token) bool { return t.Kind != token.Word || mayMeasure(&t) && !alone })
}
