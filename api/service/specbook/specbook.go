// Package specbook manages the specs of a house in its store: keeping a draft as a spec,
// and opening, changing, importing, removing and marking specs.
package specbook

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
)

// Editor manages the specs of a house. Every change states the version on which it is
// based, and fails with [house.ErrConflict] if the record has changed since (optimistic
// locking).
type Editor struct {
	Store house.Store
	Shelf *house.Shelf
}

// reservedIDs are ids that the addresses of pages and the API use for something else.
var reservedIDs = []string{"print", "export", "import"}

// specID returns the id of a new spec, derived from its name.
func specID(name string) string {
	id := house.IDOf(house.KindSpec, name)
	if slices.Contains(reservedIDs, id) {
		id += "-spec"
	}
	return id
}

// SameSpec reports whether two specs are equal, apart from their ids.
func SameSpec(a, b *house.Spec) bool {
	x, y := *a, *b
	x.ID, y.ID = "", ""
	return reflect.DeepEqual(x, y)
}

// Version returns a version of a spec, or the latest for at = 0. current is the current
// version, 0 if the spec was removed. The error is [house.ErrNotFound] if there is no
// such spec or version.
func (c *Editor) Version(ctx context.Context, id string, at int64) (spec house.Spec, current int64, err error) {
	history, err := c.Store.History(ctx, house.Ref{Kind: house.KindSpec, ID: id})
	if err != nil {
		return house.Spec{}, 0, err
	}
	if last := history[len(history)-1]; last.Item != nil {
		current = last.Version
	}
	for _, change := range slices.Backward(history) {
		spec, there := change.Item.(house.Spec)
		if there && (at <= 0 || change.Version == at) {
			return spec, current, nil
		}
	}
	return house.Spec{}, 0, &house.Error{Kind: house.ErrNotFound, Op: "open", Key: id, Message: fmt.Sprintf("it has no version %d", at)}
}

// KeepRequest asks to store a draft as a spec of the house.
type KeepRequest struct {
	Draft   *flavor.Spec // must have a name
	From    string       // id of the spec that was opened; empty for a new draft
	Version int64        // the version that was opened
	// Named says that the user chose the name for a new spec, whichever spec the draft
	// was opened from.
	Named bool
	Over  string // id of the spec to replace, seen at version Seen; empty for none
	Seen  int64
}

// KeepAnswer says where a draft was stored, or which spec prevented it.
type KeepAnswer struct {
	ID      string // id of the stored spec; empty if nothing was stored
	Version int64
	Same    bool   // the spec was equal already; nothing was written
	Rival   *Rival // if set, nothing was written
}

// Rival is an existing spec that keeping a draft would replace.
type Rival struct {
	Is, Would house.Spec // the spec now, and what it would become
	Version   int64
	At        time.Time // of its last change
	By        string
	Renamed   bool  // the draft was opened from it and renamed
	Opened    int64 // the version on which the draft is based, if the spec has changed since; otherwise 0
}

// id returns the id under which the draft would be stored.
func (r *KeepRequest) id() string {
	if r.Over != "" {
		return r.Over
	}
	return specID(r.Draft.Name)
}

// Keep stores a draft as a spec. It returns a Rival and writes nothing if it would
// replace a spec that the user did not ask to replace: one with the same name, or the one
// that the draft was opened from, if the draft was renamed. If somebody has changed that
// spec since it was seen, the error is [house.ErrConflict] and the answer holds the
// current one, if it still exists.
func (c *Editor) Keep(ctx context.Context, by house.By, r KeepRequest) (KeepAnswer, error) {
	if strings.TrimSpace(r.Draft.Name) == "" {
		return KeepAnswer{}, flavor.Invalid("name", "", "the drink has no name; write one on the first line")
	}
	id := r.id()
	kept, err := house.Get[house.Spec](ctx, c.Store, id)
	missing := errors.Is(err, house.ErrNotFound)
	if err != nil && !missing {
		return KeepAnswer{}, err
	}
	item := house.FromSpec(id, *r.Draft)
	item.Note = kept.Item.Note
	if !missing && SameSpec(&kept.Item, &item) {
		return KeepAnswer{ID: id, Version: kept.Version, Same: true}, nil
	}
	version, rival, err := c.base(ctx, &r, id, missing)
	if err != nil || rival != nil {
		return KeepAnswer{Rival: rival}, err
	}
	changes, err := c.Store.Write(ctx, by, house.Put(item, version))
	if errors.Is(err, house.ErrConflict) || errors.Is(err, house.ErrNotFound) {
		rival, failed := c.rival(ctx, id, r.Draft)
		if rival != nil {
			rival.Opened = max(r.Seen, r.Version)
		}
		if failed != nil {
			err = failed
		}
		return KeepAnswer{Rival: rival}, err
	}
	if err != nil {
		return KeepAnswer{}, err
	}
	return KeepAnswer{ID: id, Version: changes[0].Version}, nil
}

// base returns the version of the spec id that the draft replaces, 0 if it becomes a new
// spec (missing: there is none with that id), or the rival that the user did not ask to replace.
func (c *Editor) base(ctx context.Context, r *KeepRequest, id string, missing bool) (version int64, rival *Rival, err error) {
	switch {
	case r.Over != "":
		return r.Seen, nil, nil
	case r.From == id && !r.Named:
		return r.Version, nil, nil
	case r.From != "" && !r.Named && missing:
		if rival, err = c.rival(ctx, r.From, r.Draft); rival != nil {
			rival.Renamed = true
		}
	case !missing:
		rival, err = c.rival(ctx, id, r.Draft)
	}
	return 0, rival, err
}

// rival compares a draft with an existing spec; nil if there is none.
func (c *Editor) rival(ctx context.Context, id string, draft *flavor.Spec) (*Rival, error) {
	history, err := c.Store.History(ctx, house.Ref{Kind: house.KindSpec, ID: id})
	if errors.Is(err, house.ErrNotFound) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	last := history[len(history)-1]
	is, there := last.Item.(house.Spec)
	if !there {
		return nil, nil
	}
	would := house.FromSpec(id, *draft)
	would.Note = is.Note
	return &Rival{Is: is, Would: would, Version: last.Version, At: last.At, By: last.Actor}, nil
}

// Annotate replaces the note of a spec.
func (c *Editor) Annotate(ctx context.Context, by house.By, id string, version int64, note string) error {
	spec, err := house.Get[house.Spec](ctx, c.Store, id)
	if err != nil {
		return err
	}
	spec.Item.Note = note
	_, err = c.Store.Write(ctx, by, house.Put(spec.Item, version))
	return err
}

// Remove removes a spec and its mark in one transaction.
func (c *Editor) Remove(ctx context.Context, by house.By, id string, version int64) error {
	mark, err := c.mark(ctx, id)
	if err != nil {
		return err
	}
	edits := []house.Edit{house.Remove(house.Ref{Kind: house.KindSpec, ID: id}, version)}
	if mark.Version > 0 {
		edits = append(edits, house.Remove(mark.Item.Ref(), mark.Version))
	}
	_, err = c.Store.Write(ctx, by, edits...)
	return err
}

// Right marks a version of a spec as right for the house. It fails with
// [house.ErrConflict] unless that version is the current one, since the mark is for what
// was tasted.
func (c *Editor) Right(ctx context.Context, by house.By, id string, version int64) error {
	spec, err := house.Get[house.Spec](ctx, c.Store, id)
	if err != nil {
		return err
	}
	if spec.Version != version {
		return &house.Error{Kind: house.ErrConflict, Op: "mark", Key: id,
			Message: fmt.Sprintf("it is now at version %d, and you saw version %d; taste the new one, then mark it", spec.Version, version)}
	}
	mark, err := c.mark(ctx, id)
	if err != nil {
		return err
	}
	_, err = c.Store.Write(ctx, by, house.Put(house.Right{Spec: id, SpecVersion: version, Note: mark.Item.Note}, mark.Version))
	return err
}

// NotRight removes the mark of a spec, and reports whether there was one.
func (c *Editor) NotRight(ctx context.Context, by house.By, id string) (there bool, err error) {
	mark, err := c.mark(ctx, id)
	if err != nil || mark.Version == 0 {
		return false, err
	}
	_, err = c.Store.Write(ctx, by, house.Remove(mark.Item.Ref(), mark.Version))
	return true, err
}

// mark returns the mark of a spec; its version is 0 if there is none.
func (c *Editor) mark(ctx context.Context, id string) (house.Kept[house.Right], error) {
	mark, err := house.Get[house.Right](ctx, c.Store, id)
	if errors.Is(err, house.ErrNotFound) {
		return house.Kept[house.Right]{}, nil
	}
	return mark, err
}
