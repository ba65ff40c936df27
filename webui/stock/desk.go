package stock

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"counterpour/data/house"
	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// stockDesk is a kind of record with the form that it is edited in.
type stockDesk[T house.Item] struct {
	kind   house.Kind
	path   string // of its page
	page   string // its template
	what   string // what one is called
	anew   string // what a new one is called
	groups []formGroup
	fields []formField[T]            // the name first
	start  T                         // what a new one starts from
	alone  bool                      // there is one of the kind: it stands in no list
	next   func(house.Change) string // address to go to once it is saved; nil for its page
	sound  func(field string) T
	withID func(item T, id string) T
	name   func(T) string
	well   func(T) bool // it is marked to be poured; nil if nothing is
	away   func(T) bool // it ran out, which no field says; nil if it cannot

	// settle does what concerns more than one field: it blames fields, or
	// changes the record, and returns what has to be written with it.
	settle func(ctx context.Context, f *filledForm[T]) ([]house.Edit, error)
	// refuse says why a record must not go, empty if it may.
	refuse func(ctx context.Context, id string) (string, error)
	// facts is what is worked out of a record, shown beside its form.
	facts func(ctx context.Context, item T) (any, error)
}

// deskPage is the page of one record.
type deskPage struct {
	Title, What string
	Path        string
	Name        string
	ID          string
	Version     int64 // that the form is made on, 0 for a new one
	Kept        bool  // there is such a record
	Gone        bool  // there was
	Alone       bool
	Groups      []formGroup
	Faults      []*formBox // those with one
	Trouble     *deskTrouble
	Said        string
	Same        bool      // it was sent as it stands
	Also        *deskLink // another record that changed with it
	Facts       any
	Changes     []changeView
	Earlier     int // changes that are not shown
	Last        int64
	Undo        string // what undoing the last change does; empty if there is none
	Categories  []string
}

// deskTrouble says why nothing was written.
type deskTrouble struct {
	Title, Text string
	Link        *deskLink
}

// deskLink leads to another record.
type deskLink struct {
	Name, Address string
	Stays         bool // it changed only so that it stays the one that is poured
}

// serve shows a record, or does what its form asks for. What was typed comes
// back with whatever is wrong.
func (d *stockDesk[T]) serve(p *pages, w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	id := r.Form.Get("id")
	if r.Method != http.MethodPost {
		return d.show(p, w, r, id)
	}
	version, err := form.Version(r.PostForm)
	if err != nil {
		return err
	}
	switch do := r.PostForm.Get("do"); {
	case frame.IsFragment(r), do == "try":
		return d.try(p, w, r, id, version)
	case !access.May(r.Context(), access.Lead):
		return d.notTheirs(p, w, r, id, version)
	case do == "remove":
		return d.remove(p, w, r, id, version)
	}
	return d.save(p, w, r, id, version)
}

// show is the page of a record as it stands, or of a new one.
func (d *stockDesk[T]) show(p *pages, w http.ResponseWriter, r *http.Request, id string) error {
	if id == "" {
		return d.write(p, w, r, http.StatusOK, d.fill(d.start), &deskPage{})
	}
	history, err := p.historyOf(r.Context(), house.Ref{Kind: d.kind, ID: id})
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	v := &deskPage{ID: id, Version: last.Version, Kept: true}
	item, kept := last.Item.(T)
	switch {
	case kept:
	case d.alone: // without a record it is as it was at the start
		v.Kept, v.Version, item = false, 0, d.start
	default:
		v.Kept, v.Gone, v.Version = false, true, 0
		item, _ = history[max(len(history)-2, 0)].Item.(T)
	}
	switch {
	case r.Form.Get("done") == strconv.FormatInt(last.Version, 10):
		v.Said, v.Also = d.said(history), d.also(p, r)
	case r.Form.Has("same"):
		v.Same = true
	}
	status := http.StatusOK
	if v.Gone {
		status = http.StatusGone
	}
	return d.write(p, w, r, status, d.fill(item), v)
}

// also is a record that was changed with this one.
func (d *stockDesk[T]) also(p *pages, r *http.Request) *deskLink {
	id := r.Form.Get("also")
	other, err := house.Get[T](r.Context(), p.house.Store(), id)
	if err != nil {
		return nil // it has gone since, or never was
	}
	return &deskLink{d.name(other.Item), d.address(id), d.well != nil && d.well(other.Item)}
}

func (d *stockDesk[T]) address(id string) string {
	return d.path + "?" + url.Values{"id": {id}}.Encode()
}

// historyOf is every change of a record, at least one.
func (p *pages) historyOf(ctx context.Context, ref house.Ref) ([]house.Change, error) {
	history, err := p.house.Store().History(ctx, ref)
	if errors.Is(err, house.ErrNotFound) {
		return nil, frame.ErrNotFound
	}
	return history, err
}

// notTheirs says that only a lead may change this, with all that was typed.
func (d *stockDesk[T]) notTheirs(p *pages, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	t := frame.TroubleOf(frame.ErrNotTheirs)
	return d.write(p, w, r, t.Status, d.read(r.PostForm), &deskPage{ID: id, Version: version, Kept: id != "",
		Trouble: &deskTrouble{Title: t.Title, Text: say.It("stock.typed-still-here", "Trouble", t.Text)}})
}

// try works out what a record would be, and writes nothing. A script gets what
// was worked out alone.
func (d *stockDesk[T]) try(p *pages, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	f := d.read(r.PostForm)
	f.item = d.withID(f.item, id)
	if _, err := d.settle(r.Context(), f); err != nil {
		return err
	}
	if frame.IsFragment(r) {
		facts, err := d.facts(r.Context(), f.item)
		if err != nil {
			return err
		}
		return p.Write(w, r, http.StatusOK, d.page, "facts", facts)
	}
	status := http.StatusOK
	if !f.sound() {
		status = http.StatusUnprocessableEntity
	}
	return d.write(p, w, r, status, f, &deskPage{ID: id, Version: version, Kept: id != ""})
}

// save writes what was typed.
func (d *stockDesk[T]) save(p *pages, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	ctx := r.Context()
	f := d.read(r.PostForm)
	v := &deskPage{ID: id, Version: version, Kept: id != ""}
	to := id
	if to == "" {
		to = house.IDOf(d.kind, d.name(f.item))
	}
	f.item = d.withID(f.item, to)
	to = f.item.Ref().ID
	more, err := d.settle(ctx, f)
	if err != nil {
		return err
	}
	if f.sound() {
		if err := house.Check(f.item); err != nil {
			f.blame(err, "name")
		}
	}
	if !f.sound() {
		return d.write(p, w, r, http.StatusUnprocessableEntity, f, v)
	}
	if version > 0 && len(more) == 0 && d.next == nil && d.stands(ctx, p, f.item, version) {
		http.Redirect(w, r, d.address(to)+"&same=yes#said", http.StatusSeeOther)
		return nil
	}
	done, err := p.house.Store().Write(ctx, frame.By(r), append([]house.Edit{house.Put(f.item, version)}, more...)...)
	switch {
	case errors.Is(err, house.ErrConflict):
		return d.clash(p, w, r, f, v, to)
	case err != nil:
		return d.refused(p, w, r, f, v, err)
	}
	if d.next != nil {
		http.Redirect(w, r, d.next(done[0]), http.StatusSeeOther)
		return nil
	}
	query := url.Values{"id": {to}, "done": {strconv.FormatInt(done[0].Version, 10)}}
	for _, c := range done[1:] {
		query.Set("also", c.Ref.ID)
	}
	http.Redirect(w, r, d.path+"?"+query.Encode()+"#said", http.StatusSeeOther)
	return nil
}

// stands reports whether a record is what the house holds already.
func (d *stockDesk[T]) stands(ctx context.Context, p *pages, item T, version int64) bool {
	now, err := p.house.Store().Get(ctx, item.Ref())
	if err != nil || now.Version != version {
		return false // the write says what is the matter
	}
	a, errA := house.Encode(now.Item)
	b, errB := house.Encode(item)
	return errA == nil && errB == nil && bytes.Equal(a, b)
}

// remove takes a record out of the house.
func (d *stockDesk[T]) remove(p *pages, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	f := d.read(r.PostForm)
	v := &deskPage{ID: id, Version: version, Kept: true}
	why, err := d.refuse(r.Context(), id)
	if err != nil {
		return err
	}
	if why != "" {
		v.Trouble = &deskTrouble{Title: say.It("stock.cannot-go-yet"), Text: why}
		return d.write(p, w, r, http.StatusUnprocessableEntity, f, v)
	}
	done, err := p.house.Store().Write(r.Context(), frame.By(r), house.Remove(house.Ref{Kind: d.kind, ID: id}, version))
	switch {
	case errors.Is(err, house.ErrConflict), errors.Is(err, house.ErrNotFound):
		return d.clash(p, w, r, f, v, id)
	case err != nil:
		return d.refused(p, w, r, f, v, err)
	}
	http.Redirect(w, r, goneAddress(done[0]), http.StatusSeeOther)
	return nil
}

// refused says that the store did not take a write, with all that was typed.
func (d *stockDesk[T]) refused(p *pages, w http.ResponseWriter, r *http.Request, f *filledForm[T], v *deskPage, err error) error {
	status := http.StatusServiceUnavailable
	var own *house.Error
	switch {
	case !errors.As(err, &own):
		return err
	case errors.Is(err, house.ErrInvalid):
		status = http.StatusUnprocessableEntity
	default:
		p.Log.ErrorContext(r.Context(), "stock not written", "path", r.URL.Path, "err", err)
	}
	v.Trouble = &deskTrouble{Title: say.It("stock.nothing-written"), Text: say.It("stock.typed-still-here", "Trouble", words.Sentence(own.Message))}
	return d.write(p, w, r, status, f, v)
}

// write completes the page and sends it.
func (d *stockDesk[T]) write(p *pages, w http.ResponseWriter, r *http.Request, status int, f *filledForm[T], v *deskPage) error {
	v.What, v.Path, v.Groups, v.Alone = d.what, d.path, f.groups, d.alone
	for _, b := range f.boxes {
		if b.Fault != "" {
			v.Faults = append(v.Faults, b)
		}
	}
	v.Title = d.anew
	if v.ID != "" {
		if err := d.past(p, r, v); err != nil {
			return err
		}
	}
	facts, err := d.facts(r.Context(), f.item)
	if err != nil {
		return err
	}
	v.Facts = facts
	for _, profile := range p.house.Shelf().Profiles() {
		v.Categories = append(v.Categories, profile.Name)
	}
	slices.Sort(v.Categories)
	return p.Write(w, r, status, d.page, "layout", v)
}
