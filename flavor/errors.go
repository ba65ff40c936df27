package flavor

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Kinds of data faults, to be tested with errors.Is. They carry no HTTP numbers.
var (
	// ErrInvalid: what was written cannot be read, or is out of range.
	ErrInvalid = errors.New("invalid")
	// ErrUnknown: a name that nothing answers to.
	ErrUnknown = errors.New("unknown")
)

// DataFault is one thing wrong with what a user wrote: where, which word, and how
// to mend it. Message is fit to be read by that user; whoever routes a fault
// reads the other fields and [DataFault.Place].
type DataFault struct {
	Kind     error   // ErrInvalid or ErrUnknown
	Location string  // such as "line 3" or "pours[2].unit"
	Field    string  // what is wrong, such as "unit", where Location does not say
	Value    string  // the word that is wrong
	Bounds   *Bounds // what Value may be, where that is a range; else nil
	Message  string  // what is wrong with it and how to mend it
	Suggest  []string
}

// Bounds is a range that a number must lie in, both ends included.
type Bounds struct{ Least, Most float64 }

// Invalid returns a fault of kind [ErrInvalid]; value is printed as it reads.
func Invalid(location string, value any, format string, args ...any) *DataFault {
	return &DataFault{Kind: ErrInvalid, Location: location, Value: fmt.Sprint(value), Message: fmt.Sprintf(format, args...)}
}

// OutOfRange returns a fault of kind [ErrInvalid] for a number that must lie
// between least and most; remedy says what to write, such as "ask for 1 to 8".
func OutOfRange[T int | float64](location string, value, least, most T, remedy string) *DataFault {
	f := Invalid(location, value, "%v is out of range; %s", value, remedy)
	f.Bounds = &Bounds{float64(least), float64(most)}
	return f
}

// Unknown returns a fault of kind [ErrUnknown], with the names that come near.
func Unknown(location, value string, suggest []string, format string, args ...any) *DataFault {
	return &DataFault{Kind: ErrUnknown, Location: location, Value: value, Suggest: suggest, Message: fmt.Sprintf(format, args...)}
}

// At returns the location of an entry of a list, such as "pours[2]".
func At(list string, index int) string { return fmt.Sprintf("%s[%d]", list, index) }

// Place is the location of a fault, taken apart.
type Place struct {
	Line  int    // of a text, from 1; 0 if the location names none
	List  string // what Index counts in, such as "pours" or "from.pours"
	Index int    // from 0; −1 if the location names no entry of a list
	Field string // such as "unit" or "limit"; empty if the whole of the entry is wrong
}

// Place reads the location: "line 3", "pours[2].unit", "to.pours[1]", "limit".
// Of several indices it is the last.
func (f *DataFault) Place() Place {
	p := Place{Index: -1, Field: f.Field}
	rest := f.Location
	if at := strings.LastIndex(rest, "line "); at >= 0 {
		if n, err := strconv.Atoi(rest[at+len("line "):]); err == nil {
			p.Line = n
			return p
		}
	}
	if open := strings.LastIndexByte(rest, '['); open >= 0 {
		if length := strings.IndexByte(rest[open:], ']'); length > 0 {
			if n, err := strconv.Atoi(rest[open+1 : open+length]); err == nil {
				p.List, p.Index = rest[:open], n
				rest = strings.TrimPrefix(rest[open+length+1:], ".")
			}
		}
	}
	if p.Field == "" {
		p.Field = rest[strings.LastIndexByte(rest, '.')+1:]
	}
	return p
}

// Error returns the location and the message.
func (f *DataFault) Error() string {
	if f.Location == "" {
		return f.Message
	}
	return f.Location + ": " + f.Message
}

// Unwrap returns the kind.
func (f *DataFault) Unwrap() error { return f.Kind }

// DataFaults is every fault found in one reading; it is never empty when returned
// as an error.
type DataFaults []*DataFault

// DataFaultsOf returns the faults that an error holds, none for any other error.
func DataFaultsOf(err error) DataFaults {
	var many DataFaults
	if errors.As(err, &many) {
		return many
	}
	var one *DataFault
	if errors.As(err, &one) {
		return DataFaults{one}
	}
	return nil
}

// Relocated returns the faults of an error as move leaves them, each on a copy: who
// calls knows places that who found them did not. Any other error stays as it is.
func Relocated(err error, move func(*DataFault)) error {
	faults := DataFaultsOf(err)
	if faults == nil {
		return err
	}
	out := make(DataFaults, len(faults))
	for i, f := range faults {
		own := *f
		move(&own)
		out[i] = &own
	}
	return out
}

// Error returns the faults, one a line.
func (fs DataFaults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults as errors.
func (fs DataFaults) Unwrap() []error {
	out := make([]error, len(fs))
	for i, f := range fs {
		out[i] = f
	}
	return out
}
