// Package specbook is the specs of a house as its records hold them: how a draft is kept
// as one, and how one is opened, changed, marked as right, taken in and removed.
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

// Book is the specs of a house as its records hold them: what it takes to
// open one, to keep a draft as one, and to change or remove it. Every change names
// the version that it was made on, and fails with [house.ErrConflict] if another
// has come since.
type Book struct {
	Store house.Store
	Shelf *house.Shelf
}

// reservedIDs are ids that faces give to something else than a spec.
var reservedIDs = []string{"print", "export", "import"}

// SpecID is the id of a spec that is new, made of its name.
func SpecID(name string) string {
	id := house.IDOf(house.KindSpec, name)
	if slices.Contains(reservedIDs, id) {
		id += "-spec"
	}
	return id
}

// SameSpec reports whether two records of specs hold the same, their ids aside.
func SameSpec(a, b *house.Spec) bool {
	x, y := *a, *b
	x.ID, y.ID = "", ""
	return reflect.DeepEqual(x, y)
}

// Version returns a version of a spec, the latest for 0, and the version that is
// current: 0 if the spec was removed since. It fails with [house.ErrNotFound] if
// there is no such spec or version.
func (c *Book) Version(ctx context.Context, id string, at int64) (spec house.Spec, current int64, err error) {
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

// KeepRequest asks for a draft to be kept as a spec of the house.
type KeepRequest struct {
	Draft   *flavor.Spec // with a name
	From    string       // id of the spec that it was opened from; empty for none
	Version int64        // of that spec, as it was opened
	// Named says that it was given its name to be a spec of its own, whatever it
	// was opened from.
	Named bool
	Over  string // id of the spec to replace, which was seen at version Seen; empty for none
	Seen  int64
}

// KeepAnswer says where a draft is kept, or what stands in the way.
type KeepAnswer struct {
	ID      string // of the spec that the draft is kept as; empty if it is not kept
	Version int64
	Same    bool   // that spec read the same before: nothing was written
	Rival   *Rival // nothing was written
}

// Rival is a spec that keeping a draft would replace.
type Rival struct {
	Is, Would house.Spec // as it is, and as it would be
	Version   int64
	At        time.Time // of its last change
	By        string
	Renamed   bool  // the draft was opened from it, and has another name now
	Opened    int64 // the version that the draft was made on, if another has come since; else 0
}

// id is the id of the spec that a draft would be kept as.
func (r *KeepRequest) id() string {
	if r.Over != "" {
		return r.Over
	}
	return SpecID(r.Draft.Name)
}

// Keep writes a draft as a spec. A spec that nobody meant to replace stands in the
// way: so does one of the same name, and one that the draft was opened from by
// another name. If somebody has changed the spec since it was seen, the error is
// a [house.ErrConflict] and the answer says what is there now, if anything is.
func (c *Book) Keep(ctx context.Context, by house.By, r KeepRequest) (KeepAnswer, error) {
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
	version := int64(0)
	switch {
	case r.Over != "":
		version = r.Seen
	case r.From == id && !r.Named:
		version = r.Version
	case r.From != "" && !r.Named && missing:
		rival, err := c.rival(ctx, r.From, r.Draft)
		if err != nil {
			return KeepAnswer{}, err
		}
		if rival != nil {
			rival.Renamed = true
			return KeepAnswer{Rival: rival}, nil
		}
	case !missing:
		rival, err := c.rival(ctx, id, r.Draft)
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

// rival says what a draft would change in a spec; nil if there is no such spec.
func (c *Book) rival(ctx context.Context, id string, draft *flavor.Spec) (*Rival, error) {
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

// Annotate writes the note of a spec anew.
func (c *Book) Annotate(ctx context.Context, by house.By, id string, version int64, note string) error {
	spec, err := house.Get[house.Spec](ctx, c.Store, id)
	if err != nil {
		return err
	}
	spec.Item.Note = note
	_, err = c.Store.Write(ctx, by, house.Put(spec.Item, version))
	return err
}

// Remove removes a spec and, with it, its mark, in one write.
func (c *Book) Remove(ctx context.Context, by house.By, id string, version int64) error {
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

// Right marks a version of a spec as right for the house, if that is the current
// one: what was tasted is what is marked.
func (c *Book) Right(ctx context.Context, by house.By, id string, version int64) error {
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

// NotRight takes the mark off a spec, and reports whether there was one.
func (c *Book) NotRight(ctx context.Context, by house.By, id string) (there bool, err error) {
	mark, err := c.mark(ctx, id)
	if err != nil || mark.Version == 0 {
		return false, err
	}
	_, err = c.Store.Write(ctx, by, house.Remove(mark.Item.Ref(), mark.Version))
	return true, err
}

// mark is the mark of a spec; its version is 0 if there is none.
func (c *Book) mark(ctx context.Context, id string) (house.Kept[house.Right], error) {
	mark, err := house.Get[house.Right](ctx, c.Store, id)
	if errors.Is(err, house.ErrNotFound) {
		return house.Kept[house.Right]{}, nil
	}
	return mark, err
}
