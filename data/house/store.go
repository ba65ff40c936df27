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

// Action is what a change did to its record.
type Action string

// The actions of the log.
const (
	Added   Action = "added"
	Changed Action = "changed"
	Removed Action = "removed"
	Undone  Action = "undone" // the state before the last change was put back
)

// Change is one line of the audit log.
type Change struct {
	Seq     int64 // 1, 2, 3 … within the venue
	At      time.Time
	Actor   string
	Ref     Ref
	Version int64 // of the record, from 1
	Action  Action
	Item    Item // the record from then on; nil if it is gone
}

// Kept is a record as it stands.
type Kept[T Item] struct {
	Item    T
	Version int64 // to be named by whoever edits it
	Seq     int64 // of its last change
}

// Entry is a record of any kind.
type Entry = Kept[Item]

// Edit is one step of a write.
type Edit struct {
	item    Item // nil to remove
	ref     Ref
	version int64
}

// Item returns what is to be written; nil to remove the record.
func (e Edit) Item() Item { return e.item }

// Ref names the record.
func (e Edit) Ref() Ref { return e.ref }

// Version is that of the record which the edit was made on; 0 for a new one.
func (e Edit) Version() int64 { return e.version }

// Put writes an item over the version that was read; 0 for a new one.
func Put(item Item, version int64) Edit { return Edit{item: item, ref: item.Ref(), version: version} }

// Remove marks a record as gone. Its history stays.
func Remove(ref Ref, version int64) Edit { return Edit{ref: ref, version: version} }

// Reader is the part of a store that changes nothing.
type Reader interface {
	// Get returns a record, or [ErrNotFound] if it is not there or gone.
	Get(ctx context.Context, ref Ref) (Entry, error)
	// List returns the records of some kinds, of every kind if none is named,
	// all from one moment, by kind and id.
	List(ctx context.Context, kinds ...Kind) ([]Entry, error)
	// History returns every change of a record, the first one first.
	History(ctx context.Context, ref Ref) ([]Change, error)
	// Changes returns up to limit changes after a number, in order.
	Changes(ctx context.Context, after int64, limit int) ([]Change, error)
}

// Store keeps one venue. It is safe for concurrent use.
type Store interface {
	Reader
	Commons
	// Write does all edits, in order, or none. When it returns without error
	// they are durable. It fails with [ErrConflict] if a version is not the
	// current one, [ErrInvalid] if an item breaks a rule.
	Write(ctx context.Context, by By, edits ...Edit) ([]Change, error)
	// Undo puts a record back to what it was before its last change, which
	// must be the version named.
	Undo(ctx context.Context, by By, ref Ref, version int64) (Change, error)
	// Subscribe tells of every change from now on, in order, none left out. The
	// channel closes when ctx ends or the store is closed. A slow listener
	// holds nobody up.
	Subscribe(ctx context.Context) (<-chan Change, error)
	// Check reads everything and returns [ErrDamaged] with the places where the
	// store is not as it was written.
	Check(ctx context.Context) error
	// Backup writes a verified copy to a new SQLite file while the store is in
	// use. The file appears under its name only when it is whole.
	Backup(ctx context.Context, path string) error
	// Close waits for what is under way and frees the house for others.
	Close() error
}

// Get returns one record of a known kind: Get[Spec](ctx, store, "halyard-sour").
func Get[T Item](ctx context.Context, r Reader, id string) (Kept[T], error) {
	e, err := r.Get(ctx, Ref{kindOf[T](), id})
	if err != nil {
		return Kept[T]{}, err
	}
	return as[T](e)
}

// All returns every record of a known kind, by id.
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

// Items drops the versions from a list.
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

// Check reports whether a change can be signed so.
func (b By) Check() error {
	err := checks(checkLine("actor", b.Actor, true), checkTime("time", b.At))
	if err != nil {
		return fail(ErrInvalid, "write", strings.TrimSpace(b.Actor), "%s", err)
	}
	return nil
}
