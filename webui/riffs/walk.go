package riffs

import (
	"context"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/walk"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// smallPourML is how much of each drink of a walk is poured: common practice,
// no source.
const smallPourML = 60.0

// walkForm is what the page of walks sends.
type walkForm struct {
	From, To walkEnd
	Steps    int
	Drinker  form.Guest
	Most     limits
}

// walkEnd is one end of a walk: a text, or else a drink of the menu.
type walkEnd struct {
	Field string // from or to
	Title string
	Text  string
	Slug  string
	Menu  []form.Option
	Says  []string // what is wrong with it
}

func readWalkForm(r *http.Request) (walkForm, error) {
	if err := form.Parse(r); err != nil {
		return walkForm{}, err
	}
	end := func(field, title string) walkEnd {
		return walkEnd{Field: field, Title: title, Text: form.Lines(r.Form.Get(field + "-text")), Slug: r.Form.Get(field)}
	}
	f := walkForm{From: end("from", say.It("riffs.from")), To: end("to", say.It("riffs.to")), Steps: walk.DefaultSteps, Most: readLimits(r.Form)}
	if s := r.Form.Get("steps"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > walk.MaxSteps {
			return f, fmt.Errorf("%w: steps %q", form.ErrUnreadable, s)
		}
		f.Steps = n
	}
	var err error
	f.Drinker, err = form.ReadGuest(r.Form)
	return f, err
}

// ForGuest is who the page is shown for.
func (f *walkForm) ForGuest() *form.Guest { return &f.Drinker }

// Link is the address of the walk, which brings it again.
func (f *walkForm) Link() string {
	v := url.Values{}
	for _, e := range []*walkEnd{&f.From, &f.To} {
		if e.written() {
			v.Set(e.Field+"-text", e.Text)
		} else {
			v.Set(e.Field, e.Slug)
		}
	}
	if f.Steps != walk.DefaultSteps {
		v.Set("steps", strconv.Itoa(f.Steps))
	}
	f.Drinker.AddTo(v)
	f.Most.values(v)
	return form.Link("/riffs/walk", v)
}

// Limited reports whether anything but the usual is asked of the walk.
func (f *walkForm) Limited() bool { return f.Most.any() || f.Steps != walk.DefaultSteps }

// Counts are the numbers of steps to choose from.
func (f *walkForm) Counts() []form.Option {
	var out []form.Option
	for n := 1; n <= walk.MaxSteps; n++ {
		out = append(out, form.Option{Value: strconv.Itoa(n), Name: strconv.Itoa(n), Chosen: n == f.Steps})
	}
	return out
}

func (e *walkEnd) written() bool { return strings.TrimSpace(e.Text) != "" }

// Open reports whether the box of a written drink stands open.
func (e *walkEnd) Open() bool { return e.written() || len(e.Menu) == 0 }

// walkPage is the page of walks.
type walkPage struct {
	walkForm
	Found   *walkView
	Trouble string
}

// walkView is a walk.
type walkView struct {
	Title    string
	Sub      string
	Dry      string // how many drinks lack a bottle; empty for none
	Read     string // whose labels must clear the walk for the guest first; empty for none
	Stops    []stopView
	Small    string // what one pour is
	Alcohol  string
	Counted  string // the same in standard drinks of the house's country
	Cautions []riffCaution
}

// stopView is one drink of a walk.
type stopView struct {
	Name string
	Out  string // which of its bottles have run out, and what stands in
	riffView
}

// walk finds drinks that lie between two.
func (p *pages) walk(w http.ResponseWriter, r *http.Request) error {
	form, err := readWalkForm(r)
	if err != nil {
		return err
	}
	menu, err := p.house.Menu(r.Context())
	if err != nil {
		return err
	}
	v := &walkPage{walkForm: form}
	request := walk.Request{Between: v.Steps, Guest: v.Drinker.Limits()}
	for _, end := range []struct {
		of *walkEnd
		to **flavor.Spec
	}{{&v.From, &request.From}, {&v.To, &request.To}} {
		if *end.to, err = end.of.read(p, menu); err != nil {
			return err
		}
	}
	_, ok, err := v.Most.hold(r.Context(), p, &request.Guest)
	if err != nil {
		return err
	}
	status := http.StatusOK
	switch {
	case len(v.From.Says)+len(v.To.Says) > 0 || !ok:
		status = http.StatusUnprocessableEntity
	case request.From != nil && request.To != nil:
		if status, err = v.find(r.Context(), p, request); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "riffs-walk", "layout", v)
}

// read returns the drink of an end, nil if there is none yet; what cannot be
// read is said there.
func (e *walkEnd) read(p *pages, menu []behind.HouseSpec) (*flavor.Spec, error) {
	var chosen *flavor.Spec
	for i := range menu {
		e.Menu = append(e.Menu, form.Option{Value: menu[i].Slug, Name: menu[i].Spec.Name, Chosen: menu[i].Slug == e.Slug})
		if menu[i].Slug == e.Slug {
			chosen = &menu[i].Spec
		}
	}
	if !e.written() {
		if chosen == nil && e.Slug != "" {
			return nil, frame.ErrGone
		}
		if chosen != nil {
			chosen = part.RewrittenInUnits(p.house.Settings(), chosen)
		}
		return chosen, nil
	}
	spec, err := p.bar.Read(e.Text)
	if err == nil {
		_, err = p.bar.Judge(&spec)
	}
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		for _, f := range part.LineFaultsOf(e.Text, faults) {
			says := f.Message
			if f.Line > 0 {
				says = say.It("riffs.line-fault", "Line", f.Line, "Quote", f.Quote, "Trouble", f.Message)
			}
			e.Says = append(e.Says, says)
		}
		return nil, nil
	}
	return &spec, err
}

func (v *walkPage) find(ctx context.Context, p *pages, request walk.Request) (status int, err error) {
	found, err := p.bar.Walk(ctx, request)
	if v.Trouble, status, err = refusal(ctx, err); err != nil || v.Trouble != "" {
		return status, err
	}
	now, err := p.stopsNow(ctx, found.Stops, request.Guest)
	if err != nil {
		return 0, err
	}
	if v.Found, err = p.walkView(found.Stops, &v.Drinker, now); err != nil {
		return 0, err
	}
	v.Found.Read = labelsToRead(found.Labels)
	return http.StatusOK, nil
}

// stopsNow says how the drinks of a walk can be poured now; none if no bottle of them has run
// out. What is written down is taken to be there.
func (p *pages) stopsNow(ctx context.Context, stops []walk.Stop, g guest.Guest) ([]evening.Drink, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	s.Menu = nil
	dry := false
	for i := range stops {
		s.Menu = append(s.Menu, behind.HouseSpec{Spec: stops[i].Spec})
		for _, b := range part.Bottles(&stops[i].Spec) {
			dry = dry || s.IsOut(b)
			if !slices.Contains(s.Stock, b) {
				s.Stock = append(slices.Clone(s.Stock), b)
			}
		}
	}
	if !dry {
		return nil, nil
	}
	now, err := behind.EveningOf(ctx, p.bar, s, g, part.MostParts)
	if err != nil {
		return nil, err
	}
	return now.Drinks, nil
}

// outNow says what of a drink has run out, and what stands in; empty if nothing has.
func outNow(d *evening.Drink) string {
	t := d.Touched
	if t == nil {
		return ""
	}
	names := words.List(part.NamesOf(t.Missing))
	switch poured := d.Poured(); {
	case d.State == evening.NotFor:
		return say.It("riffs.stop-not-for", "Names", names, "Because", d.Because)
	case poured == nil:
		return say.It("riffs.stop-not-poured", "Names", names)
	case t.LeftOut != nil && poured == &t.LeftOut.Spec:
		return say.It("riffs.stop-without", "Names", names)
	default:
		return say.It("riffs.stop-stands-in", "Names", names, "Text", evening.Chosen(t).Text, "New", words.List(newIn(d.Spec, poured)))
	}
}

// newIn lists the allergens of a drink as it is poured that it does not have as written.
func newIn(written, poured *flavor.Spec) (out []string) {
	had := written.Allergens()
	for _, m := range poured.Allergens() {
		if !slices.ContainsFunc(had, func(w flavor.AllergenMark) bool { return w.Allergen == m.Allergen }) {
			out = append(out, string(m.Allergen))
		}
	}
	return out
}

// dryStops says how many drinks of a walk lack a bottle, and how many of these nothing keeps;
// empty if none does.
func dryStops(now []evening.Drink) string {
	touched, lost := 0, 0
	for i := range now {
		if now[i].Touched == nil {
			continue
		}
		if touched++; now[i].Poured() == nil {
			lost++
		}
	}
	if touched == 0 {
		return ""
	}
	return say.It("riffs.dry-stops", "Touched", touched, "All", len(now), "Lost", lost)
}

// walkView shows a walk to a guest, as its drinks can be poured now.
func (p *pages) walkView(stops []walk.Stop, d *form.Guest, now []evening.Drink) (*walkView, error) {
	v := &walkView{Title: say.It("riffs.walk-of", "Drinks", len(stops)), Sub: d.Sentence(), Dry: dryStops(now)}
	var specs []*flavor.Spec
	var ml, grams float64
	for i := range stops {
		s := &stops[i]
		before := &s.Spec
		if i > 0 {
			before = &stops[i-1].Spec
		}
		small := math.Min(smallPourML, s.Drink.VolumeML)
		ml += small
		grams += mix.EthanolG(s.Drink.ABV, small)
		one := stopView{Name: s.Spec.Name, riffView: p.drinkView(fmt.Sprintf("stop-%d", i+1), &s.Spec, before, d, false, "")}
		if len(now) > 0 {
			one.Out = outNow(&now[i])
		}
		if one.Text = words.Sentence(s.Text); one.Name == "" {
			one.Name = say.It("riffs.between", "Number", i)
			switch i {
			case 0:
				one.Name = say.It("riffs.first-drink")
			case len(stops) - 1:
				one.Name = say.It("riffs.last-drink")
			}
		}
		one.Facts = []string{say.It("riffs.scores", "Score", words.Points(s.Score)),
			say.It("riffs.strength-counted", "Strength", words.Figure(s.Drink.ABV, 1), "Counted", p.drinkCounted(s.Drink))}
		if i > 0 {
			one.Facts = append(one.Facts, say.It("riffs.steps-from-before", "Steps", words.Figure(s.Hop, 1)))
			var err error
			if one.Moved, err = part.DifferenceOf(p.bar, one.ID+"-moved", before, &s.Spec); err != nil {
				return nil, err
			}
		}
		v.Stops = append(v.Stops, one)
		specs = append(specs, &s.Spec)
	}
	v.Small = words.Figure(smallPourML, 0) + "\u00a0mL"
	v.Alcohol = say.It("riffs.pours-hold", "Pours", len(stops), "Small", v.Small, "Volume", words.Figure(ml, 0), "Alcohol", words.Figure(grams, 0))
	v.Counted = p.counted(grams)
	v.Cautions = p.cautionsWith(specs, func(one bool, numbers string) string {
		return say.It("riffs.caution-of-drinks", "One", one, "Numbers", numbers)
	})
	return v, nil
}

// labelsToRead says which labels must clear a walk before it is poured; empty for none.
func labelsToRead(bottles []*flavor.Profile) string {
	if len(bottles) == 0 {
		return ""
	}
	names := make([]string, len(bottles))
	for i, b := range bottles {
		names[i] = b.Name
	}
	return say.It("riffs.labels-to-read", "Names", words.List(names))
}

// counted says how many standard drinks of the house's country hold so many grams of
// alcohol.
func (p *pages) counted(grams float64) string {
	said := p.house.Settings()
	s := said.Standard(grams)
	return said.Figures(say.It("riffs.counted", "Number", words.Figure(s.Count, 1), "Grams", words.Plain(math.Round(10*s.Grams)/10), "Country", s.Country))
}

// drinkCounted says the same of one drink.
func (p *pages) drinkCounted(d *mix.Drink) string {
	return p.counted(mix.EthanolG(d.ABV, d.VolumeML))
}
