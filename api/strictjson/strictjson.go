// Package strictjson reads the body of a request in whole and refuses what is no sound
// JSON: cut off, too long, not UTF-8, with a field twice or a number beyond numbers.
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

// Read reads the JSON body of a request of at most so many bytes. Errors are faults of
// a kind of package problem, or of flavor.
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

// checkMediaType wants JSON as it is, and in UTF-8 if it says in what.
func checkMediaType(h http.Header) error {
	if coding := h.Get("Content-Encoding"); coding != "" && !strings.EqualFold(coding, "identity") {
		return &flavor.Fault{Kind: problem.ErrMediaType, Value: coding, Message: "send the body as it is, without Content-Encoding"}
	}
	header := h.Get("Content-Type")
	kind, params, err := mime.ParseMediaType(header)
	if charset := params["charset"]; err == nil && kind == "application/json" && (charset == "" || strings.EqualFold(charset, "utf-8")) {
		return nil
	}
	return &flavor.Fault{Kind: problem.ErrMediaType, Value: header, Message: "send the body as Content-Type: application/json, in UTF-8"}
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
		return nil, &flavor.Fault{Kind: problem.ErrTooLarge, Message: fmt.Sprintf("the body is larger than %d bytes", most)}
	case errors.As(err, &network) && network.Timeout():
		return nil, &flavor.Fault{Kind: problem.ErrSlowBody, Message: "the body did not arrive in time"}
	}
	return nil, &flavor.Fault{Kind: problem.ErrMalformed, Message: "the body is cut off before its end"}
}

// check refuses a body that is empty, is not UTF-8 or JSON, names a field
// twice, or holds a number beyond what can be reckoned with.
func check(body []byte) error {
	if len(bytes.TrimSpace(body)) == 0 {
		return malformed("the body is empty; send a JSON object")
	}
	if !utf8.Valid(body) {
		return malformed("the body is not UTF-8")
	}
	d := jsontext.NewDecoder(bytes.NewReader(body), jsontext.AllowInvalidUTF8(true)) // half a surrogate stands for U+FFFD
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

// alone wants nothing after the value that has been read.
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

// unreadable says what keeps a body from being read as JSON.
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
	return &flavor.Fault{Kind: problem.ErrMalformed, Message: fmt.Sprintf(format, args...)}
}

// position returns the line and column, from 1, of what follows n bytes.
func position(body []byte, n int) (line, column int) {
	before := body[:min(n, len(body))]
	return 1 + bytes.Count(before, []byte("\n")), utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// place writes where a pointer leads in what a decoder is within:
// spec.pours[2].unit.
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
