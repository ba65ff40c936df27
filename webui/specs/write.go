package specs

import (
	"fmt"
	"net/http"

	"counterpour/data/house"
	"counterpour/webui/behind"
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
	ctx, by, specs := r.Context(), frame.By(r), behind.SpecsOf(p.house)
	do := r.PostForm.Get("do")
	switch do {
	case "undo":
		_, err = specs.Store.Undo(ctx, by, house.Ref{Kind: house.KindSpec, ID: slug}, version)
	case "right":
		err = specs.Right(ctx, by, slug, version)
	case "unright":
		_, err = specs.NotRight(ctx, by, slug) // one that is not marked is as was wanted
	case "note":
		err = specs.Annotate(ctx, by, slug, version, form.Lines(r.PostForm.Get("note")))
	case "remove":
		err = specs.Remove(ctx, by, slug, version)
	default:
		err = fmt.Errorf("%w: nothing is called %q", form.ErrUnreadable, do)
	}
	return do, err
}
