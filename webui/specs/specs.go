package specs

import (
	"context"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/api/service/kitchen"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// specs lists the house's drinks that a query lets through.
func (p *pages) specs(w http.ResponseWriter, r *http.Request) error {
	q, err := readSift(r)
	if err != nil {
		return err
	}
	if r.Form.Get(listField) == listRemoved {
		return p.removed(w, r, &q.Guest)
	}
	v, err := p.specsOf(r.Context(), &q, "/specs", onAPage)
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "specs", "layout", v)
}

// How many specs a page lists, and how many it prints.
const (
	onAPage    = 60
	onAPrinted = 240
)

// sift says which specs are asked for.
type sift struct {
	Text   string
	Family string
	Guest  form.Guest
	page   int
}

// any reports whether anything is asked for.
func (q *sift) any() bool { return q.Text != "" || q.Family != "" || q.Guest.Ticked() }

func readSift(r *http.Request) (sift, error) {
	guest, err := form.ParseGuest(r)
	if err != nil {
		return sift{}, err
	}
	page, err := part.ReadPage(r.Form)
	return sift{page: page, Text: strings.TrimSpace(r.Form.Get("q")), Family: r.Form.Get("family"), Guest: guest}, err
}

// address is an address with what is asked for at its end.
func (q *sift) address(path string) string { return form.Link(path, q.fields()) }

func (q *sift) fields() url.Values {
	v := url.Values{}
	if q.Text != "" {
		v.Set("q", q.Text)
	}
	if q.Family != "" {
		v.Set("family", q.Family)
	}
	q.Guest.AddTo(v)
	return v
}

// specsView is the page of specs.
type specsView struct {
	About    string
	Query    *sift
	Any      bool // something is asked for
	Families []form.Option
	All      int // drinks on the menu
	Specs    []specView
	Pager    part.Pager
	Print    string // address of the same to print
	ForTable string // address of the same as guests read it
	List     string // address of the list
	Found    string
	Meant    []part.Meant // what may have been meant, if no name and no pour has it
	Barred   string       // which drinks have it that the guest may not have, if only those do
	Anybody  string       // address of the same for anybody; empty if nothing is barred
	Unpriced string       // why no drink has a cost, if none has
	Standard string       // what one standard drink is, and where
}

// ForGuest is who the page is shown for.
func (v *specsView) ForGuest() *form.Guest { return &v.Query.Guest }

// Removed is the address of the specs that were removed.
func (v *specsView) Removed() string {
	at := url.Values{listField: {listRemoved}}
	v.Query.Guest.AddTo(at)
	return form.Link("/specs", at)
}

// drinksCaution is a caution and the drinks that it goes with.
type drinksCaution struct{ Text, With string }

// Alcohol reports whether one of the listed drinks holds alcohol.
func (v *specsView) Alcohol() bool {
	return slices.ContainsFunc(v.Specs, func(s specView) bool { return s.Alcohol })
}

// Cautions gathers what has to be said of the listed drinks, each once.
func (v *specsView) Cautions() []drinksCaution {
	var order []string
	with := map[string][]string{}
	for i := range v.Specs {
		for _, c := range v.Specs[i].Cautions {
			if with[c.Text] == nil {
				order = append(order, c.Text)
			}
			with[c.Text] = append(with[c.Text], v.Specs[i].Name)
		}
	}
	var out []drinksCaution
	for _, text := range order {
		who := say.It("specs.drinks", "Names", words.List(with[text]))
		if len(with[text]) == len(v.Specs) {
			who = say.It("specs.every-drink")
		}
		out = append(out, drinksCaution{text, who})
	}
	return out
}

// specsOf says a page of the specs that are asked for, at most size of them.
func (p *pages) specsOf(ctx context.Context, q *sift, path string, size int) (*specsView, error) {
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return nil, err
	}
	limits := q.Guest.Limits()
	found, err := p.house.Find(ctx, behind.SpecQuery{Text: q.Text, Family: q.Family, Guest: limits})
	if err != nil {
		return nil, err
	}
	v := &specsView{About: p.house.About(), Query: q, Any: q.any(),
		Families: part.FamiliesOf(p.bar, menu, q.Family), All: len(menu),
		Print: q.address("/specs/print"), ForTable: q.address(menuPath), List: q.address("/specs"), Found: foundOf(q.Text, found, len(menu))}
	if err := p.sayUnfound(ctx, v, found, menu); err != nil {
		return nil, err
	}
	t, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	v.Unpriced, v.Standard = t.Fault, standardSaid(p.house.Settings())
	v.Pager = part.NewPager(len(found), size, q.page, path, q.fields())
	found = part.PageOf(v.Pager, found)
	for i := range found {
		one, err := p.spec(&found[i], &q.Guest)
		if err != nil {
			return nil, err
		}
		one.Cost = t.CostOf(&found[i].Spec)
		v.Specs = append(v.Specs, one)
	}
	return v, nil
}

// sayUnfound says of a text that nothing listed holds which drinks hold it and are not for the
// guest, or else what may have been meant.
func (p *pages) sayUnfound(ctx context.Context, v *specsView, found, menu []behind.HouseSpec) error {
	q := v.Query
	if len(found) == 0 && q.Guest.Ticked() {
		barred, err := p.house.Find(ctx, behind.SpecQuery{Text: q.Text, Family: q.Family})
		if err != nil {
			return err
		}
		if len(barred) > 0 {
			var names []string
			for i := range barred {
				names = append(names, barred[i].Spec.Name)
			}
			anybody := *q
			anybody.Guest = form.Guest{}
			v.Barred, v.Anybody = say.It("specs.none-for-the-guest", "Drinks", len(names), "Names", house.FirstFew(names)), anybody.address("/specs")
			return nil
		}
	}
	if q.Text != "" && !slices.ContainsFunc(found, func(h behind.HouseSpec) bool { return h.Names(q.Text) }) {
		v.Meant = p.meantBy(q, menu)
	}
	return nil
}

// meantBy offers what may have been meant by a text that no drink of the menu holds.
func (p *pages) meantBy(q *sift, menu []behind.HouseSpec) []part.Meant {
	var in []string
	for i := range menu {
		family, _ := p.bar.Family(menu[i].Family)
		in = append(in, evening.AllWords(&menu[i].Spec, family.Name))
	}
	return part.MeantBy(q.Text, in, "/specs", "q", q.fields())
}

// letterView is where the drinks of a letter begin.
type letterView struct{ Letter, Slug string }

// fewForLetters is how many drinks need no letters to jump to.
const fewForLetters = 12

// Letters are the letters that the listed drinks begin with, each with the first that
// does; none if the list is short or stands in another order.
func (v *specsView) Letters() []letterView {
	if len(v.Specs) <= fewForLetters || v.Query.Text != "" {
		return nil
	}
	var out []letterView
	for i := range v.Specs {
		letter := strings.ToUpper(string([]rune(v.Specs[i].Name)[:1]))
		if len(out) == 0 || out[len(out)-1].Letter != letter {
			out = append(out, letterView{letter, v.Specs[i].Anchor()})
		}
	}
	return out
}

// foundOf says how many specs of how many are listed, and how many of them hold the words
// that were asked for. The others are near to them, or meant by them.
func foundOf(text string, found []behind.HouseSpec, all int) string {
	if text == "" {
		return say.It("specs.listed", "Listed", len(found), "All", all)
	}
	named := 0
	for i := range found {
		if found[i].Names(text) {
			named++
		}
	}
	if near := len(found) - named; near > 0 && named == 0 {
		return say.It("specs.found-only-near", "All", all, "Text", text, "Near", near)
	}
	return say.It("specs.found", "Named", named, "All", all, "Text", text, "Near", len(found)-named)
}

// specView is a drink of the house.
type specView struct {
	Slug, Name string
	Family     string
	Reads      string // the family that it is judged as, if it is another
	Trouble    string // why it cannot be scored
	Score      string
	Verdict    string
	Strength   string
	Volume     string
	Standard   string      // standard drinks of the house's country
	Country    string      // that country
	Glass      *part.Glass // nil if it cannot be drawn
	Allergens  part.Allergens
	Cautions   []behind.Caution
	Alcohol    bool // a pour holds alcohol
	Pours      []string
	Method     string
	Served     string   // how it is mixed and served, in what, and with what on top
	Steps      []string // further instructions
	Page       string   // address of its page, for the guest
	Bench      string   // address of the bench with its text
	Cost       part.Cost
}

// Anchor is where the drink stands on the page.
func (v *specView) Anchor() string { return "spec-" + v.Slug }

// InLine is the pours in a line.
func (v *specView) InLine() string { return words.Bound(strings.Join(v.Pours, "\u00a0· ")) }

// spec says a drink of the house, to a guest. One that cannot be scored says why and keeps
// its pours and allergens.
func (p *pages) spec(h *behind.HouseSpec, guest *form.Guest) (specView, error) {
	s := &h.Spec
	v := specView{Slug: h.Slug, Name: s.Name, Allergens: part.AllergensOf(s, guest.Limits().Avoid), Cautions: p.bar.Cautions(s), Alcohol: kitchen.HoldsAlcohol(s),
		Method: string(s.Method) + ", " + string(s.Service), Page: part.SpecAddress(h.Slug, guest), Bench: benchOf(h.Slug, 0, guest)}
	v.Served, v.Steps = words.SentenceStart(part.Serving(s)), s.Steps
	if f, ok := p.bar.Family(h.Family); ok {
		v.Family = f.Name
	}
	said := p.house.Settings()
	for _, pour := range s.Pours {
		pour = said.Pour(pour)
		v.Pours = append(v.Pours, said.Figures(part.Amount(&pour))+" "+pour.Profile.Name)
	}
	r, err := p.bar.Judge(s)
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Trouble = words.Sentence(faults[0].Message)
		return v, nil
	}
	if err != nil {
		return v, err
	}
	v.Score, v.Verdict = words.Points(r.Judgement.Score), strings.ToLower(words.Verdict(r.Verdict))
	if fits := r.Judgement.Fits; len(fits) > 0 && fits[0].ID != h.Family {
		v.Reads = fits[0].Name
	}
	v.figures(r.Drink, said)
	v.Glass, err = part.GlassOf(p.bar, "glass-"+h.Slug, s)
	return v, err
}
