package board

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// boardPath is the address of the cover board.
const boardPath = "/board"

// board shows what becomes of the menu, and takes marks: out or back, the id of
// an ingredient; kept or returned, a cover as it was served. A form gets sent
// back to the board, a script the board itself.
func (p *pages) board(w http.ResponseWriter, r *http.Request) error {
	g, err := form.ParseGuest(r)
	if err != nil {
		return err
	}
	to := "#out-now"
	if !r.PostForm.Has("back") && !r.PostForm.Has(oneBackField) {
		to = "#drinks"
	}
	if done, err := p.marked(w, r, g.Address(boardPath), to); done || err != nil {
		return err
	}
	v, err := p.boardOf(r.Context(), &g)
	if err != nil {
		return err
	}
	v.Again = p.againOf(r)
	justOut(v.Out, r.PostForm)
	justOutOnes(v.Ones, r.PostForm)
	part := "layout"
	if frame.IsFragment(r) {
		part = "board"
		if err := p.note(r, v); err != nil {
			return err
		}
	}
	return p.Write(w, r, http.StatusOK, "board", part, v)
}

// marked takes the mark of a form that was sent, and reports whether that is all: a form without a
// script goes on at an address and a place of its page, and a script may not look at the answer.
func (p *pages) marked(w http.ResponseWriter, r *http.Request, address, place string) (done bool, err error) {
	if r.Method != http.MethodPost {
		return false, nil
	}
	if err := p.mark(r); err != nil {
		return false, err
	}
	switch {
	case !frame.IsFragment(r):
		http.Redirect(w, r, again(address, r)+place, http.StatusSeeOther)
	case r.PostForm.Has(moreField):
		w.WriteHeader(http.StatusNoContent)
	default:
		return false, nil
	}
	return true, nil
}

// moreField says that a script does not look at the answer to a mark, as while another mark
// waits behind it.
const moreField = "more"

// again is an address with what a form marked as back, so that it can be undone.
func again(address string, r *http.Request) string {
	said := url.Values{}
	for field, sent := range map[string]string{againField: "back", againOneField: oneBackField} {
		if back := r.PostForm.Get(sent); back != "" {
			said.Set(field, back)
		}
	}
	if len(said) == 0 {
		return address
	}
	mark := "?"
	if strings.Contains(address, mark) {
		mark = "&"
	}
	return address + mark + said.Encode()
}

// The fields of an address that say what was just marked as back.
const (
	againField    = "again"
	againOneField = "again-one"
)

// againOf is what was just marked as back; nil if nothing was.
func (p *pages) againOf(r *http.Request) *bottleView {
	if one := p.againOne(r); one != nil {
		return one
	}
	id := r.PostForm.Get("back")
	if id == "" {
		id = r.Form.Get(againField)
	}
	b, known := p.house.Shelf().ByID(id)
	outs, err := p.house.RunOut(r.Context())
	if !known || err != nil || slices.Contains(outs, id) {
		return nil // or it ran out again since
	}
	return &bottleView{ID: id, Name: b.Name}
}

// justOut tells apart what a form has just marked as out.
func justOut(out []bottleView, f url.Values) {
	for i := range out {
		out[i].Just = slices.Contains(f["out"], out[i].ID)
	}
}

// mostMarks is how many marks one form makes; a page sends one.
const mostMarks = 200

// mark does what a button of the board asks for, all of it or nothing.
func (p *pages) mark(r *http.Request) error {
	if len(r.PostForm["out"])+len(r.PostForm["back"])+len(r.PostForm[oneOutField])+len(r.PostForm[oneBackField])+len(r.PostForm["kept"])+len(r.PostForm["returned"]) > mostMarks {
		return frame.ErrTooMany
	}
	if mark := r.PostForm.Get(forgetField); mark != "" {
		return p.forget(r, mark)
	}
	request := marking.Request{Out: r.PostForm["out"], Back: r.PostForm["back"],
		BottlesOut: r.PostForm[oneOutField], BottlesBack: r.PostForm[oneBackField]}
	for _, button := range []struct {
		field     string
		reception house.Reception
	}{{"kept", house.ReceptionKept}, {"returned", house.ReceptionSentBack}} {
		for _, served := range r.PostForm[button.field] {
			received, err := p.received(served, button.reception)
			if err != nil {
				return err
			}
			request.Received = append(request.Received, received)
		}
	}
	if err := tapped(r, &request); err != nil {
		return err
	}
	if request.Empty() { // the board is shown as it stands
		return nil
	}
	err := p.house.Mark(r.Context(), frame.By(r), request)
	switch faults := flavor.DataFaultsOf(err); {
	case len(faults) > 0 && faults[0].Location == marking.TappedField:
		return frame.ErrOvertaken
	case len(faults) > 0:
		return frame.ErrGone
	}
	return err
}

// agoField says how many seconds ago a mark was tapped that is sent only now. The clock of
// a device may be wrong; what passed on it is not.
const agoField = "ago"

// tapped reads when a mark was tapped.
func tapped(r *http.Request, m *marking.Request) error {
	said := r.PostForm.Get(agoField)
	if said == "" {
		return nil
	}
	ago, err := strconv.Atoi(said)
	if err != nil || ago < 0 {
		return form.ErrUnreadable
	}
	m.Tapped = frame.By(r).At.Add(-min(time.Duration(ago)*time.Second, 2*marking.MostLate))
	return nil
}

// versionOf names what the board shows, so that two screens can tell whether they
// show the same.
func versionOf(s *behind.Shift) string {
	sum := sha256.New()
	for _, p := range s.Out {
		fmt.Fprintln(sum, p.ID)
	}
	for _, w := range s.Switches() {
		fmt.Fprintln(sum, w.Out.ID, w.Poured.ID)
	}
	for i := range s.Menu {
		d := &s.Menu[i]
		fmt.Fprintln(sum, d.Slug, d.Version)
		if d.Version == 0 { // no record says whether it is the same
			fmt.Fprintln(sum, edit.Format(d.Spec))
		}
	}
	for _, p := range s.Stock { // a label that was read changes what a guest may have
		fmt.Fprintln(sum, p.ID, p.AllergensKnown, p.AllergenMarks)
	}
	fmt.Fprintln(sum, s.Tastings)
	return hex.EncodeToString(sum.Sum(nil)[:8])
}

// boardOf works out the whole board.
func (p *pages) boardOf(ctx context.Context, g *form.Guest) (*boardView, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	v := &boardView{About: p.house.About(), Version: versionOf(s), Guest: g,
		Here: g.Address(boardPath), Ahead: g.Address(aheadPath), Specs: g.Address("/specs"), Menu: len(s.Menu)}
	since := outsSince(ctx, p.house)
	v.shelve(s, since)
	now, err := behind.EveningOf(ctx, p.bar, s, g.Limits(), part.MostParts)
	if err != nil {
		return nil, err
	}
	v.shelveInstead(s, now)
	if now.Result != nil {
		if err := v.cover(p, s, now, since); err != nil {
			return nil, err
		}
	}
	v.say()
	return v, nil
}

// offer returns the nearest drink of the menu that can be poured, for one that
// nothing keeps; else nil.
func (p *pages) offer(s *behind.Shift, t *outs.Touched, who *form.Guest) (*part.Offer, error) {
	if t.Near || t.LeftOut != nil || t.NotSearched {
		return nil, nil
	}
	there := slices.DeleteFunc(slices.Clone(s.Stock), s.IsOut)
	near, err := p.bar.Nearest(t.Spec, there, who.Limits())
	if err != nil {
		return nil, err
	}
	return part.OfferOf(p.house.Settings(), s.Menu, near, who), nil
}

// mostBarred is how many reasons are told for a drink without a cover.
const mostBarred = 2

// barred says what a bar would pour for a drink that nothing keeps, and why nobody does now.
func (p *pages) barred(s *behind.Shift, t *outs.Touched, who *form.Guest) (out []string) {
	there := slices.DeleteFunc(slices.Clone(s.Stock), s.IsOut)
	for _, l := range barred.Lines(p.bar.BarredFrom(t, who.Limits(), there)) {
		if len(out) < mostBarred {
			out = append(out, words.Sentence(words.Bound(l.String())))
		}
	}
	return out
}
