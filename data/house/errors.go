package house

import (
	"errors"
	"fmt"
	"strings"
)

// Kinds of errors; test for them with errors.Is. Every error of this package is of one of
// these kinds, except the error of a cancelled context.
var (
	// ErrNotFound: there is no such record, version or file.
	ErrNotFound = errors.New("not found")
	// ErrInvalid: the record breaks a rule of the house.
	ErrInvalid = errors.New("invalid")
	// ErrConflict: the record has changed since it was read, or exists already.
	ErrConflict = errors.New("conflict")
	// ErrBusy: another process has the house open.
	ErrBusy = errors.New("busy")
	// ErrDamaged: the file or the database is corrupt.
	ErrDamaged = errors.New("damaged")
	// ErrReadOnly: the disk or the file cannot be written to.
	ErrReadOnly = errors.New("read-only")
	// ErrFull: the disk is full; nothing of the write was stored.
	ErrFull = errors.New("full")
	// ErrNewer: a later version of this program wrote the house.
	ErrNewer = errors.New("newer")
	// ErrUnavailable: the database server cannot be reached.
	ErrUnavailable = errors.New("unavailable")
	// ErrClosed: the store has been closed.
	ErrClosed = errors.New("closed")
	// ErrInternal: any other error; see its cause.
	ErrInternal = errors.New("internal")
)

// Kinds lists every kind of error.
func Kinds() []error {
	return []error{ErrNotFound, ErrInvalid, ErrConflict, ErrBusy, ErrDamaged, ErrReadOnly, ErrFull,
		ErrNewer, ErrUnavailable, ErrClosed, ErrInternal}
}

// Error is an error of the house. Message is for the user, Cause is for the log.
type Error struct {
	Kind    error  // one of Kinds
	Op      string // the operation: "open", "write" …
	Key     string // its object: a path or a record
	Message string
	Places  []string // places of the damage, for ErrDamaged
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
