package webui

import (
	"context"
	"slices"
	"strings"
	"sync"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/mix"
)

// More of the fake shelf, for the house.
var (
	falernum = shelf("falernum", "falernum", flavor.ClassLiqueur)
	almond   = shelf("almond-syrup", "almond syrup", flavor.ClassSpicedSyrup, flavor.AllergenMark{Allergen: flavor.TreeNuts, Certainty: flavor.Contains})
	clove    = shelf("clove-syrup", "clove syrup", flavor.ClassSpicedSyrup)
	spare    = shelf("spare-bitters", "spare bitters", flavor.ClassCocktailBitters)
)

func init() {
	gin.ABV.Value, falernum.ABV.Value, spare.ABV.Value = 40, 11, 45
	lemon.Acid.Value, syrup.Sugar.Value, orgeat.Sugar.Value, almond.Sugar.Value, clove.Sugar.Value = 60, 615, 600, 610, 615
	falernum.Sugar.Value, spare.Bitter.Value = 300, 900
	lemon.Acids.Citric = 1
	gin.Aroma[flavor.Juniper], falernum.Aroma[flavor.Clove], clove.Aroma[flavor.Clove] = 10, 8, 9
	orgeat.Aroma[flavor.Nut], almond.Aroma[flavor.Nut], lemon.Aroma[flavor.Citrus], spare.Aroma[flavor.Cinnamon] = 9, 9, 8, 60
	for _, p := range fakeShelf {
		if err := mix.Complete(p); err != nil {
			panic(err)
		}
	}
}

// fakeShelf is everything that the fake house knows of.
var fakeShelf = []*flavor.Profile{gin, lemon, syrup, orgeat, sesame, white, bottle, falernum, almond, clove, spare}

// fakeHouse keeps four drinks. Nothing covers gin; falernum is covered by
// almond syrup, or by clove syrup for who must not have nuts.
type fakeHouse struct {
	menu []HouseSpec

	keep  sync.Once
	store house.Store

	mu   sync.Mutex
	outs []string
	told []chan struct{}
}

var _ House = (*fakeHouse)(nil)

func newFakeHouse() *fakeHouse {
	h := &fakeHouse{}
	for _, s := range []struct{ slug, family, text string }{
		{"halyard-sour", "sour", goodDraft},
		{"mainbrace", "tiki", "Mainbrace\n2 oz gin\n3/4 oz lemon juice\n1/2 oz falernum\nshake, up"},
		{"spindrift", "tiki", "Spindrift\n1 oz gin\n1 oz lemon juice\n1/2 oz falernum\nshake, up"},
		{"nutcracker", "sour", "Nutcracker\n" + nutDraft},
	} {
		spec, err := fakeBar{}.Read(s.text)
		if err != nil {
			panic(err)
		}
		h.menu = append(h.menu, HouseSpec{s.slug, s.family, spec})
	}
	return h
}

func (h *fakeHouse) About() string { return "The Test Room. An invented bar." }

// Menu is what the store holds, in the order that the menu had at first.
func (h *fakeHouse) Menu(ctx context.Context) ([]HouseSpec, error) {
	kept, err := house.All[house.Spec](ctx, h.Store())
	var first, last []HouseSpec
	for _, m := range h.menu {
		if slices.ContainsFunc(kept, func(k house.Kept[house.Spec]) bool { return k.Item.ID == m.Slug }) {
			first = append(first, m)
		}
	}
	for _, k := range kept {
		drink, err := k.Item.Flavor(h.Shelf())
		if err != nil {
			return nil, err
		}
		if at := slices.IndexFunc(first, func(m HouseSpec) bool { return m.Slug == k.Item.ID }); at >= 0 {
			first[at].Spec = drink
			continue
		}
		last = append(last, HouseSpec{Slug: k.Item.ID, Spec: drink})
	}
	return append(first, last...), err
}

func (h *fakeHouse) Find(ctx context.Context, q SpecQuery) ([]HouseSpec, error) {
	menu, err := h.Menu(ctx)
	if err != nil {
		return nil, err
	}
	var out []HouseSpec
	for _, s := range menu {
		ok := (q.Family == "" || q.Family == s.Family) && strings.Contains(strings.ToLower(s.Spec.Name), strings.ToLower(q.Text))
		for _, p := range s.Spec.Pours {
			ok = ok && p.Profile.Avoids(q.Avoid)
		}
		if ok {
			out = append(out, s)
		}
	}
	return out, nil
}

func (h *fakeHouse) Stock(context.Context) ([]*flavor.Profile, error) {
	if h.menu == nil {
		return nil, nil
	}
	return []*flavor.Profile{gin, falernum, lemon, syrup, orgeat, almond, clove, white, spare}, nil
}

func (h *fakeHouse) Outs(context.Context) ([]string, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return slices.Clone(h.outs), nil
}

// Tastings are those of the store, which all go for the drink's own pours.
func (h *fakeHouse) Tastings(ctx context.Context) ([]cover.Tasting, error) {
	covers, err := house.All[house.Cover](ctx, h.Store())
	var out []cover.Tasting
	for _, c := range house.Items(covers) {
		t := cover.Tasting{Missing: c.Missing}
		if c.Verdict == house.VerdictKept {
			t.Liked = 1
		}
		out = append(out, t)
	}
	return out, err
}

func (h *fakeHouse) Mark(_ context.Context, _ house.By, id string, out bool) error {
	stock, _ := h.Stock(context.Background())
	if !slices.ContainsFunc(stock, func(p *flavor.Profile) bool { return p.ID == id }) {
		return &flavor.Fault{Kind: flavor.ErrUnknown, Value: id, Message: "the house does not keep it"}
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	h.outs = slices.DeleteFunc(h.outs, func(o string) bool { return o == id })
	if out {
		h.outs = append(h.outs, id)
	}
	for _, c := range h.told {
		select {
		case c <- struct{}{}:
		default:
		}
	}
	return nil
}

func (h *fakeHouse) Changes(ctx context.Context) (<-chan struct{}, error) {
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
func (h *fakeHouse) Store() house.Store {
	h.keep.Do(func() {
		var err error
		if h.store, err = house.OpenMemory(context.Background()); err != nil {
			panic(err)
		}
		var edits []house.Edit
		for _, m := range h.menu {
			edits = append(edits, house.Put(house.FromSpec(m.Slug, m.Spec), 0))
		}
		if len(edits) == 0 {
			return
		}
		if _, err = h.store.Write(context.Background(), opening, edits...); err != nil {
			panic(err)
		}
	})
	return h.store
}

// Prices are those of the store's bottles.
func (h *fakeHouse) Prices(ctx context.Context) (prep.Prices, error) {
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
func (h *fakeHouse) Catalogue() *house.Shelf { return h.Shelf() }

// opening is who wrote the menu of a fake house, and when.
var opening = house.By{Actor: "Ines", At: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC)}

func (h *fakeHouse) Shelf() *house.Shelf {
	return house.NewShelf(fakeShelf)
}

// listeners is how many are told of changes.
func (h *fakeHouse) listeners() int {
	h.mu.Lock()
	defer h.mu.Unlock()
	return len(h.told)
}

func (b fakeBar) House() House { return b.house }

func (b fakeBar) Outs(_ context.Context, r cover.MenuRequest) (*cover.MenuResult, error) {
	result := &cover.MenuResult{}
	drinks := map[*flavor.Profile]int{}
	for _, s := range r.Specs {
		t := cover.Touched{Spec: s, ScoreBefore: 94.2, Chosen: -1}
		for _, p := range bottlesOf(s) {
			if slices.Contains(r.Out, p) {
				t.Missing = append(t.Missing, p)
				drinks[p]++
			}
		}
		if len(t.Missing) == 0 {
			continue
		}
		if slices.Equal(t.Missing, []*flavor.Profile{falernum}) {
			t.Chosen = 0
			for _, with := range []*flavor.Profile{almond, clove} {
				if with.Avoids(r.Guest.Avoid) {
					t.Covers = append(t.Covers, instead1(s, with))
				}
			}
		}
		result.Touched = append(result.Touched, t)
	}
	slices.SortStableFunc(result.Touched, func(a, b cover.Touched) int { return len(a.Covers) - len(b.Covers) })
	for _, p := range r.Out {
		result.Fetch = append(result.Fetch, cover.Fetch{Profile: p, Drinks: drinks[p]})
	}
	if drinks[falernum] > 0 {
		result.Opened = []cover.Opened{{Profile: clove, Drinks: drinks[falernum]}}
	}
	return result, nil
}

// instead1 pours half an ounce of a syrup in place of falernum, and moves the lemon.
func instead1(s *flavor.Spec, with *flavor.Profile) cover.Cover {
	to := s.Clone()
	at := pourOf(to.Pours, falernum)
	to.Pours[at] = flavor.Pour{Profile: with, Amount: 0.5, Unit: flavor.Ounce, ML: 14.8}
	c := cover.Cover{Parts: to.Pours[at : at+1], Spec: to, Distance: 1.3, Score: 88,
		Changes: []balance.Change{{Profile: lemon, Unit: flavor.Ounce, From: 1, To: 0.75}}}
	for _, m := range with.AllergenMarks {
		c.NewAllergens = append(c.NewAllergens, m.Allergen)
	}
	return c
}
