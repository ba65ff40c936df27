package board

import (
	"slices"
	"time"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// boardView is the cover board.
type boardView struct {
	About   string
	Version string
	Guest   *form.Guest
	Here    string // address of this board
	Ahead   string // address of the look ahead, for this guest
	Specs   string // address of the specs that the guest may have
	Out     []bottleView
	Ones    []oneView // that ran out, while others of the same are poured
	Shelves []shelfView
	Hidden  int           // bottles that are not shown, since the guest must not have them
	Menu    int           // drinks on the menu
	Drinks  []touchedView // the first of those that are touched
	Touched int           // how many there are
	InDoubt bool          // time ran out: there may be better covers, or some for a drink that has none
	Lost    int           // of these, how many have no cover
	Waiting int           // how many wait for a label
	Fetch   []fetchView
	Keep    []keepView
	Saves   string
	Said    string
	Again   *bottleView // what was just marked as back
	Noted   string      // what was just written down of a cover
	Forget  string      // the mark of that, to take it back
}

// Path is the address of the board.
func (v *boardView) Path() string { return boardPath }

// ForGuest is who the board is shown for.
func (v *boardView) ForGuest() *form.Guest { return v.Guest }

// Show is which drinks are asked for: the board shows all that are touched.
func (v *boardView) Show() string { return "" }

// bottleView is a bottle that can be marked.
type bottleView struct {
	ID, Name string
	One      string // id of the bottle that it is poured from, if the shelf holds others of it
	Drinks   string // how many drinks of the menu need it
	Since    string // since when it is out; empty if that is not known
	Just     bool   // this screen has just marked it as out
}

// shelfView is the bottles of the menu that do one thing in a drink.
type shelfView struct {
	ID, Title, Short string
	Bottles          []bottleView
}

// touchedView is a drink that lost a pour.
type touchedView struct {
	Slug, Name string
	Lacks      string      // what it lost, and what the house never kept of it
	Because    string      // why this guest must not have it, a missing bottle aside
	Labels     []labelView // that keep it from this guest until they are read
	Unbalanced bool        // no cover keeps it in balance
	Unknown    bool        // time ran out before this drink
	Glass      string      // method and service
	Cover      *part.Cover
	Served     string      // the cover, for telling how it was received; empty if that cannot be told
	Left       []string    // other pours that had to go, for the guest
	LeftOut    string      // with nothing poured instead; empty if that does not keep it
	Far        bool        // nothing keeps the drink; a cover is then the nearest there is
	Lost       bool        // nothing can be poured that keeps it
	Barred     []string    // what a bar would pour, and why it does not now
	Offer      *part.Offer // the nearest drink of the menu that can be poured, if nothing keeps this one
	Others     []string    // further covers, a line each
	Cautions   []behind.Caution

	since time.Time // since when it is touched
}

// fetchView is a bottle that could be fetched.
type fetchView struct{ Name, Back string }

// keepView is a substitute to keep at hand.
type keepView struct{ Name, Drinks string }

// shelve lists what is out, and the bottles of the menu that are not. What the
// guest must not have is left off the shelves, since nothing here is poured
// from it.
func (v *boardView) shelve(s *behind.Shift, since map[string]time.Time) {
	guest := v.Guest.Limits()
	need := needed(s)
	for _, b := range latest(s.Out, since) {
		out := bottleOf(s, b, need[b])
		out.Since = sinceWhen(since[b.ID])
		v.Out = append(v.Out, out)
	}
	v.Ones = onesOf(s)
	for _, t := range part.ShelfTitles() {
		shelf := shelfView{ID: "shelf-" + string(t.Part), Title: t.Title, Short: t.Short}
		for _, b := range s.Stock {
			switch {
			case need[b] == 0 || s.IsOut(b) || b.Class.Part() != t.Part:
			case !guest.Accepts(b):
				v.Hidden++
			default:
				shelf.Bottles = append(shelf.Bottles, bottleOf(s, b, need[b]))
			}
		}
		if len(shelf.Bottles) > 0 {
			v.Shelves = append(v.Shelves, shelf)
		}
	}
}

// needed counts the drinks of the menu that pour each bottle.
func needed(s *behind.Shift) map[*flavor.Profile]int {
	need := map[*flavor.Profile]int{}
	for i := range s.Menu {
		for _, b := range part.Bottles(&s.Menu[i].Spec) {
			need[b]++
		}
	}
	return need
}

// shelveInstead adds what the covers pour and no drink of the menu does, before the other
// shelves: it can run out too.
func (v *boardView) shelveInstead(s *behind.Shift, now *evening.Answer) {
	need, instead := needed(s), map[*flavor.Profile]int{}
	for i := range now.Drinks {
		d := &now.Drinks[i]
		if d.State != evening.Covered {
			continue
		}
		if chosen := evening.Chosen(d.Touched); chosen != nil {
			for k := range chosen.Parts {
				instead[chosen.Parts[k].Profile]++
			}
		}
	}
	shelf := shelfView{ID: "shelf-instead", Title: say.It("board.poured-instead-tonight"), Short: say.It("board.instead")}
	for _, b := range s.Stock {
		if instead[b] > 0 && need[b] == 0 && !s.IsOut(b) {
			shelf.Bottles = append(shelf.Bottles, bottleView{ID: b.ID, Name: b.Name, One: oneOf(s, b.ID), Drinks: say.It("board.poured-instead-in", "Drinks", instead[b])})
		}
	}
	if len(shelf.Bottles) > 0 {
		v.Shelves = append([]shelfView{shelf}, v.Shelves...)
	}
}

func bottleOf(s *behind.Shift, b *flavor.Profile, drinks int) bottleView {
	v := bottleView{ID: b.ID, Name: b.Name, One: oneOf(s, b.ID), Drinks: say.It("board.in-no-drink")}
	if drinks > 0 {
		v.Drinks = say.It("board.in-drinks", "Drinks", drinks)
	}
	return v
}

// cover says what becomes of the menu.
func (v *boardView) cover(p *pages, s *behind.Shift, now *evening.Answer, since map[string]time.Time) (err error) {
	guest, r := v.Guest.Limits(), now.Result
	v.Touched, v.InDoubt = len(r.Touched), r.CutShort
	slugs := map[*flavor.Spec]string{}
	for i := range s.Menu {
		slugs[&s.Menu[i].Spec] = s.Menu[i].Slug
	}
	for i := range r.Touched {
		t := &r.Touched[i]
		d, one := touchedOf(p.house.Settings(), t, guest.Avoid), now.Of(t.Spec)
		d.keptFrom(one, v.Guest)
		switch {
		case one.Waits():
			v.Waiting++
		case d.Lost && !d.Unknown:
			v.Lost++
		}
		if i >= onAPage {
			continue
		}
		d.Slug = slugs[t.Spec]
		for _, b := range t.Missing {
			if at := since[b.ID]; at.After(d.since) {
				d.since = at
			}
		}
		d.Lacks = lacksOf(t, s)
		if one.State == evening.Missing {
			if d.Offer, err = p.offer(s, t, v.Guest); err != nil {
				return err
			}
			d.Barred = p.barred(s, t, v.Guest)
		}
		if d.Cover != nil {
			chosen := &t.Covers[t.Chosen]
			d.Cautions, d.Served = p.bar.Cautions(&chosen.Spec), servedOf(d.Slug, t, chosen)
			if d.Cover.Moved, err = part.DifferenceOf(p.bar, "moved-"+d.Slug, t.Spec, &chosen.Spec); err != nil {
				return err
			}
		}
		v.Drinks = append(v.Drinks, d)
	}
	slices.SortStableFunc(v.Drinks, latestFirst)
	v.advise(r, guest)
	return nil
}

// latestFirst puts first what changed last, and of that what has no cover.
func latestFirst(a, b touchedView) int {
	if c := b.since.Compare(a.since); c != 0 {
		return c
	}
	switch {
	case a.Lost == b.Lost:
		return 0
	case a.Lost:
		return -1
	}
	return 1
}

// advise says what to fetch and what to keep, and what choosing for the whole menu saves.
func (v *boardView) advise(r *outs.Result, who guest.Guest) {
	v.Fetch = fetchesOf(r, who)
	for _, o := range r.Opened {
		v.Keep = append(v.Keep, keepView{o.Profile.Name, say.It("board.for-drinks", "Drinks", o.Drinks)})
	}
	if r.Spared > 0 {
		v.Saves = say.It("board.whole-menu-saves", "Spared", r.Spared, "Steps", words.Figure(r.Given, 1))
	}
}

// fetchesOf lists the bottles that bring drinks back, the one that brings most first. One that
// the guest must not have brings this guest nothing.
func fetchesOf(r *outs.Result, who guest.Guest) (out []fetchView) {
	for _, f := range r.Fetch {
		if f.Drinks > 0 && who.Accepts(f.Profile) {
			out = append(out, fetchView{f.Profile.Name, say.It("board.fetch-makes-complete", "Drinks", f.Drinks, "Lost", f.Lost)})
		}
	}
	return out
}

func touchedOf(said house.Settings, t *outs.Touched, avoid []flavor.Allergen) touchedView {
	d := touchedView{Name: t.Spec.Name, Unbalanced: t.Unbalanced && t.Chosen >= 0, Glass: part.Serving(t.Spec)}
	d.Unknown = t.NotSearched
	d.Left, d.LeftOut, d.Far = part.AlsoGone(t.Removed, t.Missing), part.LeftOutLine(said, t.Removed, t.LeftOut, evening.Chosen(t), false), !t.Near && !t.NotSearched
	d.Lost = d.LeftOut == "" && (t.Chosen < 0 || d.Far)
	if t.Chosen < 0 {
		return d
	}
	chosen := part.CoverOf(said, t.Spec, &t.Covers[t.Chosen], t.ScoreBefore, avoid)
	d.Cover = &chosen
	for i := range t.Covers {
		if i != t.Chosen {
			d.Others = append(d.Others, part.OtherLine(said, t.Spec, &t.Covers[i], avoid))
		}
	}
	return d
}

// keptFrom says what keeps a drink from a guest that no bottle mends.
func (d *touchedView) keptFrom(now *evening.Drink, who *form.Guest) {
	d.Because = now.Because
	if !now.Waits() {
		return
	}
	g := who.Limits()
	for _, b := range now.Unread {
		d.Labels = append(d.Labels, labelView{Name: b.Name, Why: g.ToRead(b), Address: labelAddress(b, who)})
	}
}

// lacksOf says what of a drink has run out, and what the house does not keep.
func lacksOf(t *outs.Touched, s *behind.Shift) string {
	var out, never []string
	for _, b := range t.Missing {
		if s.IsOut(b) {
			out = append(out, b.Name)
		} else {
			never = append(never, b.Name)
		}
	}
	return say.It("board.lacks", "Out", words.List(out), "Never", words.List(never))
}

// say puts the board in a line for who cannot see it change.
func (v *boardView) say() {
	switch {
	case len(v.Out) == 0 && v.Touched == 0:
		v.Said = say.It("board.nothing-is-out")
	case v.Touched == 0:
		v.Said = say.It("board.no-drink-needs-what-is-out")
	default:
		v.Said = say.It("board.touched", "Touched", v.Touched, "Lost", v.Lost, "Waiting", v.Waiting)
	}
}
