package board

import (
	"cmp"
	"context"
	"net/http"
	"slices"
	"strconv"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// flightPath is the address of a flight: a little of several drinks of the menu.
const flightPath = "/tonight/flight"

const usualGuests = 2

// flightView is the drinks to choose from, and the flight of those that are chosen.
type flightView struct {
	Guest        *form.Guest
	Choices      []flightChoice
	Each, Guests string // as they were typed
	Troubles     []string
	Dropped      string        // that some of what is ticked cannot be poured; empty if all can
	Glasses      []flightGlass // in the order of tasting; none if nothing is asked
	For          string        // how many guests, and how much of each drink
	Drunk        string        // the alcohol of a guest who drinks all of it
	Care         []behind.Caution
}

// Path is the address of the page.
func (v *flightView) Path() string { return flightPath }

// ForGuest is who the page is shown for.
func (v *flightView) ForGuest() *form.Guest { return v.Guest }

// Show is which drinks are asked for: all that can be poured.
func (v *flightView) Show() string { return "" }

// flightChoice is a drink that can be poured now.
type flightChoice struct {
	Slug, Name, Word string
	Chosen           bool
}

// flightGlass is one drink of a flight.
type flightGlass struct {
	tonightDrink
	Make  string // how many of it to make
	Holds string // its strength

	spec  *flavor.Spec // as it is poured now
	drink *mix.Drink
}

// flight lays out a tasting of several drinks of the menu, as they can be poured now.
func (p *pages) flight(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	guest, err := form.ReadGuest(r.Form)
	if err != nil {
		return err
	}
	sent := form.Values(r.Form)
	v := &flightView{Guest: &guest, Each: cmp.Or(sent.Get("each"), words.Plain(tasting.UsualShareML)), Guests: cmp.Or(sent.Get("guests"), strconv.Itoa(usualGuests))}
	asked := r.Form["drink"]
	can, err := p.pourable(r.Context(), guest)
	if err != nil {
		return err
	}
	for i := range can {
		v.Choices = append(v.Choices, flightChoice{can[i].Slug, can[i].Name, can[i].Word, slices.Contains(asked, can[i].Slug)})
	}
	status := http.StatusOK
	if len(asked) > 0 {
		chosen := slices.DeleteFunc(can, func(g flightGlass) bool { return !slices.Contains(asked, g.Slug) })
		if gone := len(asked) - len(chosen); gone > 0 {
			v.Dropped = say.It("board.ticked-that-cannot-be-poured", "Gone", gone)
		}
		if err := p.layOut(v, chosen); err != nil {
			return err
		}
		if len(v.Troubles) > 0 {
			status = http.StatusUnprocessableEntity
		}
	}
	return p.Write(w, r, status, "tonight-flight", "layout", v)
}

// pourable are the drinks of the menu that can be poured now for a guest, by name, each as it
// is poured.
func (p *pages) pourable(ctx context.Context, guest form.Guest) ([]flightGlass, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	all, err := p.listOf(ctx, s, wish{guest: guest, page: 1}, onAWall)
	if err != nil {
		return nil, err
	}
	var out []flightGlass
	for i := range all.Drinks {
		g := flightGlass{tonightDrink: all.Drinks[i]}
		if g.spec = pouredNow(&g.tonightDrink, s); g.spec != nil {
			out = append(out, g)
		}
	}
	slices.SortStableFunc(out, func(a, b flightGlass) int { return byName(a.tonightDrink, b.tonightDrink) })
	return out, nil
}

// pouredNow is a drink as it is poured now, nil if it cannot be.
func pouredNow(d *tonightDrink, s *behind.Shift) *flavor.Spec {
	switch d.state {
	case evening.Ready:
		at := slices.IndexFunc(s.Menu, func(m behind.HouseSpec) bool { return m.Slug == d.Slug })
		return &s.Menu[at].Spec
	case evening.Covered:
		if c := evening.Chosen(d.touched); c != nil && !d.Far {
			return &c.Spec
		}
		if d.touched.LeftOut != nil {
			return &d.touched.LeftOut.Spec
		}
	}
	return nil
}

// layOut puts the chosen drinks in order and says how much to make of each, or what is wrong
// with what was asked.
func (p *pages) layOut(v *flightView, chosen []flightGlass) error {
	r := tasting.SeveralRequest{}
	var err error
	if r.EachML, err = form.Number(v.Each, say.It("board.as-a-volume")); err != nil {
		v.trouble(say.It("board.each-glass", "Trouble", err))
		r.EachML = tasting.UsualShareML // what else is wrong is said too
	}
	if r.Guests, err = strconv.Atoi(v.Guests); err != nil {
		r.Guests = 0 // nobody
	}
	for i := range chosen {
		judged, err := p.bar.Judge(chosen[i].spec)
		if faults := flavor.FaultsOf(err); len(faults) > 0 {
			v.trouble(chosen[i].Name + ": " + faults[0].Message)
			continue
		}
		if err != nil {
			return err
		}
		chosen[i].drink = judged.Drink
		r.Drinks = append(r.Drinks, tasting.Poured{Name: chosen[i].Name, Drink: judged.Drink})
	}
	plan, err := tasting.PlanSeveral(r)
	for _, f := range flavor.FaultsOf(err) {
		v.trouble(f.Message)
	}
	if len(v.Troubles) == 0 {
		p.laidOut(v, chosen, &r, plan)
	}
	return nil
}

// laidOut shows a flight.
func (p *pages) laidOut(v *flightView, chosen []flightGlass, r *tasting.SeveralRequest, plan *tasting.Several) {
	for _, s := range plan.Shares {
		g := chosen[s.At]
		g.Make, g.Holds = toMake(s), say.It("board.strength", "Strength", words.Figure(g.drink.ABV, 1))
		v.Glasses = append(v.Glasses, g)
		for _, c := range p.bar.Cautions(g.spec) {
			if !slices.Contains(v.Care, c) {
				v.Care = append(v.Care, c)
			}
		}
	}
	v.For = say.It("board.flight-for", "Guests", r.Guests, "Each", words.Plain(r.EachML))
	said := p.house.Settings()
	standard := said.Standard(plan.EthanolG)
	v.Drunk = say.It("board.drunk", "Number", said.Figures(words.Figure(standard.Count, 1)), "Country", standard.Country)
}

// trouble notes what is wrong with what was asked.
func (v *flightView) trouble(what string) { v.Troubles = append(v.Troubles, words.Sentence(what)) }

// toMake says how many whole drinks are made, and what is left of them.
func toMake(s tasting.Share) string {
	left := ""
	if s.LeftML >= 0.5 {
		left = words.Figure(s.LeftML, 0)
	}
	return say.It("board.make", "Make", s.Make, "Made", words.Figure(s.MadeML, 0), "Left", left)
}
