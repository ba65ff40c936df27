package stock_test

import (
	"fmt"
	"net/http"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/flavor/template"
	"counterpour/webui/webuitest"
)

// emptyHouse is a house that has nothing yet.
func emptyHouse() webuitest.Laid {
	h := webuitest.NewHouse()
	h.Drinks = h.Drinks[:0] // no menu, and yet bottles that may run out
	return webuitest.Laid{House: h}
}

func TestTheFirstDay(t *testing.T) {
	h := emptyHouse()
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/", ""), []string{"The first day", `value="london-dry-gin"> London dry gin`, "Halyard Sour", "Once there is a menu"}, nil)

	w := webuitest.Post(pages, "/start", webuitest.Fields("do", "bottles", "bottle", "london-dry-gin", "bottle", "orgeat", "bottle", "moon-rock"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	require.Len(t, h.Bottles(t), 2)
	assert.Equal(t, house.Bottle{ID: "london-dry-gin", Name: "London dry gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, h.Bottles(t)[0])
	w = webuitest.Get(pages, "/start?done=bottles", "")
	webuitest.Says(t, w, []string{"2 bottles are on the shelf.", `value="orgeat" checked disabled`}, nil)

	w = webuitest.Post(pages, "/start", webuitest.Fields("do", "menu", "drink", "Halyard Sour", "drink", "Mainbrace", "drink", "No such drink"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, "/start?added=2&done=menu&undo=spec+1+halyard-sour#try", w.Header().Get("Location"))
	webuitest.Says(t, webuitest.Get(pages, "/start?added=2&done=menu&undo=spec+1+halyard-sour", ""), []string{"2 drinks were put on the menu.", `name="undo" value="spec 1 halyard-sour"`, `name="out" value="london-dry-gin"`}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/", ""), nil, []string{"The first day"})

	spec := webuitest.KeptSpec(t, h.House, "mainbrace")
	spec.Item.Note = "with the good gin"
	_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Put(spec.Item, spec.Version))
	require.NoError(t, err)
	w = webuitest.Post(pages, "/undo", webuitest.Fields("undo", "spec 1 halyard-sour", "back", "/start"), false)
	webuitest.Holds(t, w, http.StatusConflict, []string{"Nothing was undone", "Somebody has changed it since", `href="/start"`}, nil)
	assert.Equal(t, "with the good gin", webuitest.KeptSpec(t, h.House, "mainbrace").Item.Note, "what was worked on since stays")
	assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, "/start", webuitest.Fields("do", "dance"), false).Code)
}

// A bottle that ran out is not shown as on the shelf.
func TestWhatIsOutHasNoTick(t *testing.T) {
	h := emptyHouse()
	pages := webuitest.PagesOf(t, h)
	require.Equal(t, http.StatusSeeOther, webuitest.Post(pages, "/start", webuitest.Fields("do", "bottles", "bottle", "london-dry-gin", "bottle", "orgeat"), false).Code)
	require.NoError(t, h.Mark(t.Context(), webuitest.Ana, marking.Request{Out: []string{"orgeat"}}))
	webuitest.Says(t, webuitest.Get(pages, "/start", ""), []string{"1 are on the shelf", `value="london-dry-gin" checked disabled>`, `value="orgeat" disabled> orgeat <span class="mark out">Out now</span>`}, nil)
}

// From an empty house to a cover: the bottles ticked, three buttons.
func TestTheFirstDayInABrowser(t *testing.T) {
	h := emptyHouse()
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), "/")
	b.Fits()
	b.Accessible(webuitest.Axe(t), "the first day")
	b.Until(`(document.getElementById('bottles').scrollIntoView(), true)`)
	b.Click(`input[value="london-dry-gin"]`)
	b.Click(`input[value="falernum"]`)
	b.Click(`button[value="bottles"]`)
	b.Until(`location.hash === '#menu' && document.body.textContent.includes('2 bottles are on the shelf')`)
	b.Until(`document.readyState === 'complete'`) // else the jump to the place moves the button away from under the click
	b.Click(`button[value="menu"]`)
	b.Until(`location.hash === '#try'`)
	b.Until(webuitest.InView(`button[name="out"]`))
	b.Click(`button[name="out"][value="london-dry-gin"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('London dry gin is out')`)
	b.Until(webuitest.InView("#said button"))
	b.Quiet()
}

// amply is a house whose bottles pour many proven drinks.
type amply struct{ *webuitest.House }

// Starters are so many gins, numbered.
func (amply) Starters(n int) (out []template.Labelled) {
	gin := webuitest.NewHouse().Drinks[0].Spec
	for i := range min(n, 20) {
		gin.Name = fmt.Sprintf("Gin %02d", i)
		out = append(out, template.Labelled{Spec: gin, Family: "sour"})
	}
	return out
}

// The first menu is a dozen; who asks sees all that the bottles pour, the rest unticked, and
// may put any of it on the menu.
func TestMoreThanADozenToBeginWith(t *testing.T) {
	h := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, amply{h})
	webuitest.Says(t, webuitest.Get(pages, "/start", ""), []string{"at most twelve", `href="/start?drinks=more#menu">Your bottles pour 8 more`, `value="Gin 11" checked`}, []string{"Gin 12"})
	webuitest.Says(t, webuitest.Get(pages, "/start?drinks=more", ""), []string{`value="Gin 11" checked`, `value="Gin 12">`, `value="Gin 19">`}, []string{"list them too", "at most twelve"})
	w := webuitest.Post(pages, "/start", webuitest.Fields("do", "menu", "drink", "Gin 01", "drink", "Gin 19"), false)
	assert.Contains(t, w.Header().Get("Location"), "added=2")
}
