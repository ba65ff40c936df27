package specs

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"net/http"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// specForm is a form that specs are written in.
type specForm struct{ ID, Kind, Ending string }

// specForms are the ways out and in.
var specForms = []specForm{
	{"text", "text/plain; charset=utf-8", "txt"},
	{"csv", "text/csv; charset=utf-8", "csv"},
	{"json-ld", "application/ld+json; charset=utf-8", "json"},
}

// name says what a form is, where it is chosen.
func (f *specForm) name() string {
	switch f.ID {
	case "csv":
		return say.It("specs.as-csv")
	case "json-ld":
		return say.It("specs.as-json-ld")
	}
	return say.It("specs.as-text")
}

func specFormOf(id string) (specForm, error) {
	for _, f := range specForms {
		if f.ID == id {
			return f, nil
		}
	}
	return specForm{}, fmt.Errorf("%w: specs are not written as %q", form.ErrUnreadable, id)
}

// export hands out one spec or all of them as a file.
func (p *pages) export(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	form, err := specFormOf(r.Form.Get("as"))
	if err != nil {
		return err
	}
	slug, name := r.Form.Get("spec"), "specs"
	if slug != "" {
		name = slug
	}
	specs, err := p.keptSpecs(r.Context(), slug)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := form.write(&b, specs, p.house.Shelf()); err != nil {
		return p.refuseExport(w, r, err)
	}
	h := w.Header()
	h.Set("Content-Type", form.Kind)
	h.Set("Content-Disposition", fmt.Sprintf(`attachment; filename="%s.%s"`, name, form.Ending))
	if r.Method == http.MethodHead {
		return nil
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		p.Log.DebugContext(r.Context(), "export not sent", "err", err)
	}
	return nil
}

// keptSpecs are all specs by id, or the one that is named.
func (p *pages) keptSpecs(ctx context.Context, slug string) ([]house.Spec, error) {
	if slug == "" {
		all, err := house.All[house.Spec](ctx, p.house.Store())
		return house.Items(all), err
	}
	one, err := house.Get[house.Spec](ctx, p.house.Store(), slug)
	if errors.Is(err, house.ErrNotFound) {
		return nil, frame.ErrNotFound
	}
	return []house.Spec{one.Item}, err
}

func (f *specForm) write(b *bytes.Buffer, specs []house.Spec, shelf *house.Shelf) error {
	switch f.ID {
	case "csv":
		return exchange.WriteSpecs(b, specs)
	case "json-ld":
		return exchange.WriteRecipes(b, specs, shelf)
	}
	drinks := make([]flavor.Spec, len(specs))
	for i, s := range specs {
		var err error
		if drinks[i], err = s.Flavor(shelf); err != nil {
			return err
		}
	}
	return exchange.WriteText(b, drinks)
}

// refuseExport says which spec cannot be written out, and what can be done.
func (p *pages) refuseExport(w http.ResponseWriter, r *http.Request, err error) error {
	told, status := frame.Told(err)
	if told == "" {
		return err
	}
	var own *house.Error
	errors.As(err, &own)
	return p.Write(w, r, status, "problem", "layout", frame.Trouble{Status: status, Title: say.It("specs.cannot-be-written"),
		Text: say.It("specs.fix-or-take-csv", "Trouble", words.Sentence(own.Key+": "+own.Message))})
}
