package training

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/mix"
	"counterpour/webui/form"
	"counterpour/webui/frame"
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
		if faults := form.Faults(err); len(faults) > 0 {
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
	return p.Write(w, r, status, "triangle", "layout", v)
}

// openTest is a test as it is laid out or was begun.
type openTest struct {
	house.Triangle
	version int64         // 0 if it was not begun
	plan    *planned      // nil once it was begun: a record keeps what was served
	form    *triangleForm // the same
}

// planned is what a plan says of itself.
type planned struct {
	drill.Triangle
	wanted  float64 // power
	enough  int     // tasters who would have it; 0 if no number that is planned here has
	ethanol float64 // g that one taster takes in
	assumed bool    // the strength is not known and was taken to be that of a spirit
}

// spiritABV is what a drink of unknown strength is taken to have, in % vol: a
// neat spirit (common practice, no source), so that the limit errs on the safe side.
const spiritABV = 40.0

// glassesServed is how many glasses a taster of a triangle test has.
const glassesServed = 3

// planTriangle lays a test out. It fails with a fault if the form is not whole or
// if a taster would take in more alcohol than in a flight.
func (p *pages) planTriangle(ctx context.Context, sent triangleForm) (*openTest, error) {
	request, each, err := sent.request()
	if err != nil {
		return nil, err
	}
	plan, err := drill.PlanTriangle(request)
	if err != nil {
		return nil, err
	}
	if plan.Tasters > house.MaxList {
		return nil, form.Missing("share", fmt.Sprintf("that takes %d tasters, and %d are the most that are recorded here; ask for less power or a larger share", plan.Tasters, house.MaxList))
	}
	x := &planned{Triangle: *plan, wanted: request.Power}
	abv, known, err := p.strengthOf(ctx, sent.Drink)
	if err != nil {
		return nil, err
	}
	x.assumed = !known
	x.ethanol = mix.EthanolG(abv, glassesServed*each)
	if most := drill.MaxTasterDrinks * usDrinkG; x.ethanol > most {
		return nil, form.Missing("each", fmt.Sprintf("three glasses of %s mL at %s %% vol hold %s; the limit is %s. Pour %s mL each",
			words.Plain(each), words.Figure(abv, 0), alcoholOf(x.ethanol), alcoholOf(most), words.Figure(each*most/x.ethanol-0.5, 0)))
	}
	request.Tasters = 0
	if enough, err := drill.PlanTriangle(request); err == nil {
		x.enough = enough.Tasters
	}
	test := house.Triangle{ID: sent.id(), Drink: sent.Drink, Cover: sent.Cover, GlassML: each, Alpha: plan.Alpha, Share: plan.Share}
	for _, s := range plan.Servings {
		test.Servings = append(test.Servings, house.TriangleServing{Order: s.Order, Codes: s.Codes})
	}
	return &openTest{Triangle: test, plan: x, form: &sent}, nil
}

// usDrinkG is a standard drink of the United States, in g of ethanol (NIAAA).
const usDrinkG = 14.0

// strengthOf is how strong a drink of the menu finishes, in % vol. For any other
// it is that of a spirit, and false.
func (p *pages) strengthOf(ctx context.Context, name string) (abv float64, known bool, err error) {
	spec, err := p.ofMenu(ctx, name)
	if spec == nil || err != nil {
		return spiritABV, false, err
	}
	judged, err := p.bar.Judge(spec)
	if len(form.Faults(err)) > 0 {
		return spiritABV, false, nil
	}
	if err != nil {
		return 0, false, err
	}
	return judged.Drink.ABV, true, nil
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
func (f triangleForm) request() (r drill.TriangleRequest, each float64, err error) {
	if r.Seed, err = readSeed(f.Seed); err != nil {
		return r, 0, err
	}
	if f.Drink == "" || f.Cover == "" {
		return r, 0, form.Missing("drink", "name the drink and what is poured in the cover")
	}
	if f.Tasters != "" {
		if r.Tasters, err = strconv.Atoi(f.Tasters); err != nil || r.Tasters <= 0 {
			return r, 0, form.Missing("tasters", "write the number of tasters as a whole number, or leave it out to have it worked out")
		}
	}
	sent := form.Values(f.values(f.Seed))
	for _, x := range []struct {
		into        *float64
		field, what string
	}{{&r.Alpha, "alpha", "the chance of a false alarm"}, {&r.Power, "power", "the power"}, {&r.Share, "share", "the share who can tell"}} {
		if *x.into, err = sent.Number(x.field, x.what, "%"); err != nil {
			return r, 0, err
		}
		if *x.into /= 100; *x.into <= 0 {
			return r, 0, form.Missing(x.field, x.what+" must be more than 0 %")
		}
	}
	if each, err = sent.Number("each", "what a glass holds", "mL"); err != nil {
		return r, 0, err
	}
	if !(each >= leastGlass && each <= mostGlass) {
		return r, 0, form.Missing("each", fmt.Sprintf("%s mL is no glass for a triangle test; pour %s to %s mL", words.Plain(each), words.Plain(leastGlass), words.Plain(mostGlass)))
	}
	return r, each, nil
}

// Limits of a glass of a triangle test, in mL: common practice, no source.
const (
	leastGlass = 5.0
	mostGlass  = 120.0
)
