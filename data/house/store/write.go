package store

import (
	"context"
	"fmt"

	"counterpour/data/house"
)

// MaxEdits is the largest number of edits in one write.
const MaxEdits = 100000

func (k *keeper) Write(ctx context.Context, by house.By, edits ...house.Edit) (done []house.Change, err error) {
	if err := checkWrite(by, edits); err != nil {
		return nil, err
	}
	err = k.during("write", k.key, func() error {
		return k.db.write(ctx, func(c conn) error {
			w, err := k.begin(ctx, c, by, len(edits))
			if err != nil {
				return err
			}
			for _, e := range edits {
				if err := w.edit(ctx, e); err != nil {
					return err
				}
			}
			done = w.done
			return k.finish(ctx, w)
		})
	})
	if err != nil {
		return nil, err
	}
	k.feed.wake()
	return done, nil
}

func (k *keeper) Undo(ctx context.Context, by house.By, ref house.Ref, version int64) (done house.Change, err error) {
	if err := by.Check(); err != nil {
		return house.Change{}, err
	}
	err = k.during("undo", ref.String(), func() error {
		return k.db.write(ctx, func(c conn) error {
			w, err := k.begin(ctx, c, by, 1)
			if err != nil {
				return err
			}
			if err := w.undo(ctx, ref, version); err != nil {
				return err
			}
			done = w.done[0]
			return k.finish(ctx, w)
		})
	})
	if err != nil {
		return house.Change{}, err
	}
	k.feed.wake()
	return done, nil
}

func checkWrite(by house.By, edits []house.Edit) error {
	if err := by.Check(); err != nil {
		return err
	}
	if len(edits) == 0 || len(edits) > MaxEdits {
		return fail(house.ErrInvalid, "write", "", "%d edits; a write makes 1 to %d", len(edits), MaxEdits)
	}
	for _, e := range edits {
		if e.Item() == nil {
			continue
		}
		item := e.Item()
		if e.Ref().ID == "" && house.Numbered(e.Ref().Kind) {
			item = house.WithID(item, "x") // a placeholder: the number is not known yet
		}
		if err := house.Check(item); err != nil {
			return err
		}
	}
	return nil
}

// writing is a transaction in progress.
type writing struct {
	c     conn
	venue string
	by    house.By
	seq   int64       // sequence number of the last change
	links []house.Ref // must exist when the transaction ends
	done  []house.Change
}

// begin reserves n sequence numbers. It locks the venue's row, so all other writers of
// the venue wait until the transaction ends.
func (k *keeper) begin(ctx context.Context, c conn, by house.By, n int) (*writing, error) {
	w := &writing{c: c, venue: k.venue, by: by}
	found, err := one(ctx, c, []any{&w.seq}, `UPDATE venue SET seq = seq + $1 WHERE name = $2 RETURNING seq`, int64(n), k.venue)
	if err == nil && !found {
		err = fail(house.ErrDamaged, "write", k.key, "the venue has no row; check the house")
	}
	w.seq -= int64(n)
	return w, err
}

func (w *writing) edit(ctx context.Context, e house.Edit) error {
	if item := e.Item(); item != nil && e.Ref().ID == "" && house.Numbered(e.Ref().Kind) {
		e = house.Put(house.WithID(item, fmt.Sprintf("%s-%06d", e.Ref().Kind, w.seq+1)), e.Version())
	}
	r, found, err := record(ctx, w.c, w.venue, e.Ref())
	if err != nil {
		return err
	}
	if err := conflict(e, &r, found); err != nil {
		return err
	}
	action := house.Changed
	switch {
	case e.Item() == nil:
		action = house.Removed
	case !found || r.gone:
		action = house.Added
	}
	return w.put(ctx, e.Ref(), e.Item(), r.body, r.version+1, action)
}

// conflict compares the version of an edit with the current record.
func conflict(e house.Edit, r *recordRow, found bool) error {
	there := found && !r.gone
	switch {
	case e.Item() == nil && !there:
		return fail(house.ErrNotFound, "remove", e.Ref().String(), "there is no such record")
	case there && e.Version() == 0:
		return fail(house.ErrConflict, "add", e.Ref().String(), "there is one already, at version %d; edit that, or choose another id", r.version)
	case there && e.Version() != r.version:
		return fail(house.ErrConflict, "edit", e.Ref().String(), "it is at version %d, the edit was made on version %d; read it again", r.version, e.Version())
	case !there && e.Version() != 0:
		return fail(house.ErrConflict, "edit", e.Ref().String(), "it is gone, the edit was made on version %d; read it again, or add it again", e.Version())
	}
	return nil
}

func (w *writing) undo(ctx context.Context, ref house.Ref, version int64) error {
	r, found, err := record(ctx, w.c, w.venue, ref)
	switch {
	case err != nil:
		return err
	case !found:
		return fail(house.ErrNotFound, "undo", ref.String(), "there never was such a record")
	case r.version != version:
		return fail(house.ErrConflict, "undo", ref.String(), "its last change is version %d, not %d; read it again", r.version, version)
	}
	if ofLater(ref.Kind) {
		return fail(house.ErrNewer, "undo", ref.String(), "a later version of this program wrote it; use that version")
	}
	var body string
	if _, err := one(ctx, w.c, []any{&body}, `SELECT body FROM change WHERE venue = $1 AND kind = $2 AND id = $3 AND version = $4`,
		w.venue, string(ref.Kind), ref.ID, version-1); err != nil {
		return err
	}
	var item house.Item // nothing before version 1
	if body != "" {
		if item, err = house.DecodeKept(ref.Kind, []byte(body)); err != nil {
			return unreadable(ref, err)
		}
	}
	return w.put(ctx, ref, item, body, version+1, house.Undone)
}

// put writes the record, its links and the change. A nil item removes the record. Fields
// that only a later version of the program knows are kept.
func (w *writing) put(ctx context.Context, ref house.Ref, item house.Item, before string, version int64, action house.Action) error {
	w.seq++
	body := ""
	if item != nil {
		b, err := house.EncodeOver(item, []byte(before))
		if err != nil {
			return &house.Error{Kind: house.ErrInvalid, Op: "write", Key: ref.String(), Message: "the record cannot be written: " + err.Error(), Cause: err}
		}
		body = string(b)
	}
	row := changeRow{seq: w.seq, at: dated(w.by.At), actor: w.by.Actor, ref: ref, version: version, action: action, body: body}
	row.seal = row.sealed()
	if err := putRecord(ctx, w.c, w.venue, &recordRow{ref, version, w.seq, item == nil, body}); err != nil {
		return err
	}
	if err := insertChange(ctx, w.c, w.venue, &row); err != nil {
		return err
	}
	if err := w.link(ctx, ref, item); err != nil {
		return err
	}
	c, err := row.change() // decoded again, so that it shares no memory with the caller's item
	w.done = append(w.done, c)
	return err
}

func (w *writing) link(ctx context.Context, ref house.Ref, item house.Item) error {
	if len(zeroLinks[ref.Kind]) == 0 {
		return nil
	}
	if err := w.c.exec(ctx, `DELETE FROM link WHERE venue = $1 AND kind = $2 AND id = $3`, w.venue, string(ref.Kind), ref.ID); err != nil {
		return err
	}
	if item == nil {
		return nil
	}
	for _, to := range house.Links(item) {
		w.links = append(w.links, to)
		if err := insertLink(ctx, w.c, w.venue, ref, to); err != nil {
			return err
		}
	}
	return nil
}

// zeroLinks holds the kinds that refer to other records, to save a statement for the
// rest.
var zeroLinks = map[house.Kind][]house.Ref{house.KindCover: house.Links(house.ServedCover{}), house.KindRight: house.Links(house.Right{}), house.KindPrice: house.Links(house.MenuPrice{})}

// finish does the last steps before the commit.
func (k *keeper) finish(ctx context.Context, w *writing) error {
	if err := w.checkLinks(ctx); err != nil {
		return err
	}
	return k.db.announce(ctx, w.c, k.venue)
}

// checkLinks finds references that the engine would refuse without naming them.
func (w *writing) checkLinks(ctx context.Context) error {
	for _, to := range w.links {
		_, found, err := record(ctx, w.c, w.venue, to)
		if err != nil {
			return err
		}
		if !found {
			return fail(house.ErrInvalid, "write", w.venue, "it points to %s, which does not exist", to)
		}
	}
	return nil
}
