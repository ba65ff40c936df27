package sheet

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
)

// The signs that part the cells of a row, the surest first. The gap is more than one blank.
const (
	tab    = "\t"
	stroke = "|"
	semi   = ";"
	comma  = ","
	gap    = "  "
)

var signs = []string{tab, stroke, semi, comma, gap}

// signOf is the sign that parts the cells of a line, empty for none.
func signOf(line string) string {
	for _, s := range signs {
		if strings.Contains(line, s) {
			return s
		}
	}
	return ""
}

// cells returns the stretches of text between the signs of a line, without the blanks and the
// quotes around them. A sign in quotes parts nothing.
func cells(text string, line entry.Span, sign string) []entry.Span {
	end := line.End
	if sign == stroke { // "| gin | 45 |"
		bare := trim(text, line)
		if text[bare.Start:bare.End] != "" && text[bare.Start] == '|' {
			line.Start = bare.Start + 1
		}
		if bare.End-1 > line.Start && text[bare.End-1] == '|' {
			end = bare.End - 1
		}
	}
	if sign == gap {
		line = trim(text, line)
		end = line.End
	}
	var out []entry.Span
	quoted, from := false, line.Start
	for i := line.Start; i < end; i++ {
		switch {
		case text[i] == '"' && sign != stroke && sign != gap && (quoted || strings.TrimSpace(text[from:i]) == ""):
			quoted = !quoted
		case !quoted && strings.HasPrefix(text[i:end], sign):
			out = append(out, unquoted(text, entry.Span{Start: from, End: i}))
			i += len(sign) - 1
			for sign == gap && i+1 < end && text[i+1] == ' ' {
				i++
			}
			from = i + 1
		}
	}
	return append(out, unquoted(text, entry.Span{Start: from, End: end}))
}

// unquoted is a stretch of text without the blanks and the quotes around it.
func unquoted(text string, s entry.Span) entry.Span {
	s = trim(text, s)
	if s.End-s.Start > 1 && text[s.Start] == '"' && text[s.End-1] == '"' {
		s = trim(text, entry.Span{Start: s.Start + 1, End: s.End - 1})
	}
	return s
}

// trim drops blanks at both ends of a stretch of text.
func trim(text string, s entry.Span) entry.Span {
	for s.Start < s.End && blank(text[s.Start]) {
		s.Start++
	}
	for s.End > s.Start && blank(text[s.End-1]) {
		s.End--
	}
	return s
}

func blank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' }
