package grid

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/data/house/exchange/numeral"
)

// A spreadsheet treats a cell that begins with certain characters as a formula and runs
// it, whoever wrote it. So CSV is written with an apostrophe in front of such cells, as
// OWASP advises ("CSV Injection", owasp.org; the list of characters is from memory).
// Reading removes the guard, so that a house reads back unchanged. Plain numbers need no
// guard: they compute nothing.
//
// Leading spaces and quotation marks are skipped to find a cell's first character, since
// some programs skip them. Apostrophes are among those marks; that makes Guard and
// Unguard inverse to each other for every text.
const (
	guardMark = "'"
	// formulaStarts are ASCII characters, the control characters that lead to a new cell
	// or line, and the full-width forms that East Asian spreadsheets accept.
	formulaStarts = "=+-@\t\r\n＝＋－＠"
	quotes        = `"'`
)

// A spreadsheet that is set to semicolons splits our cells at each of them, even inside
// quotation marks. So each part is guarded as a cell of its own. A part after a semicolon
// is guarded even if it is a plain number, since the rest of the row then becomes part of
// its cell.
const otherSeparator = ";"

// runs reports whether a spreadsheet might run part of a cell.
func runs(cell string, inner bool) bool {
	start := strings.TrimLeftFunc(cell, func(r rune) bool {
		return strings.ContainsRune(quotes, r) || unicode.IsSpace(r) && !strings.ContainsRune(formulaStarts, r)
	})
	first, _ := utf8.DecodeRuneInString(start)
	return start != "" && strings.ContainsRune(formulaStarts, first) && (inner || !numeral.IsPlain(cell))
}

// Guard returns a cell that no spreadsheet runs.
func Guard(cell string) string {
	return eachStretch(cell, func(text string, inner bool) string {
		if runs(text, inner) {
			return guardMark + text
		}
		return text
	})
}

// Unguard is the inverse of [Guard].
func Unguard(cell string) string {
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
