package stock

import (
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// labelView is the page on which one label is stated, in the middle of a shift: what it
// names is ticked, and the way leads back to tonight.
type labelView struct {
	Of       string // id of the ingredient
	Category string
	OnRecord string // allergens of the category
	Made     bool   // the house makes it: it has no label
	Bottle   *house.Bottle
	Version  int64
	Contains []form.Box
	May      []form.Box
	None     bool // it names none of them
	Vegan    bool // it says that it is
	By       string
	Fault    string
	Amiss    string // id of the field that the fault is about; empty if it is about none
	Guest    *form.Guest
	Back     string // tonight for the guest
}

// ForGuest is who the page is shown for.
func (v *labelView) ForGuest() *form.Guest { return v.Guest }

// labelPage takes what the label of a bottle says of allergens.
func (p *pages) labelPage(w http.ResponseWriter, r *http.Request) error {
	guest, err := form.ParseGuest(r)
	if err != nil {
		return err
	}
	v, err := p.labelOfIngredient(r, guest)
	if err != nil {
		return err
	}
	status := http.StatusOK
	if r.Method == http.MethodPost {
		if v.Bottle == nil {
			return frame.ErrGone
		}
		changes, err := p.stateLabel(r, v)
		switch {
		case errors.Is(err, house.ErrConflict):
			status, v.Fault = http.StatusConflict, say.It("stock.label-changed-meanwhile")
		case err != nil:
			return err
		case v.Fault != "":
			status = http.StatusUnprocessableEntity
		default:
			http.Redirect(w, r, tonightAfter(&guest, changes), http.StatusSeeOther)
			return nil
		}
	}
	return p.Write(w, r, status, "stock-label", "layout", v)
}

// tonightAfter is the address of tonight for a guest, with what takes a write back.
func tonightAfter(guest *form.Guest, changes []house.Change) string {
	back := url.Values{}
	guest.AddTo(back)
	if undo := part.UndoOf(changes, ""); undo != nil {
		back.Set("undo", undo.Mark)
	}
	return form.Link("/tonight", back)
}

// labelOfIngredient is the label of the bottle that is poured of an ingredient, as it
// stands.
func (p *pages) labelOfIngredient(r *http.Request, guest form.Guest) (*labelView, error) {
	id := r.Form.Get("of")
	ref, known := referTo(p.house.Catalogue(), p.house.Shelf(), id)
	if !known {
		return nil, frame.ErrNotFound
	}
	v := &labelView{Of: id, Category: ref.profile.Name, OnRecord: allergenLine(ref.profile), Guest: &guest, Back: guest.Address("/tonight")}
	made, err := house.All[house.Made](r.Context(), p.house.Store())
	if err != nil {
		return nil, err
	}
	v.Made = slices.ContainsFunc(made, func(m house.Kept[house.Made]) bool { return m.Item.ID == id })
	kept, err := house.All[house.Bottle](r.Context(), p.house.Store())
	if err != nil {
		return nil, err
	}
	if well, there := house.Wells(house.Items(kept))[id]; there && !v.Made {
		v.Bottle = &well
		at := slices.IndexFunc(kept, func(k house.Kept[house.Bottle]) bool { return k.Item.ID == well.ID })
		v.Version = kept[at].Version
		v.fill(well.Label)
	}
	if who, signed := access.PersonOf(r.Context()); signed && v.By == "" {
		v.By = who.Name
	}
	return v, nil
}

// fill ticks what a label says; l may be nil.
func (v *labelView) fill(l *house.Label) {
	v.Contains, v.May = boxesOf(l.Says(flavor.Contains)), boxesOf(l.Says(flavor.MayContain))
	v.None = l != nil && len(l.Contains)+len(l.MayContain) == 0
	v.By, v.Vegan = l.Reader(), l.SaysVegan()
}

// boxesOf is a box for each allergen.
func boxesOf(ticked []flavor.Allergen) []form.Box {
	named := form.Guest{Avoid: ticked}
	return named.Boxes()
}

// stateLabel writes what was ticked, or blames it. That the label names nothing has to be
// said: a form that was sent by mistake must not clear a bottle.
func (p *pages) stateLabel(r *http.Request, v *labelView) ([]house.Change, error) {
	l := &house.Label{Vegan: r.PostForm.Get("vegan") != "", ReadBy: strings.TrimSpace(r.PostForm.Get("by")), ReadAt: time.Now().UTC()}
	var err error
	if l.Contains, err = allergensIn(r.PostForm["contains"]); err != nil {
		return nil, err
	}
	if l.MayContain, err = allergensIn(r.PostForm["may_contain"]); err != nil {
		return nil, err
	}
	none := r.PostForm.Get("none") != ""
	version, err := form.Version(r.PostForm)
	if err != nil {
		return nil, err
	}
	v.fill(l)
	v.None = none
	switch named := len(l.Contains)+len(l.MayContain) > 0; {
	case named && none:
		v.Amiss, v.Fault = "none", say.It("stock.names-none-and-some")
	case !named && !none:
		v.Amiss, v.Fault = "none", say.It("stock.tick-what-it-names")
	case l.ReadBy == "":
		v.Amiss, v.Fault = "by", say.It("stock.say-who-read")
	}
	if v.Fault != "" {
		return nil, nil
	}
	b := *v.Bottle
	b.Label, b.Unread = l, false // what it carries is stated now
	if err := house.Check(b); err != nil {
		v.Fault = words.Sentence(form.Message(err))
		return nil, nil
	}
	return p.house.Store().Write(r.Context(), frame.By(r), house.Put(b, version))
}

// allergensIn reads the allergens of a form.
func allergensIn(sent []string) ([]flavor.Allergen, error) {
	return form.ReadAvoid(url.Values{"avoid": sent})
}
