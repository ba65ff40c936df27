package riffs

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"counterpour/api/service/remedy"
	"counterpour/flavor"
	"counterpour/flavor/riff"
	"counterpour/flavor/riff/wish"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// riffsForm is what the page of riffs sends.
type riffsForm struct {
	Text    string
	Undo    string // the text before it became another
	CanUndo bool
	Wishes  wishes
	Drinker form.Guest
	All     bool   // from the whole catalogue, not only the house's stock
	Cost    string // the most that a drink may cost, as typed
	List    listing
}

// readRiffsForm reads the form of a POST, or the address of a GET, so that a
// list can be linked to.
func readRiffsForm(r *http.Request) (riffsForm, error) {
	if err := form.Parse(r); err != nil {
		return riffsForm{}, err
	}
	f := riffsForm{Text: form.Lines(r.Form.Get("text")), Wishes: readWishes(r.Form), All: r.Form.Get("from") == "all",
		Cost: strings.TrimSpace(r.Form.Get("cost"))}
	if become, ok := r.Form["become"]; ok {
		typed := f.Text
		f.Text = form.Lines(become[0])
		f.Undo, f.CanUndo = typed, strings.TrimSpace(typed) != "" && typed != f.Text
	}
	var err error
	if f.Drinker, err = form.ReadGuest(r.Form); err != nil {
		return f, err
	}
	f.List, err = readListing(r.Form)
	return f, err
}

// ForGuest is who the page is shown for.
func (f *riffsForm) ForGuest() *form.Guest { return &f.Drinker }

// Link is the address of the list, which brings it again.
func (f *riffsForm) Link() string {
	v := url.Values{"text": {f.Text}}
	f.Wishes.values(v)
	f.Drinker.AddTo(v)
	f.List.values(v)
	if f.All {
		v.Set("from", "all")
	}
	if f.Cost != "" {
		v.Set("cost", f.Cost)
	}
	return form.Link("/riffs", v)
}

// Again asks for others.
func (f *riffsForm) Again() again { return again{"draft", f.Link(), f.List} }

// Limited reports whether anything but the usual is asked of the list.
func (f *riffsForm) Limited() bool { return f.All || f.Cost != "" || f.List.Limit != defaultRiffs }

// riffsPage is the page of riffs.
type riffsPage struct {
	riffsForm
	Examples []part.Example
	Priced   bool // the house has prices
	Faults   []part.Refused
	WishSays []string // what is wrong with the wishes
	CostSays string
	Found    *riffsView
	Trouble  string // why there is no list

	tariff *part.Tariff
}

// riffs answers a draft with what else it could become.
func (p *pages) riffs(w http.ResponseWriter, r *http.Request) error {
	form, err := readRiffsForm(r)
	if err != nil {
		return err
	}
	t, err := part.TariffOf(r.Context(), p.house)
	if err != nil {
		return err
	}
	v := &riffsPage{riffsForm: form, Examples: part.ExamplesOf(p.bar, p.house.Settings()), Priced: len(t.PerML) > 0, tariff: t}
	status := http.StatusOK
	if strings.TrimSpace(form.Text) != "" {
		if status, err = v.fill(r.Context(), p); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "riffs", "layout", v)
}

// refuse says what is wrong with the draft, with what mends it.
func (v *riffsPage) refuse(p *pages, faults flavor.DataFaults) error {
	rest, err := p.bar.ReadRest(v.Text)
	if err != nil && len(flavor.DataFaultsOf(err)) == 0 {
		return err
	}
	v.Faults, err = part.RefusedOf(p.bar, remedy.Request{Text: v.Text, Faults: faults, Rest: &rest, Guest: v.Drinker.Limits()})
	for i := range v.Faults {
		v.Faults[i].Unknown = "" // a word of the house is taught on the bench
	}
	return err
}

// fill reads what was written and finds riffs; what cannot be read is said
// where it stands.
func (v *riffsPage) fill(ctx context.Context, p *pages) (status int, err error) {
	spec, err := p.bar.Read(v.Text)
	if err == nil {
		_, err = p.bar.Judge(&spec)
	}
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		err = v.refuse(p, faults)
	}
	if err != nil {
		return 0, err
	}
	request := riff.Request{Spec: &spec, Guest: v.Drinker.Limits(), Limit: v.List.Limit, Seed: v.List.Seed}
	if len(v.Faults) == 0 {
		if request.Stock, err = p.pourable(ctx, v.All, &spec); err != nil {
			return 0, err
		}
	}
	if request.Toward, err = wish.Parse(v.Wishes.all(), wish.NamesIn(request.Stock)); err != nil {
		for _, f := range flavor.DataFaultsOf(err) {
			v.WishSays = append(v.WishSays, words.Sentence(f.Message))
		}
	}
	request.Guest.Prices = v.tariff.PerML
	if v.Cost != "" {
		if request.Guest.MaxCost, err = mostCost(v.Cost, v.tariff); err != nil {
			v.CostSays = words.Sentence(err.Error())
		}
	}
	if len(v.Faults)+len(v.WishSays)+len(v.CostSays) > 0 {
		return http.StatusUnprocessableEntity, nil
	}
	return v.find(ctx, p, &request)
}

// find looks for riffs, and says so if there can be none.
func (v *riffsPage) find(ctx context.Context, p *pages, request *riff.Request) (status int, err error) {
	found, err := p.bar.Riff(ctx, *request)
	if v.Trouble, status, err = refusal(ctx, err); err != nil || v.Trouble != "" {
		return status, err
	}
	v.Found, err = p.riffsView(request, found, &v.Drinker, v.tariff)
	return http.StatusOK, err
}

// tooLong is what a page says if the time for an answer ran out.
// refusal turns a fault into what a page says of it; other errors stay.
func refusal(ctx context.Context, err error) (says string, status int, other error) {
	faults := flavor.DataFaultsOf(err)
	switch {
	case err == nil:
		return "", http.StatusOK, nil
	case len(faults) > 0:
		said := make([]string, len(faults))
		for i, f := range faults {
			said[i] = words.Sentence(f.Message)
		}
		return strings.Join(said, " "), http.StatusUnprocessableEntity, nil
	case errors.Is(err, context.DeadlineExceeded) && ctx.Err() == nil || errors.Is(ctx.Err(), context.DeadlineExceeded):
		return say.It("riffs.took-too-long"), http.StatusServiceUnavailable, nil
	}
	return "", 0, err
}

// mostCost reads the most that a drink may cost.
func mostCost(typed string, t *part.Tariff) (float64, error) {
	if len(t.PerML) == 0 {
		return 0, errors.New(say.It("riffs.no-prices"))
	}
	v, err := form.PriceIn(typed, t.Currency, say.It("riffs.such-as-a-cost"))
	if errors.Is(err, form.ErrCurrency) {
		return 0, err
	}
	if err != nil || !(v > 0) {
		return 0, errors.New(say.It("riffs.no-cost", "Typed", strconv.Quote(typed)))
	}
	return v, nil
}

// pourable lists what may be poured: what the house has and has not run out of,
// or everything, and what the drafts are made of unless the house has run out
// of it.
func (p *pages) pourable(ctx context.Context, everything bool, drafts ...*flavor.Spec) ([]*flavor.Profile, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	seen := map[string]bool{}
	for _, b := range s.Out {
		seen[b.ID] = !everything
	}
	var out []*flavor.Profile
	add := func(list []*flavor.Profile) {
		for _, b := range list {
			if !seen[b.ID] {
				seen[b.ID] = true
				out = append(out, b)
			}
		}
	}
	add(s.Stock)
	for _, d := range drafts {
		add(part.Bottles(d))
	}
	if everything {
		add(p.house.Shelf().Profiles())
	}
	return out, nil
}

// benchLink is the address of the bench with a drink on it, for a guest.
func (p *pages) benchLink(s *flavor.Spec, d *form.Guest) string {
	return part.BenchAddress(part.DraftInUnits(p.house.Settings(), s), d)
}
