// Package grid reads the rows of a file of cells as a spreadsheet numbers them, and guards cells
// that a spreadsheet would run as formulas.
package grid

import (
	"bytes"
	"encoding/csv"
	"io"
	"strings"

	"counterpour/flavor/measure/pattern"
)

// maxRestarts limits how often parsing starts again after a quotation mark that is never
// closed. Each restart may read to the end of the file.
const maxRestarts = 200

// Row is a row of a file.
type Row struct {
	Number int // as a spreadsheet counts, from 1; 0 for titles that the file does not have
	Cells  []string
	Raw    string // the text in the file, without line end
}

// Reader reads the rows of a CSV file. It numbers them as a spreadsheet does, blank
// lines included, and keeps the text of each.
type Reader struct {
	text     []byte
	comma    rune
	csv      *csv.Reader
	base     int // offset in text where the csv reader began
	at       int // offset of the end of the last row
	restarts int

	number int // of the last row, from 1
}

// NewReader returns a reader of a text whose cells are apart by comma.
func NewReader(text []byte, comma rune) *Reader {
	r := &Reader{text: text, comma: comma}
	r.start(0)
	return r
}

func (r *Reader) start(at int) {
	r.base = at
	r.csv = csv.NewReader(bytes.NewReader(r.text[at:]))
	r.csv.Comma, r.csv.FieldsPerRecord = r.comma, -1
}

// Next returns the next line that is not blank, io.EOF at the end, or a *csv.ParseError for a
// row that cannot be parsed, with its number and text. After a ParseError the next call
// continues with the row after it.
func (r *Reader) Next() (Row, error) {
	cells, err := r.csv.Read()
	if err == io.EOF {
		return Row{}, err
	}
	end := r.base + int(r.csv.InputOffset())
	from := r.at
	for from < end && (r.text[from] == '\n' || r.text[from] == '\r') {
		from++
	}
	r.number += 1 + bytes.Count(r.text[r.at:from], []byte("\n"))
	first := bytes.IndexByte(r.text[from:end], '\n') + 1
	// A quotation mark that is never closed takes in all rows after it. Only its own line
	// is bad, so parsing starts again after that line.
	if err != nil && first > 0 && from+first < end && r.restarts < maxRestarts {
		r.restarts++
		end = from + first
		r.start(end)
	}
	r.at = end
	return Row{r.number, cells, string(bytes.TrimRight(r.text[from:end], "\r\n"))}, err
}

// Column returns the cells of a column that are not empty, without their guards.
func Column(rows []Row, i int) (cells []string) {
	for _, r := range rows {
		if i < len(r.Cells) {
			if s := strings.TrimSpace(Unguard(r.Cells[i])); s != "" {
				cells = append(cells, s)
			}
		}
	}
	return cells
}

// HasWords reports whether a cell holds letters, two or more.
func HasWords(cell string) bool { return letters.MatchString(cell) }

var letters = pattern.Of(`\pL.*\pL`)

// ShareOf returns the share of cells for which is returns true; 0 if there are no cells.
func ShareOf(cells []string, is func(string) bool) float64 {
	n := 0
	for _, c := range cells {
		if is(c) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(cells)))
}
