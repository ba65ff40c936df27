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
)

// table is a CSV file: its columns, and how its numbers are written.
type table struct {
	columns      map[string]int
	rows         [][]string
	numbers      []int // of the rows, as a spreadsheet numbers them
	decimalComma bool
}

// readTable reads a CSV file whose columns are among the known ones.
func readTable(r io.Reader, known, needed []string, out *Reading) (*table, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	head, _, _ := bytes.Cut(text, []byte("\n"))
	t := &table{columns: map[string]int{}}
	c := csv.NewReader(bytes.NewReader(text))
	c.FieldsPerRecord = -1
	for _, comma := range []rune{';', '\t'} {
		if bytes.ContainsRune(head, comma) && !bytes.ContainsRune(head, ',') {
			c.Comma, t.decimalComma = comma, true
		}
	}
	for n := 1; ; n++ {
		row, err := c.Read()
		var fault *csv.ParseError
		switch {
		case err == io.EOF:
			if n == 1 {
				return nil, unreadable("the file is empty; its first row names the columns: %s", strings.Join(known, ","))
			}
			return t, nil
		case errors.As(err, &fault):
			if n == 1 {
				return nil, unreadable("row 1: %s", fault.Err)
			}
			out.bad(n, "", fmt.Errorf("the row cannot be read: %w; put quotes round a field that holds quotes, and double them within", fault.Err))
			continue
		case err != nil:
			return nil, err
		case n == 1:
			if err := t.head(row, known, needed); err != nil {
				return nil, err
			}
			continue
		case len(row) > len(t.columns):
			out.bad(n, "", fmt.Errorf("the row has %d fields and the file %d columns; put quotes round a field that holds the separator", len(row), len(t.columns)))
			continue
		}
		if slices.ContainsFunc(row, func(s string) bool { return s != "" }) {
			t.rows, t.numbers = append(t.rows, row), append(t.numbers, n)
		}
	}
}

func (t *table) head(row, known, needed []string) error {
	for i, name := range row {
		key := strings.ToLower(strings.TrimSpace(name))
		if !slices.Contains(known, key) {
			return unreadable("row 1: column %q is not known; use %s", name, strings.Join(known, ","))
		}
		if _, twice := t.columns[key]; twice {
			return unreadable("row 1: column %q is there twice", name)
		}
		t.columns[key] = i
	}
	for _, name := range needed {
		if _, ok := t.columns[name]; !ok {
			return unreadable("row 1: column %q is missing; the columns are %s", name, strings.Join(known, ","))
		}
	}
	return nil
}

// line is one row of a table; the first thing wrong with it stays in err.
type line struct {
	t   *table
	row []string
	err error
}

// text returns a field, empty if the file has no such column.
func (l *line) text(column string) string {
	i, ok := l.t.columns[column]
	if !ok || i >= len(l.row) {
		return ""
	}
	return l.row[i]
}

// word is text without space around it.
func (l *line) word(column string) string { return strings.TrimSpace(l.text(column)) }

// number returns a number, nil if the field is empty.
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

// yes reads a mark: yes, true, 1 or x, in any case; no, false, 0 or empty.
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

func writeTable(w io.Writer, columns []string, rows [][]string) error {
	var b bytes.Buffer
	c := csv.NewWriter(&b)
	if err := c.Write(columns); err != nil {
		return err
	}
	if err := c.WriteAll(rows); err != nil {
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

// unlessZero writes a number that is not stated when it is zero.
func unlessZero(v float64) string {
	if v == 0 {
		return ""
	}
	return exact(v)
}
