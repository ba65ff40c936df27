package flavor

import (
	"errors"
	"strings"
)

// Kinds of data faults, to be tested with errors.Is. They carry no HTTP numbers.
var (
	// ErrInvalid: what was written cannot be read, or is out of range.
	ErrInvalid = errors.New("invalid")
	// ErrUnknown: a name that nothing answers to.
	ErrUnknown = errors.New("unknown")
)

// Fault is one thing wrong with what a user wrote: where, which word, and how
// to mend it. Message is fit to be read by that user.
type Fault struct {
	Kind     error  // ErrInvalid or ErrUnknown
	Location string // such as "line 3" or "pours[2].unit"
	Value    string // the word that is wrong
	Message  string // what is wrong with it and how to mend it
	Suggest  []string
}

// Error returns the location and the message.
func (f *Fault) Error() string {
	if f.Location == "" {
		return f.Message
	}
	return f.Location + ": " + f.Message
}

// Unwrap returns the kind.
func (f *Fault) Unwrap() error { return f.Kind }

// Faults is every fault found in one reading; it is never empty when returned
// as an error.
type Faults []*Fault

// Error returns the faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults as errors.
func (fs Faults) Unwrap() []error {
	out := make([]error, len(fs))
	for i, f := range fs {
		out[i] = f
	}
	return out
}
