package stock

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
	"counterpour/webui/behind"
	"counterpour/webui/desk"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Sizes of the first day.
const (
	usualBottles  = 72  // offered to be ticked
	starterDrinks = 12  // of a first menu
	moreDrinks    = 60  // to choose from for who asks for more
	usualSizeML   = 700 // of a ticked bottle until its own is written; common practice, no source
)

// startView is the page of the first day: the house, then three steps.
type startView struct {
	Said    string
	Undo    *part.Undo   // of what was just done
	House   []desk.Group // the form of its settings
	Version int64        // of the settings, 0 if there are none
	Named   string       // what the house calls itself
	Shelves []startShelf
	Ticked  int // bottles of the house
	Drinks  []startDrink
	Further int           // how many more proven drinks the bottles pour
	Long    bool          // these are listed as well
	Menu    int           // drinks of the house
	Try     []form.Option // what a cover may be tried for
}

type startShelf struct {
	Title   string
	Bottles []startBottle
}

// startBottle is a bottle to tick.
type startBottle struct {
	ID, Name string
	There    bool // it is on the shelf, and not out
	Out      bool // the house has it, and it ran out
}

type startDrink struct {
	Name, Family, Pours string
	There               bool // it is on the menu
	First               bool // it is of the first menu that is suggested
}

// start is the first day of a house: bottles to tick, a menu to keep or to throw
// away, and a cover to try.
func (p *pages) start(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	if r.Method != http.MethodPost {
		v, err := p.startOf(r)
		if err != nil {
			return err
		}
		return p.Write(w, r, http.StatusOK, "start", "layout", v)
	}
	var edits []house.Edit
	var err error
	next := url.Values{}
	switch do := r.PostForm.Get("do"); do {
	case "house":
		return p.settled(w, r)
	case "bottles":
		edits, err = p.ticked(r.Context(), r.PostForm["bottle"])
		next.Set("done", "bottles")
	case "menu":
		edits, err = p.chosen(r.Context(), r.PostForm["drink"])
		next.Set("done", "menu")
		next.Set("added", strconv.Itoa(len(edits)))
	default:
		return form.ErrUnreadable
	}
	if err == nil && len(edits) > 0 {
		var changes []house.Change
		if changes, err = p.house.Store().Write(r.Context(), frame.By(r), edits...); err == nil {
			next.Set("undo", part.MarkOf(changes[0].Ref, changes[0].Version))
		}
	}
	if errors.Is(err, house.ErrConflict) {
		return frame.ErrGone
	}
	if err != nil {
		return err
	}
	at := map[string]string{"bottles": "#menu", "menu": "#try"}[next.Get("done")]
	http.Redirect(w, r, "/start?"+next.Encode()+at, http.StatusSeeOther)
	return nil
}

// ticked are the bottles that are ticked and not there yet, under the name of their
// category until they get their own.
func (p *pages) ticked(ctx context.Context, ids []string) ([]house.Edit, error) {
	there, err := house.All[house.Bottle](ctx, p.house.Store())
	var edits []house.Edit
	for _, id := range ids {
		profile, known := p.house.Catalogue().ByID(id)
		if !known || slices.ContainsFunc(there, func(b house.Kept[house.Bottle]) bool { return b.Item.Ingredient == id || b.Item.ID == id }) {
			continue
		}
		edits = append(edits, house.Put(house.Bottle{ID: id, Name: words.SentenceStart(profile.Name), Ingredient: id, SizeML: usualSizeML, Stock: 1}, 0))
	}
	return edits, err
}

// chosen are the drinks that are ticked and not on the menu yet.
func (p *pages) chosen(ctx context.Context, names []string) ([]house.Edit, error) {
	there, err := house.All[house.Spec](ctx, p.house.Store())
	var edits []house.Edit
	for _, d := range slices.Concat(p.first(), p.further()) {
		spec := house.FromSpec("", d.Spec)
		if slices.Contains(names, spec.Name) && !slices.ContainsFunc(there, func(s house.Kept[house.Spec]) bool { return s.Item.ID == spec.ID }) {
			edits = append(edits, house.Put(spec, 0))
		}
	}
	return edits, err
}

// settled keeps the settings that the first day asks for, and goes on to the bottles.
func (p *pages) settled(w http.ResponseWriter, r *http.Request) error {
	version, err := form.Version(r.PostForm)
	if err != nil {
		return err
	}
	d := p.settingsDesk()
	d.Next = func(c house.Change) string {
		return StartPath + "?" + url.Values{"done": {"house"}, "undo": {part.MarkOf(c.Ref, c.Version)}}.Encode() + "#bottles"
	}
	return d.Save(p.desk(), w, r, house.SettingsID, version)
}

// house fills in what the house has said of itself.
func (v *startView) house(ctx context.Context, p *pages) error {
	kept, err := house.Get[house.Settings](ctx, p.house.Store(), house.SettingsID)
	if err != nil && !errors.Is(err, house.ErrNotFound) {
		return err
	}
	v.House, v.Version, v.Named = p.settingsDesk().Fill(kept.Item).Groups, kept.Version, kept.Item.Name
	return nil
}

func (p *pages) startOf(r *http.Request) (*startView, error) {
	ctx := r.Context()
	room, err := p.stockroom(ctx)
	if err != nil {
		return nil, err
	}
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return nil, err
	}
	v := &startView{Ticked: room.onShelf(), Menu: len(menu)}
	if err := v.house(ctx, p); err != nil {
		return nil, err
	}
	v.shelve(p.house.Usual(usualBottles), room)
	first, rest := p.first(), p.further()
	v.offer(first, menu, p.house.Settings(), true)
	if v.Long = r.Form.Get("drinks") == "more"; v.Long {
		v.offer(rest, menu, p.house.Settings(), false)
	}
	v.Further = len(rest)
	seen := map[string]bool{}
	for _, m := range menu {
		for i := range m.Spec.Pours {
			if profile := m.Spec.Pours[i].Profile; !seen[profile.ID] && !profile.Class.Free() && len(v.Try) < 6 {
				seen[profile.ID] = true
				v.Try = append(v.Try, form.Option{Value: profile.ID, Name: profile.Name})
			}
		}
	}
	v.Undo = part.UndoIn(r.Form, StartPath)
	switch r.Form.Get("done") {
	case "house":
		v.Said = say.It("stock.settings-kept")
	case "bottles":
		v.Said = say.It("stock.on-the-shelf", "Bottles", v.Ticked)
	case "menu":
		added, _ := strconv.Atoi(r.Form.Get("added")) // what is no number is nothing new
		v.Said = say.It("stock.put-on-the-menu", "Drinks", added)
	}
	return v, nil
}

// first are the proven drinks of the first menu.
func (p *pages) first() []template.Labelled { return p.poured(p.house.Starters(starterDrinks)) }

// further are the proven drinks that the bottles pour beside those of the first menu.
func (p *pages) further() []template.Labelled {
	first := p.house.Starters(starterDrinks)
	return p.poured(slices.DeleteFunc(p.house.Starters(moreDrinks), func(d template.Labelled) bool {
		return slices.ContainsFunc(first, func(f template.Labelled) bool { return f.Spec.Name == d.Spec.Name })
	}))
}

// poured are proven drinks as a jigger of the house pours them: books have ounces that none has.
func (p *pages) poured(drinks []template.Labelled) []template.Labelled {
	if p.house.Settings().Units == measure.Metric {
		return drinks // they are converted to its marks where they are shown
	}
	out := slices.Clone(drinks)
	for i := range out {
		out[i].Spec = part.OnOunceMarks(&out[i].Spec, func(s *flavor.Spec) float64 {
			scored, _, err := p.bar.Score(s)
			if err != nil {
				return 0 // what cannot be scored is poured as the lower mark
			}
			return scored.Judgement.Score
		})
	}
	return out
}

// offer lists drinks of a first menu, all in one unit.
func (v *startView) offer(starters []template.Labelled, menu []behind.HouseSpec, said house.Settings, first bool) {
	var drinks []*flavor.Spec
	for i := range starters {
		drinks = append(drinks, &starters[i].Spec)
	}
	said = said.ForList(drinks)
	for i, s := range drinks {
		shown := part.SpecInUnits(said, s)
		drink := startDrink{Name: s.Name, Family: starters[i].Family, First: first,
			There: slices.ContainsFunc(menu, func(m behind.HouseSpec) bool { return m.Spec.Name == s.Name })}
		var pours []string
		for k := range shown.Pours {
			pours = append(pours, part.Amount(&shown.Pours[k])+" "+shown.Pours[k].Profile.Name)
		}
		drink.Pours = words.Bound(strings.Join(pours, ", "))
		v.Drinks = append(v.Drinks, drink)
	}
}

// shelve groups what is usual by its class.
func (v *startView) shelve(usual []*flavor.Profile, room *stockroom) {
	for _, c := range flavor.Classes() {
		shelf := startShelf{Title: words.SentenceStart(string(c))}
		for _, p := range usual {
			if p.Class == c {
				kept := slices.ContainsFunc(room.bottles, func(b house.Bottle) bool { return b.Ingredient == p.ID })
				out := kept && slices.Contains(room.outs, p.ID)
				shelf.Bottles = append(shelf.Bottles, startBottle{ID: p.ID, Name: p.Name, There: kept && !out, Out: out})
			}
		}
		if len(shelf.Bottles) > 0 {
			v.Shelves = append(v.Shelves, shelf)
		}
	}
}
