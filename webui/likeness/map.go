package likeness

import (
	"context"
	htmltemplate "html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/chart"
	"counterpour/flavor/cover"
	"counterpour/webui/behind"
	"counterpour/webui/draw"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// mapCovers is how many covers are marked on the map.
const mapCovers = 3

// mapView is the map of the stock.
type mapView struct {
	About   string
	Drinks  []drinkChoice
	Bottles []bottleChoice
	Drink   string // the chosen one, empty if none is
	Slug    string
	Pours   []pourChoice
	Missing string
	Covers  []string // a line each
	Trouble string
	Near    *nearView // the neighbours of a bottle; nil if none is chosen
	SVG     htmltemplate.HTML
	Axes    []axisView
	Rows    []mapRow
}

type drinkChoice struct {
	Slug, Name string
	Chosen     bool
}

type bottleChoice struct {
	ID, Name string
	Chosen   bool
}

// mostLike is how many neighbours of a pour are named.
const mostLike = 3

// pourChoice is a pour of the chosen drink, which could run out.
type pourChoice struct {
	Name    string
	Near    string   // address of its neighbours
	Address string   // of its covers
	Like    []string // what in the stock is most like it
	Out     bool
	Chosen  bool
}

// axisView says what an axis of the map is.
type axisView struct{ Name, Share, More, Few string }

// mapRow is an ingredient in the key of the map.
type mapRow struct {
	Number   int
	Name     string
	Address  string // of its neighbours
	Part     string
	Across   string // where it stands, in units of the map
	Up       string
	Mark     string
	Marked   bool
	Strength string
}

// stockMap shows the map: of the stock alone, or with a drink's pours and the
// covers of one of them marked.
func (p *pages) stockMap(w http.ResponseWriter, r *http.Request) error {
	asked := r.URL.Query()
	v, err := p.mapOf(r.Context(), asked.Get("spec"), asked.Get("missing"), asked.Get("bottle"))
	if err != nil {
		return err
	}
	return p.Write(w, r, http.StatusOK, "map", "layout", v)
}

func (p *pages) mapOf(ctx context.Context, slug, missing, bottle string) (*mapView, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	v := &mapView{About: p.house.About()}
	kinds := map[string]draw.PlaceKind{}
	for _, b := range s.Out {
		kinds[b.ID] = draw.KindDry
	}
	for i := range s.Menu {
		h := &s.Menu[i]
		v.Drinks = append(v.Drinks, drinkChoice{h.Slug, h.Spec.Name, h.Slug == slug})
		if h.Slug == slug {
			if err := v.choose(ctx, p, s, h, missing, kinds); err != nil {
				return nil, err
			}
		}
	}
	if slug != "" && v.Slug == "" {
		return nil, frame.ErrNotFound
	}
	for _, b := range s.Stock {
		v.Bottles = append(v.Bottles, bottleChoice{b.ID, b.Name, b.ID == bottle})
	}
	if bottle != "" {
		if v.Near = nearOf(s, bottle); v.Near == nil {
			return nil, frame.ErrNotFound
		}
		for _, n := range v.Near.Rows {
			kinds[n.id] = draw.KindNear
		}
		kinds[bottle] = draw.KindChosen
	}
	v.draw(s.Stock, kinds)
	return v, nil
}

// choose marks the pours of a drink, and the covers of the one that is missing.
func (v *mapView) choose(ctx context.Context, p *pages, s *behind.Shift, h *behind.HouseSpec, missing string, kinds map[string]draw.PlaceKind) error {
	v.Slug, v.Drink = h.Slug, h.Spec.Name
	for _, b := range part.Bottles(&h.Spec) {
		kinds[b.ID] = draw.KindPoured
		to := "/map?" + url.Values{"spec": {h.Slug}, "missing": {b.ID}}.Encode()
		pour := pourChoice{Name: b.Name, Near: nearAddress(b), Address: to, Out: s.IsOut(b), Chosen: b.ID == missing}
		for _, n := range chart.Neighbours(s.Stock, b, mostLike) {
			pour.Like = append(pour.Like, n.Profile.Name)
		}
		v.Pours = append(v.Pours, pour)
	}
	if missing == "" {
		return nil
	}
	var stock []string
	for _, b := range s.Stock {
		if !s.IsOut(b) {
			stock = append(stock, b.ID)
		}
	}
	a, err := p.bar.Cover(ctx, behind.CoverRequest{Spec: &h.Spec, Missing: append([]string{missing}, s.LackedBy(&h.Spec)...), Stock: stock, Parts: part.MostParts, Limit: mapCovers})
	if faults := flavor.DataFaultsOf(err); len(faults) > 0 {
		v.Trouble = words.Sentence(faults[0].Message)
		return nil
	}
	if err != nil {
		return err
	}
	v.Missing = words.List(part.NamesOf(a.Missing))
	for _, gone := range a.Missing {
		kinds[gone.ID] = draw.KindMissing
	}
	v.markCovers(p.house.Settings(), &h.Spec, a.Result, kinds)
	return nil
}

func (v *mapView) markCovers(said house.Settings, from *flavor.Spec, found *cover.Result, kinds map[string]draw.PlaceKind) {
	for i := range found.Covers {
		c := &found.Covers[i]
		v.Covers = append(v.Covers, part.OtherLine(said, from, c, nil))
		for _, part := range c.Parts {
			if kinds[part.Profile.ID] != draw.KindMissing {
				kinds[part.Profile.ID] = draw.KindCover
			}
		}
	}
}

// draw lays out the stock; without a layout the page says so.
func (v *mapView) draw(stock []*flavor.Profile, kinds map[string]draw.PlaceKind) {
	at, ok := chart.Of(stock)
	if !ok {
		return
	}
	for k, name := range []string{say.It("likeness.across"), say.It("likeness.up")} {
		a := at.Axes[k]
		v.Axes = append(v.Axes, axisView{name, words.Percent(a.Share), words.List(a.More), words.List(a.Few)})
	}
	chart := draw.Chart{Title: v.title(), Sentence: v.sentence(len(stock)), Right: words.List(at.Axes[0].More), Left: words.List(at.Axes[0].Few),
		Up: words.List(at.Axes[1].More), Down: words.List(at.Axes[1].Few)}
	for i, b := range stock {
		kind := kinds[b.ID]
		place := draw.Place{Number: i + 1, Name: b.Name, Kind: kind, X: at.X[i], Y: at.Y[i]}
		chart.Places = append(chart.Places, place)
		v.Rows = append(v.Rows, mapRow{Number: i + 1, Name: b.Name, Address: nearAddress(b), Part: string(b.Class.Part()), Across: words.Signed(at.X[i], 1), Up: words.Signed(at.Y[i], 1),
			Mark: kind.Words(), Marked: place.Marked(), Strength: words.Figure(b.ABV.Value, 0) + "\u00a0% vol"})
	}
	// What belongs to the drink comes first in the key.
	slices.SortStableFunc(v.Rows, func(a, b mapRow) int {
		if a.Marked == b.Marked {
			return 0
		}
		if a.Marked {
			return -1
		}
		return 1
	})
	v.SVG = draw.ChartSVG("map", chart)
}

func (v *mapView) title() string {
	if v.Drink == "" {
		return say.It("likeness.stock-as-a-map")
	}
	return say.It("likeness.stock-with-pours-of", "Drink", v.Drink)
}

func (v *mapView) sentence(n int) string {
	return say.It("likeness.how-to-read", "Ingredients", n, "Covers", strings.Join(v.Covers, "; "), "Missing", v.Missing)
}
