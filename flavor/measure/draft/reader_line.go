package draft

import (
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/token"
)

// remarkAt returns where a remark starts behind what else a line holds, to if none
// does. A number behind the sign makes it part of a name, "Punch #2", and what stands
// behind a label is kept as it is.
func remarkAt(text string, from, to int) int {
	if strings.IndexByte(text[from:to], '#') < 0 {
		return to
	}
	if colon := strings.IndexByte(text[from:to], ':'); colon >= 0 { // "gin: 1.75 oz # was 2"
		if at := strings.Index(text[from:to], " # "); at > colon && strings.ContainsAny(text[from+colon:from+at], "0123456789") {
			return from + at + 1
		}
		return to
	}
	for i := from + 1; i+1 < to; i++ {
		if text[i] == '#' && text[i-1] == ' ' && !token.Digit(text[i+1]) && strings.TrimSpace(text[from:i]) != "" {
			return i
		}
	}
	return to
}

// ruled passes over a ruled line; other signs say nothing that can be read.
func (r *reader) ruled(n int, s entry.Span) {
	written := r.text[s.Start:s.End]
	if strings.Trim(written, "-=_*~·•.–— ") == "" {
		r.entry(KindRemark, n, s)
		return
	}
	r.entry(KindUnread, n, s)
	r.fail(n, measure.Invalid("amount", written, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line skipped", written))
}

// trimSpan drops spaces and what cannot be seen at both ends.
func trimSpan(text string, from, to int) (int, int) {
	inner := strings.TrimFunc(text[from:to], func(c rune) bool {
		return c == ' ' || token.Invisible(c) || strings.ContainsRune("\t\u00a0\u2002\u2003\u2009\u202f\u3000\v\f\u0085", c)
	})
	if inner == "" {
		return from, from
	}
	from += strings.Index(text[from:to], inner)
	return from, from + len(inner)
}

// checkLine refuses a line that is too long or holds what no keyboard types.
func checkLine(line string) *flavor.Fault {
	if len(line) > MaxLine && utf8.RuneCountInString(line) > maxStep {
		return measure.Invalid("", string([]rune(line)[:40]), "the line is longer than %d characters; write one pour a line", maxStep)
	}
	if i := strings.IndexFunc(line, token.Unprintable); i >= 0 {
		c, _ := utf8.DecodeRuneInString(line[i:])
		return measure.Invalid("", string(c), "the line holds the control character %U; delete it", c)
	}
	return nil
}

// unlist drops a bullet or the number of a list. A dash is a bullet only before
// a space: "-2 oz" is a negative amount.
func unlist(toks []token.Token) []token.Token {
	for len(toks) > 0 {
		t := &toks[0]
		switch {
		case t.Is("•") || t.Is(">") || t.Is("|") || t.Is("[") || t.Is("]"):
		case t.Kind == token.Word && t.End-t.Start == 1 && len(toks) > 2 && toks[1].Glued && (toks[1].Is(")") || toks[1].Is(".")) && !toks[2].Glued && toks[2].Kind == token.Numeral:
			toks = toks[1:] // "A. 2 oz gin"
		case t.Is("-") && (len(toks) == 1 || !toks[1].Glued):
		case t.Kind == token.Numeral && len(toks) > 2 && toks[1].Glued && (toks[1].Is(")") || toks[1].Is(".")) && !toks[2].Glued && t.Wrong == "" &&
			t.Value == float64(int(t.Value)) && !entry.UnitWordsAt(toks[2:]):
			toks = toks[1:]
		default:
			return toks
		}
		toks = toks[1:]
	}
	return toks
}

// unstruck drops what is struck out between two pairs of tildes, and says so.
func (r *reader) unstruck(n int, toks []token.Token) []token.Token {
	pair := func(from int) int {
		for i := from; i+1 < len(toks); i++ {
			if toks[i].Is("~") && toks[i+1].Is("~") && toks[i+1].Glued {
				return i
			}
		}
		return -1
	}
	start := pair(0)
	if start < 0 {
		return toks
	}
	end := pair(start + 2)
	if end < 0 {
		return toks
	}
	r.said.Notes = append(r.said.Notes, measure.LineLocation(n)+": “"+token.OneLine(r.text[toks[start].Start:toks[end+1].End])+"” is struck out and skipped")
	return append(toks[:start:start], toks[end+2:]...)
}

// headOf is the one unit that the head of a table names, empty for none or several.
func headOf(toks []token.Token) flavor.Unit {
	var head flavor.Unit
	for i := range toks {
		u, ok := measure.ParseUnit(toks[i].Text)
		switch {
		case !ok || !u.Jigger():
		case head != "" && head != u:
			return ""
		default:
			head = u
		}
	}
	return head
}

var columnWords = token.Words(`ingredient ingredients qty quantity amount unit units ml oz cl name item measure volume pour bottle cost price notes note gp`)

// sizeWords head the column of the one size that a house pours.
var sizeWords = token.Words(`reg regular std standard`)

// columns reports whether a line names the columns of a table: "Ingredient,Qty,Unit".
func columns(toks []token.Token) bool {
	words, sizes := 0, 0
	for i := range toks {
		switch {
		case toks[i].Kind == token.Mark:
		case toks[i].Kind == token.Word && columnWords[toks[i].Text]:
			words++
		case i > 0 && toks[i].Kind == token.Word && sizeWords[toks[i].Text]:
			sizes++
		default:
			return false
		}
	}
	return words > 0 && sizes == 1 || words > 1 && (words < len(toks) || words > 2)
}
