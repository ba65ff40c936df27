package training

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"strconv"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

const trianglePath = "/training/triangle"

// triangleForm is what the form of a triangle test sends, as it was typed.
type triangleForm struct{ Drink, Cover, Each, Tasters, Alpha, Power, Share, Seed string }

func readTriangleForm(sent url.Values) triangleForm {
	f := form.Values(sent)
	return triangleForm{Drink: f.Get("drink"), Cover: f.Get("cover"), Each: f.Get("each"), Tasters: f.Get("tasters"),
		Alpha: f.Get("alpha"), Power: f.Get("power"), Share: f.Get("share"), Seed: f.Get("seed")}
}

// values is the form as an address or as hidden fields.
func (f triangleForm) values(seed string) url.Values {
	return url.Values{"drink": {f.Drink}, "cover": {f.Cover}, "each": {f.Each}, "tasters": {f.Tasters}, "alpha": {f.Alpha},
		"power": {f.Power}, "share": {f.Share}, "seed": {seed}}
}

func (f triangleForm) address(seed string) string {
	return trianglePath + "?" + f.values(seed).Encode()
}

// triangle shows the form and past tests, a plan if one is asked for, or a test
// that was begun. A plan without a seed is sent on to an address that has one.
func (p *pages) triangle(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	if r.Method == http.MethodPost {
		return p.picked(w, r)
	}
	if id := r.Form.Get("test"); id != "" {
		kept, err := house.Get[house.Triangle](r.Context(), p.house.Store(), id)
		if errors.Is(err, house.ErrNotFound) {
			return frame.ErrNotFound
		}
		if err != nil {
			return err
		}
		return p.showTriangle(w, r, http.StatusOK, &openTest{Triangle: kept.Item, version: kept.Version}, "")
	}
	sent := readTriangleForm(r.Form)
	asked := r.Form.Has("drink")
	if asked && sent.Seed == "" {
		http.Redirect(w, r, sent.address(newSeed()), http.StatusSeeOther)
		return nil
	}
	v, err := p.triangleView(r.Context(), sent, asked)
	if err != nil {
		return err
	}
	status := http.StatusOK
	if asked {
		test, err := p.planTriangle(r.Context(), sent)
		if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
			v.Trouble, status = words.Sentence(faults[0].Message), http.StatusUnprocessableEntity
		} else if err != nil {
			return err
		} else if v.Test, err = p.testView(r.Context(), test); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "triangle", "layout", v)
}

// showTriangle shows a test that was begun, and what is amiss with it.
func (p *pages) showTriangle(w http.ResponseWriter, r *http.Request, status int, test *openTest, trouble string) error {
	v, err := p.triangleView(r.Context(), triangleForm{}, false)
	if err != nil {
		return err
	}
	if v.Test, err = p.testView(r.Context(), test); err != nil {
		return err
	}
	v.Trouble = trouble
	if status == http.StatusOK {
		back := trianglePath // the test itself is gone if its first picks are taken back
		if test.version > 1 {
			back = form.Link(trianglePath, url.Values{"test": {test.ID}})
		}
		v.Undo = part.UndoIn(r.Form, back)
	}
	return p.Write(w, r, status, "triangle", "layout", v)
}

// openTest is a test as it is laid out or was begun.
type openTest struct {
	house.Triangle
	version int64                    // 0 if it was not begun
	plan    *coaching.TriangleAnswer // nil once it was begun: a record keeps what was served
	form    *triangleForm            // the same
}

// planTriangle lays a test out. It fails with a fault if the form is not whole or
// if a taster would take in more alcohol than in a flight.
func (p *pages) planTriangle(ctx context.Context, sent triangleForm) (*openTest, error) {
	request, err := sent.request()
	if err != nil {
		return nil, err
	}
	return p.layOut(ctx, sent, request)
}

func (p *pages) layOut(ctx context.Context, sent triangleForm, request coaching.TriangleRequest) (*openTest, error) {
	plan, err := p.trainer.Triangle(ctx, request)
	var alcohol *coaching.AlcoholError
	if errors.As(err, &alcohol) {
		return nil, form.Missing("each", say.It("training.too-much-alcohol", "Glass", words.Plain(alcohol.GlassML), "Strength", words.Figure(alcohol.ABVPct, 0),
			"Alcohol", alcoholOf(p.house.Settings(), alcohol.EthanolG), "Limit", alcoholOf(p.house.Settings(), alcohol.LimitG), "Fits", words.Figure(alcohol.FitML, 0)))
	}
	if err != nil {
		return nil, err
	}
	test := house.Triangle{ID: sent.id(), Drink: sent.Drink, Cover: sent.Cover, GlassML: request.GlassML, Alpha: plan.Alpha, Share: plan.Share}
	for _, s := range plan.Servings {
		test.Servings = append(test.Servings, house.TriangleServing{Order: s.Order, Codes: s.Codes})
	}
	return &openTest{Triangle: test, plan: plan, form: &sent}, nil
}

// ofMenu is the drink of the menu that has a name, nil if none has.
func (p *pages) ofMenu(ctx context.Context, name string) (*flavor.Spec, error) {
	menu, err := p.house.Menu(ctx)
	for i := range menu {
		if flavor.NormaliseName(menu[i].Spec.Name) == flavor.NormaliseName(name) {
			return &menu[i].Spec, err
		}
	}
	return nil, err
}

// request reads the form. A number of tasters that is left out is worked out.
func (f triangleForm) request() (r coaching.TriangleRequest, err error) {
	if r.Seed, err = readSeed(f.Seed); err != nil {
		return r, err
	}
	if r.Drink, r.Cover = f.Drink, f.Cover; f.Drink == "" || f.Cover == "" {
		return r, form.Missing("drink", say.It("training.name-drink-and-cover"))
	}
	if f.Tasters != "" {
		if r.Tasters, err = strconv.Atoi(f.Tasters); err != nil || r.Tasters <= 0 {
			return r, form.Missing("tasters", say.It("training.number-of-tasters"))
		}
	}
	sent := form.Values(f.values(f.Seed))
	for _, x := range []struct {
		into        *float64
		field, what string
		least, most float64
	}{{&r.Alpha, "alpha", say.It("training.the-false-alarm"), tasting.LeastAlpha, tasting.MostAlpha},
		{&r.Power, "power", say.It("training.the-power"), tasting.LeastPower, tasting.MostPower},
		{&r.Share, "share", say.It("training.the-share"), 0, 1}} {
		if *x.into, err = sent.Number(x.field, x.what, "%"); err != nil {
			return r, err
		}
		if *x.into /= 100; *x.into <= 0 {
			return r, form.Missing(x.field, say.It("training.more-than-nothing", "What", x.what))
		}
		if *x.into < x.least || *x.into > x.most {
			return r, form.Missing(x.field, say.It("training.from-to-percent", "What", x.what, "Least", words.Plain(100*x.least), "Most", words.Plain(100*x.most)))
		}
	}
	r.GlassML, err = sent.Number("each", say.It("training.what-a-glass-holds"), "mL")
	return r, err
}
