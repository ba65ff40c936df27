package house

import (
	"context"
	"fmt"
)

// MaxEdits bounds one write.
const MaxEdits = 100000

func (k *keeper) Write(ctx context.Context, by By, edits ...Edit) (done []Change, err error) {
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

func (k *keeper) Undo(ctx context.Context, by By, ref Ref, version int64) (done Change, err error) {
	if err := by.check(); err != nil {
		return Change{}, err
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
		return Change{}, err
	}
	k.feed.wake()
	return done, nil
}

func checkWrite(by By, edits []Edit) error {
	if err := by.check(); err != nil {
		return err
	}
	if len(edits) == 0 || len(edits) > MaxEdits {
		return fail(ErrInvalid, "write", "", "%d edits; a write makes 1 to %d", len(edits), MaxEdits)
	}
	for _, e := range edits {
		if e.item == nil {
			continue
		}
		item := e.item
		if e.ref.ID == "" && numbered(e.ref.Kind) {
			item = item.withID("x") // the number is not known yet
		}
		if err := Check(item); err != nil {
			return err
		}
	}
	return nil
}

// numbered reports whether records of a kind are given an id when they are
// written without one.
func numbered(kind Kind) bool { return kind == KindCover || kind == KindTraining }

// writing is one transaction.
type writing struct {
	c     conn
	venue string
	by    By
	seq   int64 // of the last change
	links []Ref // that must exist at the end
	done  []Change
}

// begin takes the numbers for n changes. In doing so it holds up every other
// writer of the venue until the end.
func (k *keeper) begin(ctx context.Context, c conn, by By, n int) (*writing, error) {
	w := &writing{c: c, venue: k.venue, by: by}
	found, err := one(ctx, c, []any{&w.seq}, `UPDATE venue SET seq = seq + $1 WHERE name = $2 RETURNING seq`, int64(n), k.venue)
	if err == nil && !found {
		err = fail(ErrDamaged, "write", k.key, "the venue has no row; check the house")
	}
	w.seq -= int64(n)
	return w, err
}

func (w *writing) edit(ctx context.Context, e Edit) error {
	if e.item != nil && e.ref.ID == "" && numbered(e.ref.Kind) {
		e.item = e.item.withID(fmt.Sprintf("%s-%06d", e.ref.Kind, w.seq+1))
		e.ref = e.item.Ref()
	}
	r, found, err := record(ctx, w.c, w.venue, e.ref)
	if err != nil {
		return err
	}
	if err := e.conflict(&r, found); err != nil {
		return err
	}
	action := Changed
	switch {
	case e.item == nil:
		action = Removed
	case !found || r.gone:
		action = Added
	}
	return w.put(ctx, e.ref, e.item, r.version+1, action)
}

// conflict compares the version of an edit with the record as it stands.
func (e Edit) conflict(r *recordRow, found bool) error {
	there := found && !r.gone
	switch {
	case e.item == nil && !there:
		return fail(ErrNotFound, "remove", e.ref.String(), "there is no such record")
	case there && e.version == 0:
		return fail(ErrConflict, "add", e.ref.String(), "there is one already, at version %d; edit that, or choose another id", r.version)
	case there && e.version != r.version:
		return fail(ErrConflict, "edit", e.ref.String(), "it is at version %d, the edit was made on version %d; read it again", r.version, e.version)
	case !there && e.version != 0:
		return fail(ErrConflict, "edit", e.ref.String(), "it is gone, the edit was made on version %d; read it again, or add it anew", e.version)
	}
	return nil
}

func (w *writing) undo(ctx context.Context, ref Ref, version int64) error {
	r, found, err := record(ctx, w.c, w.venue, ref)
	switch {
	case err != nil:
		return err
	case !found:
		return fail(ErrNotFound, "undo", ref.String(), "there never was such a record")
	case r.version != version:
		return fail(ErrConflict, "undo", ref.String(), "its last change is version %d, not %d; read it again", r.version, version)
	}
	var body string
	if _, err := one(ctx, w.c, []any{&body}, `SELECT body FROM change WHERE venue = $1 AND kind = $2 AND id = $3 AND version = $4`,
		w.venue, string(ref.Kind), ref.ID, version-1); err != nil {
		return err
	}
	var item Item // version 1 has nothing before it
	if body != "" {
		if item, err = decode(ref.Kind, []byte(body), false); err != nil {
			return unreadable(ref, err)
		}
	}
	return w.put(ctx, ref, item, version+1, Undone)
}

// put writes the record, its links and the change. A nil item is gone.
func (w *writing) put(ctx context.Context, ref Ref, item Item, version int64, action Action) error {
	w.seq++
	body := ""
	if item != nil {
		b, err := Encode(item)
		if err != nil {
			return &Error{Kind: ErrInvalid, Op: "write", Key: ref.String(), Message: "the record cannot be written: " + err.Error(), Cause: err}
		}
		body = string(b)
	}
	row := changeRow{seq: w.seq, at: stamp(w.by.At), actor: w.by.Actor, ref: ref, version: version, action: action, body: body}
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
	c, err := row.change() // decoded anew, so that it shares nothing with the caller's item
	w.done = append(w.done, c)
	return err
}

func (w *writing) link(ctx context.Context, ref Ref, item Item) error {
	if len(zeroLinks[ref.Kind]) == 0 {
		return nil
	}
	if err := w.c.exec(ctx, `DELETE FROM link WHERE venue = $1 AND kind = $2 AND id = $3`, w.venue, string(ref.Kind), ref.ID); err != nil {
		return err
	}
	if item == nil {
		return nil
	}
	for _, to := range item.links() {
		w.links = append(w.links, to)
		if err := insertLink(ctx, w.c, w.venue, ref, to); err != nil {
			return err
		}
	}
	return nil
}

// zeroLinks tells which kinds point to others, to spare the rest a statement.
var zeroLinks = map[Kind][]Ref{KindCover: Cover{}.links(), KindRight: Right{}.links()}

// finish is the last step before the commit.
func (k *keeper) finish(ctx context.Context, w *writing) error {
	if err := w.checkLinks(ctx); err != nil {
		return err
	}
	return k.db.announce(ctx, w.c, k.venue)
}

// checkLinks finds what the engine would refuse without saying which it is.
func (w *writing) checkLinks(ctx context.Context) error {
	for _, to := range w.links {
		_, found, err := record(ctx, w.c, w.venue, to)
		if err != nil {
			return err
		}
		if !found {
			return fail(ErrInvalid, "write", w.venue, "it points to %s, which there never was", to)
		}
	}
	return nil
}
