package house

import (
	"context"
	"time"
)

// Ephemeral is what all who have a venue open share for a while, such as an open
// session. It is no record: the log does not tell of it, no backup holds it, and it
// is gone at its time.
type Ephemeral struct {
	Kind  string // an id, as of a record
	ID    string // an id
	Body  string // up to [MaxEphemeral] bytes
	Until time.Time
}

// MaxEphemeral is the most bytes of an ephemeral.
const MaxEphemeral = 4096

// Check reports which rule an ephemeral breaks, as an error of kind [ErrInvalid].
func (e *Ephemeral) Check() error {
	err := checks(CheckID(e.Kind), CheckID(e.ID), checkTime("until", e.Until))
	switch {
	case err != nil:
		return fail(ErrInvalid, "share", e.Kind, "%s", err)
	case len(e.Body) > MaxEphemeral:
		return fail(ErrInvalid, "share", e.Kind, "it has %d bytes; %d are allowed", len(e.Body), MaxEphemeral)
	}
	return nil
}

// Commons is the part of a store that keeps ephemerals. What is over at now counts
// as not there.
type Commons interface {
	// Share keeps ephemerals, each in place of the one of its kind and id.
	Share(ctx context.Context, now time.Time, list ...Ephemeral) error
	// Renew does what Share does for those that are there, and leaves out the
	// others: what somebody has dropped is not brought back.
	Renew(ctx context.Context, now time.Time, list ...Ephemeral) error
	// Agree keeps e unless there is one of its kind and id, and returns the one
	// that is there from then on: the same to all who ask.
	Agree(ctx context.Context, now time.Time, e Ephemeral) (Ephemeral, error)
	// Shared returns one of a kind; found is false if there is none.
	Shared(ctx context.Context, now time.Time, kind, id string) (e Ephemeral, found bool, err error)
	// AllShared returns all of a kind, by id.
	AllShared(ctx context.Context, now time.Time, kind string) ([]Ephemeral, error)
	// Unshare drops some of a kind before their time; one that is not there is no
	// error.
	Unshare(ctx context.Context, kind string, ids ...string) error
}
