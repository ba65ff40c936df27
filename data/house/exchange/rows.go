package exchange

import (
	"bytes"
	"encoding/csv"
	"io"
)

// maxRestarts bounds how often a file is read on after a quotation mark that
// is never closed; each time may read to the end of the file.
const maxRestarts = 200

// rowReader reads the rows of a CSV file, numbers them as a spreadsheet does,
// blank lines counted, and keeps each as it stands in the file.
type rowReader struct {
	text     []byte
	comma    rune
	csv      *csv.Reader
	base     int // where in text the csv reader began
	at       int // end of the last row
	restarts int

	number int    // of the row that was read, from 1
	raw    []byte // the row as written, without its line end
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

// next returns the cells of the next row that is not blank, io.EOF after the
// last one, or a *csv.ParseError for a row that cannot be read; the ones after
// it can.
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
	// A quotation mark that is never closed swallows the rows after it; only
	// its own line is bad.
	if err != nil && first > 0 && from+first < end && r.restarts < maxRestarts {
		r.restarts++
		end = from + first
		r.start(end)
	}
	r.raw, r.at = bytes.TrimRight(r.text[from:end], "\r\n"), end
	return row, err
}
