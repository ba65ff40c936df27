package token

import (
	"strings"
	"unicode/utf8"
)

// Japanese keyboards write figures, letters and signs as wide as its own letters: "４５ｍｌ".

// The wide forms of the signs from "!" to "~", and the wide blank.
const (
	firstWide = '！'
	lastWide  = '～'
	wideBlank = '　'
	toNarrow  = firstWide - '!'
)

// Narrow returns a text with its wide figures, letters and signs in plain form, each stretch of
// them as long as it was, with blanks behind it; false if it holds no such figure.
func Narrow(text string) (string, bool) {
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
