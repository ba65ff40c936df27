package stock

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
func (d *stockDesk[T]) clash(p *pages, w http.ResponseWriter, r *http.Request, f *filledForm[T], v *deskPage, id string) error {
	history, err := p.historyOf(r.Context(), house.Ref{Kind: d.kind, ID: id})
	if err != nil {
		return err
	}
	last := &history[len(history)-1]
	who := say.It("stock.when-by-whom", "When", words.Moment(last.At), "Who", last.Actor)
	now, there := last.Item.(T)
	switch {
	case v.ID == "" && there: // a new one, of a name that is taken
		f.box("name").Fault = say.It("stock.name-is-taken")
		v.Trouble = &deskTrouble{Title: say.It("stock.name-is-taken-title"), Text: say.It("stock.still-here"),
			Link: &deskLink{Name: d.name(now), Address: d.address(id)}}
	case !there:
		v.Version = 0
		v.Trouble = &deskTrouble{Title: say.It("stock.removed-meanwhile"),
			Text: say.It("stock.removed-meanwhile-text", "Change", who)}
	case last.Version == v.Version:
		v.Trouble = &deskTrouble{Title: say.It("stock.nothing-written"), Text: say.It("stock.another-changed")}
	default:
		var was T // blank, if the form was made on none
		for i := range history {
			if item, ok := history[i].Item.(T); ok && history[i].Version == v.Version {
				was = item
			}
		}
		d.merge(f, was, now)
		v.Version = last.Version
		v.Trouble = &deskTrouble{Title: say.It("stock.changed-meanwhile"),
			Text: say.It("stock.changed-meanwhile-text", "Change", who),
			Link: &deskLink{Name: say.It("stock.leave-it"), Address: d.address(id)}}
	}
	return d.write(p, w, r, http.StatusConflict, f, v)
}

// merge compares what was typed, what it was typed over, and what stands now.
func (d *stockDesk[T]) merge(f *filledForm[T], was, now T) {
	for i, b := range f.boxes {
		show := d.fields[i].show
		before, theirs, mine := show(was), show(now), show(f.item)
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
