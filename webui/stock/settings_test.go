package stock_test

import (
	"net/http"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/webuitest"
)

func TestSettingsOfTheHouse(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/stock/house", ""), []string{"Settings of the house", "Name of the house", "<option value=\"Germany\""}, []string{"History"})

	w := webuitest.Post(pages, "/stock/house", webuitest.Fields("version", "0", "name", "Dry Dock", "units", "ml", "currency", "eur", "decimal", ",", "country", "Germany"), false)
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body)
	assert.Equal(t, house.Settings{Name: "Dry Dock", Units: measure.Metric, Currency: "EUR", Decimal: ",", Country: "Germany"}, h.Settings())
	webuitest.Says(t, webuitest.Get(pages, "/stock/house?id=house&done=1", ""), []string{"<p>Saved.", ">Undo</button>", `value="Dry Dock"`, "<title>Settings of the house · Dry Dock"}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/specs/spindrift/card", ""), []string{"30 mL London dry gin", "15 mL falernum", "(Germany)"}, []string{"1 oz London dry gin"})
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle", ""), []string{`name="currency" value="EUR"`}, nil)

	w = webuitest.Post(pages, "/stock/house", webuitest.Fields("version", "1", "name", "Dry Dock", "currency", "euros", "decimal", "."), false)
	webuitest.Says(t, w, []string{"To fix before it is saved", `value="euros"`}, nil)
	assert.Equal(t, http.StatusUnprocessableEntity, w.Code)

	w = webuitest.Post(pages, "/stock/undo", webuitest.Fields("kind", "settings", "id", "house", "version", "1"), false)
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body)
	assert.Equal(t, house.Settings{}, h.Settings())
	w = webuitest.Post(pages, "/stock/undo", webuitest.Fields("kind", "settings", "id", "house", "version", "2"), false)
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body)
	assert.Equal(t, "Dry Dock", h.Settings().Name)
}

// The first day asks for the house, and every page is then in its name.
func TestTheHouseIsNamedInABrowser(t *testing.T) {
	h := emptyHouse()
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	site := webuitest.Serve(t, h)
	b.Open(site, "/start")
	b.Click("#house summary")
	b.Do(chromedp.SetValue(`#f-name`, "Dry Dock"), chromedp.SetValue(`#f-units`, "oz"), chromedp.SetValue(`#f-country`, "Ireland"))
	b.Click(`button[value="house"]`)
	b.Until(`location.hash === '#bottles' && document.title.includes('Dry Dock')`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "the first day of a house with a name")
	assert.Equal(t, house.Settings{Name: "Dry Dock", Units: measure.Imperial, Decimal: house.DecimalPoint, Country: "Ireland"}, h.Settings())
	b.Open(site, "/stock/house")
	b.Fits()
	b.Accessible(webuitest.Axe(t), "the settings of the house")
	b.Quiet()
}
