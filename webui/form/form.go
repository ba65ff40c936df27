package form

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
)

// Lines converts the line ends of a form to "\n".
func Lines(s string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s)
}

// Errors of a form that no page can use.
var (
	ErrUnreadable = errors.New("form: it cannot be read")
	ErrTooLong    = errors.New("form: it is too long")
)

// Parse parses the form of a request, of either encoding.
func Parse(r *http.Request) error {
	err := r.ParseForm()
	var long *http.MaxBytesError
	switch {
	case errors.As(err, &long):
		return ErrTooLong
	case err != nil:
		return fmt.Errorf("%w: %w", ErrUnreadable, err)
	}
	return nil
}

// Link returns a path with a query, if there is one.
func Link(path string, v url.Values) string {
	if len(v) == 0 {
		return path
	}
	return path + "?" + v.Encode()
}
