package stock

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// bottlesAPage is how many bottles one page of the list holds.
const bottlesAPage = 60

// stockQuery asks for part of the stock.
type stockQuery struct {
	Text  string // in the name, the category or the note; empty for any
	Class flavor.Class
	Per   pourSize
	Page  int    // from 1
	Sort  string // of sortKeys; empty for the order of the shelves
	Down  bool   // the most first
}

// pourSize is the pour that a price is worked out for.
type pourSize struct {
	ID, Name string
	ml       float64
}

var pourSizes = []pourSize{{"30ml", "30 mL", 30}, {"oz", "1 oz", measure.OunceML}}

func readStockQuery(r *http.Request) (stockQuery, error) {
	if err := form.Parse(r); err != nil {
		return stockQuery{}, err
	}
	q := stockQuery{Text: strings.TrimSpace(r.Form.Get("q")), Class: flavor.Class(r.Form.Get("class")), Per: pourSizes[0], Page: 1}
	if q.Class != "" && !q.Class.Valid() {
		return q, fmt.Errorf("%w: no class is called %q", form.ErrUnreadable, q.Class)
	}
	if per := r.Form.Get("per"); per != "" {
		at := slices.IndexFunc(pourSizes, func(s pourSize) bool { return s.ID == per })
		if at < 0 {
			return q, fmt.Errorf("%w: no pour is called %q", form.ErrUnreadable, per)
		}
		q.Per = pourSizes[at]
	}
	if q.Sort, q.Down = strings.CutPrefix(r.Form.Get("sort"), "-"); q.Sort != "" && sortKeys[q.Sort] == nil {
		return q, fmt.Errorf("%w: nothing is sorted by %q", form.ErrUnreadable, q.Sort)
	}
	if page := r.Form.Get("page"); page != "" {
		n, err := strconv.Atoi(page)
		if err != nil || n < 1 {
			return q, fmt.Errorf("%w: no page is called %q", form.ErrUnreadable, page)
		}
		q.Page = n
	}
	return q, nil
}

// sortMark is the order as an address has it.
func (q *stockQuery) sortMark() string {
	if q.Down {
		return "-" + q.Sort
	}
	return q.Sort
}

// address is the query as an address, for another page of the list.
func (q *stockQuery) address(page int) string { return form.Link("/stock", q.fields(page)) }

func (q *stockQuery) fields(page int) url.Values {
	v := url.Values{}
	if q.Text != "" {
		v.Set("q", q.Text)
	}
	if q.Class != "" {
		v.Set("class", string(q.Class))
	}
	if q.Per != pourSizes[0] {
		v.Set("per", q.Per.ID)
	}
	if q.Sort != "" {
		v.Set("sort", q.sortMark())
	}
	if page > 1 {
		v.Set("page", strconv.Itoa(page))
	}
	return v
}

// stockView is the page of the stock.
type stockView struct {
	About   string
	Query   stockQuery
	Any     bool // something is asked for
	Classes []form.Option
	Sizes   []form.Option
	All     int // bottles and makings of the house
	Found   string
	Meant   []part.Meant // what may have been meant, if nothing is found
	Heads   []sortHead
	Shelves []stockShelf
	Made    []stockMade
	Notes   []string
	Orders  int    // bottles below their par, of the whole stock
	Before  string // address of the page before, and so on
	After   string
	Pages   string
	Gone    *goneView
	Marked  *markedView

	OwnWords ownWordsView
	Here     string // the address of the list as it is asked for
}

// goneView is a record that has just been removed.
type goneView struct {
	Kind, ID, Name string
	Version        int64
}

// stock lists what the house keeps and makes, as far as a query lets through.
func (p *pages) stock(w http.ResponseWriter, r *http.Request) error {
	q, err := readStockQuery(r)
	if err != nil {
		return err
	}
	v, err := p.stockOf(r.Context(), q)
	if err != nil {
		return err
	}
	if frame.IsFragment(r) {
		return p.Write(w, r, http.StatusOK, "stock", "stock-answer", v)
	}
	if v.Gone, err = p.goneOf(r); err != nil {
		return err
	}
	v.Marked, v.OwnWords = p.markedOf(r), p.ownWords(r)
	return p.Write(w, r, http.StatusOK, "stock", "layout", v)
}

// goneOf finds what the address says has just been removed, unless it is there
// again.
func (p *pages) goneOf(r *http.Request) (*goneView, error) {
	kind := house.Kind(r.Form.Get("gone"))
	if kind != house.KindBottle && kind != house.KindMade {
		return nil, nil
	}
	history, err := p.desk().History(r.Context(), house.Ref{Kind: kind, ID: r.Form.Get("id")})
	if err != nil || len(history) < 2 {
		return nil, err
	}
	last := history[len(history)-1]
	if last.Item != nil || strconv.FormatInt(last.Version, 10) != r.Form.Get("done") {
		return nil, nil
	}
	v := &goneView{Kind: string(kind), ID: last.Ref.ID, Version: last.Version, Name: last.Ref.ID}
	switch item := history[len(history)-2].Item.(type) {
	case house.Bottle:
		v.Name = item.Name
	case house.Made:
		v.Name = item.Name
	}
	return v, nil
}

// stockOf works out the page.
func (p *pages) stockOf(ctx context.Context, q stockQuery) (*stockView, error) {
	room, err := p.stockroom(ctx)
	if err != nil {
		return nil, err
	}
	v := &stockView{About: p.house.About(), Query: q, Any: q.Text != "" || q.Class != "",
		Classes: room.classes(q.Class), All: len(room.bottles) + len(room.made), Notes: room.notes(), Orders: len(room.orders())}
	for _, s := range pourSizes {
		v.Sizes = append(v.Sizes, form.Option{Value: s.ID, Name: s.Name, Chosen: s == q.Per})
	}
	bottles, made := room.find(q)
	v.Found = say.It("stock.found", "Bottles", len(bottles), "Made", len(made))
	if len(bottles)+len(made) == 0 {
		v.Meant = room.meantBy(q)
	}
	pages := max(1, (len(bottles)+bottlesAPage-1)/bottlesAPage)
	q.Page = min(q.Page, pages)
	if pages > 1 {
		v.Pages = say.It("stock.page", "Page", q.Page, "Pages", pages)
	}
	if q.Page > 1 {
		v.Before = q.address(q.Page - 1)
	}
	if q.Page < pages {
		v.After = q.address(q.Page + 1)
	}
	v.Heads, v.Here = q.heads(), q.address(q.Page)
	room.sort(bottles, q)
	shown := bottles[(q.Page-1)*bottlesAPage : min(q.Page*bottlesAPage, len(bottles))]
	v.Shelves = room.shelve(shown, q)
	if q.Page == 1 {
		for _, m := range made {
			v.Made = append(v.Made, room.makingOf(m))
		}
	}
	return v, nil
}
