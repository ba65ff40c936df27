package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"mime"
	"net"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/gin-gonic/gin"

	"counterpour/api/service"
	"counterpour/flavor"
)

// readBody reads the body of a POST in whole and refuses what is no sound JSON,
// before any handler sees it.
func (s *Server) readBody(c *gin.Context) {
	if c.FullPath() == "" || c.Request.Method != http.MethodPost {
		c.Next()
		return
	}
	err := checkMediaType(c.Request.Header)
	var body []byte
	if err == nil {
		body, err = readAll(c.Writer, c.Request.Body)
	}
	if err == nil {
		err = checkJSON(body)
	}
	if err != nil {
		refuse(c, s.problem(c.Request.Context(), err, "body", c.FullPath()))
		return
	}
	c.Request.Body = io.NopCloser(bytes.NewReader(body))
	c.Next()
}

// checkMediaType wants JSON as it is, and in UTF-8 if it says in what.
func checkMediaType(h http.Header) error {
	if coding := h.Get("Content-Encoding"); coding != "" && !strings.EqualFold(coding, "identity") {
		return &flavor.Fault{Kind: ErrMediaType, Value: coding, Message: "send the body as it is, without Content-Encoding"}
	}
	header := h.Get("Content-Type")
	kind, params, err := mime.ParseMediaType(header)
	if charset := params["charset"]; err == nil && kind == "application/json" && (charset == "" || strings.EqualFold(charset, "utf-8")) {
		return nil
	}
	return &flavor.Fault{Kind: ErrMediaType, Value: header, Message: "send the body as Content-Type: application/json, in UTF-8"}
}

func readAll(w http.ResponseWriter, r io.ReadCloser) ([]byte, error) {
	var b bytes.Buffer
	_, err := b.ReadFrom(http.MaxBytesReader(w, r, MaxBody))
	var tooLarge *http.MaxBytesError
	var network net.Error
	switch {
	case err == nil:
		return b.Bytes(), nil
	case errors.As(err, &tooLarge):
		return nil, &flavor.Fault{Kind: ErrTooLarge, Message: fmt.Sprintf("the body is larger than %d bytes", MaxBody)}
	case errors.As(err, &network) && network.Timeout():
		return nil, &flavor.Fault{Kind: ErrSlowBody, Message: "the body did not arrive in time"}
	}
	return nil, &flavor.Fault{Kind: ErrMalformed, Message: "the body ends before it is whole"}
}

// checkJSON refuses a body that is empty, is not UTF-8 or JSON, names a field
// twice, or holds a number beyond what can be reckoned with.
func checkJSON(body []byte) error {
	malformed := func(format string, args ...any) error {
		return &flavor.Fault{Kind: ErrMalformed, Message: fmt.Sprintf(format, args...)}
	}
	switch {
	case len(bytes.TrimSpace(body)) == 0:
		return malformed("the body is empty; send a JSON object")
	case !utf8.Valid(body):
		return malformed("the body is not UTF-8")
	case !json.Valid(body):
		var whole any
		err := json.Unmarshal(body, &whole)
		var syntax *json.SyntaxError
		if errors.As(err, &syntax) {
			line, column := position(body, int(syntax.Offset))
			return malformed("the body is not JSON: line %d, column %d: %s", line, column, syntax)
		}
		return malformed("the body is not JSON: %v", err)
	}
	return checkNames(body)
}

// position returns the line and column, from 1, of the last of n bytes.
func position(body []byte, n int) (line, column int) {
	before := body[:max(0, min(n, len(body))-1)]
	return 1 + bytes.Count(before, []byte("\n")), utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// level is one object or array that a walk through JSON is in.
type level struct {
	names map[string]bool // nil for an array
	name  string          // the field that is read
	value bool            // its value comes next
	index int
}

// checkNames walks through valid JSON.
func checkNames(body []byte) error {
	d := json.NewDecoder(bytes.NewReader(body))
	d.UseNumber()
	var levels []level
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return &flavor.Fault{Kind: ErrMalformed, Message: "the body is not JSON: " + err.Error()}
		}
		if delim, ok := token.(json.Delim); ok && (delim == '}' || delim == ']') {
			levels = levels[:len(levels)-1]
			continue
		}
		twice := step(levels, token)
		if twice {
			return flavor.Invalid(place(levels), levels[len(levels)-1].name, "is given twice; keep one")
		}
		switch t := token.(type) {
		case json.Delim:
			next := level{index: -1}
			if t == '{' {
				next.names = map[string]bool{}
			}
			levels = append(levels, next)
		case json.Number:
			if _, err := strconv.ParseFloat(string(t), 64); err != nil {
				return flavor.Invalid(place(levels), string(t), "the number is beyond what can be reckoned with")
			}
		}
	}
}

// step moves the innermost level on by a token, and reports whether that names
// a field for the second time.
func step(levels []level, token json.Token) (twice bool) {
	if len(levels) == 0 {
		return false
	}
	in := &levels[len(levels)-1]
	switch {
	case in.names == nil:
		in.index++
	case in.value:
		in.value = false
	default:
		in.name, _ = token.(string)
		in.value = true
		twice = in.names[in.name]
		in.names[in.name] = true
	}
	return twice
}

// place writes where a walk is: spec.pours[2].unit.
func place(levels []level) string {
	var b strings.Builder
	for _, l := range levels {
		switch {
		case l.names == nil:
			fmt.Fprintf(&b, "[%d]", l.index)
		case b.Len() > 0:
			b.WriteString("." + l.name)
		default:
			b.WriteString(l.name)
		}
	}
	return service.Quotable(b.String())
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
