package desk

import (
	"errors"
	"net/http"
	"strconv"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// MaxChanges is how much of a history a page shows, the latest first.
const MaxChanges = 30

// Change is one change of a record.
type Change struct {
	When, Stamp string
	Who         string
	What        string
	Moves       []string // field by field
}

// past fills in what became of a record: its name, its history, and what undoing
// the last change would do.
func (d *Desk[T]) past(at At, r *http.Request, v *Page) error {
	history, err := at.History(r.Context(), house.Ref{Kind: d.Kind, ID: v.ID})
	if err != nil {
		return err
	}
	for i := len(history) - 1; i >= 0; i-- {
		if item, ok := history[i].Item.(T); ok && v.Name == "" {
			v.Name = d.Name(item)
		}
		if len(v.Changes) == MaxChanges {
			v.Earlier++
			continue
		}
		c := &history[i]
		v.Changes = append(v.Changes, Change{When: words.Moment(c.At), Stamp: c.At.UTC().Format(time.RFC3339), Who: c.Actor,
			What: words.Sentence(changeWord(c)), Moves: d.moves(history, i)})
	}
	v.Title = v.Name
	last := &history[len(history)-1]
	v.Last, v.Undo = last.Version, undoWord(last, len(history))
	if d.Alone && last.Action != house.Undone {
		v.Undo = say.It("desk.undo")
	} else if d.Alone {
		v.Undo = say.It("desk.undo-that-too")
	}
	return nil
}

// moves says what a change did to each field.
func (d *Desk[T]) moves(history []house.Change, at int) []string {
	now, there := history[at].Item.(T)
	if at == 0 || !there {
		return nil
	}
	was, before := history[at-1].Item.(T)
	if !before {
		return nil
	}
	var out []string
	for i := range d.Fields {
		f := &d.Fields[i]
		if a, b := f.Show(was), f.Show(now); a != b {
			out = append(out, say.It("desk.field-moved", "Field", f.label(), "From", inWords(a), "To", inWords(b)))
		}
	}
	if d.Away != nil && d.Away(was) != d.Away(now) {
		moved := say.It("desk.is-there-again")
		if d.Away(now) {
			moved = say.It("desk.ran-out")
		}
		out = append(out, moved)
	}
	return out
}

// label is what a field is called, with its unit.
func (b *Box) label() string {
	if b.Unit == "" {
		return b.Label
	}
	return say.It("desk.with-unit", "Label", b.Label, "Unit", b.Unit)
}

// longWords is the most letters of a value in a line of the history.
const longWords = 80

// inWords is the value of a field on one line.
func inWords(value string) string {
	line := []rune(strings.Join(strings.Split(strings.TrimSpace(value), "\n"), "; "))
	switch {
	case len(line) == 0:
		return say.It("desk.nothing")
	case len(line) > longWords:
		return say.It("desk.cut-short", "Text", string(line[:longWords]))
	}
	return string(line)
}

func changeWord(c *house.Change) string {
	if c.Action == house.Undone && c.Item == nil {
		return say.It("desk.undone-so-removed")
	}
	switch c.Action {
	case house.Added:
		return say.It("desk.added")
	case house.Changed:
		return say.It("desk.changed")
	case house.Removed:
		return say.It("desk.removed")
	}
	return say.It("desk.undone")
}

// undoWord says what undoing a change does.
func undoWord(c *house.Change, changes int) string {
	switch {
	case c.Item == nil:
		return say.It("desk.put-it-back")
	case changes == 1 || c.Action == house.Added:
		return say.It("desk.undo-take-it-out")
	case c.Action == house.Undone:
		return say.It("desk.undo-that-too")
	}
	return say.It("desk.undo-the-last-change")
}

// said tells what has just been done to a record.
func (d *Desk[T]) said(history []house.Change) string {
	last := &history[len(history)-1]
	out := words.Sentence(changeWord(last))
	switch {
	case d.Alone && last.Item == nil:
		return say.It("desk.undone-nothing-set")
	case d.Alone && last.Action != house.Undone:
		out = say.It("desk.saved")
	}
	if moves := d.moves(history, len(history)-1); len(moves) > 0 {
		out = say.It("desk.done-and-moved", "Done", out, "Moves", words.Sentence(strings.Join(moves, "; ")))
	}
	return out
}

// undo
func (d *Desk[T]) Undo(at At, w http.ResponseWriter, r *http.Request, id string, version int64) error {
	ref := house.Ref{Kind: d.Kind, ID: id}
	history, err := at.History(r.Context(), ref)
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	item, there := last.Item.(T)
	v := &Page{ID: id, Version: last.Version, Kept: there, Gone: !there}
	goes := there && (len(history) == 1 || history[len(history)-2].Item == nil)
	if goes {
		why, err := d.Refuse(r.Context(), id)
		if err != nil {
			return err
		}
		if why != "" {
			v.Trouble = &Trouble{Title: say.It("desk.cannot-go-yet"), Text: why}
			return d.write(at, w, r, http.StatusUnprocessableEntity, d.Fill(item), v)
		}
	}
	done, err := at.House.Store().Undo(r.Context(), frame.By(r), ref, version)
	switch {
	case errors.Is(err, house.ErrConflict):
		v.Trouble = &Trouble{Title: say.It("desk.changed-meanwhile"),
			Text: say.It("desk.nothing-undone", "When", words.Moment(last.At), "Who", last.Actor)}
		return d.write(at, w, r, http.StatusConflict, d.Fill(item), v)
	case err != nil:
		return d.refused(at, w, r, d.Fill(item), v, err)
	case done.Item == nil && !d.Alone:
		http.Redirect(w, r, d.Gone(done), http.StatusSeeOther)
		return nil
	}
	http.Redirect(w, r, d.address(id)+"&done="+strconv.FormatInt(done.Version, 10)+"#said", http.StatusSeeOther)
	return nil
}
