package stock

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/frame"
)

// markedView says what was just marked, and offers to take it back.
type markedView struct {
	Name, ID string
	Out      bool // it was marked out
}

// mark notes that something ran out or is back, from the list, and shows the list
// again with what was done.
func (p *pages) mark(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	out, back := r.PostForm.Get("out"), r.PostForm.Get("back")
	request := service.MarkRequest{}
	switch {
	case out != "":
		request.Out = []string{out}
	case back != "":
		request.Back = []string{back}
	default:
		return form.ErrUnreadable
	}
	err := p.house.Mark(r.Context(), frame.By(r), request)
	if len(flavor.FaultsOf(err)) > 0 {
		return frame.ErrGone
	}
	if err != nil {
		return err
	}
	http.Redirect(w, r, listAddress(r.PostForm.Get("list"), url.Values{"marked": {out + back}})+"#said", http.StatusSeeOther)
	return nil
}

// listAddress is the address of a list of the stock with more said in it. What is
// no such address is the whole list.
func listAddress(list string, more url.Values) string {
	query := url.Values{}
	if at, err := url.Parse(list); err == nil && at.Path == "/stock" && at.Host == "" && strings.HasPrefix(list, "/stock") {
		query = at.Query()
	}
	for key, values := range more {
		query[key] = values
	}
	return "/stock?" + query.Encode()
}

// markedOf is what the address says was marked, as it stands now.
func (p *pages) markedOf(r *http.Request) *markedView {
	id := r.Form.Get("marked")
	profile, known := p.house.Shelf().ByID(id)
	if !known {
		return nil
	}
	outs, err := p.house.RunOut(r.Context())
	if err != nil {
		return nil // the list itself says what is the matter
	}
	return &markedView{Name: profile.Name, ID: id, Out: slices.Contains(outs, id)}
}
