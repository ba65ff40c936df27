package board

import (
	"net/http"
	"slices"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/lookahead"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// aheadPath is the address of the look ahead, before service.
const aheadPath = "/tonight/ahead"

// mostToBuy is how many bottles to buy are listed: those that help most.
const mostToBuy = 8

// aheadView is what the menu leans on: what to order before a bottle runs out.
type aheadView struct {
	Guest *form.Guest
	Menu  int
	Fetch []fetchView // of what is out, what brings most drinks back
	Weak  []weakView
	Buy   []buyView
	Left  string // bottles that time ran out for; empty if none
	Good  string // the distance up to which a cover is good, in noticeable steps
}

// Path is the address of the page.
func (v *aheadView) Path() string { return aheadPath }

// ForGuest is who the pages around it are shown for; what to order is the same for all.
func (v *aheadView) ForGuest() *form.Guest { return v.Guest }

// firstWeak is how many bottles without a good cover are in view before a tap.
const firstWeak = 6

// First are the bottles that most drinks lean on.
func (v *aheadView) First() []weakView { return v.Weak[:min(firstWeak, len(v.Weak))] }

// More are those behind a tap.
func (v *aheadView) More() []weakView { return v.Weak[min(firstWeak, len(v.Weak)):] }

// weakView is a bottle without a good cover.
type weakView struct {
	Name   string
	Drinks string // that lean on it
	Out    bool   // it is out now
	Kept   string // how many bottles the shelf holds; empty if it does not say
}

// buyView is a bottle to buy, and what it would cover.
type buyView struct {
	Name   string
	Closes []string
}

// ahead says, before service, which bottles the menu leans on and which to buy.
func (p *pages) ahead(w http.ResponseWriter, r *http.Request) error {
	who, err := form.ParseGuest(r)
	if err != nil {
		return err
	}
	s, err := behind.ShiftOf(r.Context(), p.house)
	if err != nil {
		return err
	}
	now, err := behind.EveningOf(r.Context(), p.bar, s, guest.Guest{}, part.MostParts)
	if err != nil {
		return err
	}
	leans, err := p.bar.Coverage(r.Context())
	if err != nil {
		return err
	}
	v := &aheadView{Guest: &who, Menu: len(s.Menu), Good: words.Figure(cover.NearJND, 0)}
	if now.Result != nil { // something is out
		v.Fetch = fetchesOf(now.Result, guest.Guest{})
	}
	v.lean(s, leans)
	return p.Write(w, r, http.StatusOK, "tonight-ahead", "layout", v)
}

// lean shows what the menu leans on.
func (v *aheadView) lean(s *behind.Shift, a *lookahead.Answer) {
	for _, w := range a.Weak {
		v.Weak = append(v.Weak, weakView{Name: w.Profile.Name, Drinks: say.It("board.drinks-by-name", "N", len(w.Drinks), "Names", words.List(w.Drinks)), Out: s.IsOut(w.Profile), Kept: keptOf(s, w.Profile)})
	}
	for _, b := range a.Buy[:min(len(a.Buy), mostToBuy)] {
		buy := buyView{Name: b.Profile.Name}
		for _, gap := range b.Closes {
			buy.Closes = append(buy.Closes, say.It("board.for-without", "Without", gap.Without.Name, "Drink", gap.Drink))
		}
		v.Buy = append(v.Buy, buy)
	}
	var left []string
	for _, b := range a.Left {
		left = append(left, b.Name)
	}
	v.Left = words.List(left)
}

// keptOf says how many bottles of an ingredient the shelf holds.
func keptOf(s *behind.Shift, p *flavor.Profile) string {
	kept := slices.DeleteFunc(slices.Clone(s.Bottles), func(b house.Bottle) bool { return b.Ingredient != p.ID || !b.There() })
	var sum float64
	for _, b := range kept {
		sum += b.Stock
	}
	if sum == 0 {
		return ""
	}
	return say.It("board.on-the-shelf", "N", words.Plain(sum))
}
