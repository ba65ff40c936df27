// Package desk is the form in which one kind of record of a house is edited, with the history of
// a record, and with what happens when two people change one at once.
package desk

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
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Desk is a kind of record with the form that it is edited in.
type Desk[T house.Item] struct {
	Kind   house.Kind
	Path   string // of its page
	Page   string // its template
	What   string // what one is called
	Anew   string // what a new one is called
	Groups []Group
	Fields []Field[T]                // the name first
	Start  T                         // what a new one starts from
	Alone  bool                      // there is one of the kind: it stands in no list
	Next   func(house.Change) string // address to go to once it is saved; nil for its page
	Sound  func(field string) T
	WithID func(item T, id string) T
	Name   func(T) string
	Well   func(T) bool // it is marked to be poured; nil if nothing is
	Away   func(T) bool // it ran out, which no field says; nil if it cannot

	// Settle does what concerns more than one field: it blames fields, or
	// changes the record, and returns what has to be written with it.
	Settle func(ctx context.Context, f *Form[T]) ([]house.Edit, error)
	// Refuse says why a record must not go, empty if it may.
	Refuse func(ctx context.Context, id string) (string, error)
	// Gone is the address to go to once a record has gone.
	Gone func(house.Change) string
	// Facts is what is worked out of a record, shown beside its form.
	Facts func(ctx context.Context, item T) (any, error)
}

// At is where a desk stands during one request.
type At struct {
	*frame.Frame
	House behind.House
}

// Page is the page of one record.
type Page struct {
	Title, What string
	Path        string
	Name        string
	ID          string
	Version     int64 // that the form is made on, 0 for a new one
	Kept        bool  // there is such a record
	Gone        bool  // there was
	Alone       bool
	Groups      []Group
	Faults      []*Box // those with one
	Trouble     *Trouble
	Said        string
	Same        bool  // it was sent as it stands
	Also        *Link // another record that changed with it
	Facts       any
	Changes     []Change
	Earlier     int // changes that are not shown
	Last        int64
	Undo        string // what undoing the last change does; empty if there is none
	Categories  []string
}

// Trouble says why nothing was written.
type Trouble struct {
	Title, Text string
	Link        *Link
}

// Link leads to another record.
type Link struct {
	Name, Address string
	Stays         bool // it changed only so that it stays the one that is poured
}

// Serve shows a record, or does what its form asks for. What was typed comes
// back with whatever is wrong.
func (d *Desk[T]) Serve(at At, w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	id := r.Form.Get("id")
	if r.Method != http.MethodPost {
		return d.Show(at, w, r, id)
	}
	version, err := form.Version(r.PostForm)
	if err != nil {
		return err
	}
	switch do := r.PostForm.Get("do"); {
	case frame.IsFragment(r), do == "try":
		return d.try(at, w, r, id, version)
	case !access.May(r.Context(), access.Lead):
		return d.notTheirs(at, w, r, id, version)
	case do == "remove":
		return d.remove(at, w, r, id, version)
	}
	return d.Save(at, w, r, id, version)
}

// Show is the page of a record as it stands, or of a new one.
func (d *Desk[T]) Show(at At, w http.ResponseWriter, r *http.Request, id string) error {
	if id == "" {
		return d.write(at, w, r, http.StatusOK, d.Fill(d.Start), &Page{})
	}
	history, err := at.History(r.Context(), house.Ref{Kind: d.Kind, ID: id})
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	v := &Page{ID: id, Version: last.Version, Kept: true}
	item, kept := last.Item.(T)
	switch {
	case kept:
	case d.Alone: // without a record it is as it was at the start
		v.Kept, v.Version, item = false, 0, d.Start
	default:
		v.Kept, v.Gone, v.Version = false, true, 0
		item, _ = history[max(len(history)-2, 0)].Item.(T)
	}
	switch {
	case r.Form.Get("done") == strconv.FormatInt(last.Version, 10):
		v.Said, v.Also = d.said(history), d.also(at, r)
	case r.Form.Has("same"):
		v.Same = true
	}
	status := http.StatusOK
	if v.Gone {
		status = http.StatusGone
	}
	return d.write(at, w, r, status, d.Fill(item), v)
}

// also is a record that was changed with this one.
func (d *Desk[T]) also(at At, r *http.Request) *Link {
	id := r.Form.Get("also")
	other, err := house.Get[T](r.Context(), at.House.Store(), id)
	if err != nil {
		return nil // it has gone since, or never was
	}
	return &Link{d.Name(other.Item), d.address(id), d.Well != nil && d.Well(other.Item)}
}

func (d *Desk[T]) address(id string) string {
	return d.Path + "?" + url.Values{"id": {id}}.Encode()
}

// History is every change of a record, at least one.
func (at At) History(ctx context.Context, ref house.Ref) ([]house.Change, error) {
	history, err := at.House.Store().History(ctx, ref)
	if errors.Is(err, house.ErrNotFound) {
		return nil, frame.ErrNotFound
	}
	return history, err
}

// notTheirs says that only a lead may change this, with all that was typed.
func (d *Desk[T]) notTheirs(at At, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	t := frame.TroubleOf(frame.ErrNotTheirs)
	return d.write(at, w, r, t.Status, d.Read(r.PostForm), &Page{ID: id, Version: version, Kept: id != "",
		Trouble: &Trouble{Title: t.Title, Text: say.It("desk.typed-still-here", "Trouble", t.Text)}})
}

// try works out what a record would be, and writes nothing. A script gets what
// was worked out alone.
func (d *Desk[T]) try(at At, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	f := d.Read(r.PostForm)
	f.Item = d.WithID(f.Item, id)
	if _, err := d.Settle(r.Context(), f); err != nil {
		return err
	}
	if frame.IsFragment(r) {
		facts, err := d.Facts(r.Context(), f.Item)
		if err != nil {
			return err
		}
		return at.Write(w, r, http.StatusOK, d.Page, "facts", facts)
	}
	status := http.StatusOK
	if !f.Sound() {
		status = http.StatusUnprocessableEntity
	}
	return d.write(at, w, r, status, f, &Page{ID: id, Version: version, Kept: id != ""})
}

// Save writes what was typed.
func (d *Desk[T]) Save(at At, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	ctx := r.Context()
	f := d.Read(r.PostForm)
	v := &Page{ID: id, Version: version, Kept: id != ""}
	to := id
	if to == "" {
		to = house.IDOf(d.Kind, d.Name(f.Item))
	}
	f.Item = d.WithID(f.Item, to)
	to = f.Item.Ref().ID
	more, err := d.Settle(ctx, f)
	if err != nil {
		return err
	}
	if f.Sound() {
		if err := house.Check(f.Item); err != nil {
			f.Blame(err, "name")
		}
	}
	if !f.Sound() {
		return d.write(at, w, r, http.StatusUnprocessableEntity, f, v)
	}
	if version > 0 && len(more) == 0 && d.Next == nil && d.stands(ctx, at, f.Item, version) {
		http.Redirect(w, r, d.address(to)+"&same=yes#said", http.StatusSeeOther)
		return nil
	}
	done, err := at.House.Store().Write(ctx, frame.By(r), append([]house.Edit{house.Put(f.Item, version)}, more...)...)
	switch {
	case errors.Is(err, house.ErrConflict):
		return d.clash(at, w, r, f, v, to)
	case err != nil:
		return d.refused(at, w, r, f, v, err)
	}
	if d.Next != nil {
		http.Redirect(w, r, d.Next(done[0]), http.StatusSeeOther)
		return nil
	}
	query := url.Values{"id": {to}, "done": {strconv.FormatInt(done[0].Version, 10)}}
	for _, c := range done[1:] {
		query.Set("also", c.Ref.ID)
	}
	http.Redirect(w, r, d.Path+"?"+query.Encode()+"#said", http.StatusSeeOther)
	return nil
}

// stands reports whether a record is what the house holds already.
func (d *Desk[T]) stands(ctx context.Context, at At, item T, version int64) bool {
	now, err := at.House.Store().Get(ctx, item.Ref())
	if err != nil || now.Version != version {
		return false // the write says what is the matter
	}
	a, errA := house.Encode(now.Item)
	b, errB := house.Encode(item)
	return errA == nil && errB == nil && bytes.Equal(a, b)
}

// remove takes a record out of the house.
func (d *Desk[T]) remove(at At, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	f := d.Read(r.PostForm)
	v := &Page{ID: id, Version: version, Kept: true}
	why, err := d.Refuse(r.Context(), id)
	if err != nil {
		return err
	}
	if why != "" {
		v.Trouble = &Trouble{Title: say.It("desk.cannot-go-yet"), Text: why}
		return d.write(at, w, r, http.StatusUnprocessableEntity, f, v)
	}
	done, err := at.House.Store().Write(r.Context(), frame.By(r), house.Remove(house.Ref{Kind: d.Kind, ID: id}, version))
	switch {
	case errors.Is(err, house.ErrConflict), errors.Is(err, house.ErrNotFound):
		return d.clash(at, w, r, f, v, id)
	case err != nil:
		return d.refused(at, w, r, f, v, err)
	}
	http.Redirect(w, r, d.Gone(done[0]), http.StatusSeeOther)
	return nil
}

// refused says that the store did not take a write, with all that was typed.
func (d *Desk[T]) refused(at At, w http.ResponseWriter, r *http.Request, f *Form[T], v *Page, err error) error {
	status := http.StatusServiceUnavailable
	var own *house.Error
	switch {
	case !errors.As(err, &own):
		return err
	case errors.Is(err, house.ErrInvalid):
		status = http.StatusUnprocessableEntity
	default:
		at.Log.ErrorContext(r.Context(), "stock not written", "path", r.URL.Path, "err", err)
	}
	v.Trouble = &Trouble{Title: say.It("desk.nothing-written"), Text: say.It("desk.typed-still-here", "Trouble", words.Sentence(own.Message))}
	return d.write(at, w, r, status, f, v)
}

// write completes the page and sends it.
func (d *Desk[T]) write(at At, w http.ResponseWriter, r *http.Request, status int, f *Form[T], v *Page) error {
	v.What, v.Path, v.Groups, v.Alone = d.What, d.Path, f.Groups, d.Alone
	for _, b := range f.boxes {
		if b.Fault != "" {
			v.Faults = append(v.Faults, b)
		}
	}
	v.Title = d.Anew
	if v.ID != "" {
		if err := d.past(at, r, v); err != nil {
			return err
		}
	}
	facts, err := d.Facts(r.Context(), f.Item)
	if err != nil {
		return err
	}
	v.Facts = facts
	for _, profile := range at.House.Shelf().Profiles() {
		v.Categories = append(v.Categories, profile.Name)
	}
	slices.Sort(v.Categories)
	return at.Write(w, r, status, d.Page, "layout", v)
}
