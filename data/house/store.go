package house

import (
	"context"
	"strings"
	"time"
)

// By says who makes a change and when.
type By struct {
	Actor string
	At    time.Time
}

// Action is the kind of a change.
type Action string

// Actions in the log.
const (
	Added   Action = "added"
	Changed Action = "changed"
	Removed Action = "removed"
	Undone  Action = "undone" // the state before the last change was restored
)

// Change is one entry of the audit log.
type Change struct {
	Seq     int64 // sequence number: 1, 2, 3 … within the venue
	At      time.Time
	Actor   string
	Ref     Ref
	Version int64 // of the record, from 1
	Action  Action
	Item    Item // the record after the change; nil if it was removed
}

// Kept is a stored record.
type Kept[T Item] struct {
	Item    T
	Version int64 // must be stated by an edit of the record
	Seq     int64 // of its last change
}

// Entry is a stored record of any kind.
type Entry = Kept[Item]

// Edit is one change within a write.
type Edit struct {
	item    Item // nil to remove the record
	ref     Ref
	version int64
}

// Item returns the new content; nil to remove the record.
func (e Edit) Item() Item { return e.item }

// Ref returns the record that is edited.
func (e Edit) Ref() Ref { return e.ref }

// Version returns the version that the edit is based on; 0 for a new record.
func (e Edit) Version() int64 { return e.version }

// Put replaces the version that was read by an item; version 0 adds a new record.
func Put(item Item, version int64) Edit { return Edit{item: item, ref: item.Ref(), version: version} }

// Remove removes a record. Its history stays.
func Remove(ref Ref, version int64) Edit { return Edit{ref: ref, version: version} }

// Reader reads a store.
type Reader interface {
	// Get returns a record. It fails with [ErrNotFound] if there is none or it was
	// removed.
	Get(ctx context.Context, ref Ref) (Entry, error)
	// List returns the records of some kinds, or of all kinds if none is given, in one
	// consistent read, sorted by kind and id.
	List(ctx context.Context, kinds ...Kind) ([]Entry, error)
	// History returns every change of a record, the oldest first.
	History(ctx context.Context, ref Ref) ([]Change, error)
	// Removed returns the removal of each record of a kind that was removed and is not
	// back, the latest first.
	Removed(ctx context.Context, kind Kind) ([]Change, error)
	// Changes returns up to limit changes with a sequence number above after, in order.
	Changes(ctx context.Context, after int64, limit int) ([]Change, error)
}

// Store stores one venue. It is safe for concurrent use.
type Store interface {
	Reader
	Commons
	// Write applies all edits in order, in one transaction. They are durable when it
	// returns without error. It fails with [ErrConflict] if a version is not the current
	// one, and with [ErrInvalid] if an item breaks a rule.
	Write(ctx context.Context, by By, edits ...Edit) ([]Change, error)
	// Undo restores a record to its state before its last change, which must have the
	// given version.
	Undo(ctx context.Context, by By, ref Ref, version int64) (Change, error)
	// Subscribe returns a channel of all later changes, in order and without gaps. It
	// closes when ctx ends or the store is closed. A slow receiver does not block others.
	Subscribe(ctx context.Context) (<-chan Change, error)
	// Check reads everything and returns [ErrDamaged] with the places that are corrupt.
	Check(ctx context.Context) error
	// Backup writes a verified copy to a new SQLite file; the store stays in use. The
	// file appears under its name only when it is complete.
	Backup(ctx context.Context, path string) error
	// Close waits for operations in progress and releases the house.
	Close() error
}

// Get returns a record of a given type: Get[Spec](ctx, store, "halyard-sour").
func Get[T Item](ctx context.Context, r Reader, id string) (Kept[T], error) {
	e, err := r.Get(ctx, Ref{kindOf[T](), id})
	if err != nil {
		return Kept[T]{}, err
	}
	return as[T](e)
}

// All returns every record of a type, sorted by id.
func All[T Item](ctx context.Context, r Reader) ([]Kept[T], error) {
	entries, err := r.List(ctx, kindOf[T]())
	if err != nil {
		return nil, err
	}
	out := make([]Kept[T], 0, len(entries))
	for _, e := range entries {
		k, err := as[T](e)
		if err != nil {
			return nil, err
		}
		out = append(out, k)
	}
	return out, nil
}

// Items returns the items without their versions.
func Items[T Item](kept []Kept[T]) []T {
	out := make([]T, len(kept))
	for i := range kept {
		out[i] = kept[i].Item
	}
	return out
}

func kindOf[T Item]() Kind {
	var zero T
	return zero.Ref().Kind
}

func as[T Item](e Entry) (Kept[T], error) {
	v, ok := e.Item.(T)
	if !ok {
		return Kept[T]{}, fail(ErrInternal, "read", e.Item.Ref().String(), "is not of the kind it is kept under")
	}
	return Kept[T]{v, e.Version, e.Seq}, nil
}

// Check returns an error unless By can sign a change.
func (b By) Check() error {
	err := checks(checkLine("actor", b.Actor, true), checkTime("time", b.At))
	if err != nil {
		return fail(ErrInvalid, "write", strings.TrimSpace(b.Actor), "%s", err)
	}
	return nil
}
