package specs

import (
	"context"
	"errors"
	"math"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/measure/pattern"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// batchPage is a spec made ahead: what to make, and how.
type batchPage struct {
	Slug, Name string
	Version    int64
	Form       batchForm
	Sizes      []form.Option
	Places     []form.Option
	Fresh      bool   // there is juice in it
	Out        string // which of its bottles ran out; empty if none did
	Fault      string // why there is no batch
	Plan       *batchView
	Allergens  part.Allergens
	Cautions   []behind.Caution
}

// batchForm is what was asked for, as it was typed.
type batchForm struct {
	Amount string // a number, with or without its unit
	Of     string // what is counted; a name of batchSizes
	From   string // a place, as prep names it
	Juice  string // "apart" leaves fresh juice for each drink
}

// batchSize is something that a batch is counted in.
type batchSize struct {
	id    string
	ml    float64 // 0 for serves
	spelt *pattern.Pattern
}

// batchSizes are the ways to say how much; a unit that is typed with the number
// counts for more than the chosen one.
var batchSizes = []batchSize{
	{"serves", 0, pattern.Of(`^(?i:serves?|servings?|drinks?)$`)},
	{"litres", 1000, pattern.Of(`^(?i:l|lit(?:re|er)s?)$`)},
	{"ml", 1, pattern.Of(`^(?i:ml|millilit(?:re|er)s?)$`)},
	{"bottles-700", 700, nil},
	{"bottles-750", 750, nil},
	{"bottles-1000", 1000, nil},
}

// name is what is counted, where it is chosen.
func (s *batchSize) name() string {
	switch s.id {
	case "litres":
		return say.It("specs.litres")
	case "ml":
		return say.It("specs.millilitres")
	case "bottles-700":
		return say.It("specs.bottles-700")
	case "bottles-750":
		return say.It("specs.bottles-750")
	case "bottles-1000":
		return say.It("specs.bottles-1000")
	}
	return say.It("specs.servings")
}

// fills says an amount of what is counted, as it was typed; empty for servings.
func (s *batchSize) fills(amount string, one bool) string {
	switch s.id {
	case "litres":
		return say.It("specs.fills-litres", "Amount", amount, "One", one)
	case "ml":
		return say.It("specs.fills-millilitres", "Amount", amount)
	case "bottles-700":
		return say.It("specs.fills-bottles-700", "Amount", amount, "One", one)
	case "bottles-750":
		return say.It("specs.fills-bottles-750", "Amount", amount, "One", one)
	case "bottles-1000":
		return say.It("specs.fills-bottles-1000", "Amount", amount, "One", one)
	}
	return ""
}

func batchPlaces() []form.Option {
	return []form.Option{
		{Value: string(prep.Fridge), Name: say.It("specs.from-the-fridge")},
		{Value: string(prep.Freezer), Name: say.It("specs.from-the-freezer")},
		{Value: string(prep.ToOrder), Name: say.It("specs.to-order")},
	}
}

func readBatchForm(q url.Values) batchForm {
	or := func(key, usual string) string {
		if v := strings.TrimSpace(q.Get(key)); v != "" {
			return v
		}
		return usual
	}
	f := batchForm{Amount: strings.TrimSpace(q.Get("amount")), Of: or("of", batchSizes[0].id), From: or("from", string(prep.Fridge)), Juice: q.Get("juice")}
	if !q.Has("amount") {
		f.Amount = "10"
	}
	if m := typedAmount.FindStringSubmatch(f.Amount); m != nil && m[2] != "" {
		for _, size := range batchSizes {
			if size.spelt != nil && size.spelt.MatchString(m[2]) {
				f.Amount, f.Of = m[1], size.id
				return f
			}
		}
		if bottles.MatchString(m[2]) {
			if f.Amount = m[1]; !strings.HasPrefix(f.Of, "bottles-") {
				f.Of = usualBottle
			}
			return f
		}
		if ml, err := form.Quantity(f.Amount, "mL"); err == nil { // such as 70 cl
			f.Amount, f.Of = strings.ReplaceAll(words.Millilitres(ml), "\u00a0", ""), "ml"
		}
	}
	return f
}

// typedAmount is a number and, perhaps, its unit: "5 L", "½ L".
var typedAmount = pattern.Of(`^([\d.,/⁄½¼¾⅓⅔⅛ ]*[\d½¼¾⅓⅔⅛])\s*(\pL*)$`)

// bottles is a unit of which the size is chosen, or is the usual one.
var bottles = pattern.Of(`^(?i:bottles?|btls?)$`)

const usualBottle = "bottles-700"

// mostBatchML and mostServes bound a batch.
const (
	mostBatchML = 200_000.0
	mostServes  = 10_000.0
)

// request turns the form into a request of the house, and says what it makes; or it
// says what is wrong with it.
func (f *batchForm) request(slug string) (r service.BatchRequest, fills, fault string) {
	r = service.BatchRequest{Draft: service.Draft{Drink: &slug}, Place: f.From, JuiceApart: f.Juice == "apart"}
	at := slices.IndexFunc(batchSizes, func(s batchSize) bool { return s.id == f.Of })
	if at < 0 {
		return r, "", say.It("specs.say-what-to-count")
	}
	size := batchSizes[at]
	if f.Amount == "" {
		return r, "", say.It("specs.say-how-much")
	}
	n, err := form.Quantity(f.Amount, "")
	if err != nil || !(n > 0) {
		return r, "", say.It("specs.cannot-be-made", "Amount", f.Amount)
	}
	if size.ml == 0 {
		if r.Servings = n; n > mostServes {
			return r, "", say.It("specs.too-many-servings", "Most", words.Figure(mostServes, 0))
		}
		return r, "", ""
	}
	if r.BottleML = n * size.ml; r.BottleML > mostBatchML {
		return r, "", say.It("specs.too-many-litres", "Most", words.Figure(mostBatchML/1000, 0))
	}
	return r, size.fills(f.Amount, n == 1), ""
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
	v.Sizes, v.Places = sizeChoices(v.Form.Of), form.Choose(batchPlaces(), v.Form.From)
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
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		return words.Sentence(faults[0].Message), http.StatusUnprocessableEntity
	}
	return frame.Told(err)
}

func sizeChoices(chosen string) []form.Option {
	var all []form.Option
	for _, b := range batchSizes {
		all = append(all, form.Option{Value: b.id, Name: b.name()})
	}
	return form.Choose(all, chosen)
}

// plan works the batch out.
func (p *pages) plan(ctx context.Context, v *batchPage, kept house.Spec) error {
	drink, err := kept.Flavor(p.house.Shelf())
	if err != nil {
		return err
	}
	v.Allergens, v.Cautions, v.Fresh = part.AllergensOf(&drink, nil), p.bar.Cautions(&drink), prep.HasJuice(&drink)
	outs, err := p.house.RunOut(ctx)
	if err != nil {
		return err
	}
	v.Out = part.OutLine(&drink, outs)
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
	v.Plan = batchViewOf(p.house.Settings(), a.Batch, fills)
	v.Plan.Cost = t.Say(a.Cost)
	bottles, err := house.All[house.Bottle](ctx, p.house.Store())
	if err != nil {
		return err
	}
	v.Plan.open(a.Batch, house.Items(bottles))
	return nil
}

// open says of each line how many bottles it takes, and whether the house has them.
func (v *batchView) open(b *prep.Batch, bottles []house.Bottle) {
	poured := house.Wells(bottles)
	for i := range b.Lines {
		l := &b.Lines[i]
		well, known := poured[l.Ingredient]
		asked, full := l.JugML, well.SizeML
		if well.SizeG > 0 {
			asked, full = l.ScaleG, well.SizeG
		}
		if !known || l.Free || l.Count > 0 || full <= 0 {
			continue
		}
		there := 0.0
		for _, other := range bottles {
			if other.Ingredient == l.Ingredient && other.There() {
				there += other.Stock * max(other.SizeML, other.SizeG)
			}
		}
		v.Lines[i].Bottles = say.It("specs.bottles-of", "Bottles", int(math.Ceil(asked/full-roundOff)), "Size", part.SizeOf(&well))
		v.Lines[i].Short = there < asked*(1-roundOff)
		v.Lines[i].Here = strings.TrimSuffix(words.Figure(there/full, 1), ".0")
	}
}

// roundOff is the part of a bottle that the rounding of a jug may ask for too much.
const roundOff = 0.005

// batchView is a batch as the page shows it.
type batchView struct {
	For     string // what it is made for
	Lines   []batchLine
	Sum     batchLine // of the lines as shown
	Total   string
	Serving string
	Serves  string
	ABV     string
	Rounded string // what rounding does to the strength
	Freezes string // empty for a drink that is served hot
	Iced    bool   // it holds water in place of ice
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
	Bottles     string // how many are opened; empty if that is not known
	Here        string // how many the house has, as many of the same size
	Short       bool   // those do not do
}

// hairServing is the part of a serving that is missing where nobody would see it.
const hairServing = 0.01

func batchViewOf(said house.Settings, b *prep.Batch, fills string) *batchView {
	v := &batchView{For: fills, Total: words.Millilitres(b.TotalML) + "\u00a0mL", Serving: words.Millilitres(b.ServingML) + "\u00a0mL",
		Serves: strings.TrimSuffix(words.Figure(b.Servings, 1), ".0"), ABV: words.Figure(b.ABVPct, 1) + "\u00a0%\u00a0vol", Iced: b.Water.ML > 0 || b.LaterML > 0, Keep: b.Keep.Text, Notes: b.Notes}
	if v.For == "" {
		v.For = say.It("specs.for-servings", "Servings", v.Serves)
	} else if b.Servings >= 1 { // what is left of another is not served
		v.Serves = words.Figure(math.Floor(b.Servings+hairServing), 0)
	}
	v.Rounded = say.It("specs.by-volume-by-weight", "ByVolume", words.Figure(b.ByJugABVPct, 1), "ByWeight", words.Figure(b.ByScaleABVPct, 1))
	if !b.Hot { // nobody freezes what is warmed
		v.Freezes = words.Figure(b.FreezingC, 0) + "\u00a0°C"
	}
	if b.LaterML > 0 {
		v.Later = words.Millilitres(b.LaterML) + "\u00a0mL"
	}
	for _, l := range b.Lines {
		v.Lines = append(v.Lines, batchLineOf(&l, b.Water == l))
	}
	v.Sum = batchLineOf(&b.Sum, false)
	v.Tops, v.Apart = pourList(said, b.Tops), pourList(said, b.Apart)
	if b.Keep.Days > 0 {
		v.Days = say.It("specs.at-most-days", "Days", b.Keep.Days, "Because", b.Keep.Because)
	}
	return v
}

func batchLineOf(l *prep.BatchLine, water bool) batchLine {
	out := batchLine{Name: l.Name, Jug: words.Plain(l.JugML) + "\u00a0mL", Scale: words.Plain(l.ScaleG) + "\u00a0g",
		Exact: words.Figure(l.ML, 1) + "\u00a0mL", Gram: words.Figure(l.G, 1) + "\u00a0g", Water: water}
	if l.Count > 0 {
		pour := flavor.Pour{Amount: l.Count, Unit: l.Unit}
		out.Jug, out.Scale = part.Amount(&pour), part.Amount(&pour)
	}
	return out
}

// pourList lists pours in the units of the house.
func pourList(said house.Settings, pours []flavor.Pour) []string {
	var out []string
	for i := range pours {
		shown := said.Pour(pours[i])
		out = append(out, part.Amount(&shown)+" "+shown.Profile.Name)
	}
	return slices.Clip(out)
}
