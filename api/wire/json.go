// Package wire encodes answers as JSON: on one line, with UTF-8 unescaped, and a single
// value or a list as the request had it.
package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"

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

// Encode returns v as [WriteJSON] writes it.
func Encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, fmt.Errorf("wire: encoding %T: %w", v, err)
	}
	return b.Bytes(), nil
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
