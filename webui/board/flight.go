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
}

// flight lays out a tasting of several drinks of the menu, as they can be poured now.
func (p *pages) flight(w http.ResponseWriter, r *http.Request) error {
	guest, err := form.ParseGuest(r)
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
		if d := all.Drinks[i]; d.now.Poured() != nil {
			out = append(out, flightGlass{tonightDrink: d})
		}
	}
	slices.SortStableFunc(out, func(a, b flightGlass) int { return byName(a.tonightDrink, b.tonightDrink) })
	return out, nil
}

// layOut puts the chosen drinks in order and says how much to make of each, or what is wrong
// with what was asked.
func (p *pages) layOut(v *flightView, chosen []flightGlass) error {
	each, err := form.Number(v.Each, say.It("board.as-a-volume"))
	if err != nil {
		v.trouble(say.It("board.each-glass", "Trouble", err))
		each = tasting.UsualShareML // what else is wrong is said too
	}
	guests, err := strconv.Atoi(v.Guests)
	if err != nil {
		guests = 0 // nobody
	}
	drinks := make([]*evening.Drink, len(chosen))
	for i := range chosen {
		drinks[i] = chosen[i].now
	}
	plan, err := evening.FlightOf(p.bar, drinks, each, guests)
	faults := flavor.DataFaultsOf(err)
	for _, f := range faults {
		v.trouble(f.Message)
	}
	if err != nil && len(faults) == 0 {
		return err
	}
	if len(v.Troubles) == 0 {
		p.laidOut(v, chosen, each, guests, plan)
	}
	return nil
}

// laidOut shows a flight.
func (p *pages) laidOut(v *flightView, chosen []flightGlass, each float64, guests int, plan *evening.Flight) {
	for i := range plan.Glasses {
		poured := &plan.Glasses[i]
		at := slices.IndexFunc(chosen, func(g flightGlass) bool { return g.now == poured.Drink })
		g := chosen[at]
		g.Make, g.Holds = toMake(poured), say.It("board.strength", "Strength", words.Figure(poured.Mixed.ABV, 1))
		v.Glasses = append(v.Glasses, g)
		for _, c := range p.bar.Cautions(poured.Spec) {
			if !slices.Contains(v.Care, c) {
				v.Care = append(v.Care, c)
			}
		}
	}
	v.For = say.It("board.flight-for", "Guests", guests, "Each", words.Plain(each))
	said := p.house.Settings()
	standard := said.Standard(plan.EthanolG)
	v.Drunk = say.It("board.drunk", "Number", said.Figures(words.Figure(standard.Count, 1)), "Country", standard.Country)
}

// trouble notes what is wrong with what was asked.
func (v *flightView) trouble(what string) { v.Troubles = append(v.Troubles, words.Sentence(what)) }

// toMake says how many whole drinks are made, and what is left of them.
func toMake(s *evening.Glass) string {
	left := ""
	if s.LeftML >= 0.5 {
		left = words.Figure(s.LeftML, 0)
	}
	return say.It("board.make", "Make", s.Make, "Made", words.Figure(s.MadeML, 0), "Left", left)
}
