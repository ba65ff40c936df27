package webuitest

import (
	"context"
	"slices"
	"strings"
	"sync"
	"time"

	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/data/house/store"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/barred"
	"counterpour/flavor/cover/lookahead"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
	"counterpour/webui/behind"
	"counterpour/webui/part"
)

// More of the fake shelf, for the house.
var (
	Falernum = NewProfile("falernum", "falernum", flavor.ClassLiqueur)
	Almond   = NewProfile("almond-syrup", "almond syrup", flavor.ClassSpicedSyrup, flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
	Clove    = NewProfile("clove-syrup", "clove syrup", flavor.ClassSpicedSyrup)
	Spare    = NewProfile("spare-bitters", "spare bitters", flavor.ClassCocktailBitters)
)

func init() {
	Gin.ABV.Value, Falernum.ABV.Value, Spare.ABV.Value = 40, 11, 45
	Lemon.Acid.Value, Syrup.Sugar.Value, Orgeat.Sugar.Value, Almond.Sugar.Value, Clove.Sugar.Value = 60, 615, 600, 610, 615
	Falernum.Sugar.Value, Spare.Bitter.Value = 300, 900
	Lemon.Acids.Citric = 1
	Gin.Aroma[flavor.Juniper], Falernum.Aroma[flavor.Clove], Clove.Aroma[flavor.Clove] = 10, 8, 9
	Orgeat.Aroma[flavor.Nut], Almond.Aroma[flavor.Nut], Lemon.Aroma[flavor.Citrus], Spare.Aroma[flavor.Cinnamon] = 9, 9, 8, 60
	for _, p := range Kept {
		if err := mix.Complete(p); err != nil {
			panic(err)
		}
	}
}

// Kept is everything that the fake house knows of.
var Kept = []*flavor.Profile{Gin, Lemon, Syrup, Orgeat, Sesame, white, bottle, Falernum, Almond, Clove, Spare}

// House keeps four drinks. Nothing covers gin; falernum is covered by
// almond syrup, or by clove syrup for who must not have nuts.
type House struct {
	Drinks []behind.HouseSpec

	keep    sync.Once
	Records house.Store

	mu    sync.Mutex
	Dry   []string
	marks []marking.Request // that were taken, in order
	// Overtakes says which marks somebody else has overtaken; nil for none.
	Overtakes func(*marking.Request) bool
	Old       bool // its store does not answer
	told      []chan struct{}
}

var _ behind.House = (*House)(nil)

// NewHouse is a house with nothing out.
func NewHouse() *House {
	h := &House{}
	for _, s := range []struct{ slug, family, text string }{
		{"halyard-sour", "sour", GoodDraft},
		{"mainbrace", "tiki", "Mainbrace\n2 oz gin\n3/4 oz lemon juice\n1/2 oz falernum\nshake, up"},
		{"spindrift", "tiki", "Spindrift\n1 oz gin\n1 oz lemon juice\n1/2 oz falernum\nshake, up"},
		{"nutcracker", "sour", "Nutcracker\n" + NutDraft},
	} {
		spec, err := Bar{}.Read(s.text)
		if err != nil {
			panic(err)
		}
		h.Drinks = append(h.Drinks, behind.HouseSpec{Slug: s.slug, Family: s.family, Spec: spec})
	}
	return h
}

func (h *House) About() string { return "The Test Room. An invented bar." }

// Settings are those of the store.
func (h *House) Settings() house.Settings {
	kept, err := house.Get[house.Settings](context.Background(), h.Store(), house.SettingsID)
	if err != nil {
		return house.Settings{} // a fake house has none until a test writes them
	}
	return kept.Item
}

// Menu is what the store holds, in the order that the menu had at first.
func (h *House) Menu(ctx context.Context) ([]behind.HouseSpec, error) {
	kept, err := house.All[house.Spec](ctx, h.Store())
	var first, last []behind.HouseSpec
	for _, m := range h.Drinks {
		if slices.ContainsFunc(kept, func(k house.Kept[house.Spec]) bool { return k.Item.ID == m.Slug }) {
			first = append(first, m)
		}
	}
	for _, k := range kept {
		drink, err := k.Item.Flavor(h.Shelf())
		if err != nil {
			return nil, err
		}
		if at := slices.IndexFunc(first, func(m behind.HouseSpec) bool { return m.Slug == k.Item.ID }); at >= 0 {
			first[at].Spec = drink
			continue
		}
		last = append(last, behind.HouseSpec{Slug: k.Item.ID, Spec: drink})
	}
	return append(first, last...), err
}

func (h *House) Find(ctx context.Context, q behind.SpecQuery) ([]behind.HouseSpec, error) {
	menu, err := h.Menu(ctx)
	if err != nil {
		return nil, err
	}
	var out []behind.HouseSpec
	for _, s := range menu {
		ok := (q.Family == "" || q.Family == s.Family) && strings.Contains(strings.ToLower(s.Spec.Name), strings.ToLower(q.Text))
		for _, p := range s.Spec.Pours {
			ok = ok && q.Guest.Accepts(p.Profile)
		}
		if ok {
			out = append(out, s)
		}
	}
	return out, nil
}

func (h *House) Stock(context.Context) ([]*flavor.Profile, error) {
	if h.Drinks == nil {
		return nil, nil
	}
	return []*flavor.Profile{Gin, Falernum, Lemon, Syrup, Orgeat, Almond, Clove, white, Spare}, nil
}

// Inventory is that of the store.
func (h *House) Inventory() []house.Bottle {
	kept, _ := house.All[house.Bottle](context.Background(), h.Store())
	return house.Items(kept)
}

func (h *House) RunOut(context.Context) ([]string, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return slices.Clone(h.Dry), nil
}

// Tastings are those of the store, which all go for the drink's own pours.
func (h *House) Tastings(ctx context.Context) ([]cover.Tasting, error) {
	covers, err := house.All[house.ServedCover](ctx, h.Store())
	var out []cover.Tasting
	for _, c := range house.Items(covers) {
		t := cover.Tasting{Missing: c.Missing}
		if c.Reception == house.ReceptionKept {
			t.Liked = 1
		}
		out = append(out, t)
	}
	return out, err
}

func (h *House) Mark(ctx context.Context, by house.By, r marking.Request) error {
	if r.Empty() {
		return &flavor.DataFault{Kind: flavor.ErrInvalid, Message: "nothing is marked"}
	}
	stock, _ := h.Stock(ctx)
	for _, id := range slices.Concat(r.Out, r.Back) {
		if !slices.ContainsFunc(stock, func(p *flavor.Profile) bool { return p.ID == id }) {
			return &flavor.DataFault{Kind: flavor.ErrUnknown, Value: id, Message: "the house does not keep it"}
		}
	}
	if h.Overtakes != nil && h.Overtakes(&r) {
		return flavor.Invalid(marking.TappedField, "", "somebody marked it since")
	}
	edits, gone := h.markBottles(by, &r)
	r.Out = append(slices.Clone(r.Out), gone...)
	for _, x := range r.Received {
		spec, err := house.Get[house.Spec](ctx, h.Store(), x.Drink)
		if _, known := h.Shelf().ByID(x.Missing); err != nil || !known {
			return &flavor.DataFault{Kind: flavor.ErrUnknown, Value: x.Drink, Message: "the house does not have it"}
		}
		edits = append(edits, house.Put(house.ServedCover{At: by.At, Spec: x.Drink, SpecVersion: spec.Version, Missing: x.Missing, Reception: x.Reception, Taster: by.Actor,
			Served: house.FromSpec(x.Drink, *x.Served).Pours}, 0))
	}
	if len(edits) > 0 {
		if _, err := h.Store().Write(ctx, by, edits...); err != nil {
			return err
		}
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	h.Dry = slices.DeleteFunc(h.Dry, func(o string) bool { return slices.Contains(r.Out, o) || slices.Contains(r.Back, o) })
	h.Dry = append(h.Dry, r.Out...)
	h.marks = append(h.marks, r)
	for _, c := range h.told {
		select {
		case c <- struct{}{}:
		default:
		}
	}
	return nil
}

// markBottles marks single bottles in the store: the last one of its kind that is there takes
// the kind with it. It knows no other state than the one before the mark.
func (h *House) markBottles(by house.By, r *marking.Request) (edits []house.Edit, gone []string) {
	kept, _ := house.All[house.Bottle](context.Background(), h.Store())
	others := func(b house.Bottle) bool {
		return slices.ContainsFunc(kept, func(o house.Kept[house.Bottle]) bool {
			return o.Item.Ingredient == b.Ingredient && o.Item.ID != b.ID && o.Item.There()
		})
	}
	for _, k := range kept {
		switch out, back := slices.Contains(r.BottlesOut, k.Item.ID), slices.Contains(r.BottlesBack, k.Item.ID); {
		case out && !others(k.Item):
			gone = append(gone, k.Item.Ingredient)
		case out:
			k.Item.OutSince = &by.At
			edits = append(edits, house.Put(k.Item, k.Version))
		case back:
			k.Item.OutSince = nil
			edits = append(edits, house.Put(k.Item, k.Version))
		}
	}
	return edits, gone
}

// Names are the words that its store keeps.
func (h *House) Names() []service.Named {
	names, _ := house.All[house.Name](context.Background(), h.Store())
	var out []service.Named
	for _, n := range house.Items(names) {
		if p, known := h.Shelf().ByID(n.Ingredient); known {
			out = append(out, service.Named{Words: n.Written, Profile: p})
		}
	}
	return out
}

// Name keeps words in its store; the fake bar does not read by them.
func (h *House) Name(ctx context.Context, by house.By, r service.NameRequest) error {
	id := house.IDOf(house.KindName, flavor.NormaliseName(r.Words))
	kept, _ := house.Get[house.Name](ctx, h.Store(), id)
	if r.Undo {
		_, err := h.Store().Write(ctx, by, house.Remove(house.Ref{Kind: house.KindName, ID: id}, kept.Version))
		return err
	}
	p, _, err := h.Shelf().Resolve(r.Kind)
	if err != nil {
		return &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "kind", Value: r.Kind, Message: "no ingredient is called that"}
	}
	_, err = h.Store().Write(ctx, by, house.Put(house.Name{ID: id, Written: r.Words, Ingredient: p.ID}, kept.Version))
	return err
}

// Fresh says whether the store answers.
func (h *House) Fresh() error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.Old {
		return service.ErrStale
	}
	return nil
}

// Changes tells when the outs change.
func (h *House) Changes(ctx context.Context) (<-chan struct{}, error) {
	c := make(chan struct{}, 1)
	h.mu.Lock()
	defer h.mu.Unlock()
	h.told = append(h.told, c)
	context.AfterFunc(ctx, func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		h.told = slices.DeleteFunc(h.told, func(o chan struct{}) bool { return o == c })
		close(c)
	})
	return c, nil
}

// Store is a real one, in memory, and holds the specs of the menu at first.
func (h *House) Store() house.Store {
	h.keep.Do(func() {
		var err error
		if h.Records, err = store.OpenMemory(context.Background()); err != nil {
			panic(err)
		}
		var edits []house.Edit
		for _, m := range h.Drinks {
			edits = append(edits, house.Put(house.FromSpec(m.Slug, m.Spec), 0))
		}
		if len(edits) == 0 {
			return
		}
		if _, err = h.Records.Write(context.Background(), Opening, edits...); err != nil {
			panic(err)
		}
	})
	return h.Records
}

// Prices are those of the store's bottles.
func (h *House) Prices(ctx context.Context) (prep.Prices, error) {
	bottles, err := house.All[house.Bottle](ctx, h.Store())
	if err != nil {
		return prep.Prices{}, err
	}
	made, err := house.All[house.Made](ctx, h.Store())
	if err != nil {
		return prep.Prices{}, err
	}
	return prep.NewPrices(h.Shelf(), house.Items(bottles), house.Items(made))
}

// Catalogue is the shelf: a fake house lays nothing over it.
func (h *House) Catalogue() *house.Shelf { return h.Shelf() }

// Usual is the shelf.
func (h *House) Usual(n int) []*flavor.Profile { return Kept[:min(n, len(Kept))] }

// Starters are the drinks that a fake house begins with, whatever is in stock.
func (h *House) Starters(n int) []template.Labelled {
	var out []template.Labelled
	for _, d := range NewHouse().Drinks {
		out = append(out, template.Labelled{Spec: d.Spec, Family: d.Family})
	}
	return out[:min(n, len(out))]
}

// Opening is who wrote the menu of a fake house, and when.
var Opening = house.By{Actor: "Ines", At: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC)}

func (h *House) Shelf() *house.Shelf {
	return house.NewShelf(Kept)
}

// Listeners is how many are told of changes.
func (h *House) Listeners() int {
	h.mu.Lock()
	defer h.mu.Unlock()
	return len(h.told)
}

func (b Bar) Outs(_ context.Context, r outs.Request) (*outs.Result, error) {
	result := &outs.Result{}
	drinks := map[*flavor.Profile]int{}
	for _, s := range r.Specs {
		t := outs.Touched{Spec: s, ScoreBefore: 94.2, Chosen: -1}
		for _, p := range part.Bottles(s) {
			if slices.Contains(r.Out, p) {
				t.Missing = append(t.Missing, p)
				drinks[p]++
			}
		}
		if len(t.Missing) == 0 {
			continue
		}
		t.Removed = slices.Clone(t.Missing)
		for _, p := range part.Bottles(s) {
			if !r.Guest.Accepts(p) && !slices.Contains(t.Missing, p) {
				t.Removed = append(t.Removed, p)
			}
		}
		if slices.Equal(t.Missing, []*flavor.Profile{Falernum}) {
			t.Chosen, t.Near = 0, true
			left := s.Clone()
			left.Pours = slices.DeleteFunc(left.Pours, func(p flavor.Pour) bool { return p.Profile == Falernum })
			t.LeftOut = &cover.Cover{Spec: left, Distance: 1.9, Notice: sense.NoticeOf(1.9, false), Score: 71}
			for _, with := range []*flavor.Profile{Almond, Clove} {
				if with.Avoids(r.Guest.Avoid) {
					t.Covers = append(t.Covers, instead1(s, with))
				}
			}
		}
		result.Touched = append(result.Touched, t)
	}
	slices.SortStableFunc(result.Touched, func(a, b outs.Touched) int { return len(a.Covers) - len(b.Covers) })
	for _, p := range r.Out {
		result.Fetch = append(result.Fetch, outs.Fetch{Profile: p, Drinks: drinks[p]})
	}
	if drinks[Falernum] > 0 {
		result.Opened = []outs.Opened{{Profile: Clove, Drinks: drinks[Falernum]}}
	}
	return result, nil
}

// BarredFrom says of a drink without gin and without a cover that vodka is not at hand.
func (Bar) BarredFrom(t *outs.Touched, _ guest.Guest, _ []*flavor.Profile) []barred.Way {
	if len(t.Covers) > 0 || !slices.Contains(t.Missing, Gin) {
		return nil
	}
	return []barred.Way{{Out: Gin, Parts: []*flavor.Profile{Spare}, Reason: barred.ByStock, Why: "not at hand"}}
}

// Coverage says that three drinks lean on gin and one on falernum, that spare bitters would
// stand in for gin, and that time ran out for lemon juice.
func (Bar) Coverage(context.Context) (*lookahead.Answer, error) {
	a := &lookahead.Answer{Left: []*flavor.Profile{Lemon}, Buy: []lookahead.Buy{{Profile: Spare, Closes: []lookahead.Gap{{Without: Gin, Drink: "Mainbrace"}}}}}
	a.Weak = []lookahead.Weak{{Profile: Gin, Drinks: []string{"Halyard Sour", "Mainbrace", "Spindrift"}}, {Profile: Falernum, Drinks: []string{"Mainbrace"}}}
	return a, nil
}

// instead1 pours half an ounce of a syrup in place of falernum, and moves the lemon.
func instead1(s *flavor.Spec, with *flavor.Profile) cover.Cover {
	to := s.Clone()
	at := indexOf(to.Pours, Falernum)
	to.Pours[at] = flavor.Pour{Profile: with, Amount: 0.5, Unit: flavor.Ounce, ML: 14.8}
	c := cover.Cover{Parts: to.Pours[at : at+1], Spec: to, Distance: 1.3, Notice: sense.NoticeOf(1.3, false), Score: 88,
		Changes: []balance.Change{{Profile: Lemon, Unit: flavor.Ounce, From: 1, To: 0.75, FromML: 29.57, ToML: 22.18}}}
	for _, m := range with.AllergenMarks {
		c.NewAllergens = append(c.NewAllergens, m.Allergen)
	}
	return c
}

// Marked lists the marks that were taken, in order.
func (h *House) Marked() []marking.Request {
	h.mu.Lock()
	defer h.mu.Unlock()
	return slices.Clone(h.marks)
}
