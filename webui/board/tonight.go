package board

import (
	"context"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// TonightPath is the address of the page that tonight shows.
const TonightPath = "/tonight"

// tonight shows every drink of the menu as it can be poured now, and takes the
// same marks as the board.
func (p *pages) tonight(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	wish, err := readWish(r.Form)
	if err != nil {
		return err
	}
	if done, err := p.marked(w, r, wish.address(""), ""); done || err != nil {
		return err
	}
	v, err := p.tonightOf(r.Context(), wish)
	if err != nil {
		return err
	}
	v.Again = p.againOf(r)
	v.Kept = p.keptLabelOf(r, v.Here)
	justOut(v.Out, r.PostForm)
	justOutOnes(v.Ones, r.PostForm)
	part := "layout"
	if frame.IsFragment(r) {
		part = "board"
	}
	return p.Write(w, r, http.StatusOK, "tonight", part, v)
}

// show says which drinks are asked for.
type show string

// What may be asked for: all of the menu, or the drinks in one state.
const (
	showAll     show = ""
	showReady   show = "ready"
	showCovered show = "covered"
	showMissing show = "missing"
	showAway    show = "away" // one bottle brings it back
)

// wish is what a visitor asks of the page.
type wish struct {
	guest form.Guest
	show  show
	text  string // words of the drinks that are looked for; empty for all
	page  int    // of the drinks, from 1
}

func readWish(f url.Values) (wish, error) {
	guest, err := form.ReadGuest(f)
	if err != nil {
		return wish{}, err
	}
	page, err := part.ReadPage(f)
	if err != nil {
		return wish{}, err
	}
	x := wish{guest: guest, show: show(f.Get("show")), text: strings.TrimSpace(f.Get(findField)), page: page}
	if len(x.text) > mostSought {
		return wish{}, form.ErrUnreadable
	}
	if !slices.Contains([]show{showAll, showReady, showCovered, showMissing, showAway}, x.show) {
		return wish{}, form.ErrUnreadable
	}
	return x, nil
}

// findField is the field of the words that are looked for, of at most mostSought bytes.
const (
	findField  = "q"
	mostSought = 400
)

// address returns the address of the page with a choice of all drinks.
func (x *wish) address(s show) string {
	all := *x
	all.text = ""
	return form.Link(TonightPath, all.fields(s))
}

// here is the address of the page as it is shown.
func (x *wish) here() string {
	v := x.fields(x.show)
	if x.page > 1 {
		v.Set(part.PageField, strconv.Itoa(x.page))
	}
	return form.Link(TonightPath, v)
}

func (x *wish) fields(s show) url.Values {
	v := url.Values{}
	x.guest.AddTo(v)
	if s != showAll {
		v.Set("show", string(s))
	}
	if x.text != "" {
		v.Set(findField, x.text)
	}
	return v
}

// tonightOf works out the whole page.
func (p *pages) tonightOf(ctx context.Context, x wish) (*tonightView, error) {
	s, err := behind.ShiftOf(ctx, p.house)
	if err != nil {
		return nil, err
	}
	return p.listOf(ctx, s, x, onAPage)
}

// listOf works out the drinks that are asked for, at most so many on the page.
func (p *pages) listOf(ctx context.Context, s *behind.Shift, x wish, most int) (*tonightView, error) {
	since := outsSince(ctx, p.house)
	now, err := behind.EveningOf(ctx, p.bar, s, x.guest.Limits(), part.MostParts)
	if err != nil {
		return nil, err
	}
	v := newTonightView(p.house.About(), versionOf(s), &x)
	v.most = most
	for _, b := range latest(s.Out, since) {
		v.Out = append(v.Out, bottleView{ID: b.ID, Name: b.Name, Since: sinceWhen(since[b.ID])})
	}
	v.Ones, v.Called = onesOf(s), calledSo(s, x.text)
	sought := p.soughtBy(s.Menu, x.text)
	v.ByTaste = sought.byTaste
	for i := range s.Menu {
		d, err := p.drinkOf(&s.Menu[i], &now.Drinks[i], s, &x.guest, since)
		if err != nil {
			return nil, err
		}
		v.add(d, sought.drinks[i])
	}
	if len(v.Drinks)+v.Barred == 0 {
		v.unfound(p.bar, s.Menu, &x)
	}
	v.Labels = labelsFor(now, &x.guest)
	v.finish(&x)
	for i := range v.Drinks {
		if d := &v.Drinks[i]; d.touched != nil {
			if err := p.detail(d, s, &x.guest); err != nil {
				return nil, err
			}
		}
	}
	return v, nil
}

// latest returns what is out, what ran out last first.
func latest(out []*flavor.Profile, since map[string]time.Time) []*flavor.Profile {
	out = slices.Clone(out)
	slices.SortStableFunc(out, func(a, b *flavor.Profile) int { return since[b.ID].Compare(since[a.ID]) })
	return out
}

// sinceWhen says since when a bottle is out, in how much has passed since: a server does not
// know the clock on the wall of the bar.
func sinceWhen(at time.Time) string {
	if at.IsZero() {
		return ""
	}
	return words.Ago(time.Since(at))
}

// sinceTime is the most that the store may take to say since when things are out.
const sinceTime = time.Second

// outsSince tells since when each ingredient is out. Where the
// store does not answer it tells nothing: what is out is known all the same, and the
// page says that it may be old.
func outsSince(ctx context.Context, h behind.House) map[string]time.Time {
	since := map[string]time.Time{}
	if h.Fresh() != nil {
		return since
	}
	ctx, stop := context.WithTimeout(ctx, sinceTime)
	defer stop()
	outs, err := house.All[house.Out](ctx, h.Store())
	if err != nil {
		return since
	}
	for _, o := range outs {
		since[o.Item.Ingredient] = o.Item.Since
	}
	return since
}
