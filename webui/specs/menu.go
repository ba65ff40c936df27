package specs

import (
	"cmp"
	"context"
	"net/http"
	"regexp"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// menuPath is the address of the menu as guests read it.
const menuPath = "/menu"

// menuPage is the menu for guests, to be printed: no amounts, no scores, nothing of the trade.
type menuPage struct {
	House    string // its name; empty if it has none
	Query    *sift
	Parts    []menuPart
	Currency string // of every price; empty if no drink has one, or they differ
	Unpriced int    // drinks without a price
	Drinks   int
	Alcohol  bool
	List     string // address of the specs that it lists
}

// menuPart is the drinks under one title.
type menuPart struct {
	Title  string // empty for the first
	Drinks []menuDrink
}

// menuDrink is a drink as a guest reads it.
type menuDrink struct {
	Name, Holds, Price string
	Allergens          []string
	Out                string // what of it is out tonight
	Trace              string // that it may hold a trace of alcohol, where it counts as without
}

// ForGuest is who the page is shown for.
func (v *menuPage) ForGuest() *form.Guest { return &v.Query.Guest }

// guestMenu is the menu for guests.
func (p *pages) guestMenu(w http.ResponseWriter, r *http.Request) error {
	q, err := readSift(r)
	if err != nil {
		return err
	}
	found, err := p.house.Find(r.Context(), behind.SpecQuery{Text: q.Text, Family: q.Family, Guest: q.Guest.Limits()})
	if err != nil {
		return err
	}
	kept, err := house.All[house.MenuPrice](r.Context(), p.house.Store())
	if err != nil {
		return err
	}
	tonight, err := p.tonightOf(r.Context(), q.Guest.Limits())
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "menu", "layout", menuOf(p.house.About(), p.house.Settings(), &q, found, house.Items(kept), tonight))
}

// poured is a drink of the menu that lacks a bottle tonight.
type poured struct {
	lacks []*flavor.Profile
	all   flavor.Spec // all that is in it as it is written and in what may be poured instead
	kept  bool        // it is known what is poured instead
}

// tonightOf returns the drinks that lack a bottle tonight, by their slugs. A drink that is
// poured with a cover, or without what is missing, carries what is in either: nobody knows
// before the guest orders which of them it will be.
func (p *pages) tonightOf(ctx context.Context, g guest.Guest) (map[string]*poured, error) {
	shift, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	now, err := behind.EveningOf(ctx, p.bar, shift, g, part.MostParts)
	if err != nil {
		return nil, err
	}
	out := map[string]*poured{}
	for i := range shift.Menu {
		d := &now.Drinks[i]
		if d.Touched == nil || len(d.Touched.Missing) == 0 {
			continue
		}
		of := &poured{lacks: d.Touched.Missing, all: d.Spec.Clone(), kept: d.State == evening.Covered}
		for _, c := range []*cover.Cover{evening.Chosen(d.Touched), d.Touched.LeftOut} {
			if c != nil {
				of.all.Pours = append(of.all.Pours, c.Spec.Pours...)
				of.all.Dressings = append(of.all.Dressings, c.Spec.Dressings...)
			}
		}
		out[shift.Menu[i].Slug] = of
	}
	return out, nil
}

// menuOf writes drinks as a menu, what is known to have no alcohol under a title of its own:
// what nobody has stated counts as more, as for a guest who asks for a drink without it, and so
// does a drink that lacks a bottle, unless what is poured instead is known to have none either.
func menuOf(about string, said house.Settings, q *sift, found []behind.HouseSpec, prices []house.MenuPrice, tonight map[string]*poured) *menuPage {
	about, _, _ = strings.Cut(about, ". ") // the rest says what kind of house it is
	v := &menuPage{House: cmp.Or(said.Name, about), Query: q, Drinks: len(found), List: q.address("/specs"), Currency: oneCurrency(prices)}
	sober, strict := guest.Guest{NoAlcohol: true}, guest.Guest{NoAlcohol: true, NoTrace: true}
	with, without := menuPart{}, menuPart{Title: say.It("specs.without-alcohol", "Most", words.Plain(flavor.NoAlcoholABV))}
	for i := range found {
		s := &found[i].Spec
		d, carried, known := menuDrink{Name: s.Name, Holds: holds(s)}, s, true
		if now := tonight[found[i].Slug]; now != nil {
			carried, known = &now.all, now.kept
			d.Out = say.It("specs.menu-out", "Names", words.List(part.NamesOf(now.lacks)))
		}
		d.Allergens = toldToGuests(carried)
		if at := slices.IndexFunc(prices, func(m house.MenuPrice) bool { return m.Spec == found[i].Slug }); at < 0 {
			v.Unpriced++
		} else {
			d.Price = said.Figures(words.Figure(prices[at].Amount, 2))
			if v.Currency == "" {
				d.Price = words.Joined(d.Price, prices[at].Currency)
			}
		}
		if known && sober.MayHaveAll(carried) {
			if !strict.MayHaveAll(carried) {
				d.Trace = say.It("specs.menu-trace")
			}
			without.Drinks = append(without.Drinks, d)
		} else {
			v.Alcohol, with.Drinks = true, append(with.Drinks, d)
		}
	}
	for _, part := range []menuPart{with, without} {
		if len(part.Drinks) > 0 {
			v.Parts = append(v.Parts, part)
		}
	}
	return v
}

// oneCurrency returns the currency of all prices; empty if there are several, or none.
func oneCurrency(prices []house.MenuPrice) string {
	for i := range prices {
		if prices[i].Currency != prices[0].Currency {
			return ""
		}
	}
	if len(prices) == 0 {
		return ""
	}
	return prices[0].Currency
}

// recipe matches what of an ingredient's name is for whoever makes it, such as (1:1).
var recipe = regexp.MustCompile(`\s*\([^)]*\)`)

// holds lists what a drink is made of, each once, without what comes from the tap.
func holds(s *flavor.Spec) string {
	var names []string
	for _, b := range part.Bottles(s) {
		if name := recipe.ReplaceAllString(b.Name, ""); !b.Class.Free() && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return words.SentenceStart(strings.Join(names, ", "))
}

// toldToGuests says the allergens of a drink as a menu does, a sentence each; what nobody has
// stated is to be asked for.
func toldToGuests(s *flavor.Spec) (out []string) {
	a := part.AllergensOf(s, nil)
	if len(a.Contains) > 0 {
		out = append(out, say.It("specs.menu-contains", "What", a.ContainsWords()))
	}
	if may := a.MayWords(); may != "" {
		out = append(out, say.It("specs.menu-may-contain", "What", may))
	}
	if len(a.Unstated) > 0 {
		out = append(out, say.It("specs.menu-ask"))
	}
	return out
}
