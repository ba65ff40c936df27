package webui_test

import (
	"context"
	"html"
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/webuitest"
)

// labelled is a house whose menu is poured from bottles with the labels that it keeps.
type labelled struct{ webuitest.Laid }

func (h labelled) Menu(ctx context.Context) ([]behind.HouseSpec, error) {
	kept, err := house.All[house.Spec](ctx, h.Store())
	var menu []behind.HouseSpec
	for _, k := range kept {
		drink, err := k.Item.Flavor(h.Shelf())
		if err != nil {
			return nil, err
		}
		menu = append(menu, behind.HouseSpec{Slug: k.Item.ID, Spec: drink, Version: k.Version})
	}
	return menu, err
}

func (labelled) Stock(context.Context) ([]*flavor.Profile, error) { return nil, nil }

// pier is a house with a drink whose liqueur nobody has stated the allergens of.
func pier(t *testing.T) labelled {
	h := labelled{webuitest.NewLaid()}
	h.KeepAll(t,
		house.Spec{ID: "pier-light", Name: "Pier Light", Method: flavor.Stir, Service: flavor.Up, Pours: []house.Pour{
			{Ingredient: "london-dry-gin", Amount: 60, Unit: flavor.Millilitre}, {Ingredient: "unlabelled-liqueur", Amount: 20, Unit: flavor.Millilitre}}},
		house.Bottle{ID: "pier-liqueur", Name: "Pier liqueur", Ingredient: "unlabelled-liqueur", SizeML: 700, Stock: 1})
	return h
}

// A drink that is left out for want of a label says so; the label is stated from there,
// the drink is back, and undoing it takes it out again.
func TestALabelThatIsReadBringsDrinksBack(t *testing.T) {
	h := pier(t)
	pages := webuitest.PagesOf(t, h)
	const forGuest, state = "/tonight?avoid=eggs", "/stock/label?avoid=eggs&of=unlabelled-liqueur"
	waits := "1 more drink once 1 label is read and found clear"
	webuitest.Says(t, webuitest.Get(pages, forGuest, ""), []string{waits, html.EscapeString(state), "unlabelled liqueur</a> may carry eggs, which nobody has stated; 1 drink", "<strong>Pier Light</strong>: unlabelled liqueur"}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/specs/pier-light?avoid=eggs", ""), []string{"Read the label:", html.EscapeString(state), "unlabelled liqueur</a> may carry eggs, which nobody has stated</li>"}, nil)
	webuitest.Says(t, webuitest.Get(pages, state, ""), []string{"The label of Pier liqueur", "For a guest: without eggs", "Not stated: any allergen", `name="contains" value="eggs"`}, nil)

	fields := func(more url.Values) url.Values {
		all := url.Values{"of": {"unlabelled-liqueur"}, "version": {"1"}, "avoid": {"eggs"}}
		for key, value := range more {
			all[key] = value
		}
		return all
	}
	for fault, sent := range map[string]url.Values{
		"Tick what the label names, or that it names none of them": {"by": {"Ines"}},
		"which is it?":           {"by": {"Ines"}, "none": {"yes"}, "contains": {"milk"}},
		"Say who read the label": {"none": {"yes"}},
	} {
		w := webuitest.Post(pages, "/stock/label", fields(sent), false)
		assert.Equal(t, http.StatusUnprocessableEntity, w.Code, fault)
		webuitest.Says(t, w, []string{fault, `href="#`}, nil)
	}
	assert.Nil(t, h.Bottle(t, "pier-liqueur").Item.Label, "nothing is written by a form that is amiss")

	w := webuitest.Post(pages, "/stock/label", fields(url.Values{"by": {"Ines"}, "none": {"yes"}}), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	read := webuitest.Get(pages, w.Header().Get("Location"), "")
	webuitest.Says(t, read, []string{"What the label of Pier liqueur says is written down", ">Pier Light</h2>"}, []string{"waits for a label", "<strong>Pier Light</strong>"})
	undoOf(t, pages, read.Body.String())
	webuitest.Says(t, webuitest.Get(pages, forGuest, ""), []string{waits}, nil)

	late := webuitest.Post(pages, "/stock/label", fields(url.Values{"by": {"Ines"}, "none": {"yes"}}), false)
	assert.Equal(t, http.StatusConflict, late.Code)
	webuitest.Says(t, late, []string{"Somebody changed this bottle", `name="none" value="yes" checked`}, nil)
}

// What a label names stays away from who must not have it, and nothing waits for it.
func TestALabelThatNamesWhatAGuestAvoids(t *testing.T) {
	pages := webuitest.PagesOf(t, pier(t))
	w := webuitest.Post(pages, "/stock/label", url.Values{"of": {"unlabelled-liqueur"}, "version": {"1"}, "avoid": {"eggs"}, "contains": {"eggs"}, "by": {"Ines"}}, false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	webuitest.Says(t, webuitest.Get(pages, "/tonight?avoid=eggs", ""), []string{"<strong>Pier Light</strong>: unlabelled liqueur contains eggs"}, []string{"waits for a label"})
	webuitest.Says(t, webuitest.Get(pages, "/tonight?avoid=milk", ""), []string{">Pier Light</h2>"}, []string{"waits for a label"})
}

// A category without a bottle, and what the house makes, have no label to read.
func TestWhereThereIsNoLabel(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Stocked(t))
	webuitest.Says(t, webuitest.Get(pages, "/stock/label?of=falernum", ""), []string{"holds no bottle of it", `href="/stock/bottle?of=falernum"`}, []string{"Write it down"})
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle?of=falernum", ""), []string{`value="falernum"`}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/stock/label?of=nut-syrup", ""), []string{"so it has no label", `href="/stock/made?id=nut-syrup"`}, []string{"Write it down"})
	assert.Equal(t, http.StatusNotFound, webuitest.Get(pages, "/stock/label?of=moon-dust", "").Code)
	assert.Equal(t, http.StatusConflict, webuitest.Post(pages, "/stock/label", url.Values{"of": {"falernum"}, "none": {"yes"}, "by": {"Ines"}}, false).Code)
}
