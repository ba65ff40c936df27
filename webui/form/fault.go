package form

import (
	"errors"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/say"
)

// Message returns what is wrong and how to mend it, without the field, which the form
// shows. The line within a field is named.
func Message(err error) string {
	var own *house.Error
	if errors.As(err, &own) {
		return own.Message
	}
	var out []string
	for _, f := range flavor.DataFaultsOf(err) {
		message := f.Message
		if n := f.Place().Line; n > 0 {
			message = say.It("form.line-fault", "Line", n, "Trouble", message)
		}
		out = append(out, message)
	}
	if len(out) > 0 {
		return strings.Join(out, "; ")
	}
	return err.Error()
}

// spoken is an error that says one of the pages' sentences, and is of a kind.
type spoken struct {
	kind error // nil for none
	said string
}

func (e *spoken) Error() string { return e.said }

func (e *spoken) Unwrap() error { return e.kind }

// Said returns the sentence of the pages that an error says; "" if it says none.
func Said(err error) string {
	var e *spoken
	if errors.As(err, &e) {
		return e.said
	}
	return ""
}

// Missing returns the fault of an incomplete answer.
func Missing(where, message string) error {
	return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: where, Message: strings.TrimSpace(message)}
}
