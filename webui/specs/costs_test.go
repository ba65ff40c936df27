package specs_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// rowNames are the drinks of the page in the order in which they are listed.
func rowNames(page string) (out []string) {
	for _, m := range regexp.MustCompile(`<th scope="row"><a href="/specs/([a-z-]+)"`).FindAllStringSubmatch(page, -1) {
		out = append(out, m[1])
	}
	return out
}

// Prices on the menu are kept, give their share, sort, and go again with Undo.
func TestTheCostsOfTheMenu(t *testing.T) {
	h := webuitest.OnSale(t)
	p := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(p, "/costs", ""), 200, "Costs of the menu", `<td class="n">2.29</td>`, "Not known in full", "No price for egg white and orgeat.", `aria-label="Price of Mainbrace"`)

	sent := webuitest.Fields("price.mainbrace", "11,45", "price.spindrift", "20", "price.nutcracker", "", "price.halyard-sour", "")
	w := webuitest.Post(p, "/costs?sort=-share", sent, false)
	require.Equal(t, 303, w.Code)
	after := webuitest.Get(p, w.Header().Get("Location"), "")
	webuitest.Tells(t, after, 200, "The prices are kept.", `value="11.45"`, `<td class="n">20.0</td>`, "Undo", `aria-sort="descending"`, "One of each of the 2 with a price and a cost")
	assert.Equal(t, []string{"mainbrace", "spindrift"}, rowNames(after.Body.String())[:2])
	up := rowNames(webuitest.Get(p, "/costs?sort=share", "").Body.String())
	assert.Equal(t, []string{"spindrift", "mainbrace"}, up[:2], "what is not known comes last either way")
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace", ""), 200, "<strong>20.0\u00a0%</strong> of that price")

	shared := webuitest.Fields("price.mainbrace", "20 %", "version.mainbrace", "1", "price.spindrift", "20", "version.spindrift", "1")
	require.Equal(t, 303, webuitest.Post(p, "/costs", shared, false).Code)
	webuitest.Tells(t, webuitest.Get(p, "/costs", ""), 200, `value="11.46"`) // five times what it costs

	again := webuitest.Fields("price.mainbrace", "11.46", "version.mainbrace", "2", "price.spindrift", "", "version.spindrift", "1")
	require.Equal(t, 303, webuitest.Post(p, "/costs", again, false).Code)
	prices, err := house.All[house.MenuPrice](t.Context(), h.Store())
	require.NoError(t, err)
	require.Len(t, prices, 1, "an empty price is taken away, an equal one is not written")
	assert.Equal(t, int64(2), prices[0].Version)
}

// A price that is none stays as it was typed and is not kept, and what else was typed is; one that
// somebody else changed is not overwritten.
func TestPricesThatAreNotKept(t *testing.T) {
	h := webuitest.OnSale(t)
	p := webuitest.PagesOf(t, h)
	for typed, said := range map[string]string{"ten": "ten", "0": "above zero", "-3": "-3", "$12": "EUR", "1e99": "1e99"} {
		h := webuitest.OnSale(t)
		w := webuitest.Post(webuitest.PagesOf(t, h), "/costs", webuitest.Fields("price.mainbrace", typed, "price.spindrift", "9"), false)
		webuitest.Tells(t, w, 422, "1 price is not understood and not kept", "1 other change is kept.", "Undo", said, `aria-invalid="true"`, `value="9"`, `name="version.spindrift" value="1"`)
		prices, err := house.All[house.MenuPrice](t.Context(), h.Store())
		require.NoError(t, err)
		require.Len(t, prices, 1)
		assert.Equal(t, "spindrift", prices[0].Item.Spec)
	}
	comma := webuitest.OnSale(t)
	_, err := comma.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Currency: "EUR", Decimal: house.DecimalComma}, 0))
	require.NoError(t, err)
	webuitest.Tells(t, webuitest.Post(webuitest.PagesOf(t, comma), "/costs", webuitest.Fields("price.mainbrace", "1.234,56"), false), 422,
		`<tr class="mend"><td class="fault" colspan="4" id="fault-price.mainbrace">&#34;1.234,56&#34; is not a number`, "such as 12,50")
	for typed, said := range map[string]string{"0 %": "Write the share with digits", "120 %": "Write the share with digits", "x %": "Write the share with digits"} {
		webuitest.Tells(t, webuitest.Post(p, "/costs", webuitest.Fields("price.mainbrace", typed), false), 422, "not understood and not kept", said)
	}
	webuitest.Tells(t, webuitest.Post(p, "/costs", webuitest.Fields("price.nutcracker", "20 %"), false), 422, "no price follows from a share", "No price for egg white and orgeat.")
	require.Equal(t, 303, webuitest.Post(p, "/costs", webuitest.Fields("price.mainbrace", "10"), false).Code)
	webuitest.Tells(t, webuitest.Post(p, "/costs", webuitest.Fields("price.mainbrace", "12"), false), 409, "Somebody changed a price", `value="12"`)
	prices, err := house.All[house.MenuPrice](t.Context(), h.Store())
	require.NoError(t, err)
	require.Len(t, prices, 1)
	assert.Equal(t, 10.0, prices[0].Item.Amount)
	webuitest.Tells(t, webuitest.Get(p, "/costs?sort=luck", ""), 400)
}

// A house sells in its own currency, whatever its bottles are priced in; no share is told then.
func TestPricesAreInTheCurrencyOfTheHouse(t *testing.T) {
	h := webuitest.OnSale(t)
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Currency: "GBP"}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(p, "/costs", ""), 200, ">Price, GBP<", ">Costs, EUR<", "No share of a price in GBP, since the bottles are priced in EUR.")
	require.Equal(t, 303, webuitest.Post(p, "/costs", webuitest.Fields("price.mainbrace", "11"), false).Code)
	webuitest.Tells(t, webuitest.Get(p, "/costs", ""), 200, `value="11"`, "The price is in GBP, the bottles are in EUR.")
	webuitest.Tells(t, webuitest.Post(p, "/costs", webuitest.Fields("price.spindrift", "20 %"), false), 422, "no price follows from a share")
	webuitest.Tells(t, webuitest.Get(p, "/menu", ""), 200, "Prices in GBP.")
}
