package board

import (
	"fmt"
	"net/url"
	"slices"
	"time"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// tonightView is the menu as it can be poured now.
type tonightView struct {
	About    string
	Version  string
	Said     string // the page in a line
	Here     string // address of what is shown
	Guest    *form.Guest
	Show     string
	Choices  []choiceView
	ByBottle string // address of the board, for this guest
	Out      []bottleView
	Again    *bottleView // what was just marked as back
	Drinks   []tonightDrink
	Pager    part.Pager
	Page     int            // that is asked for
	NotFor   []tonightDrink // drinks that this guest must not have, the first of them
	Barred   int            // how many there are
	Labels   labelsView     // that keep drinks from this guest until they are read
	Kept     *keptLabel     // what was just stated of a label
	Menu     int

	count map[show]int
}

// Dry reports whether nobody can be poured any drink of the menu, as on the first days of
// a house.
func (v *tonightView) Dry() bool {
	return v.Menu > 0 && v.count[showReady]+v.count[showCovered] == 0 && !v.Guest.Ticked()
}

// Path is the address of the page.
func (v *tonightView) Path() string { return TonightPath }

// choiceView is one choice of drinks, and how many there are.
type choiceView struct {
	Name, Address string
	Count         int
	Chosen        bool
}

// state is what can be made of a drink now, the most urgent first.
type state int

// The states of a drink.
const (
	stateMissing state = iota
	stateCovered
	stateReady
	stateNotFor
)

// onAPage is how many drinks a page lists.
const onAPage = 120

// tonightDrink is a drink of the menu.
type tonightDrink struct {
	Slug, Name string
	Glass      string // method and service
	Pours      []tonightPour
	State      string // "ready", "covered", "missing" or "not-for"
	Word       string // the state in words
	Cover      *part.Cover
	Unbalanced bool
	Left       []string    // what else goes, for the guest
	LeftOut    string      // with nothing poured instead; empty if that does not keep it
	Far        bool        // nothing keeps it; a cover is then the nearest there is
	Offer      *part.Offer // the nearest drink of the menu that can be poured, if nothing keeps this one
	Strength   string      // if the guest has a limit
	Missing    string      // what is out
	Away       string      // the one bottle that brings it back
	Because    string      // why the guest must not have it
	Bench      string      // the drink on the bench, for this guest, with covers if there can be some
	Coverable  bool        // one of its bottles is in the way, not the whole of it

	state   state
	since   time.Time      // since when it is touched
	touched *cover.Touched // nil if it lost no pour
}

// tonightPour is one pour, with the bottle to tap when it runs out.
type tonightPour struct {
	ID, Amount, Name string
	Out              bool // it is not poured: it ran out, or the guest must not have it
}

func newTonightView(about, version string, x *wish) *tonightView {
	v := &tonightView{About: about, Version: version, Guest: &x.guest, Show: string(x.show), Page: x.page, Here: x.here(),
		ByBottle: x.guest.Address(boardPath), count: map[show]int{}}
	return v
}

// drinkOf says what can be made of a drink of the menu. t is nil if the house
// has all that it pours.
func (p *pages) drinkOf(m *behind.HouseSpec, t *cover.Touched, s *behind.Shift, who *form.Guest, since map[string]time.Time) (*tonightDrink, error) {
	limits := who.Limits()
	g := &limits
	d := &tonightDrink{Slug: m.Slug, Name: m.Spec.Name, Glass: string(m.Spec.Method) + ", " + string(m.Spec.Service), state: stateReady}
	shown := part.SpecInUnits(p.house.Settings(), &m.Spec)
	for i := range shown.Pours {
		pour := &shown.Pours[i]
		lacks := t != nil && (slices.Contains(t.Missing, pour.Profile) || slices.Contains(t.Removed, pour.Profile))
		d.Pours = append(d.Pours, tonightPour{ID: pour.Profile.ID, Amount: part.Amount(pour), Name: pour.Profile.Name, Out: lacks || s.IsOut(pour.Profile)})
	}
	if t != nil {
		d.touch(t, g, since)
		// What the guest must not have anyway is not for want of a bottle.
		if d.state != stateMissing || len(d.Left) == 0 {
			return d, nil
		}
	}
	if g.MaxABV > 0 {
		var err error
		if d.Strength, err = part.Strength(p.bar, &m.Spec); err != nil && len(flavor.FaultsOf(err)) == 0 {
			return nil, err
		}
	}
	because, bottle, err := p.forbids(&m.Spec, g)
	if err != nil {
		return nil, err
	}
	if because != "" {
		d.state, d.Because = stateNotFor, because
		at := url.Values{"text": {edit.Format(m.Spec)}}
		who.AddTo(at)
		if d.Coverable = bottle != nil; d.Coverable {
			at.Set("missing", bottle.ID)
		}
		d.Bench = form.Link("/bench", at)
	}
	return d, nil
}

// touch says in what state a drink is that lost a pour.
func (d *tonightDrink) touch(t *cover.Touched, g *guest.Guest, since map[string]time.Time) {
	var names []string
	for _, b := range t.Missing {
		names = append(names, b.Name)
		if at := since[b.ID]; at.After(d.since) {
			d.since = at
		}
	}
	d.touched, d.Missing, d.state = t, words.List(names), stateMissing
	d.Left, d.LeftOut, d.Far = part.AlsoGone(t.Removed, t.Missing), part.LeftOutLine(t.Removed, t.LeftOut, part.Chosen(t)), !t.Near && !t.NotSearched
	if d.LeftOut != "" || t.Chosen >= 0 && !d.Far {
		d.state = stateCovered
	}
	if len(t.Missing) == 1 && g.Accepts(t.Missing[0]) {
		d.Away = names[0]
	}
}

// detail says what a drink that lost a pour is poured with instead.
func (p *pages) detail(d *tonightDrink, s *behind.Shift, who *form.Guest) (err error) {
	t, g := d.touched, who.Limits()
	if d.Offer, err = p.offer(s, t, who); err != nil {
		return err
	}
	if t.Chosen >= 0 {
		c := &t.Covers[t.Chosen]
		if g.MaxABV > 0 {
			if d.Strength, err = part.Strength(p.bar, &c.Spec); err != nil {
				return err
			}
		}
		shown := part.CoverOf(p.house.Settings(), t.Spec, c, t.ScoreBefore, g.Avoid)
		d.Cover, d.Unbalanced = &shown, t.Unbalanced
		if shown.Moved, err = part.DifferenceOf(p.bar, "moved-"+d.Slug, t.Spec, &c.Spec); err != nil {
			return err
		}
	}
	return nil
}

// forbids says why a guest must not have a drink as it is written, empty if
// nothing is in the way, and which bottle is if it is one.
func (p *pages) forbids(s *flavor.Spec, g *guest.Guest) (string, *flavor.Profile, error) {
	for _, b := range part.Bottles(s) {
		if !g.Accepts(b) {
			return b.Name + " " + g.Objection(b), b, nil
		}
	}
	why, err := p.tooStrong(s, g)
	return why, nil, err
}

// tooStrong says that a drink is too strong for a guest with a limit, empty if it is not.
func (p *pages) tooStrong(s *flavor.Spec, g *guest.Guest) (string, error) {
	if g.MaxABV == 0 {
		return "", nil
	}
	r, err := p.bar.Judge(s)
	if err != nil {
		if len(flavor.FaultsOf(err)) > 0 {
			return "its strength cannot be worked out", nil
		}
		return "", err
	}
	if r.Drink.ABV > g.MaxABV {
		return words.Figure(r.Drink.ABV, 1) + "\u00a0% vol", nil
	}
	return "", nil
}

// add counts a drink and keeps it.
func (v *tonightView) add(d *tonightDrink) {
	v.Menu++
	switch d.state {
	case stateReady:
		d.State, d.Word = "ready", "Ready"
		v.count[showReady]++
	case stateCovered:
		d.State, d.Word = "covered", "With a cover"
		v.count[showCovered]++
	case stateMissing:
		d.State, d.Word = "missing", "Missing "+d.Missing
		v.count[showMissing]++
	case stateNotFor:
		d.State, d.Word = "not-for", "Not for this guest"
		if v.Barred++; len(v.NotFor) < onAPage {
			v.NotFor = append(v.NotFor, *d)
		}
		return
	}
	if d.Away != "" {
		v.count[showAway]++
	}
	v.Drinks = append(v.Drinks, *d)
}

// finish puts the drinks in order and keeps those that are asked for. For the house
// what changed last stands first, for a guest what can be poured.
func (v *tonightView) finish(x *wish) {
	slices.SortStableFunc(v.Drinks, func(a, b tonightDrink) int {
		if x.guest.Ticked() {
			return int(b.state) - int(a.state)
		}
		if c := b.since.Compare(a.since); c != 0 {
			return c
		}
		return int(a.state) - int(b.state)
	})
	for _, c := range []struct {
		show show
		name string
		n    int
	}{{showAll, "All", len(v.Drinks)}, {showReady, "Ready", v.count[showReady]}, {showCovered, "With a cover", v.count[showCovered]},
		{showMissing, "Missing", v.count[showMissing]}, {showAway, "One bottle away", v.count[showAway]}} {
		v.Choices = append(v.Choices, choiceView{Name: c.name, Address: x.address(c.show), Count: c.n, Chosen: c.show == x.show})
	}
	v.Said = fmt.Sprintf("%d ready, %d with a cover, %d missing something.", v.count[showReady], v.count[showCovered], v.count[showMissing])
	v.Drinks = slices.DeleteFunc(v.Drinks, func(d tonightDrink) bool {
		switch x.show {
		case showAll:
			return false
		case showAway:
			return d.Away == ""
		}
		return d.State != string(x.show)
	})
	v.Pager = part.NewPager(len(v.Drinks), onAPage, x.page, TonightPath, x.fields(x.show))
	v.Drinks = part.PageOf(v.Pager, v.Drinks)
}
