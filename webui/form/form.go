package form

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
)

// Lines turns the line ends of a form into those of the text form.
func Lines(s string) string {
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s)
}

// What makes a form no use to any page.
var (
	ErrUnreadable = errors.New("form: it cannot be read")
	ErrTooLong    = errors.New("form: it is too long")
)

// Parse reads the form of a request, whichever way it came.
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

// Link is an address with a query, if it has one.
func Link(path string, v url.Values) string {
	if len(v) == 0 {
		return path
	}
	return path + "?" + v.Encode()
}
