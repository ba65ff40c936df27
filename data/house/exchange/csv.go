package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"counterpour/data/house/exchange/grid"
)

// table is a CSV file: its columns, and its number format.
type table struct {
	columns      map[string]int
	rows         []grid.Row
	decimalComma bool
}

// readTable reads a CSV file with the known columns; needed ones must be present. Rows
// that cannot be parsed are added to the bad rows of out.
func readTable(r io.Reader, known, needed []string, out *Reading) (*table, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	if !utf8.Valid(text) {
		return nil, unreadable("the file is not in UTF-8; save it as \"CSV UTF-8\", so that accents survive")
	}
	t := &table{columns: map[string]int{}}
	rows := grid.NewReader(text, t.separator(text))
	head, err := rows.Next()
	switch {
	case err == io.EOF:
		return nil, unreadable("the file is empty; its first row names the columns: %s", strings.Join(known, ","))
	case err != nil:
		return nil, unreadable("row %d: %s", head.Number, parseText(err))
	}
	if err := t.head(head.Number, head.Cells, known, needed); err != nil {
		return nil, err
	}
	out.head = head.Raw
	for {
		row, err := rows.Next()
		switch {
		case err == io.EOF:
			return t, nil
		case err != nil:
			out.badRow(row, fmt.Errorf("the row cannot be read: %s; put quotes round a field that holds quotes, and double them within", parseText(err)))
		case len(row.Cells) > len(t.columns):
			out.badRow(row, fmt.Errorf("the row has %d fields and the file %d columns; put quotes round a field that holds the separator", len(row.Cells), len(t.columns)))
		case slices.ContainsFunc(row.Cells, func(s string) bool { return s != "" }):
			t.rows = append(t.rows, row)
		}
	}
}

// separator returns the separator used in the first row.
func (t *table) separator(text []byte) rune {
	head, _, _ := bytes.Cut(text, []byte("\n"))
	for _, comma := range []rune{';', '\t'} {
		if bytes.ContainsRune(head, comma) && !bytes.ContainsRune(head, ',') {
			t.decimalComma = true
			return comma
		}
	}
	return ','
}

// parseText returns the message of a parse error without its line number, which does not
// count from the start of the file.
func parseText(err error) string {
	var fault *csv.ParseError
	if errors.As(err, &fault) {
		return fault.Err.Error()
	}
	return err.Error()
}

func (t *table) head(number int, row, known, needed []string) error {
	for i, name := range row {
		key := strings.ToLower(strings.TrimSpace(name))
		if !slices.Contains(known, key) {
			return unreadable("row %d: column %q is not known; use %s", number, name, strings.Join(known, ","))
		}
		if _, twice := t.columns[key]; twice {
			return unreadable("row %d: column %q is there twice", number, name)
		}
		t.columns[key] = i
	}
	for _, name := range needed {
		if _, ok := t.columns[name]; !ok {
			return unreadable("row %d: column %q is missing; the columns are %s", number, name, strings.Join(known, ","))
		}
	}
	return nil
}

// line is a row of a table. err keeps its first fault.
type line struct {
	t   *table
	row []string
	err error
}

// text returns a cell without its guard; "" if the file has no such column.
func (l *line) text(column string) string {
	i, ok := l.t.columns[column]
	if !ok || i >= len(l.row) {
		return ""
	}
	return grid.Unguard(l.row[i])
}

// word returns a cell without surrounding space.
func (l *line) word(column string) string { return strings.TrimSpace(l.text(column)) }

// number returns a number; nil if the cell is empty.
func (l *line) number(column string) *float64 {
	w := l.word(column)
	if w == "" {
		return nil
	}
	plain := w
	if l.t.decimalComma {
		plain = strings.Replace(w, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil {
		l.fail("%s: %q is not a number; write it with digits, such as 22.5", column, w)
		return nil
	}
	return &v
}

func (l *line) numberOr(column string, or float64) float64 {
	if v := l.number(column); v != nil {
		return *v
	}
	return or
}

// yes reads a boolean: yes, true, 1 or x in any case; no, false, 0 or empty.
func (l *line) yes(column string) bool {
	switch w := strings.ToLower(l.word(column)); w {
	case "yes", "true", "1", "x":
		return true
	case "", "no", "false", "0":
	default:
		l.fail("%s: %q is neither yes nor no", column, w)
	}
	return false
}

func (l *line) fail(format string, args ...any) {
	if l.err == nil {
		l.err = fmt.Errorf(format, args...)
	}
}

// writeTable writes rows with a guard on every cell that needs one.
func writeTable(w io.Writer, columns []string, rows [][]string) error {
	var b bytes.Buffer
	c := csv.NewWriter(&b)
	if err := c.Write(columns); err != nil {
		return err
	}
	for _, row := range rows {
		guarded := make([]string, len(row))
		for i, cell := range row {
			guarded[i] = grid.Guard(cell)
		}
		if err := c.Write(guarded); err != nil {
			return err
		}
	}
	c.Flush()
	if err := c.Error(); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

func optional(v *float64) string {
	if v == nil {
		return ""
	}
	return exact(*v)
}

// unlessZero formats a number; zero, which means not stated, becomes "".
func unlessZero(v float64) string {
	if v == 0 {
		return ""
	}
	return exact(v)
}
