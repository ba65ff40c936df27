package exchange

import (
	"bytes"
	"encoding/csv"
	"io"
)

// maxRestarts limits how often parsing starts again after a quotation mark that is never
// closed. Each restart may read to the end of the file.
const maxRestarts = 200

// rowReader reads the rows of a CSV file. It numbers them as a spreadsheet does, blank
// lines included, and keeps the text of each.
type rowReader struct {
	text     []byte
	comma    rune
	csv      *csv.Reader
	base     int // offset in text where the csv reader began
	at       int // offset of the end of the last row
	restarts int

	number int    // of the last row, from 1
	raw    []byte // the row as written, without line end
}

func newRowReader(text []byte, comma rune) *rowReader {
	r := &rowReader{text: text, comma: comma}
	r.start(0)
	return r
}

func (r *rowReader) start(at int) {
	r.base = at
	r.csv = csv.NewReader(bytes.NewReader(r.text[at:]))
	r.csv.Comma, r.csv.FieldsPerRecord = r.comma, -1
}

// next returns the cells of the next row that is not blank, io.EOF at the end, or a
// *csv.ParseError for a row that cannot be parsed. After a ParseError the next call
// continues with the row after it.
func (r *rowReader) next() ([]string, error) {
	row, err := r.csv.Read()
	if err == io.EOF {
		return nil, err
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
	r.raw, r.at = bytes.TrimRight(r.text[from:end], "\r\n"), end
	return row, err
}
