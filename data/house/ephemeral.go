package house

import (
	"context"
	"time"
)

// Ephemeral is short-lived data that all servers of a venue share, such as a login
// session. It is not a record: it is not in the log nor in a backup, and it expires.
type Ephemeral struct {
	Kind  string // has the form of a record's id
	ID    string // an id
	Body  string // up to [MaxEphemeral] bytes
	Until time.Time
}

// MaxEphemeral is the largest body of an ephemeral, in bytes.
const MaxEphemeral = 4096

// Check returns nil, or an error of kind [ErrInvalid] that names the rule that e breaks.
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

// Commons is the part of a store that keeps ephemerals. Those that have expired at now
// count as absent.
type Commons interface {
	// Share stores ephemerals and replaces any with the same kind and id.
	Share(ctx context.Context, now time.Time, list ...Ephemeral) error
	// Renew is like Share but skips ephemerals that are absent, so that one that was
	// deleted does not come back.
	Renew(ctx context.Context, now time.Time, list ...Ephemeral) error
	// Agree stores e if there is none of its kind and id, and returns the one that is
	// stored then. Every caller gets the same one.
	Agree(ctx context.Context, now time.Time, e Ephemeral) (Ephemeral, error)
	// Shared returns an ephemeral; found is false if there is none.
	Shared(ctx context.Context, now time.Time, kind, id string) (e Ephemeral, found bool, err error)
	// AllShared returns all ephemerals of a kind, sorted by id.
	AllShared(ctx context.Context, now time.Time, kind string) ([]Ephemeral, error)
	// Unshare deletes ephemerals of a kind. It is no error if one is absent.
	Unshare(ctx context.Context, kind string, ids ...string) error
}
