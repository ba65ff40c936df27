package house

import (
	"context"
	"errors"
	"fmt"
	"strings"
)

// Kinds of failure, to be tested with errors.Is. The set is closed; every error
// of this package but that of a cancelled context is one of them.
var (
	// ErrNotFound: there is no such record, version or file.
	ErrNotFound = errors.New("not found")
	// ErrInvalid: what was to be written breaks a rule of the house.
	ErrInvalid = errors.New("invalid")
	// ErrConflict: the record has changed since it was read, or is there already.
	ErrConflict = errors.New("conflict")
	// ErrBusy: another process holds the house.
	ErrBusy = errors.New("busy")
	// ErrDamaged: the file or the database is not as it was written.
	ErrDamaged = errors.New("damaged")
	// ErrReadOnly: the disk or the file takes no writes.
	ErrReadOnly = errors.New("read-only")
	// ErrFull: the disk has no room; nothing of the write was kept.
	ErrFull = errors.New("full")
	// ErrNewer: a later version of this program wrote the house.
	ErrNewer = errors.New("newer")
	// ErrUnavailable: the database server cannot be reached.
	ErrUnavailable = errors.New("unavailable")
	// ErrClosed: the store has been closed.
	ErrClosed = errors.New("closed")
	// ErrInternal: anything else; the cause says more.
	ErrInternal = errors.New("internal")
)

// Kinds lists every kind of failure.
func Kinds() []error {
	return []error{ErrNotFound, ErrInvalid, ErrConflict, ErrBusy, ErrDamaged, ErrReadOnly, ErrFull,
		ErrNewer, ErrUnavailable, ErrClosed, ErrInternal}
}

// Error is a failure of the house. Message is fit to be read by its user; Cause
// is for the log.
type Error struct {
	Kind    error  // one of Kinds
	Op      string // what was being done: "open", "write" …
	Key     string // on what: a path, or a record
	Message string
	Places  []string // where the damage is, for ErrDamaged
	Cause   error
}

// Error returns the operation, its key and the message, without the cause.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString("house: " + e.Op)
	if e.Key != "" {
		b.WriteString(" " + e.Key)
	}
	b.WriteString(": " + e.Message)
	for _, p := range e.Places {
		b.WriteString("\n  " + p)
	}
	return b.String()
}

// Unwrap returns the kind and the cause.
func (e *Error) Unwrap() []error {
	if e.Cause == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Cause}
}

func fail(kind error, op, key, format string, args ...any) *Error {
	return &Error{Kind: kind, Op: op, Key: key, Message: fmt.Sprintf(format, args...)}
}

// classifier says which kind an engine's error is; nil if it does not know it.
type classifier func(error) error

// wrap turns an engine's error into one of ours. Errors of ours and of a
// cancelled context pass through.
func wrap(err error, classify classifier, op, key string) error {
	var own *Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &own), errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	}
	kind := classify(err)
	if kind == nil {
		kind = ErrInternal
	}
	e := &Error{Kind: kind, Op: op, Key: key, Message: messages[kind], Cause: err}
	if kind == ErrDamaged {
		e.Places = []string{err.Error()} // the engine's word for where
	}
	return e
}

// messages are what a user reads of a kind that an engine reported.
var messages = map[error]string{
	ErrNotFound:    "there is no such file or folder",
	ErrInvalid:     "the database refused the write as breaking a rule; nothing of it was kept",
	ErrConflict:    "the record was changed by someone else at the same time; read it again",
	ErrBusy:        "another process is using it; close that one, or wait",
	ErrDamaged:     "it is damaged; restore a backup, and keep this file",
	ErrReadOnly:    "the disk or the file takes no writes; what was kept before is unharmed",
	ErrFull:        "there is no room left on the disk; nothing of this write was kept, what was kept before is unharmed",
	ErrNewer:       "a later version of this program wrote it; use that version",
	ErrUnavailable: "the database server does not answer; whether the last write was kept is not known: read again before repeating it",
	ErrClosed:      "the store is closed",
	ErrInternal:    "something went wrong inside; the log says more",
}
