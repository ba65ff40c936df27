package stock

import (
	"net/http"
	"net/url"
	"strconv"

	"counterpour/data/house"
	"counterpour/webui/form"
)

// goneAddress is the list, which offers to put back what has just gone.
func goneAddress(c house.Change) string {
	return "/stock?" + url.Values{"gone": {string(c.Ref.Kind)}, "id": {c.Ref.ID}, "done": {strconv.FormatInt(c.Version, 10)}}.Encode() + "#said"
}

// undoStock puts a bottle, or something house-made, back to what it was before its
// last change.
func (p *pages) undoStock(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	version, err := form.Version(r.PostForm)
	if err != nil {
		return err
	}
	id := r.PostForm.Get("id")
	switch house.Kind(r.PostForm.Get("kind")) {
	case house.KindBottle:
		return p.bottleDesk().Undo(p.desk(), w, r, id, version)
	case house.KindSettings:
		return p.settingsDesk().Undo(p.desk(), w, r, id, version)
	case house.KindMade:
		return p.madeDesk().Undo(p.desk(), w, r, id, version)
	}
	return form.ErrUnreadable
}
