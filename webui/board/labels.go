package board

import (
	"cmp"
	"fmt"
	"net/http"
	"net/url"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// labelsView is the bottles whose labels decide what of the menu a guest may have.
type labelsView struct {
	Said    string      // how many drinks wait for them
	Bottles []labelView // that most drinks wait for first
}

// labelView is a bottle whose label is to be read.
type labelView struct {
	Name, Why string
	Drinks    string // how many drinks wait for it
	Address   string // of the page on which it is stated

	drinks int
}

// labelsFor finds the bottles that a guest must not have only until their labels are
// read, and counts the drinks that are left out or lose a pour for nothing else.
func (p *pages) labelsFor(s *behind.Shift, touched map[*flavor.Spec]*cover.Touched, who *form.Guest) (labelsView, error) {
	g := who.Limits()
	rows := map[*flavor.Profile]*labelView{}
	waiting := 0
	for i := range s.Menu {
		spec := &s.Menu[i].Spec
		unread := unreadIn(spec, touched[spec], &g)
		if len(unread) == 0 {
			continue
		}
		if why, err := p.tooStrong(spec, &g); err != nil || why != "" {
			if err != nil {
				return labelsView{}, err
			}
			continue
		}
		waiting++
		for _, b := range unread {
			if rows[b] == nil {
				rows[b] = &labelView{Name: b.Name, Why: whyUnread(b, &g), Address: labelAddress(b, who)}
			}
			rows[b].drinks++
		}
	}
	var v labelsView
	for _, row := range rows {
		row.Drinks = words.Count(row.drinks, "drink", "drinks")
		v.Bottles = append(v.Bottles, *row)
	}
	slices.SortFunc(v.Bottles, func(a, b labelView) int { return cmp.Or(b.drinks-a.drinks, cmp.Compare(a.Name, b.Name)) })
	if waiting > 0 {
		v.Said = fmt.Sprintf("%s for a label: %s to read", words.Count(waiting, "drink waits", "drinks wait"), words.Count(len(v.Bottles), "bottle", "bottles"))
	}
	return v, nil
}

// whyUnread says what stands on record of a bottle whose label decides.
func whyUnread(b *flavor.Profile, g *guest.Guest) string {
	if b.Clear(g.Avoid) == flavor.NotStated {
		return "is not stated"
	}
	return g.Objection(b)
}

// unreadIn lists the bottles of a drink, those that are missing aside, that a guest must
// not have until their labels are read; none if anything else is in the guest's way.
func unreadIn(s *flavor.Spec, t *cover.Touched, g *guest.Guest) (unread []*flavor.Profile) {
	for _, b := range part.Bottles(s) {
		switch {
		case t != nil && slices.Contains(t.Missing, b), g.Accepts(b):
		case g.LabelDecides(b):
			unread = append(unread, b)
		default:
			return nil
		}
	}
	return unread
}

// labelAddress is the address at which the label of an ingredient is stated, and from
// which the way leads back to tonight for this guest.
func labelAddress(b *flavor.Profile, who *form.Guest) string {
	v := url.Values{"of": {b.ID}}
	who.AddTo(v)
	return form.Link(part.LabelPath, v)
}

// keptLabel is a label that was just stated, and how it is undone.
type keptLabel struct {
	Name string
	Undo *part.Undo
}

// keptLabelOf is the label that the address says was just stated; nil if there is none.
func (p *pages) keptLabelOf(r *http.Request, here string) *keptLabel {
	undo := part.UndoIn(r.Form, here)
	if undo == nil {
		return nil
	}
	written, err := part.ReadMark(undo.Mark)
	if err != nil {
		return nil
	}
	kept, err := house.Get[house.Bottle](r.Context(), p.house.Store(), written.Ref.ID)
	if err != nil || kept.Version != written.Version {
		return nil // it has changed since, or has gone
	}
	return &keptLabel{Name: kept.Item.Name, Undo: undo}
}
