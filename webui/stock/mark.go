package stock

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/frame"
)

// The fields of a form that mark a single bottle, of which others are there, and the field
// of an address that says which one was marked.
const (
	oneOutField  = "out-one"
	oneBackField = "back-one"
	markedOne    = "marked-one"
)

// markedView says what was just marked, and offers to take it back.
type markedView struct {
	Name, ID string
	Out      bool   // it was marked out
	One      string // id of the bottle, if one of several was marked; Name is its name
	Kind     string // what that is
	Poured   string // the bottle of it that is poured now; empty if it is out
}

// mark notes that something ran out or is back, from the list, and shows the list
// again with what was done.
func (p *pages) mark(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	request, said := marking.Request{}, url.Values{}
	for _, button := range []struct {
		sent, says string
		of         *[]string
	}{{"out", "marked", &request.Out}, {"back", "marked", &request.Back}, {oneOutField, markedOne, &request.BottlesOut}, {oneBackField, markedOne, &request.BottlesBack}} {
		if id := r.PostForm.Get(button.sent); id != "" && request.Empty() {
			*button.of = []string{id}
			said.Set(button.says, id)
		}
	}
	if request.Empty() {
		return form.ErrUnreadable
	}
	err := p.house.Mark(r.Context(), frame.By(r), request)
	if len(flavor.DataFaultsOf(err)) > 0 {
		return frame.ErrGone
	}
	if err != nil {
		return err
	}
	http.Redirect(w, r, listAddress(r.PostForm.Get("list"), said)+"#said", http.StatusSeeOther)
	return nil
}

// listAddress is the address of a list of the stock with more said in it. What is
// no such address is the whole list.
func listAddress(list string, more url.Values) string {
	query := url.Values{}
	if at, err := url.Parse(list); err == nil && at.Path == "/stock" && at.Host == "" && strings.HasPrefix(list, "/stock") {
		query = at.Query()
		query.Del("marked")
		query.Del(markedOne)
	}
	for key, values := range more {
		query[key] = values
	}
	return "/stock?" + query.Encode()
}

// markedOf is what the address says was marked, as it stands now.
func (p *pages) markedOf(r *http.Request) *markedView {
	bottles := p.house.Inventory()
	id, one := r.Form.Get("marked"), r.Form.Get(markedOne)
	at := slices.IndexFunc(bottles, func(b house.Bottle) bool { return b.ID == one })
	if at >= 0 {
		id = bottles[at].Ingredient
	}
	profile, known := p.house.Shelf().ByID(id)
	if !known {
		return nil
	}
	outs, err := p.house.RunOut(r.Context())
	if err != nil {
		return nil // the list itself says what is the matter
	}
	v := &markedView{Name: profile.Name, ID: id, Out: slices.Contains(outs, id)}
	if at < 0 {
		return v
	}
	if !v.Out {
		v.Poured = house.Wells(bottles)[id].Name
	}
	v.Name, v.Kind, v.One, v.Out = bottles[at].Name, profile.Name, one, v.Out || !bottles[at].There()
	return v
}
