package specs_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// The menu for guests says what a drink is made of in plain words, its price and its
// allergens, and nothing of how it is made.
func TestTheMenuForGuests(t *testing.T) {
	h := webuitest.OnSale(t)
	_, err := h.Store().Write(t.Context(), webuitest.Opening,
		house.Put(house.Settings{Name: "The Halyard Room", Currency: "EUR", Decimal: house.DecimalComma}, 0),
		house.Put(house.MenuPrice{Spec: "mainbrace", Amount: 12.5, Currency: "EUR"}, 0),
		house.Put(house.Spec{ID: "dry-dock", Name: "Dry Dock", Method: "build", Service: "long", Pours: []house.Pour{{Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}, {Ingredient: "simple-syrup", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	w := webuitest.Get(p, "/menu", "")
	webuitest.Tells(t, w, 200, "<h1>The Halyard Room</h1>", "<strong>Mainbrace</strong> <span class=\"price\">12,50</span>", "London dry gin, lemon juice", "<h2>Without alcohol</h2>", "<strong>Dry Dock</strong>",
		"Contains eggs and tree nuts.", "Prices in EUR.", "Tell us of an allergy", "4 of 5 without a price.")
	webuitest.Lacks(t, w, " oz ", "shake", " of 100", "(1:1)")
	webuitest.Lacks(t, webuitest.Get(p, "/menu?avoid=tree+nuts", ""), "Nutcracker")
	webuitest.Tells(t, webuitest.Get(p, "/menu?q=zzz", ""), 200, "There is nothing to print")
	webuitest.Tells(t, webuitest.Get(p, "/menu?avoid=nutz", ""), 400)

	_, err = h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.MenuPrice{Spec: "dry-dock", Amount: 5, Currency: "GBP"}, 0))
	require.NoError(t, err)
	w = webuitest.Get(p, "/menu", "")
	webuitest.Tells(t, w, 200, "12,50\u00a0EUR", "5,00\u00a0GBP") // each says its own
	webuitest.Lacks(t, w, "Prices in")
}
