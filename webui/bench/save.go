package bench

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/webui/access"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// saveForm is what the bench sends to have a draft kept.
type saveForm struct {
	Do      string // "save" or "replace"; empty if nothing is to be kept
	Spec    string // the id of the spec that the draft was opened from; empty for none
	Version int64  // of that spec, as it was opened
	Called  string // a name to keep it under, in place of the draft's own
	Over    string // the id of the spec to replace
	Seen    int64  // the version of it that was shown
}

func readSaveForm(form url.Values) saveForm {
	f := saveForm{Do: form.Get("save"), Spec: form.Get("spec"), Called: strings.Join(strings.Fields(form.Get("called")), " "), Over: form.Get("over")}
	// What is no number is no version: the store then refuses the write.
	f.Version, _ = strconv.ParseInt(form.Get("version"), 10, 64)
	f.Seen, _ = strconv.ParseInt(form.Get("seen"), 10, 64)
	if f.Do == "replace" {
		f.Called = "" // it goes with the other button
	}
	return f
}

// saveView is where the keeping of a draft stands.
type saveView struct {
	Spec    string // the draft was opened from this spec, or kept as it
	Version int64
	Name    string // of that spec

	Saved   bool
	Same    bool // it was kept before and reads the same
	Unnamed bool
	Trouble string     // why it was not kept
	Taken   *takenView // another spec stands in the way
	Called  string     // the name that was typed
}

// Asks reports whether there is more to say than what it was opened from.
func (v *saveView) Asks() bool {
	return v.Saved || v.Same || v.Unnamed || v.Trouble != "" || v.Taken != nil
}

// Next is the version that replacing would make.
func (v *takenView) Next() int64 { return v.Version + 1 }

// takenView is a spec that the draft could replace.
type takenView struct {
	Slug, Name string
	Version    int64
	When, Who  string   // of its last change
	Was        int64    // the version that the draft was opened from, if someone has changed it since
	Opened     bool     // the draft was opened from it, and has another name now
	Changes    []string // that replacing would make
}

// save keeps a draft that was read without a fault. What stands in the way is
// told in the view, and nothing is then written.
func (p *pages) save(r *http.Request, f saveForm, s *flavor.Spec) (*saveView, error) {
	if f.Do != "save" && (f.Do != "replace" || f.Over == "") {
		return nil, fmt.Errorf("%w: nothing is called %q", form.ErrUnreadable, f.Do)
	}
	v := &saveView{Spec: f.Spec, Version: f.Version, Called: f.Called}
	if !access.May(r.Context(), access.Lead) {
		v.Trouble = frame.TroubleOf(frame.ErrNotTheirs).Text
		return v, p.origin(r.Context(), v)
	}
	if strings.TrimSpace(s.Name) == "" {
		v.Unnamed = true
		return v, p.origin(r.Context(), v)
	}
	err := p.writeSpec(r, f, s, v)
	if told, status := frame.Told(err); told != "" {
		// A version that moved on is asked about again, with what is there now.
		if status == http.StatusConflict {
			var taken *takenView
			if taken, err = p.taken(r.Context(), target(f, s), s); taken != nil {
				taken.Was, v.Taken = max(f.Seen, f.Version), taken
			}
		} else {
			err = nil
		}
		v.Trouble = told
	}
	if err != nil {
		return nil, err
	}
	return v, p.origin(r.Context(), v)
}

// target is the id of the spec that a form would write.
func target(f saveForm, s *flavor.Spec) string {
	if f.Do == "replace" {
		return f.Over
	}
	return part.SpecID(s.Name)
}

// writeSpec writes the draft, or says in the view what it would replace.
func (p *pages) writeSpec(r *http.Request, f saveForm, s *flavor.Spec, v *saveView) error {
	id, ctx := target(f, s), r.Context()
	kept, err := house.Get[house.Spec](ctx, p.house.Store(), id)
	missing := errors.Is(err, house.ErrNotFound)
	if err != nil && !missing {
		return err
	}
	item := house.FromSpec(id, *s)
	if item.Note = kept.Item.Note; !missing && len(part.SpecChanges(&kept.Item, &item, p.house.Shelf())) == 0 {
		v.Same, v.Spec, v.Version = true, id, kept.Version
		return nil
	}
	version := int64(0)
	switch {
	case f.Do == "replace":
		version = f.Seen
	case f.Spec == id && f.Called == "":
		version = f.Version
	case f.Spec != "" && f.Called == "" && missing:
		// It was opened from another spec, and is perhaps that one by a new name.
		if v.Taken, err = p.taken(ctx, f.Spec, s); v.Taken != nil {
			v.Taken.Opened, v.Called = true, s.Name
			return nil
		}
		if err != nil {
			return err
		}
	case !missing:
		v.Taken, err = p.taken(ctx, id, s)
		return err
	}
	changes, err := p.house.Store().Write(ctx, frame.By(r), house.Put(item, version))
	if err != nil {
		return err
	}
	v.Saved, v.Spec, v.Version = true, id, changes[0].Version
	return nil
}

// taken says what a draft would change in a spec; nil if there is no such spec.
func (p *pages) taken(ctx context.Context, id string, s *flavor.Spec) (*takenView, error) {
	history, err := p.house.Store().History(ctx, house.Ref{Kind: house.KindSpec, ID: id})
	if errors.Is(err, house.ErrNotFound) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	last := history[len(history)-1]
	kept, there := last.Item.(house.Spec)
	if !there {
		return nil, nil
	}
	to := house.FromSpec(id, *s)
	to.Note = kept.Note
	return &takenView{Slug: id, Name: kept.Name, Version: last.Version, When: words.Moment(last.At), Who: last.Actor,
		Changes: part.SpecChanges(&kept, &to, p.house.Shelf())}, nil
}

// origin names the spec that the draft belongs to; one that is gone is dropped.
func (p *pages) origin(ctx context.Context, v *saveView) error {
	if v.Spec == "" {
		return nil
	}
	kept, err := house.Get[house.Spec](ctx, p.house.Store(), v.Spec)
	if errors.Is(err, house.ErrNotFound) || errors.Is(err, house.ErrInvalid) {
		v.Spec, v.Version = "", 0
		return nil
	}
	v.Name = kept.Item.Name
	return err
}

// status is how a page answers.
func (v *saveView) status() int {
	switch {
	case v.Taken != nil:
		return http.StatusConflict
	case v.Unnamed || v.Trouble != "":
		return http.StatusUnprocessableEntity
	}
	return http.StatusOK
}

// renamed puts another name on top of a draft.
func renamed(text, name string) string {
	form := url.Values{"row-line": {}, "drink": {name}}
	return applyRows(text, form)
}

// openSpec returns a version of a spec as text, the current one for 0, and the
// version that is current.
func (p *pages) openSpec(ctx context.Context, slug string, at int64) (text string, version int64, err error) {
	history, err := p.house.Store().History(ctx, house.Ref{Kind: house.KindSpec, ID: slug})
	if errors.Is(err, house.ErrNotFound) {
		return "", 0, frame.ErrNotFound
	}
	if err != nil {
		return "", 0, err
	}
	last := history[len(history)-1]
	for _, c := range slices.Backward(history) {
		spec, there := c.Item.(house.Spec)
		if !there || at > 0 && c.Version != at {
			continue
		}
		if last.Item == nil {
			last.Version = 0 // it is gone; to keep the draft is to add it anew
		}
		drink, err := spec.Flavor(p.house.Shelf())
		if err != nil {
			return part.SpecText(spec), last.Version, nil
		}
		return draft.Format(drink), last.Version, nil
	}
	return "", 0, fmt.Errorf("%w: version %d of %s", frame.ErrNotFound, at, slug)
}
