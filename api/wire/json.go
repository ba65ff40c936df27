// Package wire is how JSON is written: one line, UTF-8 as it is, and one thing or a list
// of them as it was asked.
package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"

	"github.com/danielgtaylor/huma/v2"
)

// WriteJSON writes v as the endpoints do: one line, and UTF-8 as it is. Nothing
// is written if v cannot be encoded.
func WriteJSON(w io.Writer, v any) error {
	text, err := Encode(v)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

// Encode returns v as the endpoints write it.
func Encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, fmt.Errorf("wire: encoding %T: %w", v, err)
	}
	return b.Bytes(), nil
}

// Encoded is an answer of type T that is JSON already, so that a fault of
// encoding is known before the status is written.
type Encoded[T any] struct{ Text []byte }

// Schema returns the schema of T.
func (Encoded[T]) Schema(r huma.Registry) *huma.Schema {
	return r.Schema(reflect.TypeFor[T](), true, "")
}

func (e Encoded[T]) json() []byte { return e.Text }

// Answer is what a handler sends.
type Answer[T any] struct {
	CacheControl  string `header:"Cache-Control" hidden:"true"`
	ContentLength int    `header:"Content-Length" hidden:"true"`
	Body          Encoded[T]
}

// Format is how huma reads and writes bodies. A body that cannot be sent
// is one whose reader has gone away.
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
