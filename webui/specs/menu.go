package specs

import (
	"cmp"
	"net/http"
	"regexp"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
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
	out, err := p.house.RunOut(r.Context())
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "menu", "layout", menuOf(p.house.About(), p.house.Settings(), &q, found, house.Items(kept), out))
}

// menuOf writes drinks as a menu, what is known to have no alcohol under a title of its own:
// what nobody has stated counts as more, as for a guest who asks for a drink without it.
func menuOf(about string, said house.Settings, q *sift, found []behind.HouseSpec, prices []house.MenuPrice, out []string) *menuPage {
	about, _, _ = strings.Cut(about, ". ") // the rest says what kind of house it is
	v := &menuPage{House: cmp.Or(said.Name, about), Query: q, Drinks: len(found), List: q.address("/specs"), Currency: oneCurrency(prices)}
	sober, strict := guest.Guest{NoAlcohol: true}, guest.Guest{NoAlcohol: true, NoTrace: true}
	with, without := menuPart{}, menuPart{Title: say.It("specs.without-alcohol", "Most", words.Plain(flavor.NoAlcoholABV))}
	for i := range found {
		s := &found[i].Spec
		d := menuDrink{Name: s.Name, Holds: holds(s), Allergens: toldToGuests(s)}
		if gone := part.OutOf(s, out); len(gone) > 0 {
			d.Out = say.It("specs.menu-out", "Names", words.List(part.NamesOf(gone)))
		}
		if at := slices.IndexFunc(prices, func(m house.MenuPrice) bool { return m.Spec == found[i].Slug }); at < 0 {
			v.Unpriced++
		} else {
			d.Price = said.Figures(words.Figure(prices[at].Amount, 2))
			if v.Currency == "" {
				d.Price = words.Joined(d.Price, prices[at].Currency)
			}
		}
		if sober.MayHaveAll(s) {
			if !strict.MayHaveAll(s) {
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
