package board

import (
	"cmp"
	"net/url"
	"slices"
	"time"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
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
	Text     string       // words of the drinks that are looked for
	Found    string       // how many have them; empty if none are looked for
	Whole    string       // address of the same list without them
	Meant    []part.Meant // what may have been meant, if nothing is found
	Unknown  string       // words that no ingredient is called by, if nothing is found by them
	Unpoured string       // which ingredient is meant that no drink pours, if nothing is found
	ByTaste  bool         // nothing is called by the words that are looked for: what is listed tastes so
	Called   []calledView // bottles that are called by those words, and can run out
	Choices  []choiceView
	ByBottle string // address of the board, for this guest
	Ahead    string // address of the look ahead, for this guest
	Wall     string // address of the sheet for the wall, for this guest
	Flight   string // address of a flight of several drinks, for this guest
	Out      []bottleView
	Ones     []oneView   // that ran out, while others of the same are poured
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
	most  int // drinks on a page
}

// Dry reports whether nobody can be poured any drink of the menu, as on the first days of
// a house.
func (v *tonightView) Dry() bool {
	return v.Menu > 0 && v.count[showReady]+v.count[showCovered] == 0 && !v.Guest.Ticked()
}

// Path is the address of the page.
func (v *tonightView) Path() string { return TonightPath }

// ForGuest is who the page is shown for.
func (v *tonightView) ForGuest() *form.Guest { return v.Guest }

// choiceView is one choice of drinks, and how many there are.
type choiceView struct {
	Name, Address string
	Count         int
	Chosen        bool
}

// onAPage is how many drinks a page lists.
const onAPage = 120

// tonightDrink is a drink of the menu.
type tonightDrink struct {
	Slug, Name string
	Words      string // under which it is found
	Glass      string // method and service, and what goes on the glass
	Pours      []tonightPour
	State      string // "ready", "covered", "missing" or "not-for"
	Word       string // the state in words
	Cover      *part.Cover
	Unbalanced bool
	Left       []string    // what else goes, for the guest
	LeftOut    string      // with nothing poured instead; empty if that does not keep it
	Far        bool        // nothing keeps it; a cover is then the nearest there is
	Barred     []string    // what a bar would pour, and why it does not now
	Offer      *part.Offer // the nearest drink of the menu that can be poured, if nothing keeps this one
	Strength   string      // if the guest has a limit
	Carries    string      // the allergens of what is poured, in a line; empty if nothing is
	Missing    string      // what is out, or what a cover stands for where nothing is
	Away       string      // the one bottle that brings it back
	Because    string      // why the guest must not have it
	Spec       string      // address of its page, for this guest
	Bench      string      // the drink on the bench, for this guest, with covers if there can be some
	Coverable  bool        // one of its bottles is in the way, not the whole of it

	now     *evening.Drink
	state   evening.State
	since   time.Time     // since when it is touched
	touched *outs.Touched // nil if it lost no pour
}

// tonightPour is one pour, with the bottle to tap when it runs out.
type tonightPour struct {
	ID, Amount, Name string
	One              string // id of the bottle that is poured of several; empty if it is the only one
	Out              bool   // it is not poured: it ran out, or the guest must not have it
	Note             string // what a cover changes of it; empty if it is poured as written
}

func newTonightView(about, version string, x *wish) *tonightView {
	v := &tonightView{About: about, Version: version, Guest: &x.guest, Show: string(x.show), Text: x.text, Whole: x.address(x.show), Page: x.page, Here: x.here(),
		ByBottle: x.guest.Address(boardPath), Ahead: x.guest.Address(aheadPath), Wall: x.guest.Address(wallPath), Flight: x.guest.Address(flightPath), count: map[show]int{}}
	return v
}

// drinkOf shows what can be made of a drink of the menu.
func (p *pages) drinkOf(m *behind.HouseSpec, now *evening.Drink, s *behind.Shift, who *form.Guest, since map[string]time.Time) (*tonightDrink, error) {
	limits, t := who.Limits(), now.Touched
	d := &tonightDrink{Slug: m.Slug, Name: m.Spec.Name, Words: evening.Words(&m.Spec, familyOf(p.bar, m)), Glass: part.Serving(limits.Serve(&m.Spec)), Spec: part.SpecAddress(m.Slug, who), Because: now.Because, now: now, state: now.State}
	shown := part.SpecInUnits(p.house.Settings(), &m.Spec)
	for i := range shown.Pours {
		pour := &shown.Pours[i]
		lacks := t != nil && (slices.Contains(t.Missing, pour.Profile) || slices.Contains(t.Removed, pour.Profile))
		d.Pours = append(d.Pours, tonightPour{ID: pour.Profile.ID, Amount: part.Amount(pour), Name: pour.Profile.Name, One: oneOf(s, pour.Profile.ID), Out: lacks || s.IsOut(pour.Profile)})
	}
	if t != nil {
		d.touch(p.house.Settings(), t, &limits, since)
	}
	if d.state == evening.NotFor {
		at := url.Values{"text": {part.DraftInUnits(p.house.Settings(), &m.Spec)}}
		who.AddTo(at)
		if d.Coverable = now.Barred != nil; d.Coverable {
			at.Set("missing", now.Barred.ID)
		}
		d.Bench = form.Link("/bench", at)
	}
	if d.state == evening.Ready {
		d.Carries = part.AllergensOf(&m.Spec, limits.Avoid).InLine()
	}
	if t == nil && limits.MaxABV > 0 {
		var err error
		if d.Strength, err = part.Strength(p.bar, &m.Spec); err != nil && len(flavor.DataFaultsOf(err)) == 0 {
			return nil, err
		}
	}
	return d, nil
}

// touch shows what a drink lost and what becomes of it.
func (d *tonightDrink) touch(said house.Settings, t *outs.Touched, g *guest.Guest, since map[string]time.Time) {
	gone := t.Missing
	if c := evening.Chosen(t); len(gone) == 0 && c != nil { // nothing ran out: the guest must not have it
		gone = slices.DeleteFunc(slices.Clone(t.Removed), func(p *flavor.Profile) bool { return !slices.Contains(c.For, p) })
	}
	for _, b := range t.Missing {
		if at := since[b.ID]; at.After(d.since) {
			d.since = at
		}
	}
	d.touched, d.Missing = t, words.List(part.NamesOf(gone))
	d.Left, d.Far = part.AlsoGone(t.Removed, gone), !t.Near && !t.NotSearched
	if len(t.Missing) > 0 || t.Chosen >= 0 || d.Far { // else what goes for the guest is all that changes
		d.LeftOut = part.LeftOutLine(said, t.Removed, t.LeftOut, evening.Chosen(t), d.Far)
	}
	if len(t.Missing) == 1 && g.Accepts(t.Missing[0]) {
		d.Away = t.Missing[0].Name
	}
}

// detail says what a drink that lost a pour is poured with instead.
func (p *pages) detail(d *tonightDrink, s *behind.Shift, who *form.Guest) (err error) {
	t, g := d.touched, who.Limits()
	if d.Offer, err = p.offer(s, t, who); err != nil {
		return err
	}
	d.Barred = p.barred(s, t, who)
	if t.Chosen >= 0 {
		c := &t.Covers[t.Chosen]
		if g.MaxABV > 0 {
			if d.Strength, err = part.Strength(p.bar, &c.Spec); err != nil {
				return err
			}
		}
		shown := part.CoverOf(p.house.Settings(), t.Spec, c, t.ScoreBefore, g.Avoid)
		d.Cover, d.Unbalanced = &shown, t.Unbalanced
		if !d.Far {
			d.Pours, d.Carries = poured(s, d.Pours, shown.Pours), shown.Allergens.InLine()
		}
		if shown.Moved, err = part.DifferenceOf(p.bar, "moved-"+d.Slug, t.Spec, &c.Spec); err != nil {
			return err
		}
	}
	if left := t.LeftOut; left != nil && d.now.Poured() == &left.Spec {
		return p.without(d, s, left, &g)
	}
	return nil
}

// without shows a drink as it is poured without what had to go: the amounts that its score is of.
func (p *pages) without(d *tonightDrink, s *behind.Shift, left *cover.Cover, g *guest.Guest) (err error) {
	shown := part.CoverOf(p.house.Settings(), d.touched.Spec, left, d.touched.ScoreBefore, g.Avoid)
	d.Pours, d.Carries = poured(s, d.Pours, shown.Pours), shown.Allergens.InLine()
	if g.MaxABV > 0 {
		d.Strength, err = part.Strength(p.bar, &left.Spec)
	}
	return err
}

// poured lists the pours of a drink as they are poured with a cover, those that are
// not poured last. What is poured instead can run out too.
func poured(s *behind.Shift, written []tonightPour, covered []part.Pour) (out []tonightPour) {
	for i := range covered {
		out = append(out, tonightPour{ID: covered[i].ID, Amount: covered[i].Amount, Name: covered[i].Name, One: oneOf(s, covered[i].ID), Note: covered[i].Note()})
	}
	for _, p := range written {
		if p.Out {
			out = append(out, p)
		}
	}
	return out
}

// byName orders drinks by their names.
func byName(a, b tonightDrink) int {
	return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.Slug, b.Slug))
}

// add counts a drink, and keeps it if it is one of those that are looked for.
func (v *tonightView) add(d *tonightDrink, sought bool) {
	v.Menu++
	switch d.state {
	case evening.Ready:
		d.State, d.Word = "ready", say.It("board.ready")
		v.count[showReady]++
	case evening.Covered:
		d.State, d.Word = "covered", say.It("board.with-a-cover")
		v.count[showCovered]++
	case evening.Missing:
		d.State, d.Word = "missing", say.It("board.missing-this", "What", d.Missing)
		v.count[showMissing]++
	case evening.NotFor:
		d.State, d.Word = "not-for", say.It("board.not-for-this-guest")
		if sought {
			v.bar(d)
		}
		return
	}
	v.count[showAll]++
	if d.Away != "" {
		v.count[showAway]++
	}
	if sought {
		v.Drinks = append(v.Drinks, *d)
	}
}

// bar keeps a drink that is not for this guest.
func (v *tonightView) bar(d *tonightDrink) {
	if v.Barred++; len(v.NotFor) < v.most {
		v.NotFor = append(v.NotFor, *d)
	}
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
	}{{showAll, say.It("board.all"), v.count[showAll]}, {showReady, say.It("board.ready"), v.count[showReady]}, {showCovered, say.It("board.with-a-cover"), v.count[showCovered]},
		{showMissing, say.It("board.missing"), v.count[showMissing]}, {showAway, say.It("board.one-bottle-away"), v.count[showAway]}} {
		v.Choices = append(v.Choices, choiceView{Name: c.name, Address: x.address(c.show), Count: c.n, Chosen: c.show == x.show})
	}
	v.Said = say.It("board.tonight-in-all", "Ready", v.count[showReady], "Covered", v.count[showCovered], "Missing", v.count[showMissing])
	v.Drinks = slices.DeleteFunc(v.Drinks, func(d tonightDrink) bool {
		switch x.show {
		case showAll:
			return false
		case showAway:
			return d.Away == ""
		}
		return d.State != string(x.show)
	})
	v.Found = v.found()
	v.Pager = part.NewPager(len(v.Drinks), v.most, x.page, TonightPath, x.fields(x.show))
	v.Drinks = part.PageOf(v.Pager, v.Drinks)
}

// found says how many of the listed drinks, and of those that are not for this guest, have
// the words that are looked for.
func (v *tonightView) found() string {
	if v.Text == "" {
		return ""
	}
	return say.It("board.found", "Found", len(v.Drinks)+v.Barred, "Menu", v.Menu, "Text", v.Text, "Barred", v.Barred, "Taste", v.ByTaste)
}
