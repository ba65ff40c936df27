package everyday

import (
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// Clauses that pour nothing by what they are, whatever they name.

// mostAside is the most tokens of such a clause.
const mostAside = 10

// offers reports whether a clause is what a guest may have at a price on top of the drink's: "double
// +£4".
func offers(toks []token.Token) bool {
	if len(toks) > mostAside {
		return false
	}
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is("+") })
	if at < 0 || at+1 >= len(toks) {
		return false
	}
	from, to := aside.Price(toks, at+1)
	return to == len(toks) && from == at+1 && plainWords(toks[:at])
}

// plainWords reports whether tokens are words, none of which measures a pour or tells to pour one.
func plainWords(toks []token.Token) bool {
	return !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind != token.Word || parting.Measured(&t) }) && !entry.TellsToPour(toks)
}

// sees begin what says where something is written.
var sees = vocabulary.Words(`see cf also per from on in recipe`)

// pages stand before the number of a page.
var pages = vocabulary.Words(`p pp pg page pages ch chapter vol volume no fig sheet card spec recipe note appendix section tab`)

// pointsTo reports whether a clause says where something is written, whatever that is: "corn syrup see
// p. 8".
func pointsTo(toks []token.Token) bool {
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "see" || t.Text == "cf" })
	if at < 0 || len(toks) > mostAside || !plainWords(toks[:at]) {
		return false
	}
	end := len(toks)
	if toks[end-1].Kind == token.Numeral && whole(&toks[end-1]) {
		end--
	}
	if end > at+1 && toks[end-1].Is(".") {
		end--
	}
	if end < at+2 || !pages.Has(toks[end-1].Text) && !behindPage(toks[end-1].Text) {
		return false
	}
	return !slices.ContainsFunc(toks[at+1:end-1], func(t token.Token) bool { return !sees.Has(t.Text) && !articles.Has(t.Text) })
}

// behindPage reports whether a word says of something written where it stands: "see overleaf".
func behindPage(w string) bool { return overleaf.Has(w) }

var (
	overleaf = vocabulary.Words(`overleaf below above back overpage reverse appendix notes prep book binder sheet folder`)
	articles = vocabulary.Words(`the our a my their this that`)
)

// mostHailed is the most words of whom a greeting is for.
const mostHailed = 3

// greets reports whether a clause greets or thanks somebody: "hi team", "cheers all", "thanks, M.". Who
// is sorry takes something back.
func greets(toks []token.Token) bool {
	if toks[0].Text == "sorry" || !aside.Hail(toks[0].Text) && !greetings.Has(toks[0].Text) || len(toks) > 1+mostHailed {
		return false
	}
	return !slices.ContainsFunc(toks[1:], func(t token.Token) bool {
		return t.Kind == token.Word && !hailed.Has(t.Text) && lexicon.Of(t.Text)&lexicon.Person == 0 && utf8.RuneCountInString(t.Text) > 1 || figures(&t)
	})
}

var (
	greetings = vocabulary.Words(`good thanks thank regards best xoxo welcome`)
	hailed    = vocabulary.Words(`all everyone everybody team folks guys gang crew lads boss chef mate you morning afternoon evening again both there yall y'all day everybody's so much lot lots and the , .`)
)

// MayAdd reports whether words that name nothing known may all the same tell of something poured: they say
// that something goes in which no list of words knows, or which is an allergen: "and the umeboshi", "with nuts".
func MayAdd(text string) bool {
	toks := token.Lex(nil, text, 0, len(text))
	unknown, adds := false, len(toks) > 0 && adding.Has(toks[0].Text)
	for i := range toks {
		switch w := toks[i].Text; {
		case toks[i].Kind != token.Word:
		case (w == "goes" || w == "go") && wordAt(toks, i+1) == "in":
			adds = true
		case Allergen(w), !Word(w) && !laid.Noun(w) && !serving.Known(w) && !serving.Fillers[w] && !numbers(w) && !given.Has(w):
			unknown = true
		}
	}
	return unknown && adds
}

// adding begin what goes into a drink beside what stands before it.
var adding = vocabulary.Words(`and with plus add adding then also & +`)

// limits reports whether a clause says how many of the drink a guest may have: "no more than two per
// guest", "max 2 each".
func limits(toks []token.Token) bool {
	if !limiting.Has(toks[0].Text) || len(toks) > mostAside {
		return false
	}
	at := slices.IndexFunc(toks, func(t token.Token) bool { return t.Text == "per" || t.Text == "each" || t.Text == "a" })
	if at < 1 || token.NumberWords[toks[at-1].Text] == 0 && toks[at-1].Kind != token.Numeral {
		return false
	}
	return toks[at].Text == "each" && at+1 == len(toks) || at+1 < len(toks) && (lexicon.Of(toks[at+1].Text)&(lexicon.Person|lexicon.Time) != 0 || tools.Has(toks[at+1].Text) || served.Has(toks[at+1].Text))
}

var (
	limiting = vocabulary.Words(`no max maximum limit limited never strictly only`)
	served   = vocabulary.Words(`head table order customer guest person pax cover round tab visit`)
)

// allKnown reports whether every word of a clause is known and none names anything or measures.
func (s *search) allKnown(toks []token.Token) bool {
	words := slices.DeleteFunc(slices.Clone(toks), func(t token.Token) bool { return figures(&t) || token.NumberWords[t.Text] > 0 })
	if !wordsOnly(words) || measures(words) {
		return false
	}
	c := s.clause(slices.DeleteFunc(words, func(t token.Token) bool { return limiting.Has(t.Text) }))
	return c.known && !c.names && !c.named
}

// numbers reports whether a word stands beside numbers that count or refer, and names nothing.
func numbers(w string) bool {
	return numbered.Has(w) || counted.Has(w) || tools.Has(w) || scores.Has(w) || months.MatchString(w) || serving.DegreeWords[w]
}

// besideAmount returns the entry with its amount behind which tokens stand in brackets, nil if they stand
// behind none: what they count there is no other amount of it.
func besideAmount(all []token.Token, from, end int) []token.Token {
	if from < 2 || end >= len(all) || !all[from-1].Is("(") && !all[from-1].Is("[") || !all[end].Is(")") && !all[end].Is("]") {
		return nil
	}
	start := from - 1
	for start > 0 && !strings.Contains(",;|()[]", all[start-1].Text) {
		start--
	}
	if before := all[start : from-1]; slices.ContainsFunc(before, func(t token.Token) bool { return figures(&t) }) {
		return before
	}
	return nil
}

// inventory reports whether a bracket behind an entry says how much of it there is or is to be ordered,
// or how hot it is that is poured hot: "1 btl", "need 2 trays", "btl 12 left", "75 deg".
func inventory(toks, before []token.Token) bool {
	told := false
	for i := range toks {
		switch w := toks[i].Text; {
		case toks[i].Kind == token.Numeral && toks[i].Wrong == "":
			told = told || stockUnit(wordAt(toks, i+1)) || stockUnit(wordAt(toks, i-1)) || wordAt(toks, i+1) == "left" || scaled(toks, i, before)
		case toks[i].Kind == token.Word && (stockUnit(w) || stocking.Has(w) || scales.Has(w)):
		default:
			return false
		}
	}
	return told && len(before) > 0
}

// stockUnit reports whether stock is counted in a word.
func stockUnit(w string) bool { return stocked.Has(w) || sacks.Has(w) }

// scaled reports whether the number at i is of the degrees of what stands before it as hot.
func scaled(toks []token.Token, i int, before []token.Token) bool {
	return scales.Has(wordAt(toks, i+1)) && slices.ContainsFunc(before, func(t token.Token) bool { return serving.Warmth(t.Text) == flavor.HeatHot })
}

var (
	// sacks are what is bought by the piece, beside bottles, and stocking the words around how much of it there is.
	sacks    = vocabulary.Words(`tray trays bag bags sack sacks pack packs packet packets punnet punnets tub tubs kg kilo kilos`)
	stocking = vocabulary.Words(`left need needs order ordered reorder in stock par have we got to buy on hand remaining open opened`)
	scales   = vocabulary.Words(`deg degrees degree c f °c °f ° celsius fahrenheit`)
)
