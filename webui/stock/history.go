package stock

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/frame"
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
		v.Undo = "Undo"
	} else if d.alone {
		v.Undo = "Undo that too"
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
			out = append(out, fmt.Sprintf("%s: %s → %s", f.label(), inWords(a), inWords(b)))
		}
	}
	if d.away != nil && d.away(was) != d.away(now) {
		out = append(out, map[bool]string{true: "ran out", false: "is there again"}[d.away(now)])
	}
	return out
}

// label is what a field is called, with its unit.
func (b *formBox) label() string {
	if b.Unit == "" {
		return b.Label
	}
	return b.Label + ", " + b.Unit
}

// longWords is the most letters of a value in a line of the history.
const longWords = 80

// inWords is the value of a field on one line.
func inWords(value string) string {
	line := []rune(strings.Join(strings.Split(strings.TrimSpace(value), "\n"), "; "))
	switch {
	case len(line) == 0:
		return "nothing"
	case len(line) > longWords:
		return string(line[:longWords]) + " …"
	}
	return string(line)
}

func changeWord(c *house.Change) string {
	if c.Action == house.Undone && c.Item == nil {
		return "undone, so it is removed"
	}
	return string(c.Action)
}

// undoWord says what undoing a change does.
func undoWord(c *house.Change, changes int) string {
	switch {
	case c.Item == nil:
		return "Put it back"
	case changes == 1 || c.Action == house.Added:
		return "Undo: take it out again"
	case c.Action == house.Undone:
		return "Undo that too"
	}
	return "Undo the last change"
}

// said tells what has just been done to a record.
func (d *stockDesk[T]) said(history []house.Change) string {
	last := &history[len(history)-1]
	out := words.Sentence(changeWord(last))
	switch {
	case d.alone && last.Item == nil:
		return "Undone: nothing is set."
	case d.alone && last.Action != house.Undone:
		out = "Saved."
	}
	if moves := d.moves(history, len(history)-1); len(moves) > 0 {
		out += " " + words.Sentence(strings.Join(moves, "; "))
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
			v.Trouble = &deskTrouble{Title: "It cannot go yet", Text: why}
			return d.write(p, w, r, http.StatusUnprocessableEntity, d.fill(item), v)
		}
	}
	done, err := p.house.Store().Undo(r.Context(), frame.By(r), ref, version)
	switch {
	case errors.Is(err, house.ErrConflict):
		v.Trouble = &deskTrouble{Title: "It has changed since you opened it",
			Text: fmt.Sprintf("That was %s, by %s. Nothing was undone; look at what changed, and undo that if you mean to.", words.Moment(last.At), last.Actor)}
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
