package stock

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// maxChanges is how much of a history a page shows, the latest first.
const maxChanges = 30

// changeView is one change of a record.
type changeView struct {
	When, Stamp string
	Who         string
	What        string
	Moves       []string // field by field
}

// past fills in what became of a record: its name, its history, and what undoing
// the last change would do.
func (d *stockDesk[T]) past(p *pages, r *http.Request, v *deskPage) error {
	history, err := p.historyOf(r.Context(), house.Ref{Kind: d.kind, ID: v.ID})
	if err != nil {
		return err
	}
	for i := len(history) - 1; i >= 0; i-- {
		if item, ok := history[i].Item.(T); ok && v.Name == "" {
			v.Name = d.name(item)
		}
		if len(v.Changes) == maxChanges {
			v.Earlier++
			continue
		}
		c := &history[i]
		v.Changes = append(v.Changes, changeView{When: words.Moment(c.At), Stamp: c.At.UTC().Format(time.RFC3339), Who: c.Actor,
			What: words.Sentence(changeWord(c)), Moves: d.moves(history, i)})
	}
	v.Title = v.Name
	last := &history[len(history)-1]
	v.Last, v.Undo = last.Version, undoWord(last, len(history))
	if d.alone && last.Action != house.Undone {
		v.Undo = say.It("stock.undo")
	} else if d.alone {
		v.Undo = say.It("stock.undo-that-too")
	}
	return nil
}

// moves says what a change did to each field.
func (d *stockDesk[T]) moves(history []house.Change, at int) []string {
	now, there := history[at].Item.(T)
	if at == 0 || !there {
		return nil
	}
	was, before := history[at-1].Item.(T)
	if !before {
		return nil
	}
	var out []string
	for i := range d.fields {
		f := &d.fields[i]
		if a, b := f.show(was), f.show(now); a != b {
			out = append(out, say.It("stock.field-moved", "Field", f.label(), "From", inWords(a), "To", inWords(b)))
		}
	}
	if d.away != nil && d.away(was) != d.away(now) {
		moved := say.It("stock.is-there-again")
		if d.away(now) {
			moved = say.It("stock.ran-out")
		}
		out = append(out, moved)
	}
	return out
}

// label is what a field is called, with its unit.
func (b *formBox) label() string {
	if b.Unit == "" {
		return b.Label
	}
	return say.It("stock.with-unit", "Label", b.Label, "Unit", b.Unit)
}

// longWords is the most letters of a value in a line of the history.
const longWords = 80

// inWords is the value of a field on one line.
func inWords(value string) string {
	line := []rune(strings.Join(strings.Split(strings.TrimSpace(value), "\n"), "; "))
	switch {
	case len(line) == 0:
		return say.It("stock.nothing")
	case len(line) > longWords:
		return say.It("stock.cut-short", "Text", string(line[:longWords]))
	}
	return string(line)
}

func changeWord(c *house.Change) string {
	if c.Action == house.Undone && c.Item == nil {
		return say.It("stock.undone-so-removed")
	}
	switch c.Action {
	case house.Added:
		return say.It("stock.added")
	case house.Changed:
		return say.It("stock.changed")
	case house.Removed:
		return say.It("stock.removed")
	}
	return say.It("stock.undone")
}

// undoWord says what undoing a change does.
func undoWord(c *house.Change, changes int) string {
	switch {
	case c.Item == nil:
		return say.It("stock.put-it-back")
	case changes == 1 || c.Action == house.Added:
		return say.It("stock.undo-take-it-out")
	case c.Action == house.Undone:
		return say.It("stock.undo-that-too")
	}
	return say.It("stock.undo-the-last-change")
}

// said tells what has just been done to a record.
func (d *stockDesk[T]) said(history []house.Change) string {
	last := &history[len(history)-1]
	out := words.Sentence(changeWord(last))
	switch {
	case d.alone && last.Item == nil:
		return say.It("stock.undone-nothing-set")
	case d.alone && last.Action != house.Undone:
		out = say.It("stock.saved")
	}
	if moves := d.moves(history, len(history)-1); len(moves) > 0 {
		out = say.It("stock.done-and-moved", "Done", out, "Moves", words.Sentence(strings.Join(moves, "; ")))
	}
	return out
}

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
		return p.bottleDesk().undo(p, w, r, id, version)
	case house.KindSettings:
		return p.settingsDesk().undo(p, w, r, id, version)
	case house.KindMade:
		return p.madeDesk().undo(p, w, r, id, version)
	}
	return form.ErrUnreadable
}

func (d *stockDesk[T]) undo(p *pages, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	ref := house.Ref{Kind: d.kind, ID: id}
	history, err := p.historyOf(r.Context(), ref)
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	item, there := last.Item.(T)
	v := &deskPage{ID: id, Version: last.Version, Kept: there, Gone: !there}
	goes := there && (len(history) == 1 || history[len(history)-2].Item == nil)
	if goes {
		why, err := d.refuse(r.Context(), id)
		if err != nil {
			return err
		}
		if why != "" {
			v.Trouble = &deskTrouble{Title: say.It("stock.cannot-go-yet"), Text: why}
			return d.write(p, w, r, http.StatusUnprocessableEntity, d.fill(item), v)
		}
	}
	done, err := p.house.Store().Undo(r.Context(), frame.By(r), ref, version)
	switch {
	case errors.Is(err, house.ErrConflict):
		v.Trouble = &deskTrouble{Title: say.It("stock.changed-meanwhile"),
			Text: say.It("stock.nothing-undone", "When", words.Moment(last.At), "Who", last.Actor)}
		return d.write(p, w, r, http.StatusConflict, d.fill(item), v)
	case err != nil:
		return d.refused(p, w, r, d.fill(item), v, err)
	case done.Item == nil && !d.alone:
		http.Redirect(w, r, goneAddress(done), http.StatusSeeOther)
		return nil
	}
	http.Redirect(w, r, d.address(id)+"&done="+strconv.FormatInt(done.Version, 10)+"#said", http.StatusSeeOther)
	return nil
}
