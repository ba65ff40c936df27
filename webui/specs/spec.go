package specs

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
	"counterpour/flavor/measure/draft/edit"
	"counterpour/webui/access"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// specPage is the page of one spec of the house.
type specPage struct {
	specView
	Gone    bool  // it was removed; the history is still there
	Version int64 // of the record, also where it is gone
	Note    string
	Typed   string // the note as it was typed, if it was not kept
	Drawing *part.Drawing
	Pours   []pourCost
	Guest   *form.Guest
	Now     *nowView // how it is poured now; nil where that is as it is written, for everybody
	Out     string   // which of its bottles have run out
	Cost    part.Cost
	Price   priceView
	Text    string // as a bartender would write it
	Riffs   string // address of riffs on it; empty where it cannot be poured
	Right   rightView
	Share   *part.Share // nil where it is gone
	History []versionView
	Said    string // what was just done
	Unsay   string // what the page is asked to do to undo that; empty if it cannot
	Trouble string // why it was not
	// Unscored says why the drink cannot be poured or scored.
	Unscored string
}

// pourCost is a pour with what it costs.
type pourCost struct {
	Amount, Name, ML string
	Cost             string // empty if it is not known
	Share            string // of what is known of the cost
	Free             bool
	Gone             string // why it is not poured now; empty if it is
}

// priceView is the price on the menu, as it was typed, and what it gives.
type priceView struct {
	Typed string
	Share string // of the price that the pours cost; empty if none was typed
	Ask   string // the price at which the pours cost the share that was typed
	Fault string
}

// rightView says whether the spec is held to be right.
type rightView struct {
	Version int64 // that is marked; 0 if none is
	Marked  int   // specs of the house that are
}

// Path is the address of the page, for everybody.
func (v *specPage) Path() string { return "/specs/" + v.Slug }

// Address is the same for the guest that it is shown for.
func (v *specPage) Address() string { return part.SpecAddress(v.Slug, v.Guest) }

// ForGuest is who the page is shown for.
func (v *specPage) ForGuest() *form.Guest { return v.Guest }

// Here reports whether the version that is marked is the one that is shown.
func (v *specPage) Here() bool { return v.Right.Version == v.Version }

// Back reports whether the last change can be taken back to something.
func (v *specPage) Back() bool { return v.Version > 1 }

// saidOf is what the page says once something is done; empty for what nobody can do.
func saidOf(done string) string {
	switch done {
	case "right":
		return say.It("specs.now-right")
	case "unright":
		return say.It("specs.no-longer-right")
	case "undo":
		return say.It("specs.last-change-undone")
	case "note":
		return say.It("specs.note-kept")
	case "remove":
		return say.It("specs.now-removed")
	}
	return ""
}

// unsaids are what undoes what was done.
var unsaids = map[string]string{"right": "unright", "unright": "right", "note": "undo", "undo": "undo"}

// specPage shows a spec, or changes it.
func (p *pages) specPage(w http.ResponseWriter, r *http.Request) error {
	who, err := form.ParseGuest(r)
	if err != nil {
		return err
	}
	slug, status, trouble := r.PathValue("slug"), http.StatusOK, ""
	if r.Method == http.MethodPost {
		said, err := p.changeSpec(r, slug)
		if err == nil {
			back := url.Values{"said": {said}}
			who.AddTo(back)
			http.Redirect(w, r, form.Link("/specs/"+slug, back), http.StatusSeeOther)
			return nil
		}
		if trouble, status = frame.Told(err); trouble == "" {
			return err
		}
	}
	v, err := p.specPageOf(r.Context(), slug, &who, r.Form)
	if err != nil {
		return err
	}
	if v.Typed, v.Trouble = v.Note, trouble; trouble != "" && r.PostForm.Has("note") {
		v.Typed = form.Lines(r.PostForm.Get("note"))
	}
	if !v.Gone {
		if v.Share, err = part.ShareOf(access.At(r, v.Path(), nil), v.Name); err != nil {
			return err
		}
	}
	if v.Gone && v.Said == "" && status == http.StatusOK { // whoever has just removed it asks for nothing that is gone
		status = http.StatusGone
	}
	return p.Write(w, r, status, "spec", "layout", v)
}

// specPageOf gathers what there is to say of a spec.
func (p *pages) specPageOf(ctx context.Context, slug string, who *form.Guest, sent url.Values) (*specPage, error) {
	ref := house.Ref{Kind: house.KindSpec, ID: slug}
	history, err := p.house.Store().History(ctx, ref)
	if errors.Is(err, house.ErrNotFound) {
		return nil, frame.ErrNotFound
	}
	if err != nil {
		return nil, err
	}
	last := history[len(history)-1]
	v := &specPage{Guest: who, Version: last.Version, History: historyOf(history, p.house.Shelf()), Said: saidOf(sent.Get("said")), Unsay: unsaids[sent.Get("said")]}
	kept, there := last.Item.(house.Spec)
	if !there {
		last := lastKept(history)
		v.Gone, v.specView, v.Note = true, specView{Slug: slug, Name: last.Name}, last.Note
		v.Text = textOf(last, p.house.Shelf())
		return v, nil
	}
	v.Note, v.specView.Slug, v.specView.Name = kept.Note, slug, kept.Name
	if v.Right, err = p.rightOf(ctx, slug); err != nil {
		return nil, err
	}
	price, err := p.priceAsked(ctx, slug, sent)
	if err != nil {
		return nil, err
	}
	return v, p.fillSpec(ctx, v, kept, price)
}

// priceAsked is the price on the menu that a form asks about, else the one that is kept.
func (p *pages) priceAsked(ctx context.Context, slug string, sent url.Values) (string, error) {
	if sent.Has("price") {
		return sent.Get("price"), nil
	}
	kept, err := house.Get[house.MenuPrice](ctx, p.house.Store(), slug)
	if errors.Is(err, house.ErrNotFound) {
		return "", nil
	}
	return words.Plain(kept.Item.Amount) + " " + kept.Item.Currency, err
}

// lastKept is a removed spec as it was last.
func lastKept(history []house.Change) house.Spec {
	for _, c := range slices.Backward(history) {
		if s, ok := c.Item.(house.Spec); ok {
			return s
		}
	}
	return house.Spec{}
}

// textOf writes a spec as a bartender would, also where the shelf cannot pour it any more.
func textOf(kept house.Spec, shelf *house.Shelf) string {
	drink, err := kept.Flavor(shelf)
	if err != nil {
		return part.SpecText(kept)
	}
	return edit.Format(drink)
}

// fillSpec works out what is in the glass. A spec that the shelf cannot pour
// says why and keeps its pours.
func (p *pages) fillSpec(ctx context.Context, v *specPage, kept house.Spec, price string) error {
	shelf := p.house.Shelf()
	drink, err := kept.Flavor(shelf)
	if err != nil {
		message, _ := frame.Told(err)
		if message == "" {
			return err
		}
		v.Unscored = message
		v.Text, v.Method = part.SpecText(kept), string(kept.Method)+", "+string(kept.Service)
		v.Bench = benchOf(kept.ID, 0, v.Guest)
		for _, pour := range part.Written(kept.Pours, shelf) {
			v.Pours = append(v.Pours, pourCost{Amount: part.Amount(&pour), Name: pour.Profile.Name})
		}
		return nil
	}
	family, err := p.familyOf(ctx, kept.ID)
	if err != nil {
		return err
	}
	one, err := p.spec(&behind.HouseSpec{Slug: kept.ID, Family: family, Spec: drink}, v.Guest)
	if err != nil {
		return err
	}
	v.specView, v.Text, v.Unscored = one, edit.Format(drink), one.Trouble
	v.Bench, v.Riffs = benchOf(kept.ID, 0, v.Guest), riffsOf(v.Text, v.Guest)
	if scored, err := p.bar.Judge(&drink); err == nil && len(scored.Judgement.Fits) > 0 {
		v.Drawing = part.ScoredDrawing(p.bar, &drink, scored)
		if v.Family == "" {
			v.Family, v.Reads = scored.Judgement.Fits[0].Name, ""
		}
	}
	t, err := part.TariffOf(ctx, p.house)
	if err != nil {
		return err
	}
	outs, err := p.house.RunOut(ctx)
	if err != nil {
		return err
	}
	v.Out = part.OutLine(&drink, outs)
	v.Cost, v.Pours = t.CostOf(&drink), poursOf(t, part.SpecInUnits(p.house.Settings(), &drink))
	v.Price = priceOf(price, t, v.Cost)
	return p.fillNow(ctx, v)
}

// familyOf is the family that the menu means a spec for, if it states one.
func (p *pages) familyOf(ctx context.Context, slug string) (string, error) {
	menu, err := p.house.Menu(ctx)
	if err != nil {
		return "", err
	}
	at := slices.IndexFunc(menu, func(s behind.HouseSpec) bool { return s.Slug == slug })
	if at < 0 {
		return "", nil
	}
	return menu[at].Family, nil
}

// rightOf says which version of a spec is marked as right, and how many specs are.
func (p *pages) rightOf(ctx context.Context, slug string) (rightView, error) {
	marks, err := house.All[house.Right](ctx, p.house.Store())
	v := rightView{Marked: len(marks)}
	for _, m := range marks {
		if m.Item.Spec == slug {
			v.Version = m.Item.SpecVersion
		}
	}
	return v, err
}

// poursOf says what each pour costs.
func poursOf(t *part.Tariff, s *flavor.Spec) []pourCost {
	shares := t.Shares(*s)
	out := make([]pourCost, len(s.Pours))
	for i := range s.Pours {
		pour := &s.Pours[i]
		v := pourCost{Amount: part.Amount(pour), Name: pour.Profile.Name}
		if pour.Unit != flavor.Millilitre {
			v.ML = words.Millilitres(pour.ML) + "\u00a0mL"
		}
		switch x := shares[i]; {
		case t.Fault != "" || !x.Priced:
		case x.Amount == 0:
			v.Free = true
		default:
			v.Cost, v.Share = t.Money(x.Amount), words.Figure(100*x.Part, 0)+"\u00a0%"
		}
		out[i] = v
	}
	return out
}

// priceOf says which share of a price on the menu the pours cost, or at which price they
// cost a share.
func priceOf(typed string, t *part.Tariff, c part.Cost) priceView {
	v := priceView{Typed: strings.TrimSpace(typed)}
	if v.Typed == "" {
		return v
	}
	if share, is := strings.CutSuffix(v.Typed, "%"); is {
		return v.asked(share, t, c)
	}
	price, err := form.PriceIn(v.Typed, t.Currency, say.It("specs.such-as-a-price"))
	switch {
	case errors.Is(err, form.ErrCurrency):
		v.Fault = words.Sentence(err.Error())
	case err != nil || !(price > 0 && price < 1e6):
		v.Fault = say.It("specs.price-not-read")
	case c.Amount == "":
		v.Fault = say.It("specs.no-share-of-a-price", "Reason", c.Reason())
	default:
		v.Share = words.Figure(100*c.Known/price, 1) + "\u00a0%"
		if c.Missing != "" {
			v.Share = say.It("specs.at-least", "Figure", v.Share)
		}
	}
	return v
}

// asked is the price at which the pours cost a share of it, in per cent.
func (v priceView) asked(share string, t *part.Tariff, c part.Cost) priceView {
	percent, err := readShare(share)
	switch {
	case err != nil:
		v.Fault = err.Error()
	case c.Amount == "":
		v.Fault = say.It("specs.no-price-from-a-share", "Reason", c.Reason())
	default:
		v.Ask = t.Money(100 * c.Known / percent)
		if c.Missing != "" {
			v.Ask = say.It("specs.at-least", "Figure", v.Ask)
		}
	}
	return v
}

// readShare reads a share in per cent, above zero and at most 100.
func readShare(share string) (float64, error) {
	percent, err := form.Number(strings.TrimSpace(share), say.It("specs.such-as-a-share"))
	if err != nil || !(percent > 0 && percent <= 100) {
		return 0, errors.New(say.It("specs.share-not-read"))
	}
	return percent, nil
}

// anybody is a guest without wishes.
func anybody() *form.Guest { return &form.Guest{} }

// benchOf is the address of the bench with a version of a spec, for a guest; 0 is
// the current one.
func benchOf(slug string, version int64, guest *form.Guest) string {
	q := url.Values{"spec": {slug}}
	if version > 0 {
		q.Set("at", strconv.FormatInt(version, 10))
	}
	guest.AddTo(q)
	return form.Link("/bench", q)
}

// riffsOf is the address of riffs on a drink as it is written, for a guest.
func riffsOf(text string, guest *form.Guest) string {
	q := url.Values{"text": {text}}
	guest.AddTo(q)
	return form.Link("/riffs", q)
}
