package specs

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// batchPage is a spec made ahead: what to make, and how.
type batchPage struct {
	Slug, Name string
	Version    int64
	Form       batchForm
	Bottles    []form.Option
	Places     []form.Option
	Fault      string // why there is no batch
	Plan       *batchView
	Allergens  part.Allergens
	Cautions   []behind.Caution
}

// batchForm is what was asked for, as it was typed.
type batchForm struct {
	Make   string // "serves", "bottle" or "keg"
	Serves string
	Bottle string // mL
	Keg    string // litres
	From   string // a place, as prep names it
}

// The things a batch may be made for.
const (
	makeServes = "serves"
	makeBottle = "bottle"
	makeKeg    = "keg"
)

// bottles are the bottles that a batch may fill.
var bottles = []prep.Container{prep.Bottle750, prep.Bottle1000}

var batchPlaces = []form.Option{
	{Value: string(prep.Fridge), Name: "from the fridge, diluted"},
	{Value: string(prep.Freezer), Name: "from the freezer, diluted"},
	{Value: string(prep.ToOrder), Name: "shaken or stirred to order, no water"},
}

func readBatchForm(q url.Values) batchForm {
	or := func(key, usual string) string {
		if v := strings.TrimSpace(q.Get(key)); v != "" {
			return v
		}
		return usual
	}
	return batchForm{Make: or("make", makeServes), Serves: or("serves", "10"), Bottle: or("bottle", "750"), Keg: or("keg", "19"),
		From: or("from", string(prep.Fridge))}
}

// request turns the form into a request of the house, and says what it fills; or it
// says what is wrong with it.
func (f *batchForm) request(slug string) (r service.BatchRequest, fills, fault string) {
	r = service.BatchRequest{Drink: slug, Place: f.From}
	word, unit, most, into := f.Serves, "", 10000.0, &r.Servings
	switch f.Make {
	case makeServes:
	case makeBottle:
		word, unit, most, into = f.Bottle, " mL", 10000, &r.BottleML
		fills = "a " + word + " mL bottle"
	case makeKeg:
		word, unit, most, into = f.Keg, " litres", 200, &r.KegLitres
		fills = "a " + word + " litre keg"
	default:
		return r, "", "Say whether it is for so many serves, for a bottle or for a keg."
	}
	n, err := form.Number(word, "such as 10")
	if err != nil || !(n >= 0.1 && n <= most) {
		return r, "", "“" + word + "” cannot be made; write a number up to " + words.Figure(most, 0) + unit + "."
	}
	*into = n
	return r, fills, ""
}

// batch plans a spec made ahead.
func (p *pages) batch(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	kept, err := house.Get[house.Spec](r.Context(), p.house.Store(), r.PathValue("slug"))
	if errors.Is(err, house.ErrNotFound) {
		return frame.ErrNotFound
	}
	if err != nil {
		return err
	}
	v := &batchPage{Slug: kept.Item.ID, Name: kept.Item.Name, Version: kept.Version, Form: readBatchForm(r.Form)}
	v.Bottles, v.Places = bottleChoices(v.Form.Bottle), form.Choose(batchPlaces, v.Form.From)
	status := http.StatusOK
	if err := p.plan(r.Context(), v, kept.Item); err != nil {
		if v.Fault, status = batchFault(err); v.Fault == "" {
			return err
		}
	} else if v.Fault != "" {
		status = http.StatusUnprocessableEntity
	}
	return p.Write(w, r, status, "batch", "layout", v)
}

// batchFault tells what the mixer or the plan refuses.
func batchFault(err error) (string, int) {
	if faults := form.Faults(err); len(faults) > 0 {
		return words.Sentence(faults[0].Message), http.StatusUnprocessableEntity
	}
	return frame.Told(err)
}

func bottleChoices(chosen string) []form.Option {
	var all []form.Option
	for _, b := range bottles {
		all = append(all, form.Option{Value: words.Figure(b.ML, 0), Name: b.Name})
	}
	return form.Choose(all, chosen)
}

// plan works the batch out.
func (p *pages) plan(ctx context.Context, v *batchPage, kept house.Spec) error {
	drink, err := kept.Flavor(p.house.Shelf())
	if err != nil {
		return err
	}
	v.Allergens, v.Cautions = part.AllergensOf(&drink, nil), p.bar.Cautions(&drink)
	request, fills, fault := v.Form.request(kept.ID)
	if fault != "" {
		v.Fault = fault
		return nil
	}
	a, err := p.house.Batch(ctx, request)
	if err != nil {
		return err
	}
	t, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return err
	}
	v.Plan = batchViewOf(a.Batch, fills)
	v.Plan.Cost = t.Say(a.Cost)
	return nil
}

// batchView is a batch as the page shows it.
type batchView struct {
	For     string // what it is made for
	Lines   []batchLine
	Total   string
	Serving string
	Serves  string
	ABV     string
	Rounded string // what rounding does to the strength
	Freezes string
	Later   string
	Tops    []string
	Apart   []string
	Days    string
	Keep    string
	Notes   []string
	Cost    part.Cost
}

// batchLine is one thing to pour into a batch.
type batchLine struct {
	Name        string
	Jug, Scale  string // rounded; a count stands in both
	Exact, Gram string
	Water       bool
}

func batchViewOf(b *prep.Batch, fills string) *batchView {
	v := &batchView{For: fills, Total: words.Millilitres(b.TotalML) + "\u00a0mL", Serving: words.Millilitres(b.ServingML) + "\u00a0mL",
		Serves: words.Figure(b.Servings, 1), ABV: words.Figure(b.ABVPct, 1) + "\u00a0%\u00a0vol", Freezes: words.Figure(b.FreezingC, 0) + "\u00a0°C", Keep: b.Keep.Text, Notes: b.Notes}
	v.Serves = strings.TrimSuffix(v.Serves, ".0")
	if v.For == "" {
		v.For = v.Serves + " serves"
	}
	v.Rounded = words.Figure(b.ByJugABVPct, 1) + " by the jug, " + words.Figure(b.ByScaleABVPct, 1) + " by the scale"
	if b.LaterML > 0 {
		v.Later = words.Millilitres(b.LaterML) + "\u00a0mL"
	}
	for _, l := range b.Lines {
		v.Lines = append(v.Lines, batchLineOf(&l, b.Water == l))
	}
	v.Tops, v.Apart = pourList(b.Tops), pourList(b.Apart)
	if b.Keep.Days > 0 {
		v.Days = "At most " + words.Count(b.Keep.Days, "day", "days") + ": " + b.Keep.Because
	}
	return v
}

func batchLineOf(l *prep.Line, water bool) batchLine {
	out := batchLine{Name: l.Name, Jug: words.Plain(l.JugML) + "\u00a0mL", Scale: words.Plain(l.ScaleG) + "\u00a0g",
		Exact: words.Figure(l.ML, 1) + "\u00a0mL", Gram: words.Figure(l.G, 1) + "\u00a0g", Water: water}
	if l.Count > 0 {
		pour := flavor.Pour{Amount: l.Count, Unit: l.Unit}
		out.Jug, out.Scale = part.Amount(&pour), part.Amount(&pour)
	}
	return out
}

func pourList(pours []flavor.Pour) []string {
	var out []string
	for i := range pours {
		out = append(out, part.Amount(&pours[i])+" "+pours[i].Profile.Name)
	}
	return slices.Clip(out)
}
