package board

import (
	"net/http"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/behind"
)

// The fields of a form that mark a single bottle: what it is stays poured from another.
const (
	oneOutField  = "out-one"
	oneBackField = "back-one"
)

// oneView is a bottle that ran out while another of the same is poured.
type oneView struct {
	ID, Name string
	Of, Kind string // what it is: id and name
	Poured   string // the bottle that is poured now
	Just     bool   // this screen has just marked it
}

func onesOf(s *behind.Shift) (out []oneView) {
	for _, w := range s.Switches() {
		v := oneView{ID: w.Out.ID, Name: w.Out.Name, Of: w.Out.Ingredient, Kind: w.Out.Ingredient, Poured: w.Poured.Name}
		if at := slices.IndexFunc(s.Stock, func(p *flavor.Profile) bool { return p.ID == w.Out.Ingredient }); at >= 0 {
			v.Kind = s.Stock[at].Name
		}
		out = append(out, v)
	}
	return out
}

// oneOf is the id of the bottle that an ingredient is poured from, if there are others; else
// empty.
func oneOf(s *behind.Shift, id string) string {
	if poured, several := s.Several(id); several {
		return poured.ID
	}
	return ""
}

// justOutOnes tells apart the bottles that a form has just marked as out.
func justOutOnes(ones []oneView, f map[string][]string) {
	for i := range ones {
		ones[i].Just = slices.Contains(f[oneOutField], ones[i].ID)
	}
}

// againOne is the single bottle that was just marked as back; nil if none was, or it ran out
// again since.
func (p *pages) againOne(r *http.Request) *bottleView {
	id := r.PostForm.Get(oneBackField)
	if id == "" {
		id = r.Form.Get(againOneField)
	}
	bottles := p.house.Inventory()
	at := slices.IndexFunc(bottles, func(b house.Bottle) bool { return b.ID == id })
	if at < 0 || !bottles[at].There() {
		return nil
	}
	return &bottleView{ID: bottles[at].Ingredient, One: id, Name: bottles[at].Name}
}
