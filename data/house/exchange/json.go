package exchange

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"counterpour/data/house"
)

const (
	jsonFormat  = "counterpour-house"
	jsonVersion = 1
)

type document struct {
	Format  string   `json:"format"`
	Version int      `json:"version"`
	Records []record `json:"records"`
}

type record struct {
	Kind   house.Kind      `json:"kind"`
	Record json.RawMessage `json:"record"`
}

// WriteJSON writes every current record of a house, from one consistent read.
func WriteJSON(ctx context.Context, s house.Reader, w io.Writer) error {
	list, err := s.List(ctx)
	if err != nil {
		return err
	}
	d := document{Format: jsonFormat, Version: jsonVersion, Records: []record{}}
	for _, e := range list {
		body, err := house.Encode(e.Item)
		if err != nil {
			return err
		}
		d.Records = append(d.Records, record{e.Item.Ref().Kind, body})
	}
	return writeJSON(w, d)
}

func writeJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// ReadJSON reads what [WriteJSON] wrote. Records are numbered from 1.
func ReadJSON(r io.Reader) (*Reading, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	var d document
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&d); err != nil {
		return nil, unreadable("this is not the JSON of a house: %s", jsonPlace(text, err))
	}
	switch {
	case dec.More():
		return nil, unreadable("there is more after the end of the house")
	case d.Format != jsonFormat:
		return nil, unreadable("field format is %q; a house says %q", d.Format, jsonFormat)
	case d.Version != jsonVersion:
		return nil, unreadable("field version is %d; this program reads version %d", d.Version, jsonVersion)
	}
	out := &Reading{}
	for i, rec := range d.Records {
		item, err := house.Decode(rec.Kind, rec.Record)
		if err != nil {
			out.bad(i+1, string(rec.Kind), err)
			continue
		}
		out.add(i+1, item)
	}
	return out.done(), nil
}

// jsonPlace adds the line to a decoder's error.
func jsonPlace(text []byte, err error) string {
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) && syntax.Offset <= int64(len(text)) {
		return fmt.Sprintf("line %d: %s", 1+bytes.Count(text[:syntax.Offset], []byte("\n")), err)
	}
	return err.Error()
}

// readAll reads a file of at most [MaxBytes] bytes, without a byte order mark.
func readAll(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, err
	}
	if len(text) > MaxBytes {
		return nil, unreadable("the file is longer than %d MiB", MaxBytes>>20)
	}
	return bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")), nil
}
