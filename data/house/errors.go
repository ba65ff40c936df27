package house

import (
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
