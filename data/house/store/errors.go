package store

import (
	"context"
	"errors"
	"fmt"

	"counterpour/data/house"
)

func fail(kind error, op, key, format string, args ...any) *house.Error {
	return &house.Error{Kind: kind, Op: op, Key: key, Message: fmt.Sprintf(format, args...)}
}

// readOnly returns the error of a write to a house that was opened for reading.
func readOnly(key string, newer bool) error {
	if newer {
		return fail(house.ErrNewer, "write", key, "a later version of this program wrote the house, so this one only reads it; nothing was kept: use the later one")
	}
	return fail(house.ErrReadOnly, "write", key, "the house was opened to be read only; nothing was kept")
}

// newer returns the error for a house whose schema this program does not know.
func newer(op, key string, has, knows int) *house.Error {
	return fail(house.ErrNewer, op, key, "it has schema %d, this program knows up to %d; use the program that wrote it", has, knows)
}

// noHouse returns the error for a path or a venue without a house.
func noHouse(key, place string) error {
	return fail(house.ErrNotFound, "open", key, "there is no house in this %s; check how it is written", place)
}

// classifier returns the kind of an engine's error; nil if it is unknown.
type classifier func(error) error

// wrap converts an engine's error to a [house.Error]. It returns our own errors and those
// of a cancelled context unchanged.
func wrap(err error, classify classifier, op, key string) error {
	var own *house.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &own), errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	}
	kind := classify(err)
	if kind == nil {
		kind = house.ErrInternal
	}
	e := &house.Error{Kind: kind, Op: op, Key: key, Message: messageOf(kind, err), Cause: err}
	if kind == house.ErrDamaged {
		e.Places = []string{err.Error()} // the engine's text names the place
	}
	return e
}

// messageOf returns the message for the user.
func messageOf(kind, err error) string {
	if text := refusalOf(err); text != "" {
		return text
	}
	return messages[kind]
}

// messages are the messages for the user, by kind of error.
var messages = map[error]string{
	house.ErrNotFound:    "there is no such file or folder",
	house.ErrInvalid:     "the database refused the write: it breaks a rule; nothing of it was kept",
	house.ErrConflict:    "the record was changed by someone else at the same time; read it again",
	house.ErrBusy:        "another process is using it; close that one, or wait",
	house.ErrDamaged:     "it is damaged; restore a backup, and keep this file",
	house.ErrReadOnly:    "the disk or the file takes no writes; what was kept before is unharmed",
	house.ErrFull:        "there is no room left on the disk; nothing of this write was kept, what was kept before is unharmed",
	house.ErrNewer:       "a later version of this program wrote it; use that version",
	house.ErrUnavailable: "the database server does not answer; whether the last write was kept is not known: read again before repeating it",
	house.ErrClosed:      "the store is closed",
	house.ErrInternal:    "something went wrong inside; the log says more",
}
