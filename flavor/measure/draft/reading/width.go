package reading

import (
	"strings"
	"unicode/utf8"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/flavor/measure/draft/token"
)

// Japanese keyboards write figures, letters and signs as wide as its own letters: "４５ｍｌ".

// The wide forms of the signs from "!" to "~", and the wide blank.
const (
	firstWide = '！'
	lastWide  = '～'
	wideBlank = '　'
	toNarrow  = firstWide - '!'
)

// narrow returns a text with its wide figures, letters and signs in plain form, each stretch of
// them as long as it was, with blanks behind it; false if it holds no such figure.
func narrow(text string) (string, bool) {
	if !strings.ContainsFunc(text, wideFigure) {
		return text, false
	}
	var b strings.Builder
	lost := 0 // bytes to make up for
	for _, c := range text {
		if !wide(c) {
			b.WriteString(strings.Repeat(" ", lost))
			b.WriteRune(c)
			lost = 0
			continue
		}
		if c = c - toNarrow; c == wideBlank-toNarrow {
			c = ' '
		}
		b.WriteRune(c)
		lost += utf8.RuneLen(firstWide) - utf8.RuneLen(c)
	}
	b.WriteString(strings.Repeat(" ", lost))
	return b.String(), true
}

func wide(c rune) bool { return firstWide <= c && c <= lastWide || c == wideBlank }

func wideFigure(c rune) bool { return '０' <= c && c <= '９' }

// narrowed reads a draft with wide figures as if they were plain ones; false if it has none.
func narrowed(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	text, ok := narrow(d.String())
	if !ok {
		return Reading{}, false, nil
	}
	out, err := Resolve(d.Anew(text), f)
	if at := out.Draft.NameAt; err == nil && out.Draft.String() == text && !at.Empty() { // the name is kept to the letter
		end := len(text)
		if n := strings.IndexAny(text[at.Start:], "\r\n"); n >= 0 {
			end = at.Start + n
		}
		if token.OneLine(text[at.Start:end]) == out.Spec.Name {
			out.Spec.Name = token.OneLine(d.String()[at.Start:end])
			out.Draft.Name = out.Spec.Name
		}
	}
	if err == nil && out.Draft.String() == text {
		out.Draft = out.Draft.Restored(d.String(), nil)
	}
	return out, true, err
}
