package board

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/flavor"
	"counterpour/flavor/mix"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/words"
)

// flightPath is the address of a flight: a little of several drinks of the menu.
const flightPath = "/tonight/flight"

// Sizes of a flight; common practice, no source.
const (
	leastGlasses, mostGlasses         = 2, 6
	leastEachML, usualEachML, mostMLs = 10.0, 40.0, 120.0
	usualGuests, mostGuests           = 2, 60
)

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
	v := &flightView{Guest: &guest, Each: cmp.Or(sent.Get("each"), words.Plain(usualEachML)), Guests: cmp.Or(sent.Get("guests"), strconv.Itoa(usualGuests))}
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
			v.Dropped = words.Count(gone, "of the ticked drinks cannot be poured now, or not for this guest.", "of the ticked drinks cannot be poured now, or not for this guest.")
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
	each, err := form.Number(v.Each, "in mL")
	switch {
	case err != nil:
		v.trouble("Each glass: %s.", err)
	case each < leastEachML || each > mostMLs:
		v.trouble("A glass of a flight holds %s to %s mL.", words.Plain(leastEachML), words.Plain(mostMLs))
	}
	guests, err := strconv.Atoi(v.Guests)
	if err != nil || guests < 1 || guests > mostGuests {
		v.trouble("Write how many guests there are, 1 to %d, in digits.", mostGuests)
	}
	if len(chosen) < leastGlasses || len(chosen) > mostGlasses {
		v.trouble("Tick %d to %d drinks that can be poured now.", leastGlasses, mostGlasses)
	}
	if len(v.Troubles) > 0 {
		return nil
	}
	ethanol := 0.0
	for i := range chosen {
		g := &chosen[i]
		r, err := p.bar.Judge(g.spec)
		if faults := flavor.FaultsOf(err); len(faults) > 0 {
			v.trouble("%s: %s", g.Name, words.Sentence(faults[0].Message))
			return nil
		}
		if err != nil {
			return err
		}
		g.drink, g.Holds = r.Drink, words.Figure(r.Drink.ABV, 1)+"\u00a0% vol"
		g.Make = toMake(r.Drink.VolumeML, each*float64(guests))
		ethanol += r.Drink.After.Ethanol * each / r.Drink.VolumeML
	}
	slices.SortStableFunc(chosen, lighterFirst)
	v.Glasses, v.For = chosen, fmt.Sprintf("%s, %s\u00a0mL of each drink", words.Count(guests, "guest", "guests"), words.Plain(each))
	said := p.house.Settings()
	standard := said.Standard(ethanol)
	v.Drunk = said.Figures(words.Figure(standard.Count, 1)) + " standard drinks (" + standard.Country + ")"
	return nil
}

// trouble notes what is wrong with what was asked.
func (v *flightView) trouble(format string, of ...any) {
	v.Troubles = append(v.Troubles, strings.Replace(fmt.Sprintf(format, of...), "..", ".", 1))
}

// toMake says how many whole drinks of so many mL are made for a volume, and what is left.
func toMake(oneML, wantML float64) string {
	n := int(math.Ceil(wantML/oneML - 1e-9))
	out := fmt.Sprintf("Make %d, in all %s\u00a0mL", n, words.Figure(oneML*float64(n), 0))
	if left := oneML*float64(n) - wantML; left >= 0.5 {
		out += fmt.Sprintf("; about %s\u00a0mL is left", words.Figure(left, 0))
	}
	return out + "."
}

// lighterFirst orders what is tasted: the lighter before the stronger, in whole % vol, the
// less bitter before the more, the drier before the sweeter, since what is strong, bitter or
// sweet dulls what comes after; common practice, no source.
func lighterFirst(a, b flightGlass) int {
	return cmp.Or(cmp.Compare(math.Round(a.drink.ABV), math.Round(b.drink.ABV)), cmp.Compare(math.Round(a.drink.Bitter), math.Round(b.drink.Bitter)),
		cmp.Compare(math.Round(a.drink.SugarPer100), math.Round(b.drink.SugarPer100)), byName(a.tonightDrink, b.tonightDrink))
}
