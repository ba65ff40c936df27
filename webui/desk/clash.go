package desk

import (
	"net/http"
	"strings"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// clash answers a write that came too late: the record has changed since the
// form was opened, or there is one already. What only the other one changed is
// filled in, what both changed stands side by side, and nothing typed is lost.
func (d *Desk[T]) clash(at At, w http.ResponseWriter, r *http.Request, f *Form[T], v *Page, id string) error {
	history, err := at.History(r.Context(), house.Ref{Kind: d.Kind, ID: id})
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	who := say.It("desk.when-by-whom", "When", words.Moment(last.At), "Who", last.Actor)
	now, there := last.Item.(T)
	switch {
	case v.ID == "" && there: // a new one, of a name that is taken
		f.BoxOf("name").Fault = say.It("desk.name-is-taken")
		v.Trouble = &Trouble{Title: say.It("desk.name-is-taken-title"), Text: say.It("desk.still-here"),
			Link: &Link{Name: d.Name(now), Address: d.address(id)}}
	case !there:
		v.Version = 0
		v.Trouble = &Trouble{Title: say.It("desk.removed-meanwhile"),
			Text: say.It("desk.removed-meanwhile-text", "Change", who)}
	case last.Version == v.Version:
		v.Trouble = &Trouble{Title: say.It("desk.nothing-written"), Text: say.It("desk.another-changed")}
	default:
		var was T // blank, if the form was made on none
		for i := range history {
			if item, ok := history[i].Item.(T); ok && history[i].Version == v.Version {
				was = item
			}
		}
		d.merge(f, was, now)
		v.Version = last.Version
		v.Trouble = &Trouble{Title: say.It("desk.changed-meanwhile"),
			Text: say.It("desk.changed-meanwhile-text", "Change", who),
			Link: &Link{Name: say.It("desk.leave-it"), Address: d.address(id)}}
	}
	return d.write(at, w, r, http.StatusConflict, f, v)
}

// merge compares what was typed, what it was typed over, and what stands now.
func (d *Desk[T]) merge(f *Form[T], was, now T) {
	for i, b := range f.boxes {
		show := d.Fields[i].Show
		before, theirs, mine := show(was), show(now), show(f.Item)
		if b.Fault != "" {
			mine = strings.TrimSpace(b.Value)
		}
		switch {
		case theirs == before || theirs == mine:
		case mine == before:
			b.Value, b.Taken = theirs, true
			if len(b.Options) > 0 {
				b.Options = form.Choose(b.Options, theirs)
			}
		default:
			b.Theirs, b.Apart = inWords(theirs), true
		}
	}
}
