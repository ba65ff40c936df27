package exchange

import (
	"counterpour/data/house/exchange/numeral"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A spreadsheet takes a cell that begins with certain characters for a formula
// and runs it, whoever wrote it. What is written as CSV is therefore guarded
// with an apostrophe, as OWASP advises ("CSV Injection", owasp.org; the list of
// characters is from memory), and what is read has the guard taken off again,
// so that a house reads back as it was. Plain numbers need no guard: their
// value is all that a spreadsheet could work out.
//
// A cell counts by its first character after spaces and quotation marks, since
// some programs pass over those. Apostrophes are among the marks; that is what
// makes guard and unguard undo each other for every text.
const (
	guardMark = "'"
	// formulaStarts are the ASCII ones, the controls that lead to a new cell or
	// line, and the wide forms that spreadsheets of East Asia take for them.
	formulaStarts = "=+-@\t\r\n＝＋－＠"
	quotes        = `"'`
)

// A spreadsheet set to semicolons splits a cell of ours at each of them, quoted or
// not. Each stretch is therefore guarded as a cell of its own, and one after a
// semicolon even if it is a plain number, since what follows it in the row is
// then part of its cell.
const otherSeparator = ";"

// runs reports whether a spreadsheet might run a stretch of a cell.
func runs(cell string, inner bool) bool {
	start := strings.TrimLeftFunc(cell, func(r rune) bool {
		return strings.ContainsRune(quotes, r) || unicode.IsSpace(r) && !strings.ContainsRune(formulaStarts, r)
	})
	first, _ := utf8.DecodeRuneInString(start)
	return start != "" && strings.ContainsRune(formulaStarts, first) && (inner || !numeral.IsPlain(cell))
}

// guard makes a cell that no spreadsheet runs.
func guard(cell string) string {
	return eachStretch(cell, func(text string, inner bool) string {
		if runs(text, inner) {
			return guardMark + text
		}
		return text
	})
}

// unguard is the inverse of guard.
func unguard(cell string) string {
	return eachStretch(cell, func(text string, inner bool) string {
		if bare, marked := strings.CutPrefix(text, guardMark); marked && runs(bare, inner) {
			return bare
		}
		return text
	})
}

func eachStretch(cell string, f func(text string, inner bool) string) string {
	parts := strings.Split(cell, otherSeparator)
	for i, text := range parts {
		parts[i] = f(text, i > 0)
	}
	return strings.Join(parts, otherSeparator)
}
