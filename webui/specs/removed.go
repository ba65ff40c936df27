package specs

import (
	"net/http"
	"time"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// Which specs are shown, if not those of the menu.
const (
	listField   = "list"
	listRemoved = "removed"
)

// removedPage lists the specs that were removed and can be put back.
type removedPage struct {
	Guest *form.Guest
	Specs []removedView
	More  int // how many are not listed
}

// ForGuest is who the pages around it are shown for.
func (v *removedPage) ForGuest() *form.Guest { return v.Guest }

// removedView is one of them.
type removedView struct {
	Name, Page  string
	Version     int64 // of the removal, which putting it back undoes
	When, Stamp string
	Who         string
}

// mostRemoved is how many are listed, the latest first.
const mostRemoved = 100

// removed lists what was removed from the specs.
func (p *pages) removed(w http.ResponseWriter, r *http.Request, who *form.Guest) error {
	store := p.house.Store()
	gone, err := store.Removed(r.Context(), house.KindSpec)
	if err != nil {
		return err
	}
	v := &removedPage{Guest: who, More: max(0, len(gone)-mostRemoved)}
	for _, c := range gone[:len(gone)-v.More] {
		history, err := store.History(r.Context(), c.Ref)
		if err != nil {
			return err
		}
		v.Specs = append(v.Specs, removedView{Name: lastKept(history).Name, Page: part.SpecAddress(c.Ref.ID, who), Version: c.Version,
			When: words.Moment(c.At), Stamp: c.At.UTC().Format(time.RFC3339), Who: c.Actor})
	}
	return p.Write(w, r, http.StatusOK, "specs-removed", "layout", v)
}
