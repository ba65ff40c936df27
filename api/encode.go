package api

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"reflect"

	"github.com/danielgtaylor/huma/v2"
)

// Decimals that served numbers keep. They are fewer than the arithmetic has,
// and no more than the plus-or-minus leaves room for.
const (
	digitsML          = 2 // millilitres, equivalents and the ratios of families
	digitsPct         = 2 // strength and dilution, in per cent
	digitsPer100      = 2 // grams of sugar per 100 mL
	digitsAcidPer100  = 3 // grams of acid per 100 mL
	digitsGPerL       = 2
	digitsBitter      = 1 // mg/L
	digitsGrams       = 2
	digitsKcal        = 1
	digitsCelsius     = 1
	digitsAroma       = 2
	digitsScore       = 1 // rounded down, so that 70.0 is balanced
	digitsFit         = 1
	digitsDeviation   = 1 // just-noticeable differences of a fault
	digitsJND         = 2 // just-noticeable differences of a drink
	digitsProbability = 3
	digitsSearch      = 4
	digitsLikeness    = 4
	digitsCloudy      = 2
	digitsSense       = 3
	digitsDensity     = 4
	digitsServings    = 2
	digitsStep        = 4 // of the arithmetic of a score
)

// round returns x with so many decimals, and never a negative zero.
func round(x float64, digits int) float64 {
	p := math.Pow10(digits)
	return math.Round(x*p)/p + 0
}

// roundScore rounds a score of 0 to 100 down, so that no draft that is short of
// balanced is shown with the score of one that is.
func roundScore(x float64) float64 {
	p := math.Pow10(digitsScore)
	return math.Floor(x*p)/p + 0
}

// WriteJSON writes v as the endpoints do: one line, and UTF-8 as it is. Nothing
// is written if v cannot be encoded.
func WriteJSON(w io.Writer, v any) error {
	text, err := encode(v)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, fmt.Errorf("api: encoding %T: %w", v, err)
	}
	return b.Bytes(), nil
}

// encoded is an answer of type T that is JSON already, so that a fault of
// encoding is known before the status is written.
type encoded[T any] struct{ text []byte }

// Schema returns the schema of T.
func (encoded[T]) Schema(r huma.Registry) *huma.Schema {
	return r.Schema(reflect.TypeFor[T](), true, "")
}

func (e encoded[T]) json() []byte { return e.text }

// answer is what a handler sends.
type answer[T any] struct {
	CacheControl  string `header:"Cache-Control" hidden:"true"`
	ContentLength int    `header:"Content-Length" hidden:"true"`
	Body          encoded[T]
}

// jsonFormat is how huma reads and writes bodies. A body that cannot be sent
// is one whose reader has gone away.
var jsonFormat = huma.Format{
	Marshal: func(w io.Writer, v any) error {
		if e, ok := v.(interface{ json() []byte }); ok {
			_, _ = w.Write(e.json())
			return nil
		}
		text, err := encode(v)
		if err != nil {
			return err
		}
		_, _ = w.Write(text)
		return nil
	},
	Unmarshal: json.Unmarshal,
}

// list returns the slice that f makes of each element; it is never nil, since
// lists are served as [] and not as null.
func list[A, B any](in []A, f func(A) B) []B {
	out := make([]B, len(in))
	for i := range in {
		out[i] = f(in[i])
	}
	return out
}
