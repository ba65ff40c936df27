package joining

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/token"
)

// MostLine is the most characters of a line that is no pour.
const MostLine = 2000

// Numbered is a line with its number in the text, from 1.
type Numbered struct {
	Number int
	At     entry.Span
	By     entry.Span // who wrote it, and when, in a thread of messages; empty elsewhere
}

// Lines returns the lines of a text. Where amounts and names stand on lines of their
// own by turns, two lines are one.
func Lines(text string) []Numbered {
	out := make([]Numbered, 0, 1+strings.Count(text, "\n"))
	for from, n := 0, 1; from <= len(text); n++ {
		to, next := LineEnd(text, from)
		parts := []entry.Span{{Start: from, End: to}}
		if labels(text, parts[0]) {
			parts = byLabels(text, parts[0])
		}
		for _, part := range parts {
			for _, at := range topNotes(text, part) {
				out = append(out, Numbered{Number: n, At: at})
			}
		}
		from = next
	}
	bySpeakers(text, out)
	if slices.ContainsFunc(out, func(l Numbered) bool {
		return shortNumber(strings.TrimSpace(text[l.At.Start:l.At.End])) && shapeAlone(text, l.At) == entry.ShapeAmount
	}) {
		out = byTurns(text, out)
	}
	return unlabelled(text, out)
}

// labels reports whether a line may hold several labels, each with its colon.
func labels(text string, at entry.Span) bool {
	return at.End-at.Start <= MostLine && strings.Count(text[at.Start:at.End], ":") > 1
}

// byLabels parts a line that begins with a label where another label follows it, each
// with its colon: "Glass: rocks  Ice: big  Garnish: peel". A labelled name is kept to the
// letter.
func byLabels(text string, at entry.Span) []entry.Span {
	toks := parting.Unlist(token.Lex(nil, text, at.Start, at.End))
	if l, rest := parting.Header(text, toks); l == label.None || toks[0].Text == "name" || l == label.Remark || l == label.Step || len(rest) == 0 {
		return []entry.Span{at}
	}
	var out []entry.Span
	colon := slices.IndexFunc(toks, func(t token.Token) bool { return t.Is(":") })
	for i := colon + 3; i < len(toks); i++ {
		if !toks[i].Is(":") || toks[i-1].Kind != token.Word || !laysOut(label.Words[toks[i-1].Text]) {
			continue
		}
		out = append(out, entry.Span{Start: at.Start, End: toks[i-1].Start})
		at.Start = toks[i-1].Start
	}
	return append(out, at)
}

// topNotes parts a sentence that tells the top note from what stands before and behind it on its line:
// "garnish: peel. Top note: rose water mist. Stir, up".
func topNotes(text string, at entry.Span) []entry.Span {
	if line := text[at.Start:at.End]; len(line) > MostLine || !strings.Contains(line, "note") && !strings.Contains(line, "Note") && !strings.Contains(line, "NOTE") {
		return []entry.Span{at}
	}
	toks := token.Lex(nil, text, at.Start, at.End)
	for i := 1; i+2 < len(toks); i++ {
		if toks[i-1].Text != "top" || !strings.HasPrefix(toks[i].Text, "note") || !toks[i+1].Is(":") {
			continue
		}
		var out []entry.Span
		if i > 1 {
			out = append(out, entry.Span{Start: at.Start, End: toks[i-1].Start})
		}
		end := i + 2
		for end < len(toks) && !toks[end].Is(".") && !toks[end].Is(";") && !toks[end].Is("/") && !toks[end].Is("|") {
			end++
		}
		if end+1 >= len(toks) {
			return append(out, entry.Span{Start: toks[i-1].Start, End: at.End})
		}
		return append(out, entry.Span{Start: toks[i-1].Start, End: toks[end].Start}, entry.Span{Start: toks[end].End, End: at.End})
	}
	return []entry.Span{at}
}

// laysOut reports whether a label says how the drink is made or served.
func laysOut(l label.Kind) bool {
	return l == label.Serving || l == label.Glass || l == label.Garnish || l == label.Rim
}

// mostAlone is the most bytes of a line that holds an amount and nothing else.
const mostAlone = 16

// shortNumber reports whether a line begins with a figure and is too short to name much.
func shortNumber(line string) bool {
	if line == "" || len(line) > mostAlone {
		return false
	}
	first, _ := utf8.DecodeRuneInString(line)
	return unicode.IsNumber(first) || first == '.'
}

// unlabelled is lines without the labels of a list.
func unlabelled(text string, lines []Numbered) []Numbered {
	spans := make([]entry.Span, len(lines))
	for i := range lines {
		spans[i] = lines[i].At
	}
	parting.WithoutLabels(text, spans)
	for i := range lines {
		lines[i].At = spans[i]
	}
	return lines
}

// byTurns joins lines that hold an amount alone with the name on the next line, or on
// the line before where a name comes first.
func byTurns(text string, lines []Numbered) []Numbered {
	out := make([]Numbered, 0, len(lines))
	for i := 0; i < len(lines); {
		run := 1
		first := shapeAlone(text, lines[i].At)
		if first != entry.ShapeNothing {
			for last := first; i+run < len(lines); run++ {
				next := shapeAlone(text, lines[i+run].At)
				if next == entry.ShapeNothing || next == last {
					break
				}
				last = next
			}
		}
		if run > 1 && first == entry.ShapeName && run%2 == 1 { // the first line names the drink
			out = append(out, lines[i])
			i, run = i+1, run-1
		}
		if run == 1 || first == entry.ShapeName && run < 4 { // "Halyard Sour" above "2 oz" is no pair
			out = append(out, lines[i])
			i++
			continue
		}
		for ; run > 1; run -= 2 {
			out = append(out, Numbered{Number: lines[i].Number, At: entry.Span{Start: lines[i].At.Start, End: lines[i+1].At.End}})
			i += 2
		}
		if run == 1 {
			out = append(out, lines[i])
			i++
		}
	}
	return out
}

// shapeAlone is ShapeAmount for a line that holds an amount and nothing else, ShapeName
// for one that holds words that may be a name, and ShapeNothing for any other.
func shapeAlone(text string, at entry.Span) entry.Shape {
	if at.End-at.Start > entry.MostName {
		return entry.ShapeNothing
	}
	toks := parting.Unlist(token.Lex(nil, text, at.Start, at.End))
	if len(toks) == 0 {
		return entry.ShapeNothing
	}
	if l, _ := parting.Header(text, toks); l != label.None {
		return entry.ShapeNothing
	}
	figures := false
	for i := range toks {
		figures = figures || toks[i].Kind == token.Numeral
		if toks[i].Is(",") || toks[i].Is("/") || toks[i].Is(";") || toks[i].Is(":") || toks[i].Is("#") {
			return entry.ShapeNothing
		}
	}
	p := entry.Read(text, toks)
	alone := Piece{Toks: toks, Pour: p}
	switch {
	case p.Fault != nil || p.Each:
	case p.Shape == entry.ShapeAmount && figures:
		return entry.ShapeAmount
	case !figures && alone.Listed():
		return entry.ShapeName
	}
	return entry.ShapeNothing
}

// LineEnd returns the end of the line that starts at from, and where the next
// one starts.
func LineEnd(text string, from int) (end, next int) {
	at := strings.IndexAny(text[from:], "\r\n")
	if at < 0 {
		return len(text), len(text) + 1
	}
	end = from + at
	next = end + 1
	if strings.HasPrefix(text[end:], "\r\n") {
		next++
	}
	return end, next
}
