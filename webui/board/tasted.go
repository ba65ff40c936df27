package board

import (
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"

	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// servedOf says a cover as it is served, for the buttons that tell how it was
// received: the board may show another by the time that somebody knows. It is
// empty if more than one bottle was missing, since nobody can tell then which
// of the substitutes was liked.
func servedOf(slug string, t *outs.Touched, c *cover.Cover) string {
	if len(t.Missing) != 1 {
		return ""
	}
	return url.Values{"spec": {slug}, "missing": {t.Missing[0].ID}, "served": {edit.Format(c.Spec)}}.Encode()
}

// received reads how a cover was received that the board wrote down as served.
func (p *pages) received(served string, reception house.Reception) (marking.Received, error) {
	v, err := url.ParseQuery(served)
	if err != nil {
		return marking.Received{}, fmt.Errorf("%w: what was served is not what the board wrote", form.ErrUnreadable)
	}
	drink, err := p.bar.Read(v.Get("served"))
	if len(flavor.DataFaultsOf(err)) > 0 {
		return marking.Received{}, fmt.Errorf("%w: what was served cannot be read", form.ErrUnreadable)
	}
	return marking.Received{Drink: v.Get("spec"), Missing: v.Get("missing"), Served: &drink, Reception: reception}, err
}

// forgetField is the field of a form that takes back how a cover was received, by the
// mark of what was written down.
const forgetField = "forget"

// forget takes back how a cover was received.
func (p *pages) forget(r *http.Request, mark string) error {
	written, err := part.ReadMark(mark)
	if err != nil {
		return err
	}
	if written.Ref.Kind != house.KindCover {
		return form.ErrUnreadable
	}
	if _, err = service.TakeBack(r.Context(), p.house.Store(), frame.By(r), written); errors.Is(err, house.ErrConflict) || errors.Is(err, house.ErrNotFound) {
		return frame.ErrGone // somebody took it back already
	}
	return err
}

// note tells that it was written down how a cover was received, with the way to take
// it back.
func (p *pages) note(r *http.Request, v *boardView) error {
	switch f := r.PostForm; {
	case f.Has("kept"):
		v.Noted = say.It("board.noted-kept")
	case f.Has("returned"):
		v.Noted = say.It("board.noted-returned")
	case f.Has(forgetField):
		v.Noted = say.It("board.note-undone")
	default:
		return nil
	}
	v.Said = say.It("board.noted-and", "Noted", v.Noted, "Said", v.Said)
	if r.PostForm.Has(forgetField) {
		return nil
	}
	covers, err := house.All[house.ServedCover](r.Context(), p.house.Store())
	if err != nil || len(covers) == 0 {
		return err
	}
	last := slices.MaxFunc(covers, func(a, b house.Kept[house.ServedCover]) int {
		return cmp.Or(a.Item.At.Compare(b.Item.At), cmp.Compare(a.Item.ID, b.Item.ID))
	})
	v.Forget = part.MarkOf(last.Item.Ref(), last.Version)
	return nil
}
