package exchange

import (
	"regexp"
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

var plainNumber = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]+)?$`)

// runs reports whether a spreadsheet might run a cell.
func runs(cell string) bool {
	start := strings.TrimLeftFunc(cell, func(r rune) bool {
		return strings.ContainsRune(quotes, r) || unicode.IsSpace(r) && !strings.ContainsRune(formulaStarts, r)
	})
	first, _ := utf8.DecodeRuneInString(start)
	return start != "" && strings.ContainsRune(formulaStarts, first) && !plainNumber.MatchString(cell)
}

// guard makes a cell that no spreadsheet runs.
func guard(cell string) string {
	if runs(cell) {
		return guardMark + cell
	}
	return cell
}

// unguard is the inverse of guard.
func unguard(cell string) string {
	if bare, marked := strings.CutPrefix(cell, guardMark); marked && runs(bare) {
		return bare
	}
	return cell
}
