package board

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"

	"counterpour/data/house"
	"counterpour/flavor/cover"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
	"counterpour/webui/frame"
)

// servedOf says a cover as it is served, for the buttons that tell how it was
// received: the board may show another by the time that somebody knows. It is
// empty if more than one bottle was missing, since nobody can tell then which
// of the substitutes was liked.
func servedOf(slug string, t *cover.Touched, c *cover.Cover) string {
	if len(t.Missing) != 1 {
		return ""
	}
	return url.Values{"spec": {slug}, "missing": {t.Missing[0].ID}, "served": {measure.Format(c.Spec)}}.Encode()
}

// tasted notes how a cover was received.
func (p *pages) tasted(r *http.Request, served string, verdict house.Verdict) error {
	v, err := url.ParseQuery(served)
	if err != nil {
		return fmt.Errorf("%w: what was served is not what the board wrote", form.ErrUnreadable)
	}
	slug, missing := v.Get("spec"), v.Get("missing")
	drink, err := p.bar.Read(v.Get("served"))
	if len(form.Faults(err)) > 0 {
		return fmt.Errorf("%w: what was served cannot be read", form.ErrUnreadable)
	}
	if err != nil {
		return err
	}
	spec, err := house.Get[house.Spec](r.Context(), p.house.Store(), slug)
	if errors.Is(err, house.ErrNotFound) {
		return frame.ErrGone
	}
	if err != nil {
		return err
	}
	if _, known := p.house.Shelf().ByID(missing); !known {
		return frame.ErrGone
	}
	who := frame.By(r)
	c := house.Cover{At: who.At, Spec: slug, SpecVersion: spec.Version, Missing: missing, Verdict: verdict, Taster: who.Actor,
		Served: house.FromSpec(slug, drink).Pours}
	_, err = p.house.Store().Write(r.Context(), who, house.Put(c, 0))
	return err
}
