package specs_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
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
		house.Put(house.Spec{ID: "quay", Name: "Quay", Method: "build", Service: "long", Garnish: "a brandied whatnot", Pours: []house.Pour{{Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}}}, 0),
		house.Put(house.Spec{ID: "dry-dock", Name: "Dry Dock", Method: "build", Service: "long", Pours: []house.Pour{{Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}, {Ingredient: "simple-syrup", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	w := webuitest.Get(p, "/menu", "")
	webuitest.Tells(t, w, 200, "<h1>The Halyard Room</h1>", "<strong>Mainbrace</strong> <span class=\"price\">12,50</span>", "London dry gin, lemon juice", "<h2>Without alcohol: up to 0,5\u00a0% vol</h2>", "<strong>Dry Dock</strong>",
		"Contains eggs and tree nuts.", "Prices in EUR.", "Tell us of an allergy", "5 of 6 without a price.")
	assert.Regexp(t, `(?s)Quay.*<h2>Without alcohol.*Dry Dock`, w.Body.String(), "what nobody has stated of a garnish is not free of alcohol")
	assert.NotRegexp(t, `(?s)<h2>Without alcohol.*Quay`, w.Body.String())
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

// A guest reads which drink is without a bottle tonight.
func TestTheMenuTellsWhatIsOut(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	webuitest.Lacks(t, webuitest.Get(p, "/menu", ""), "Tonight without")
	h.Dry = []string{"lemon-juice"}
	webuitest.Tells(t, webuitest.Get(p, "/menu", ""), 200, "Tonight without lemon juice: what is in it may differ. Ask us what we pour instead before you order.")
}

// A drink that lacks a bottle carries on the menu what is poured instead as well, and is without
// alcohol only if that is known to be.
func TestTheMenuTellsWhatIsPouredInstead(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening,
		house.Put(house.Spec{ID: "dry-dock", Name: "Dry Dock", Method: "build", Service: "long", Pours: []house.Pour{{Ingredient: "lemon-juice", Amount: 1, Unit: "oz"}, {Ingredient: "simple-syrup", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	of := func(drink, address string) string {
		_, entry, found := strings.Cut(webuitest.Get(p, address, "").Body.String(), "<strong>"+drink+"</strong>")
		require.True(t, found, drink)
		entry, _, _ = strings.Cut(entry, "</li>")
		return entry
	}
	assert.NotContains(t, of("Mainbrace", "/menu"), "tree nuts")
	assert.Regexp(t, `(?s)<h2>Without alcohol.*Dry Dock`, webuitest.Get(p, "/menu", "").Body.String())

	h.Dry = []string{webuitest.Falernum.ID} // almond syrup is poured instead
	assert.Contains(t, of("Mainbrace", "/menu"), "tree nuts")
	assert.NotContains(t, of("Mainbrace", "/menu?avoid=tree+nuts"), "tree nuts", "a guest who avoids them is poured clove syrup")
	assert.Regexp(t, `(?s)<h2>Without alcohol.*Dry Dock`, webuitest.Get(p, "/menu", "").Body.String(), "it has all that it pours")

	h.Dry = []string{webuitest.Lemon.ID}
	assert.NotRegexp(t, `(?s)<h2>Without alcohol.*Dry Dock`, webuitest.Get(p, "/menu", "").Body.String(), "nobody knows what is poured instead")
	assert.Contains(t, of("Dry Dock", "/menu"), "Ask us what we pour instead before you order.")
}
