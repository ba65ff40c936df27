package bench

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/access"
	"counterpour/webui/behind"
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
	Undo    string // the mark of what was saved
	Same    bool   // it was kept before and reads the same
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
	if err := p.keepUnits(r.Context(), f, s); err != nil {
		return nil, err
	}
	request := specbook.KeepRequest{Draft: s, From: f.Spec, Version: f.Version, Named: f.Called != ""}
	if f.Do == "replace" {
		request.Over, request.Seen = f.Over, f.Seen
	}
	kept, err := behind.SpecsOf(p.house).Keep(r.Context(), frame.By(r), request)
	if v.Trouble, _ = frame.Told(err); v.Trouble == "" && err != nil {
		return nil, err
	}
	v.Taken = p.takenOf(kept.Rival)
	if kept.Rival != nil && kept.Rival.Renamed {
		v.Called = s.Name
	}
	if kept.ID != "" {
		v.Saved, v.Same, v.Spec, v.Version = !kept.Same, kept.Same, kept.ID, kept.Version
		v.Undo = part.MarkOf(house.Ref{Kind: house.KindSpec, ID: kept.ID}, kept.Version)
	}
	return v, p.origin(r.Context(), v)
}

// keepUnits gives pours that nobody changed the units of the spec that a draft was opened from.
func (p *pages) keepUnits(ctx context.Context, f saveForm, s *flavor.Spec) error {
	if f.Spec == "" {
		return nil
	}
	kept, _, err := behind.SpecsOf(p.house).Version(ctx, f.Spec, 0)
	if errors.Is(err, house.ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	if was, err := kept.Flavor(p.house.Shelf()); err == nil { // else there is nothing to compare with
		part.KeepUnits(p.house.Settings(), s, &was)
	}
	return nil
}

// takenOf says what a draft would change in a spec that stands in the way.
func (p *pages) takenOf(r *specbook.Rival) *takenView {
	if r == nil {
		return nil
	}
	return &takenView{Slug: r.Is.ID, Name: r.Is.Name, Version: r.Version, When: words.Moment(r.At), Who: r.By, Was: r.Opened, Opened: r.Renamed,
		Changes: part.SpecChanges(&r.Is, &r.Would, p.house.Shelf())}
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
// version that is current: 0 if it is gone, so that to keep the draft is to add
// it anew.
func (p *pages) openSpec(ctx context.Context, slug string, at int64) (text string, version int64, err error) {
	spec, version, err := behind.SpecsOf(p.house).Version(ctx, slug, at)
	if errors.Is(err, house.ErrNotFound) {
		return "", 0, frame.ErrNotFound
	}
	if err != nil {
		return "", 0, err
	}
	drink, err := spec.Flavor(p.house.Shelf())
	if err != nil {
		return part.SpecText(spec), version, nil
	}
	return part.DraftInUnits(p.house.Settings(), &drink), version, nil
}
