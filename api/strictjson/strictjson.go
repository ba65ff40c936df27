// Package strictjson reads the whole body of a request and refuses invalid JSON: a body
// that is cut off, too long or not UTF-8, names a field twice, or holds a number that a
// float64 cannot.
package strictjson

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"mime"
	"net"
	"net/http"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"

	"counterpour/api/problem"
	"counterpour/api/service/fault"
	"counterpour/flavor"
)

// Read reads the JSON body of a request, up to most bytes. Errors are of the kinds of
// package problem, or faults of package flavor.
func Read(w http.ResponseWriter, r *http.Request, most int64) ([]byte, error) {
	if err := checkMediaType(r.Header); err != nil {
		return nil, err
	}
	body, err := readAll(w, r.Body, most)
	if err == nil {
		err = check(body)
	}
	return body, err
}

// checkMediaType refuses a body that is not JSON, is compressed, or states a charset
// other than UTF-8.
func checkMediaType(h http.Header) error {
	if coding := h.Get("Content-Encoding"); coding != "" && !strings.EqualFold(coding, "identity") {
		return &flavor.DataFault{Kind: problem.ErrMediaType, Value: coding, Message: "send the body as it is, without Content-Encoding"}
	}
	header := h.Get("Content-Type")
	kind, params, err := mime.ParseMediaType(header)
	if charset := params["charset"]; err == nil && kind == "application/json" && (charset == "" || strings.EqualFold(charset, "utf-8")) {
		return nil
	}
	return &flavor.DataFault{Kind: problem.ErrMediaType, Value: header, Message: "send the body as Content-Type: application/json, in UTF-8"}
}

func readAll(w http.ResponseWriter, r io.ReadCloser, most int64) ([]byte, error) {
	var b bytes.Buffer
	_, err := b.ReadFrom(http.MaxBytesReader(w, r, most))
	var tooLarge *http.MaxBytesError
	var network net.Error
	switch {
	case err == nil:
		return b.Bytes(), nil
	case errors.As(err, &tooLarge):
		return nil, &flavor.DataFault{Kind: problem.ErrTooLarge, Message: fmt.Sprintf("the body is larger than %d bytes", most)}
	case errors.As(err, &network) && network.Timeout():
		return nil, &flavor.DataFault{Kind: problem.ErrSlowBody, Message: "the body did not arrive in time"}
	}
	return nil, &flavor.DataFault{Kind: problem.ErrMalformed, Message: "the body is cut off before its end"}
}

// check refuses a body that is empty, is not UTF-8 or JSON, names a field twice, or holds
// a number beyond float64.
func check(body []byte) error {
	if len(bytes.TrimSpace(body)) == 0 {
		return malformed("the body is empty; send a JSON object")
	}
	if !utf8.Valid(body) {
		return malformed("the body is not UTF-8")
	}
	d := jsontext.NewDecoder(bytes.NewReader(body), jsontext.AllowInvalidUTF8(true)) // invalid surrogates become U+FFFD
	for {
		token, err := d.ReadToken()
		if err != nil {
			return unreadable(body, d, err)
		}
		if token.Kind() == '0' {
			if _, err := strconv.ParseFloat(token.String(), 64); err != nil {
				return flavor.Invalid(place(d, d.StackPointer()), token.String(), "the number is too large")
			}
		}
		if d.StackDepth() == 0 {
			return alone(body, d)
		}
	}
}

// alone refuses a body that goes on after the value that was read.
func alone(body []byte, d *jsontext.Decoder) error {
	_, err := d.ReadToken()
	switch {
	case errors.Is(err, io.EOF):
		return nil
	case err != nil:
		return unreadable(body, d, err)
	}
	return malformed("the body is not JSON: there is more after its end; send one object")
}

// unreadable explains why a body cannot be read as JSON.
func unreadable(body []byte, d *jsontext.Decoder, err error) error {
	var syntax *jsontext.SyntacticError
	switch {
	case !errors.As(err, &syntax):
		return malformed("the body is not JSON: %v", err)
	case errors.Is(err, jsontext.ErrDuplicateName):
		return flavor.Invalid(place(d, syntax.JSONPointer), syntax.JSONPointer.LastToken(), "is given twice; keep one")
	}
	line, column := position(body, int(syntax.ByteOffset))
	return malformed("the body is not JSON: line %d, column %d: %v", line, column, syntax.Err)
}

func malformed(format string, args ...any) error {
	return &flavor.DataFault{Kind: problem.ErrMalformed, Message: fmt.Sprintf(format, args...)}
}

// position returns the line and column, counted from 1, of the byte at offset n.
func position(body []byte, n int) (line, column int) {
	before := body[:min(n, len(body))]
	return 1 + bytes.Count(before, []byte("\n")), utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// place turns a JSON pointer into the form used in faults: spec.pours[2].unit.
func place(d *jsontext.Decoder, at jsontext.Pointer) string {
	var b strings.Builder
	level := 0
	for name := range at.Tokens() {
		level++
		in := jsontext.Kind('{')
		if level <= d.StackDepth() {
			in, _ = d.StackIndex(level)
		}
		switch {
		case in == '[':
			fmt.Fprintf(&b, "[%s]", name)
		case b.Len() > 0:
			b.WriteString("." + name)
		default:
			b.WriteString(name)
		}
	}
	return fault.Quotable(b.String())
}
