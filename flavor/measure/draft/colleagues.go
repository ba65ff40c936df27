package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/aside"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
)

// Drafts are written to colleagues: they hold prices, stock to order, what the whole
// comes to, and what somebody thought of the last one. None of it is poured.

// withoutPrices drops what a drink costs from a line, and says so: "rocks, HK$118",
// "gp 79%".
func (r *reader) withoutPrices(n int, toks []token.Token) []token.Token {
	for i := 0; i < len(toks); i++ {
		from, to := aside.Price(toks, i)
		if to == 0 {
			continue
		}
		written := token.OneLine(r.text[toks[from].Start:toks[to-1].End])
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+written+"” is skipped"))
		for from > 0 && toks[from-1].Kind == token.Mark && !toks[from-1].Is(")") {
			from--
		}
		toks = slices.Concat(toks[:from], toks[to:])
		i = from
	}
	return toks
}

// mostPartSize is the most tokens of a line that says how much a part is.
const mostPartSize = 12

// partSize reads what says how much a part is at the end of a line, "(1 part = 30 ml)",
// and returns the rest of the line.
func (r *reader) partSize(n int, toks []token.Token) []token.Token {
	toks, sizes := entry.OwnSizes(r.text, toks)
	for _, s := range sizes {
		s.Number = n
		r.sizes = append(r.sizes, s)
	}
	for i := range toks {
		if !mayBeSized(toks, i) {
			continue
		}
		from := sizeFrom(toks, i)
		if from > 0 && toks[from-1].Kind != token.Mark {
			continue
		}
		size, end := sizeOf(toks, i+1)
		if len(size) == 0 || toks[i+1].Is("(") && end+1 < len(toks) { // "1 part (25 ml) gin"
			continue
		}
		if p := entry.Read(r.text, size); p.Shape == entry.ShapeAmount && p.Fault == nil && p.Unit.Jigger() {
			r.part = &p
			return entry.TrimMarks(slices.Concat(toks[:from], toks[end:]))
		}
	}
	return toks
}

// mayBeSized reports whether a part stands at i whose size may follow: at the beginning of the line,
// near its end, or before a sign or a word that equals.
func mayBeSized(toks []token.Token, i int) bool {
	if u, n := entry.UnitAt(toks[i : i+1]); n == 0 || u != flavor.PartUnit {
		return false
	}
	return i == 0 || i+2 >= len(toks) || toks[i+1].Is("=") || toks[i+1].Text == "is" || len(toks)-i <= mostPartSize
}

// sizeFrom is where the words begin that lead to the part at i: "make the 1 part".
func sizeFrom(toks []token.Token, i int) int {
	if i > 0 && toks[i-1].Kind == token.Numeral && toks[i-1].Value == 1 {
		i--
	}
	for i > 0 && (toks[i-1].Text == "the" || toks[i-1].Text == "make" || toks[i-1].Text == "each") {
		i--
	}
	return i
}

// sizeOf are the tokens from i on that say how much a part is, without what joins them to it, and
// where they end.
func sizeOf(toks []token.Token, i int) (size []token.Token, end int) {
	for end = i; end < len(toks) && !(len(size) > 1 && toks[end].Kind == token.Mark); end++ {
		if t := toks[end]; t.Kind != token.Mark && t.Text != "is" && t.Text != "of" {
			size = append(size, t)
		}
	}
	return size, end
}

// footnote reports whether a line is a note to a name above that ends in a star, or a warning to
// colleagues.
func (r *reader) footnote(from, to int) bool {
	if line := r.text[from:to]; strings.HasPrefix(line, "!!") && !strings.ContainsFunc(line, unicode.IsNumber) { // "!! bonded only, the other is too thin !!"
		toks := entry.TrimMarks(token.Lex(nil, r.text, from, to))
		return aside.Spoken(strings.Fields(line)) && !serving.Starts(toks) && !entry.TellsToPour(toks)
	}
	if r.text[from] != '*' || from+1 == to {
		return false
	}
	at := strings.IndexByte(r.text[:from], '*')
	if next, _ := utf8.DecodeRuneInString(r.text[from+1:]); at < 1 || !unicode.IsLetter(next) {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(r.text[:at])
	return unicode.IsLetter(before)
}

// withoutServes drops what says amid a line how many drinks it is for, "house sour (makes
// 2)", and says so.
func (r *reader) withoutServes(n int, toks []token.Token) []token.Token {
	out, at := sheet.WithoutServes(toks)
	if !at.Empty() {
		r.said.Notes = append(r.said.Notes, lineNote(n, "“"+token.OneLine(r.text[at.Start:at.End])+"” is skipped: the amounts are taken as those of one drink"))
	}
	return out
}

// withoutCommentary drops sentences behind the first pour that hold numbers and pour
// nothing, and says so.
func (r *reader) withoutCommentary(n int, toks []token.Token) []token.Token {
	if !slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral }) {
		return toks
	}
	poured := len(r.d.Lines) > 0
	for from := 0; from < len(toks); {
		end := aside.SentenceEnd(toks, from)
		if sentence := toks[from:end]; poured && aside.Commentary(sentence) {
			at := entry.Span{Start: sentence[0].Start, End: sentence[len(sentence)-1].End}
			r.said.Notes = append(r.said.Notes, lineNote(n, "“"+strings.Trim(token.OneLine(r.text[at.Start:at.End]), " .,")+"” is skipped: it is taken as a remark"))
			toks = slices.Concat(toks[:from], toks[end:])
			continue
		} else if !poured {
			poured = entry.UnitIn(sentence)
		}
		from = end
	}
	return toks
}
