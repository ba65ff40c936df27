package specs

import (
	"context"
	"errors"
	"fmt"
	"net/http"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
)

// changeSpec does what the form of a spec's page asks, and returns the word for
// it. Every form names the version that it was made on.
func (p *pages) changeSpec(r *http.Request, slug string) (string, error) {
	version, err := form.Version(r.PostForm)
	if err != nil || version < 1 {
		return "", fmt.Errorf("%w: version %q", form.ErrUnreadable, r.PostForm.Get("version"))
	}
	ctx, store, ref := r.Context(), p.house.Store(), house.Ref{Kind: house.KindSpec, ID: slug}
	do := r.PostForm.Get("do")
	switch do {
	case "undo":
		_, err = store.Undo(ctx, frame.By(r), ref, version)
	case "right":
		err = p.markRight(r, slug, version)
	case "unright":
		err = p.unmarkRight(r, slug)
	case "note":
		err = p.writeNote(r, slug, version)
	case "remove":
		err = p.removeSpec(r, ref, version)
	default:
		err = fmt.Errorf("%w: nothing is called %q", form.ErrUnreadable, do)
	}
	return do, err
}

// markRight marks the current version of a spec, if that is the one that was
// shown.
func (p *pages) markRight(r *http.Request, slug string, version int64) error {
	ctx, store := r.Context(), p.house.Store()
	spec, err := house.Get[house.Spec](ctx, store, slug)
	if err != nil {
		return err
	}
	if spec.Version != version {
		return &house.Error{Kind: house.ErrConflict, Op: "mark", Key: slug,
			Message: fmt.Sprintf("it is at version %d now, and version %d was on the page; taste what is there, then mark it", spec.Version, version)}
	}
	mark, err := markOf(ctx, store, slug)
	if err != nil {
		return err
	}
	_, err = store.Write(ctx, frame.By(r), house.Put(house.Right{Spec: slug, SpecVersion: version, Note: mark.Item.Note}, mark.Version))
	return err
}

// markOf is the mark of a spec; its version is 0 if there is none.
func markOf(ctx context.Context, store house.Reader, slug string) (house.Kept[house.Right], error) {
	mark, err := house.Get[house.Right](ctx, store, slug)
	if errors.Is(err, house.ErrNotFound) {
		return house.Kept[house.Right]{}, nil
	}
	return mark, err
}

func (p *pages) unmarkRight(r *http.Request, slug string) error {
	mark, err := markOf(r.Context(), p.house.Store(), slug)
	if err != nil || mark.Version == 0 {
		return err // it is not marked, as was wanted
	}
	_, err = p.house.Store().Write(r.Context(), frame.By(r), house.Remove(mark.Item.Ref(), mark.Version))
	return err
}

func (p *pages) writeNote(r *http.Request, slug string, version int64) error {
	ctx, store := r.Context(), p.house.Store()
	spec, err := house.Get[house.Spec](ctx, store, slug)
	if err != nil {
		return err
	}
	spec.Item.Note = form.Lines(r.PostForm.Get("note"))
	_, err = store.Write(ctx, frame.By(r), house.Put(spec.Item, version))
	return err
}

// removeSpec removes a spec and, with it, its mark, in one write.
func (p *pages) removeSpec(r *http.Request, ref house.Ref, version int64) error {
	ctx, store := r.Context(), p.house.Store()
	mark, err := markOf(ctx, store, ref.ID)
	if err != nil {
		return err
	}
	edits := []house.Edit{house.Remove(ref, version)}
	if mark.Version > 0 {
		edits = append(edits, house.Remove(mark.Item.Ref(), mark.Version))
	}
	_, err = store.Write(ctx, frame.By(r), edits...)
	return err
}
