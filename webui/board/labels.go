package board

import (
	"cmp"
	"net/http"
	"net/url"
	"slices"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// labelsView is the bottles whose labels decide what of the menu a guest may have.
type labelsView struct {
	Said    string      // how many drinks wait for them
	Waiting int         // drinks that cannot be poured before
	Bottles []labelView // that most drinks wait for first
}

// labelView is a bottle whose label is to be read.
type labelView struct {
	Name, Why string
	Drinks    string // how many drinks wait for it
	Address   string // of the page on which it is stated

	drinks int
}

// labelsFor finds the bottles that a guest must not have only until their labels are read,
// and counts the drinks that are left out, or lose a pour, for nothing else.
func labelsFor(now *evening.Answer, who *form.Guest) labelsView {
	g := who.Limits()
	rows := map[*flavor.Profile]*labelView{}
	waiting, sparing := 0, 0
	for i := range now.Drinks {
		d := &now.Drinks[i]
		switch {
		case d.Waits():
			waiting++
		case d.Spares():
			sparing++
		default:
			continue
		}
		for _, b := range d.Unread {
			if rows[b] == nil {
				rows[b] = &labelView{Name: b.Name, Why: g.ToRead(b), Address: labelAddress(b, who)}
			}
			rows[b].drinks++
		}
	}
	v := labelsView{Waiting: waiting}
	for _, row := range rows {
		row.Drinks = say.It("board.drinks", "Drinks", row.drinks)
		v.Bottles = append(v.Bottles, *row)
	}
	slices.SortFunc(v.Bottles, func(a, b labelView) int { return cmp.Or(b.drinks-a.drinks, cmp.Compare(a.Name, b.Name)) })
	v.Said = labelsSaid(waiting, sparing, len(v.Bottles))
	return v
}

// labelsSaid says how many drinks cannot be poured until labels are read, and how many can,
// without a pour that a label may allow; empty if none.
func labelsSaid(waiting, sparing, bottles int) string {
	if waiting == 0 && sparing == 0 {
		return ""
	}
	return say.It("board.labels-to-read", "Waiting", waiting, "Sparing", sparing, "Bottles", bottles)
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
