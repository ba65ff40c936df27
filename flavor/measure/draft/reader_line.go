package draft

import (
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/token"
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
func checkLine(line string) *flavor.DataFault {
	if len(line) > MaxLine && utf8.RuneCountInString(line) > joining.MostLine {
		return measure.Invalid("", string([]rune(line)[:40]), "the line is longer than %d characters; write one pour a line", joining.MostLine)
	}
	if i := strings.IndexFunc(line, token.Unprintable); i >= 0 {
		c, _ := utf8.DecodeRuneInString(line[i:])
		return measure.Invalid("", string(c), "the line holds the control character %U; delete it", c)
	}
	return nil
}

// roundBrackets reads square brackets around what an amount was before as round ones:
// "cane syrup 10 [was 15]". Others part the entries of a line.
func roundBrackets(toks []token.Token) []token.Token {
	for i := 0; i+1 < len(toks); i++ {
		end := slices.IndexFunc(toks[i:], func(t token.Token) bool { return t.Is("]") })
		if toks[i].Is("[") && pouring.WasWords.Has(toks[i+1].Text) && end > 0 {
			toks[i].Text, toks[i+end].Text = "(", ")"
		}
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
