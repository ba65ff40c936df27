package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
)

// decoded returns the text as UTF-8. was names its original encoding if that was another.
func decoded(text []byte) (out []byte, was string) {
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		if plain, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder().Bytes(text); err == nil {
			return plain, ""
		}
	}
	if utf8.Valid(text) {
		return text, ""
	}
	plain, err := charmap.Windows1252.NewDecoder().Bytes(text)
	if err != nil {
		return bytes.ToValidUTF8(text, []byte("\uFFFD")), "broken UTF-8"
	}
	return plain, "Windows-1252"
}

// separators are the characters that may separate cells.
var separators = []rune{',', ';', '\t', '|'}

// separatorOf returns the separator that is most frequent in the first lines, outside
// quotation marks.
func separatorOf(text []byte) rune {
	counts := map[rune]int{}
	quoted := false
	lines := 0
	for _, r := range string(text[:min(len(text), 1<<16)]) {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '\n':
			quoted = false // an unclosed quotation mark ends with its line
			if lines++; lines > 2*column.MaxHeadRows {
				return mostOf(counts)
			}
		case !quoted && slices.Contains(separators, r):
			counts[r]++
		}
	}
	return mostOf(counts)
}

func mostOf(counts map[rune]int) rune {
	best := separators[0]
	for _, r := range separators[1:] {
		if counts[r] > counts[best] {
			best = r
		}
	}
	return best
}

// split parses the text into rows and sets aside those that cannot be parsed.
func (s *sheetReader) split(text []byte) []grid.Row {
	var out []grid.Row
	rows := grid.NewReader(text, separatorOf(text))
	for {
		row, err := rows.Next()
		switch {
		case err == io.EOF:
			return out
		case err != nil:
			why := err
			var fault *csv.ParseError
			if errors.As(err, &fault) {
				why = fault.Err
			}
			s.cannotRead(row, fmt.Errorf("the row cannot be read: %s; put quotes round a field that holds quotes, and double them within", why))
		case slices.ContainsFunc(row.Cells, func(c string) bool { return strings.TrimSpace(c) != "" }):
			out = append(out, row)
		}
	}
}

// cannotRead sets aside a row that cannot be parsed, unless the user leaves it out.
func (s *sheetReader) cannotRead(row grid.Row, err error) {
	if s.settled.Cells[Cell{row.Number, column.Row}] == LeaveOut {
		s.Rows = append(s.Rows, SheetRow{Number: row.Number, LeftOut: asSaid, row: row})
		return
	}
	s.unreadable = append(s.unreadable, unreadableRow{row, err})
}

// sumWords are what rows of totals are called in English, German, French, Spanish and Italian, as a
// pattern. Common practice, no source.
const sumWords = `(?:grand |sub[- ]?|sous[- ])?total(?:s|es?)?|sum|(?:zwischen|gesamt|end)?summe|(?:ins)?gesamt(?:betrag|preis|wert)?|somme|suma|somma|summa`

func (r *SheetRow) isSum() bool {
	for _, text := range []string{r.row.Cells[0], r.Cells[column.Name]} {
		if text = strings.TrimSpace(text); sumRow.MatchString(text) {
			return true
		}
		if sumOf.MatchString(text) && r.Cells[column.Kind] == "" && r.Cells[column.Size]+r.Cells[column.SizeML]+r.Cells[column.SizeG] == "" {
			return true
		}
	}
	return false
}
