// Package wire encodes answers as JSON: on one line, with UTF-8 unescaped, and a single
// value or a list as the request had it.
package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"sync"

	"github.com/danielgtaylor/huma/v2"
)

// WriteJSON writes v as JSON on one line, with UTF-8 unescaped. It writes nothing if v
// cannot be encoded.
func WriteJSON(w io.Writer, v any) error {
	text, err := Encode(v)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

// desk is an encoder and the buffer that it writes to.
type desk struct {
	text    bytes.Buffer
	encoder *json.Encoder
}

// desks lends them: an answer has several kilobytes, which a fresh buffer would grow to in
// many steps.
var desks = sync.Pool{New: func() any {
	d := &desk{}
	d.encoder = json.NewEncoder(&d.text)
	d.encoder.SetEscapeHTML(false)
	return d
}}

// mostKept is the largest buffer that is lent again, in bytes.
const mostKept = 64 << 10

// Encode returns v as [WriteJSON] writes it.
func Encode(v any) ([]byte, error) {
	d := desks.Get().(*desk)
	if err := d.encoder.Encode(v); err != nil { // an encoder that failed is not used again
		return nil, fmt.Errorf("wire: encoding %T: %w", v, err)
	}
	text := bytes.Clone(d.text.Bytes())
	if d.text.Cap() <= mostKept {
		d.text.Reset()
		desks.Put(d)
	}
	return text, nil
}

// Encoded is an answer of type T that is already encoded, so that an encoding error is
// known before the status is written.
type Encoded[T any] struct{ Text []byte }

// Schema returns the schema of T. It implements huma.SchemaProvider.
func (Encoded[T]) Schema(r huma.Registry) *huma.Schema {
	return r.Schema(reflect.TypeFor[T](), true, "")
}

func (e Encoded[T]) json() []byte { return e.Text }

// Answer is the response of a handler: headers and body.
type Answer[T any] struct {
	CacheControl  string `header:"Cache-Control" hidden:"true"`
	ContentLength int    `header:"Content-Length" hidden:"true"`
	Body          Encoded[T]
}

// Format is how huma encodes and decodes bodies. An error of writing is dropped: the
// client has closed the connection.
var Format = huma.Format{
	Marshal: func(w io.Writer, v any) error {
		if e, ok := v.(interface{ json() []byte }); ok {
			_, _ = w.Write(e.json())
			return nil
		}
		text, err := Encode(v)
		if err != nil {
			return err
		}
		_, _ = w.Write(text)
		return nil
	},
	Unmarshal: json.Unmarshal,
}
