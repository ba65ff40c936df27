package board

import (
	"fmt"
	"net/url"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/form"
)

// servedOf says a cover as it is served, for the buttons that tell how it was
// received: the board may show another by the time that somebody knows. It is
// empty if more than one bottle was missing, since nobody can tell then which
// of the substitutes was liked.
func servedOf(slug string, t *cover.Touched, c *cover.Cover) string {
	if len(t.Missing) != 1 {
		return ""
	}
	return url.Values{"spec": {slug}, "missing": {t.Missing[0].ID}, "served": {edit.Format(c.Spec)}}.Encode()
}

// received reads how a cover was received that the board wrote down as served.
func (p *pages) received(served string, verdict house.Verdict) (service.Received, error) {
	v, err := url.ParseQuery(served)
	if err != nil {
		return service.Received{}, fmt.Errorf("%w: what was served is not what the board wrote", form.ErrUnreadable)
	}
	drink, err := p.bar.Read(v.Get("served"))
	if len(flavor.FaultsOf(err)) > 0 {
		return service.Received{}, fmt.Errorf("%w: what was served cannot be read", form.ErrUnreadable)
	}
	return service.Received{Drink: v.Get("spec"), Missing: v.Get("missing"), Served: &drink, Verdict: verdict}, err
}
