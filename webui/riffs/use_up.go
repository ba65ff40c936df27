package riffs

import (
	"cmp"
	"context"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/left"
	"counterpour/flavor/riff/useup"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// useUpForm is what the page of bottles that must move sends.
type useUpForm struct {
	Ticked  []string // ids of bottles of the house
	Names   string   // of other bottles, a line each
	Filter  string
	Unit    string
	Usual   string // unit of the house
	Drinker form.Guest
	Most    limits
	List    listing
}

// readUseUpForm reads the form; amounts that it gives no unit are in the house's.
func readUseUpForm(r *http.Request, units measure.System) (useUpForm, error) {
	if err := form.Parse(r); err != nil {
		return useUpForm{}, err
	}
	f := useUpForm{Names: form.Lines(r.Form.Get("names")), Filter: strings.TrimSpace(r.Form.Get("filter")), Unit: r.Form.Get("unit"), Usual: string(cmp.Or(units, measure.Imperial)), Most: readLimits(r.Form)}
	for _, id := range r.Form["bottle"] {
		if id != "" && !slices.Contains(f.Ticked, id) {
			f.Ticked = append(f.Ticked, id)
		}
	}
	f.Unit = cmp.Or(f.Unit, f.Usual)
	if f.Unit != string(measure.Imperial) && f.Unit != string(measure.Metric) {
		return f, fmt.Errorf("%w: unit %q", form.ErrUnreadable, f.Unit)
	}
	var err error
	if f.Drinker, err = form.ReadGuest(r.Form); err != nil {
		return f, err
	}
	f.List, err = readListing(r.Form)
	return f, err
}

// ForGuest is who the page is shown for.
func (f *useUpForm) ForGuest() *form.Guest { return &f.Drinker }

// Link is the address of the list, which brings it again.
func (f *useUpForm) Link() string {
	v := url.Values{"bottle": f.Ticked}
	if strings.TrimSpace(f.Names) != "" {
		v.Set("names", f.Names)
	}
	if f.Unit != f.Usual {
		v.Set("unit", f.Unit)
	}
	f.Drinker.AddTo(v)
	f.Most.values(v)
	f.List.values(v)
	return form.Link("/riffs/use-up", v)
}

// Again asks for others.
func (f *useUpForm) Again() again { return again{"use-up", f.Link(), f.List} }

// Limited reports whether anything but the usual is asked of the list.
func (f *useUpForm) Limited() bool {
	return f.Most.any() || f.Unit != f.Usual || f.List.Limit != defaultRiffs
}

// Units are the measures to choose from.
func (f *useUpForm) Units() []form.Option {
	out := form.Options([]string{string(measure.Imperial), string(measure.Metric)}, f.Unit)
	out[1].Name = "mL"
	return out
}

// useUpPage is the page of bottles that must move.
type useUpPage struct {
	useUpForm
	Shelves   []tickShelf
	Kept      int // bottles that the house has
	Any       bool
	NamesSays []string
	Found     *useUpView
	Trouble   string

	left []leftOver // of the bottles that were typed with an amount
}

// leftOver is how much of a bottle is left, in mL.
type leftOver struct {
	of *flavor.Profile
	ml float64
}

// enoughFor says how many of a draft what is left makes, a sentence for each bottle whose
// amount was typed.
func (v *useUpPage) enoughFor(uses []useup.Use) (out []string) {
	for _, l := range v.left {
		for _, u := range uses {
			if u.Profile == l.of && u.ML > 0 {
				out = append(out, say.It("riffs.enough-for", "Left", words.Figure(l.ml, 0), "Name", l.of.Name, "Drinks", int(l.ml/u.ML+1e-9)))
			}
		}
	}
	return out
}

// tickShelf is the bottles of the house that do one thing in a drink.
type tickShelf struct {
	Title   string
	Bottles []form.Option
	Open    bool
}

// useUpView is a list of drafts.
type useUpView struct {
	Title    string
	Sub      string
	Riffs    cards
	Unused   []unusedView
	Cautions []riffCaution
}

// unusedView is a bottle that found no use.
type unusedView struct{ Name, Why string }

// useUp drafts drinks that use bottles up.
func (p *pages) useUp(w http.ResponseWriter, r *http.Request) error {
	form, err := readUseUpForm(r, p.house.Settings().Units)
	if err != nil {
		return err
	}
	s, err := behind.ShiftOf(r.Context(), p.house)
	if err != nil {
		return err
	}
	v := &useUpPage{useUpForm: form}
	bottles, gone := v.shelve(s)
	named, err := v.named(p)
	if err != nil {
		return err
	}
	bottles = append(bottles, named...)
	v.Any = len(bottles) > 0
	g := v.Drinker.Limits()
	t, ok, err := v.Most.hold(r.Context(), p, &g)
	if err != nil {
		return err
	}
	status := http.StatusOK
	switch {
	case len(gone) > 0:
		v.Trouble, status = say.It("riffs.not-in-stock", "Names", words.List(p.namesOf(gone))), http.StatusConflict
	case len(v.NamesSays) > 0 || !ok:
		status = http.StatusUnprocessableEntity
	case v.Any:
		if status, err = v.find(r.Context(), p, bottles, &g, t); err != nil {
			return err
		}
	}
	return p.Write(w, r, status, "riffs-use-up", "layout", v)
}

// shelve lists the bottles to tick, those that the filter lets through and those
// that are ticked; it returns the ticked ones, and the ids of those that are not there.
func (v *useUpPage) shelve(s *behind.Shift) (ticked []*flavor.Profile, gone []string) {
	there := map[string]*flavor.Profile{}
	for _, t := range part.ShelfTitles() {
		shelf := tickShelf{Title: t.Title, Open: v.Filter != ""}
		for _, b := range s.Stock {
			if b.Class.Part() != t.Part || s.IsOut(b) {
				continue
			}
			v.Kept++
			there[b.ID] = b
			is := slices.Contains(v.Ticked, b.ID)
			if !is && !strings.Contains(flavor.NormaliseName(b.Name), flavor.NormaliseName(v.Filter)) {
				continue
			}
			shelf.Bottles = append(shelf.Bottles, form.Option{Value: b.ID, Name: b.Name, Chosen: is})
			shelf.Open = shelf.Open || is
		}
		if len(shelf.Bottles) > 0 {
			v.Shelves = append(v.Shelves, shelf)
		}
	}
	for _, id := range v.Ticked {
		if b, ok := there[id]; ok {
			ticked = append(ticked, b)
		} else {
			gone = append(gone, id)
		}
	}
	return ticked, gone
}

// namesOf are the names of ingredients, by their ids; an id that nobody knows stands
// for itself.
func (p *pages) namesOf(ids []string) []string {
	out := slices.Clone(ids)
	for i, id := range ids {
		if b, ok := p.house.Shelf().ByID(id); ok {
			out[i] = b.Name
		}
	}
	return out
}

// named finds the bottles that were typed, separated by commas or lines.
func (v *useUpPage) named(p *pages) ([]*flavor.Profile, error) {
	var out []*flavor.Profile
	for _, name := range splitWishes(v.Names) {
		b, err := p.bar.Named(name)
		if ml, bare, cut := left.Cut(name); cut && err != nil {
			if b, err = p.bar.Named(bare); err == nil {
				v.left = append(v.left, leftOver{b, ml})
			}
		}
		if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
			v.NamesSays = append(v.NamesSays, words.Sentence(faults[0].Message))
			continue
		}
		if err != nil {
			return nil, err
		}
		out = append(out, b)
	}
	return out, nil
}

func (v *useUpPage) find(ctx context.Context, p *pages, bottles []*flavor.Profile, g *guest.Guest, t *part.Tariff) (status int, err error) {
	request := useup.Request{Bottles: bottles, Guest: *g, System: measure.System(v.Unit), Limit: v.List.Limit, Seed: v.List.Seed}
	if request.Stock, err = p.pourable(ctx, false); err != nil {
		return 0, err
	}
	found, err := p.bar.UseUp(ctx, request)
	if v.Trouble, status, err = refusal(ctx, err); err != nil || v.Trouble != "" {
		return status, err
	}
	v.Found = p.useUpView(&request, found, &v.Drinker, t)
	for i := range found.Drafts {
		one := &v.Found.Riffs[i]
		one.Facts = append(v.enoughFor(found.Drafts[i].Uses), one.Facts...)
	}
	return http.StatusOK, nil
}

func (p *pages) useUpView(request *useup.Request, found *useup.Result, d *form.Guest, t *part.Tariff) *useUpView {
	v := &useUpView{Title: say.It("riffs.drafts", "Drafts", len(found.Drafts)), Sub: d.Sentence()}
	var specs []*flavor.Spec
	for i := range found.Drafts {
		x := &found.Drafts[i]
		one := p.drinkView(fmt.Sprintf("draft-%d", i+1), &x.Spec, &flavor.Spec{}, d, i < mostDrawn, x.FamilyID)
		one.Name, one.Because, one.Text = x.Name, words.Sentence(x.Why), said(x.Text)
		one.New = nil // there was no drink before
		for k := range one.Pours {
			one.Pours[k].Mark = ""
			if slices.ContainsFunc(x.Uses, func(u useup.Use) bool { return u.Profile.Name == one.Pours[k].Name }) {
				one.Pours[k].Mark = say.It("riffs.must-move")
			}
		}
		one.Facts = []string{say.It("riffs.scores", "Score", words.Points(x.Score)),
			say.It("riffs.strength-and-volume", "Strength", words.Figure(x.Drink.ABV, 1), "Volume", words.Figure(x.Drink.VolumeML, 0)),
			say.It("riffs.that-is", "Counted", p.drinkCounted(x.Drink))}
		one.Facts = append(one.Facts, t.Fact(&x.Spec)...)
		v.Riffs = append(v.Riffs, one)
		specs = append(specs, &x.Spec)
	}
	for _, u := range found.Unused {
		v.Unused = append(v.Unused, unusedView{u.Profile.Name, words.Sentence(u.String())})
	}
	v.Cautions = p.cautionsWith(specs, func(one bool, numbers string) string {
		return say.It("riffs.caution-of-drafts", "One", one, "Numbers", numbers)
	})
	return v
}
